// A slab sensor in the wrong place.
#include <algorithm>
#include <cmath>

#include "freeze/held_zone.hpp"
#include "slabwright/freeze_recovery.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace freeze;

constexpr double turn = 2.0 * pi;
/// Rubber, cardboard, a pallet of sheet metal: practice.
constexpr double mat_m2K_per_W = 0.1;
/// A patch of winter sun through glass: W/m2 on the floor, so much of it taken in, for three hours; practice.
constexpr double sun_W_per_m2 = 300.0, taken_in_share = 0.6, sun_s = 3.0 * hour_s;

/// The slab at its setting in the coldest hour, as if that lasted.
struct Held {
  const HeldShop& shop;
  const HeldZone& held;
  ZoneDrivers at;
};

/// The wave between tubes by its first harmonic: highest over a tube, lowest midway.
double beside_tube_K(const Held& scene, double from_tube_m) {
  const double spacing_m = scene.shop.floor.section.spacing_m;
  return scene.held.zone.midway_m2K_per_W * scene.at.tube_W_per_m2 * (1.0 + std::cos(turn * from_tube_m / spacing_m));
}

/// The same water under a covering that lets less through.
double under_mat_K(const Held& scene) {
  Section bare = scene.shop.floor.section;
  bare.field.reset();
  Section matted = bare;
  matted.covering_m2K_per_W += mat_m2K_per_W;
  const HeldRoom room = held_at(*scene.held.shop.hold[scene.held.shop.first], scene.at.air_degC, scene.at.outdoor_degC);
  const double film = room.film_W_per_m2K, wall = bare.wall_mK_per_W;
  const SectionResponse r = respond(bare, film, wall), m = respond(matted, film, wall);
  // From the reading to the water, and back under the mat.
  const double water_degC =
      (room.sensor_degC - r.plane_midway.room_share * room.room_degC - r.plane_midway.below_share * bare.below_degC) /
      r.plane_midway.tube_share;
  return temperature_degC(m.plane_midway, water_degC, room.room_degC, bare.below_degC) - room.sensor_degC;
}

double in_sun_K(const Design& design) {
  return taken_in_share * sun_W_per_m2 * sun_s / (concrete_J_per_m3K * floor_thickness_m(design.slab));
}

/// At a big door, or nothing without one.
std::optional<double> near_door_K(const Held& scene, EdgeFields& fields, double in_m) {
  for (const FloorStrip& strip : scene.held.zone.floor) {
    const EdgeStretch& edge = scene.shop.envelope.edge[strip.edge];
    if (edge.kind != EdgeKind::big_door) continue;
    const UnitResponses found = fields.responses(
        edge.detail, {{in_m, edge.detail.tube_depth_m}, {edge.detail.half_width_m / 1.5, edge.detail.tube_depth_m}});
    const ZoneDrivers& at = scene.at;
    const double room_degC = room_air_degC(scene.held.zone, strip.room, at.air_degC, at.outdoor_degC);
    const double near_degC = room_degC + strip.near_air_share.value_or(0.0) * (at.outdoor_degC - room_degC);
    const std::vector<double> drivers{room_degC, at.outdoor_degC, scene.held.zone.ground_degC, at.tube_W_per_m2,
                                      near_degC};
    double off_K = 0.0;
    for (std::size_t driver = 0; driver < found.weights[0].size(); ++driver)
      off_K += (found.weights[0][driver] - found.weights[1][driver]) * drivers[driver];
    return off_K;
  }
  return std::nullopt;
}

}  // namespace

std::vector<SensorCase> sensor_cases(const HeldShop& held, const Freeze& freeze, EdgeFields& fields) {
  if (!freeze.slab || !held.design.climate.coldest_degC) return {};
  const auto zone = held_zone(held, fields);
  if (!zone) return {};
  const bool us = held.design.units == System::us;
  const Held scene{
      held, *zone,
      held_by_sensor(zone->zone, needs_at_work(zone->zone), freeze.slab->best_degC, *held.design.climate.coldest_degC)};
  std::vector<SensorCase> cases;
  const auto add = [&](std::string where, double off_K) {
    SensorCase one{std::move(where), off_K, freeze.slab->dial_degC + off_K, 100.0};
    for (const PlaceAtSetting& place : freeze.place) {
      if (!place.decides || place.slab.gain_share.empty()) continue;
      one.coldest_spare_K =
          std::min(one.coldest_spare_K, coldest_degC(place.slab, freeze.slab->best_degC - off_K) - place.freezes_degC);
    }
    cases.push_back(std::move(one));
  };
  add("midway between two tubes, the right place", 0.0);
  add(us ? "2 in from a tube" : "50 mm from a tube", beside_tube_K(scene, us ? 0.0508 : 0.05));
  if (const auto off_K = near_door_K(scene, fields, us ? 0.9144 : 1.0))
    add(us ? "3 ft inside the big door" : "1 m inside the big door", *off_K);
  add("in the sun", in_sun_K(held.design));
  add("under a mat or pallet", under_mat_K(scene));
  add(us ? "reading 2 F too high" : "reading 1 C too high", us ? 2.0 / 1.8 : 1.0);
  return cases;
}

}  // namespace slabwright
