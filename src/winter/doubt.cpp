// What a typical year hides, and how wide the figures are.
#include <algorithm>
#include <cmath>

#include "slabwright/climate_winter.hpp"
#include "slabwright/handbook_extremes.hpp"
#include "winter/scene.hpp"

namespace slabwright::winter {
namespace {

/// Spread of yearly lowest hours where nobody gives it (practice).
constexpr double usual_minimum_spread_K = 3.0;

/// One at a time, one standard deviation or what stands for it. All practice.
struct Unknown {
  double air_K = 0.0;        ///< outdoor air, all winter
  double light_share = 0.0;  ///< leaks, windows and doors
  double opaque_share = 0.0;
  double gains_share = 0.0;
  double cop_share = 0.0;
};
constexpr Unknown unknowns[] = {{1.0, 0.0, 0.0, 0.0, 0.0},
                                {0.0, 0.3, 0.0, 0.0, 0.0},
                                {0.0, 0.0, 0.15, 0.0, 0.0},
                                {0.0, 0.0, 0.0, 0.6, 0.0},  // of the half that is in the air at once: 30 % of all
                                {0.0, 0.0, 0.0, 0.0, 0.1}};
/// From one deviation to 5 and 95 of 100.
constexpr double ninety = 1.645;

void scale(std::vector<double>& values, double factor) {
  for (double& value : values) value *= factor;
}

Scene moved(const Scene& scene, const Unknown& by, double sign) {
  Scene other = scene;
  for (ShopRoom& room : other.year.room) {
    room.light_W_per_K *= 1.0 + sign * by.light_share;
    room.opaque_W_per_K *= 1.0 + sign * by.opaque_share;
  }
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    SeasonHour& hour = other.season.hour[i];
    hour.outdoor_degC -= sign * by.air_K;
    if (by.air_K != 0.0 && other.machines.source)
      other.machines.source_hour[i] = source_hour(other.machines, hour.outdoor_degC, hour.dew_point_degC);
  }
  if (by.gains_share != 0.0)
    for (ShopDrivers& drivers : other.season.drivers) scale(drivers.air_W, 1.0 - sign * by.gains_share);
  for (SourceHour& hour : other.machines.source_hour) hour.full.cop *= 1.0 - sign * by.cop_share;
  return other;
}

/// Squares of what unknowns do to a way, each side by itself.
struct Spread {
  double use_low_J2 = 0.0, use_high_J2 = 0.0, low_money2 = 0.0, high_money2 = 0.0;
};
void add(Spread& spread, const WayResult& way, const WayResult& other) {
  const double more_J = other.use_J - way.use_J;
  (more_J < 0.0 ? spread.use_low_J2 : spread.use_high_J2) += more_J * more_J;
  if (!way.money || !other.money) return;
  const double more = *other.money - *way.money;
  (more < 0.0 ? spread.low_money2 : spread.high_money2) += more * more;
}

std::vector<double> in_season_order(const std::vector<double>& of_calendar) {
  std::vector<double> ordered(hours_of_year);
  for (std::size_t i = 0; i < hours_of_year; ++i) ordered[i] = of_calendar[of_year(i)];
  return ordered;
}

std::vector<WeatherYear> stress_years(const Scene& scene) {
  const Climate& climate = scene.shop.design.climate;
  const auto minima = ten_minima_degC(*climate.coldest_degC, climate.return_years,
                                      climate.minimum_spread_K.value_or(usual_minimum_spread_K));
  const std::vector<double> lowest(minima.begin(), minima.end());
  SnapOptions snap;
  snap.days = climate.snap_days;
  snap.swing_K = climate.snap_swing_K;
  std::vector<StressWinter> winters;
  if (scene.shop.weather) {
    winters = stress_winters(common_year(*scene.shop.weather), lowest, snap);
  } else {
    MadeUpWinter of;
    of.dry_bulb.normals = usual_normals(climate.mean_degC, climate.half_swing_K);
    if (auto made = stress_winters(of, lowest, snap)) winters = std::move(*made.value);
  }
  std::vector<WeatherYear> years;
  for (StressWinter& winter : winters) years.push_back(std::move(winter.year));
  return years;
}

void add_places(TenWinters& ten, const Scene& scene, const WayYear& year, double& least_spare_K) {
  bool below = false;
  for (std::size_t i = 0; i < year.place.size(); ++i) {
    const WatchedPlace& place = scene.shop.watched.place[i];
    if (!place.decides) continue;
    const double spare_K = year.place[i].degC - place.limit_degC;
    below = below || spare_K < 0.0;
    if (spare_K >= least_spare_K) continue;
    least_spare_K = spare_K;
    ten.place = place.name;
    ten.place_degC = year.place[i].degC;
  }
  ten.below_limit += below;
}

}  // namespace

