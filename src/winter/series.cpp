// What sheets draw of a winter: cost against either sensor's setting, and the week of the cold snap.
#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "winter/scene.hpp"

namespace slabwright::winter {
namespace {

/// Steps below the lowest setting and above it.
constexpr int steps_below = 3, steps_above = 5;
constexpr std::size_t week_hours = 7 * 24;

double setting_step_K(System system) { return system == System::us ? 2.0 / 1.8 : 1.0; }

/// A way held by one sensor, its setting moved step by step, no higher than `highest_degC`.
struct Swept {
  const WayResult& way;
  WaySensor sensor = WaySensor::air;
  double lowest_degC = 0.0, highest_degC = 0.0;
  double raised_K = 0.0;  ///< of the lowest over the frost hold: where that is too low for the way
};
std::vector<SettingCost> costs_of(const Scene& scene, const Swept& swept) {
  const double step_K = setting_step_K(scene.shop.design.units);
  std::vector<SettingCost> costs;
  for (int step = -steps_below; step <= steps_above; ++step) {
    const double setting_degC = swept.lowest_degC + step * step_K;
    if (step > 0 && setting_degC > swept.highest_degC) break;
    Settings settings{swept.way.way, swept.way.floor_lead_h, swept.way.source_lead_h, swept.raised_K + step * step_K};
    settings.way.sensor = swept.sensor;
    const WayResult result = tried(scene, settings).result;
    costs.push_back({setting_degC, result.use_J, result.money, step >= 0});
  }
  return costs;
}

void add_settings(WinterSeries& series, const Scene& scene, const Winter& winter) {
  const WayResult* best = way_with_hold(winter);
  if (!best || scene.hold.floor_air_degC <= not_set_degC) return;
  const double raised_K = best->hold_degC - scene.hold.floor_air_degC;
  series.way = best->way.name;
  series.air_lowest_degC = best->hold_degC;
  series.air = costs_of(scene, {*best, WaySensor::air, best->hold_degC, scene.work_degC, raised_K});
  if (scene.hold.floor_slab_degC <= not_set_degC) return;
  series.slab_lowest_degC = scene.hold.floor_slab_degC + raised_K;
  // A slab may be warmer than the air it is to warm.
  series.slab = costs_of(scene, {*best, WaySensor::slab, *series.slab_lowest_degC, HUGE_VAL, raised_K});
}

/// A way run as what comes near freezing is found: of this way for years, the snap laid in.
std::vector<WayHour> snap_hours(const Scene& scene, const WayCase& way) {
  Kept kept;
  kept.hour = snap_from;
  run_way(way, for_years(scene, way, scene.before), kept);
  const RunSpan span{snap_from, scene.shop.snap.hourly_degC.size(), &scene.shop.snap.hourly_degC, false};
  return run_way(with_machines(way, scene.in_snap), kept.state, kept.controls, span).hour;
}

WinterWeek week_of(const Scene& scene, const WayResult& result) {
  const WayCase way = case_of(scene, settings_of(scene, result));
  const std::vector<WayHour> hours = snap_hours(scene, way);
  const std::size_t from = hours.size() - std::min(hours.size(), week_hours);
  const CalendarHour at = calendar_hour(of_year(snap_from + from), false);
  WinterWeek week;
  week.way = result.way.name;
  week.first_hour = static_cast<int>(of_year(snap_from + from));
  week.month = at.month;
  week.day = at.day;
  for (std::size_t i = from; i < hours.size(); ++i) {
    const WayHour& hour = hours[i];
    week.outdoor_degC.push_back(scene.shop.snap.hourly_degC[i]);
    week.air_degC.push_back(hour.air_degC);
    week.slab_degC.push_back(hour.sensor_degC);
    week.floor_degC.push_back(hour.floor_degC);
    week.boiler_W.push_back(hour.boiler_J / hour_s);
    week.source_W.push_back(hour.source_J / hour_s);
    week.floor_heat_W.push_back(hour.floor_heat_J / hour_s);
    week.source_heat_W.push_back(hour.source_heat_J / hour_s);
    week.locked_s += hour.locked_s;
    week.use_J += hour.boiler_J + hour.source_J + hour.pump_J;
  }
  const auto lowest = [](const std::vector<double>& values) { return *std::min_element(values.begin(), values.end()); };
  week.lowest_outdoor_degC = lowest(week.outdoor_degC);
  week.lowest_air_degC = lowest(week.air_degC);
  week.lowest_slab_degC = lowest(week.slab_degC);
  return week;
}

}  // namespace

void add_series(Winter& winter, const Scene& scene) {
  WinterSeries series;
  add_settings(series, scene, winter);
  if (!winter.way.empty() && !scene.shop.snap.hourly_degC.empty()) series.week = week_of(scene, winter.way.front());
  winter.series = std::move(series);
}

}  // namespace slabwright::winter

namespace slabwright {

using namespace winter;

std::vector<OwnerCost> owner_costs(const WinterShop& shop, EdgeFields& fields, const std::vector<double>& setting_degC,
                                   int source_lead_h) {
  const std::optional<Scene> scene = scene_of(shop, fields);
  if (!scene) return {};
  std::vector<OwnerCost> costs;
  for (const bool second_source : {false, true}) {
    if (second_source && !scene->machines.source) break;
    for (const double degC : setting_degC) {
      WayEntry way;
      way.floor = WayFloor::setpoint;
      way.setpoint_degC = degC;
      if (second_source) way.second_source = WaySource::in_working_hours;
      const WayResult result = tried(*scene, {way, 0, second_source ? source_lead_h : 0}).result;
      costs.push_back({{}, false, second_source, degC, result.use_J, result.money});
    }
  }
  return costs;
}

}  // namespace slabwright
