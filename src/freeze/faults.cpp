// One thing fails while power stays on.
#include <fmt/format.h>

#include <algorithm>

#include "freeze/held_zone.hpp"
#include "freeze/words.hpp"
#include "slabwright/freeze_outage.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace freeze;

constexpr double night_s = 12.0 * hour_s;
constexpr double typical_air_degC = 5.0;

/// The shop at the coldest hour from the wall thermostat's dial, and what a fault makes of it.
struct Scene {
  const HeldShop& shop;
  const HeldZone& held;
  double outdoor_degC = 0.0;
  ZoneDrivers before;
  double most_W = 0.0;  ///< of the boiler; what the hold takes where none is known
  bool boiler_known = false;

  ZoneStep step() const {
    ZoneStep step;
    step.outdoor_degC = outdoor_degC;
    step.needs = needs_at_work(held.zone);
    return step;
  }
};

SingleFault fault_of(const Scene& scene, std::string what, const Doing& doing, Water water = Water::stands) {
  const FirstFrozen first = first_frozen(scene.held, run_until_frozen(scene.held, scene.before, doing), water);
  return {std::move(what), first.name, first.after_s, ""};
}

SingleFault pump_dead(const Scene& scene) {
  return fault_of(scene, "pump dead, or a thermostat that never calls", [&](const ZoneRow&) { return scene.step(); });
}

SingleFault boiler_tripped(const Scene& scene) {
  return fault_of(
      scene, "boiler tripped, the pump still running", [&](const ZoneRow&) { return scene.step(); }, Water::moves);
}

/// The others hold the room; the loops of one place carry nothing.
SingleFault valve_shut(const Scene& scene) {
  return fault_of(scene, "one zone valve stuck shut", [&](const ZoneRow&) {
    ZoneStep step = scene.step();
    step.air_degC = scene.before.air_degC;
    return step;
  });
}

SingleFault second_source_lost(const Scene& scene) {
  const double needs_W = scene.before.tube_W_per_m2 * tubes_m2(scene.held.zone);
  const System system = scene.shop.design.units;
  SingleFault fault{"second source lost", "", std::nullopt, ""};
  if (!scene.boiler_known) return fault;
  if (needs_W > scene.most_W) {
    ZoneStep full = scene.step();
    full.tube_W_per_m2 = scene.most_W / tubes_m2(scene.held.zone);
    fault = fault_of(scene, fault.what, [&](const ZoneRow&) { return full; });
  }
  fault.means =
      fmt::format("the boiler then gives {} of its {}", show(std::min(needs_W, scene.most_W), Dimension::power, system),
                  show(scene.most_W, Dimension::power, system));
  return fault;
}

double doors_W_per_K(const Design& design, double rise_K) {
  double all_W_per_K = 0.0;
  for (const Opening& opening : design.opening) {
    if (opening.kind != OpeningKind::big_door) continue;
    const double flow_m3_per_s = door_air_m3_per_s({opening.size.width_m, opening.size.depth_m}, std::max(0.0, rise_K));
    all_W_per_K +=
        air_stream_W_per_K(flow_m3_per_s, air_density_kg_per_m3(typical_air_degC, design.climate.altitude_m));
  }
  return all_W_per_K;
}

/// The first tube to freeze, when all else that hangs in the air has frozen long before.
std::string first_tube(const Scene& scene, const std::vector<ZoneRow>& rows) {
  FirstFrozen first;
  for (std::size_t i = 0; i < scene.held.places.place.size(); ++i) {
    if (scene.held.places.place[i].kind != PlaceKind::tube) continue;
    const auto after_s = freezes_after_s(scene.held, i, rows, Water::stands);
    if (after_s && (!first.after_s || *after_s < *first.after_s)) first = {scene.held.places.place[i].name, after_s};
  }
  if (!first.after_s) return "no tube in the concrete freezes";
  return fmt::format("the {} after {:.0f} h", first.name, *first.after_s / hour_s);
}

/// Air is as cold as outdoors in minutes; water in lines follows it within the hour, the concrete in hours.
SingleFault door_open(const Scene& scene) {
  const auto rows = run_until_frozen(scene.held, scene.before, [&](const ZoneRow& now) {
    ZoneStep step = scene.step();
    step.tube_W_per_m2 = scene.most_W / tubes_m2(scene.held.zone);
    step.door_open = now.time_s < night_s;
    if (step.door_open)
      step.needs.loss_W_per_K += doors_W_per_K(scene.shop.design, now.at.air_degC - scene.outdoor_degC);
    return step;
  });
  double coldest_degC = scene.before.air_degC;
  for (const ZoneRow& row : rows) coldest_degC = std::min(coldest_degC, row.at.air_degC);
  const FirstFrozen first = first_frozen(scene.held, rows, Water::stands);
  return {
      "big door left open overnight (12 h)", first.name, first.after_s,
      fmt::format("air falls to {}; {}", shown_degC(coldest_degC, scene.shop.design.units), first_tube(scene, rows))};
}

}  // namespace

std::vector<SingleFault> single_faults(const HeldShop& held, const Freeze& freeze, EdgeFields& fields,
                                       std::optional<double> boiler_W) {
  if (!freeze.air || !held.design.climate.coldest_degC) return {};
  const auto zone = held_zone(held, fields);
  if (!zone) return {};
  const double outdoor_degC = *held.design.climate.coldest_degC;
  const double air_degC = true_air_degC(held.design, freeze.air->dial_degC, outdoor_degC);
  const ZoneDrivers before = held_at_dial(*zone, air_degC, outdoor_degC);
  const Scene scene{held,
                    *zone,
                    outdoor_degC,
                    before,
                    boiler_W.value_or(before.tube_W_per_m2 * tubes_m2(zone->zone)),
                    boiler_W.has_value()};
  std::vector<SingleFault> faults{pump_dead(scene), boiler_tripped(scene), valve_shut(scene)};
  if (held.design.second_source.kind != SecondSourceKind::none) faults.push_back(second_source_lost(scene));
  const auto& openings = held.design.opening;
  if (std::any_of(openings.begin(), openings.end(), [](const auto& o) { return o.kind == OpeningKind::big_door; }))
    faults.push_back(door_open(scene));
  return faults;
}

}  // namespace slabwright
