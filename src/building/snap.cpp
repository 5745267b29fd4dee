#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "slabwright/building_snap.hpp"
#include "slabwright/climate_snap.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

constexpr int held_days = 7, file_lead_days = 10;
constexpr double least_shown_K = 0.05;  // less is not worth a word

double coldest_day_degC(const Hourly& hourly_degC) {
  double lowest = hourly_degC.front();
  for (std::size_t first = 0; first + 24 <= hourly_degC.size(); ++first) {
    const auto begin = hourly_degC.begin() + static_cast<std::ptrdiff_t>(first);
    const double mean = std::accumulate(begin, begin + 24, 0.0) / 24.0;
    lowest = first == 0 ? mean : std::min(lowest, mean);
  }
  return lowest;
}

double mean_of_run(const ColdSnap& snap) {
  const auto begin = snap.hourly_degC.begin() + static_cast<std::ptrdiff_t>(snap.lead_hours);
  return std::accumulate(begin, snap.hourly_degC.end(), 0.0) / static_cast<double>(snap.hourly_degC.end() - begin);
}

/// "3 days at -16 F, worst hour -24 F".
std::string figures(const ColdSnap& snap, System system) {
  const std::size_t days = (snap.hourly_degC.size() - snap.lead_hours) / 24;
  const double worst = *std::min_element(snap.hourly_degC.begin(), snap.hourly_degC.end());
  return fmt::format("{} {} at {}, worst hour {}", days, days == 1 ? "day" : "days",
                     show(mean_of_run(snap), Dimension::degree, system), show(worst, Dimension::degree, system));
}

Snap finished(ColdSnap snap, std::string how) {
  Snap out;
  out.coldest_degC = *std::min_element(snap.hourly_degC.begin(), snap.hourly_degC.end());
  out.coldest_day_degC = coldest_day_degC(snap.hourly_degC);
  out.lead_hours = snap.lead_hours;
  out.hourly_degC = std::move(snap.hourly_degC);
  out.how = std::move(how);
  return out;
}

/// Half way from the coldest month to the 99.6 % hour: the coldest weeks of four typical years lie up to 1.2 K above
/// it.
double week_before_degC(const Climate& climate) {
  return 0.5 * (climate.mean_degC - climate.half_swing_K + *climate.outdoor_degC);
}

Snap made_up(const Climate& climate, System system) {
  SnapShape shape;
  shape.before_degC = std::max(week_before_degC(climate), *climate.coldest_degC);
  shape.lead_days = held_days + 1;  // the day of going over is the lead's last
  shape.swing_K = climate.snap_swing_K;
  Hourly lowest_degC(static_cast<std::size_t>(climate.snap_days), *climate.coldest_degC);
  if (!climate.snap.empty()) {
    shape.before_degC = week_before_degC(climate);
    lowest_degC.clear();
    for (const DayLow& day : climate.snap) lowest_degC.push_back(day.lowest_degC);
  }
  ColdSnap snap = made_up_snap(shape, lowest_degC);
  std::string how =
      fmt::format("{}, after a week at {}", figures(snap, system), show(shape.before_degC, Dimension::degree, system));
  return finished(std::move(snap), std::move(how));
}

Snap of_file(const Climate& climate, const Hourly& hourly_degC, System system) {
  ColdSnap snap = cold_snap(hourly_degC, climate.snap_days, file_lead_days);
  const double lowest = *std::min_element(snap.hourly_degC.begin(), snap.hourly_degC.end());
  const double lower_K = std::max(0.0, lowest - *climate.coldest_degC);
  for (double& hour : snap.hourly_degC) hour -= lower_K;
  std::string how = figures(snap, system) + ", the weather file's coldest";
  if (lower_K >= least_shown_K) how += fmt::format(" made {} colder", show(lower_K, Dimension::rise, system));
  return finished(std::move(snap), std::move(how));
}

}  // namespace

Snap snap_of(const Design& design, const WeatherYear* weather) {
  const Climate& climate = design.climate;
  expects(climate.outdoor_degC && climate.coldest_degC, "a snap is of a settled design with an outdoor temperature");
  if (weather && climate.snap.empty()) return of_file(climate, weather->dry_bulb_degC, design.units);
  return made_up(climate, design.units);
}

}  // namespace slabwright
