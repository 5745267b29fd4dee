#include "winter/scene.hpp"

#include <algorithm>

namespace slabwright::winter {
namespace {

/// Leads that are tried beside none, hours before work.
constexpr int source_leads_h[] = {1, 2, 3, 4, 6, 8, 12}, floor_leads_h[] = {3, 6, 9, 12, 18, 24, 36};
/// A floor that is charged at night is charged to so much over working temperature at the sensor, as it takes.
constexpr double charges_K[] = {1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0};

bool better(const Tried& one, const Tried& other) {
  if (one.result.fails.comfort != other.result.fails.comfort) return other.result.fails.comfort;
  if (one.result.fails.comfort) return one.result.comfort.cold_s < other.result.comfort.cold_s;
  return ranks_before(one.result, other.result);
}

void try_all(Tried& best, const Scene& scene, const std::vector<Settings>& all) {
  for (const Settings& settings : all) {
    Tried next = tried(scene, settings);
    if (better(next, best)) best = std::move(next);
  }
}

std::vector<ColdestPlace> colder_of(std::vector<ColdestPlace> one, const std::vector<ColdestPlace>& other) {
  for (std::size_t i = 0; i < one.size() && i < other.size(); ++i)
    if (other[i].degC < one[i].degC) one[i] = other[i];
  return one;
}

}  // namespace

WayCase case_of(const Scene& scene, const Settings& settings) {
  PlanInputs inputs;
  inputs.work_degC = scene.work_degC;
  // A thermostat that is set to nothing stays so.
  const auto raised = [&](double degC) { return degC > not_set_degC ? degC + settings.hold_more_K : degC; };
  inputs.hold = {raised(scene.hold.floor_air_degC), raised(scene.hold.floor_slab_degC), not_set_degC};
  inputs.least_source_degC = scene.machines.least_setting_degC;
  inputs.floor_lead_h = settings.floor_lead_h;
  inputs.source_lead_h = settings.source_lead_h;
  WayEntry way = settings.way;
  if (!scene.machines.source) way.second_source = WaySource::off;
  return {scene.year,
          scene.season,
          scene.machines,
          plan_of(way, scene.season, inputs),
          scene.shop.design.frost_hold.deadband_K,
          way.outdoor_reset,
          scene.work_degC,
          way.second_source != WaySource::off};
}

Settings settings_of(const Scene& scene, const WayResult& result) {
  const double more_K = scene.hold.floor_air_degC > not_set_degC ? result.hold_degC - scene.hold.floor_air_degC : 0.0;
  return {result.way, result.floor_lead_h, result.source_lead_h, more_K};
}

WayCase with_machines(const WayCase& way, const Machines& machines) {
  return {way.shop, way.season, machines, way.dials, way.deadband_K, way.reset, way.work_degC, way.has_source};
}

ShopState for_years(const Scene& scene, const WayCase& way, const ShopState& start) {
  RunSpan span;
  span.places = false;
  return carried_on(scene.year, start, run_way(way, start, {}, span).end, year_long_s);
}

Tried tried(const Scene& scene, const Settings& settings) {
  const WayCase way = case_of(scene, settings);
  RunSpan span;
  span.places = false;
  Tried one{settings, run_way(way, scene.before, {}, span), {}};
  one.result = tally(way, one.year, scene.shop.design);
  one.result.way = settings.way;
  one.result.floor_lead_h = settings.floor_lead_h;
  one.result.source_lead_h = settings.source_lead_h;
  return one;
}

Tried tuned(const Scene& scene, const WayEntry& way, double hold_more_K) {
  std::vector<Settings> charges;
  for (const double more_K : charges_K) {
    charges.push_back({way, 0, 0, hold_more_K});
    if (!way.charge || way.charge_to_degC) break;
    charges.back().way.charge_to_degC = scene.work_degC + more_K;
  }
  Tried best = tried(scene, charges.front());
  charges.erase(charges.begin());
  try_all(best, scene, charges);
  // One after the other: what the second source has warmed by then, the floor need not.
  if (scene.machines.source && source_starts_early(way)) {
    std::vector<Settings> earlier;
    for (const int lead_h : source_leads_h) earlier.push_back({best.settings.way, 0, lead_h, hold_more_K});
    try_all(best, scene, earlier);
  }
  if (floor_starts_early(way)) {
    std::vector<Settings> earlier;
    for (const int lead_h : floor_leads_h)
      earlier.push_back({best.settings.way, lead_h, best.settings.source_lead_h, hold_more_K});
    try_all(best, scene, earlier);
  }
  return best;
}

Machines in_weather(Machines machines, std::size_t from, const std::vector<double>& outdoor_degC) {
  for (std::size_t i = 0; machines.source && i < outdoor_degC.size(); ++i)
    machines.source_hour[from + i] = source_hour(machines, outdoor_degC[i], outdoor_degC[i]);
  return machines;
}

std::vector<ColdestPlace> coldest_from(const Scene& scene, const WayCase& way, const ShopState& start) {
  const std::vector<double>& hourly_degC = scene.shop.snap.hourly_degC;
  Kept kept;
  kept.hour = snap_from;
  const WayYear year = run_way(way, start, kept);
  const WayCase cold = with_machines(way, scene.in_snap);
  const RunSpan span{snap_from, hourly_degC.size(), &hourly_degC, true};
  return colder_of(year.place, run_way(cold, kept.state, kept.controls, span).place);
}

bool keeps_frost_out(const Scene& scene, const WayCase& way) {
  const auto coldest = coldest_from(scene, way, for_years(scene, way, scene.before));
  for (std::size_t i = 0; i < coldest.size(); ++i) {
    const WatchedPlace& place = scene.shop.watched.place[i];
    if (place.decides && coldest[i].degC < place.limit_degC) return false;
  }
  return true;
}

}  // namespace slabwright::winter