std::vector<HardWinter> hard_winters(const Scene& scene) {
  std::vector<HardWinter> all;
  for (const WeatherYear& year : stress_years(scene)) {
    std::vector<double> outdoor_degC = in_season_order(year.dry_bulb_degC);
    Machines machines = in_weather(scene.machines, 0, outdoor_degC);
    all.push_back({std::move(outdoor_degC), std::move(machines)});
  }
  return all;
}

TenWinters ten_winters(const Scene& scene, const Settings& settings, const std::vector<HardWinter>& winters) {
  TenWinters ten;
  const WayCase usual = case_of(scene, settings);
  const ShopState start = for_years(scene, usual, scene.before);
  ten.coldest_outdoor_degC = 1e9;
  double least_spare_K = 1e9;
  for (const HardWinter& winter : winters) {
    const std::vector<double>& outdoor_degC = winter.outdoor_degC;
    const WayCase way = with_machines(usual, winter.machines);
    RunSpan span;
    span.outdoor_degC = &outdoor_degC;
    const WayYear year = run_way(way, start, {}, span);
    const WayResult result = tally(way, year, scene.shop.design);
    ++ten.winters;
    ten.coldest_outdoor_degC =
        std::min(ten.coldest_outdoor_degC, *std::min_element(outdoor_degC.begin(), outdoor_degC.end()));
    ten.most_failed_mornings = std::max(ten.most_failed_mornings, result.comfort.failed_mornings);
    ten.most_locked_s = std::max(ten.most_locked_s, result.source.locked_s);
    ten.longest_locked_s = std::max(ten.longest_locked_s, result.source.longest_locked_s);
    add_places(ten, scene, year, least_spare_K);
  }
  if (ten.winters == 0) ten.coldest_outdoor_degC = 0.0;
  return ten;
}

void add_bands(std::vector<WayResult>& ways, const Scene& scene, const std::vector<Settings>& settings) {
  std::vector<Spread> spread(ways.size());
  for (const Unknown& unknown : unknowns) {
    for (const double sign : {-1.0, 1.0}) {
      const Scene other = moved(scene, unknown, sign);
      for (std::size_t i = 0; i < ways.size(); ++i) {
        if (unknown.cop_share > 0.0 && settings[i].way.second_source == WaySource::off) continue;
        add(spread[i], ways[i], tried(other, settings[i]).result);
      }
    }
  }
  for (std::size_t i = 0; i < ways.size(); ++i) {
    WayResult& way = ways[i];
    way.use_low_J = std::max(0.0, way.use_J - ninety * std::sqrt(spread[i].use_low_J2));
    way.use_high_J = way.use_J + ninety * std::sqrt(spread[i].use_high_J2);
    if (!way.money) continue;
    way.low_money = std::max(0.0, *way.money - ninety * std::sqrt(spread[i].low_money2));
    way.high_money = *way.money + ninety * std::sqrt(spread[i].high_money2);
  }
}

}  // namespace slabwright::winter
