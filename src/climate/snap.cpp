#include <algorithm>

#include "slabwright/climate.hpp"
#include "slabwright/climate_snap.hpp"
#include "slabwright/climate_synthetic.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

/// The foot of the days' waves at `day`, counted from the first day's worst hour.
double foot_degC(const Hourly& lowest_degC, double day) {
  if (day <= 0.0) return lowest_degC.front();
  const auto before = static_cast<std::size_t>(day);
  if (before + 1 >= lowest_degC.size()) return lowest_degC.back();
  const double into = day - static_cast<double>(before);
  return lowest_degC[before] + (lowest_degC[before + 1] - lowest_degC[before]) * into;
}

}  // namespace

ColdSnap cold_snap(const Hourly& hourly_degC, int days, int lead_days) {
  expects(days >= 1 && days <= 60 && lead_days >= 0 && lead_days <= 60, "a snap of days, not of months");
  ColdSnap snap;
  snap.run = coldest_run(hourly_degC, days);
  snap.lead_hours = static_cast<std::size_t>(lead_days) * 24;
  snap.over_new_year = snap.lead_hours > snap.run.first_hour;
  const std::size_t year = hourly_degC.size();
  const std::size_t first = snap.run.first_hour + year - snap.lead_hours;
  for (std::size_t hour = 0; hour < snap.lead_hours + snap.run.hours; ++hour)
    snap.hourly_degC.push_back(hourly_degC[(first + hour) % year]);
  return snap;
}

ColdSnap made_up_snap(const SnapShape& shape) {
  expects(shape.days >= 1 && shape.days <= 60, "a snap of days");
  expects(shape.lowest_degC <= shape.before_degC, "a snap is colder than what is before it");
  return made_up_snap(shape, Hourly(static_cast<std::size_t>(shape.days), shape.lowest_degC));
}

ColdSnap made_up_snap(const SnapShape& shape, const Hourly& lowest_degC) {
  expects(!lowest_degC.empty() && lowest_degC.size() <= 60, "a snap of days");
  expects(shape.lead_days >= 1 && shape.lead_days <= 60 && shape.swing_K >= 0.0, "days before it, and a swing");
  ColdSnap snap;
  snap.lead_hours = static_cast<std::size_t>(shape.lead_days) * 24;
  const std::array<double, 24> wave = day_wave();
  const auto deepest = std::min_element(wave.begin(), wave.end());
  const auto worst_hour = static_cast<double>(deepest - wave.begin());
  const std::size_t hours = snap.lead_hours + lowest_degC.size() * 24;
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const double since = static_cast<double>(hour) - static_cast<double>(snap.lead_hours);
    const double cold =
        foot_degC(lowest_degC, (since - worst_hour) / 24.0) + (wave[hour % 24] - *deepest) * shape.swing_K;
    const double into = (since + 24.5) / 24.0;
    const double warm = shape.before_degC * (1.0 - into) + cold * into;
    snap.hourly_degC.push_back(into <= 0.0 ? shape.before_degC : into >= 1.0 ? cold : warm);
  }
  snap.run.hours = hours - snap.lead_hours;
  double sum = 0.0;
  for (std::size_t hour = snap.lead_hours; hour < hours; ++hour) sum += snap.hourly_degC[hour];
  snap.run.mean_degC = sum / static_cast<double>(snap.run.hours);
  snap.run.lowest_degC = *std::min_element(lowest_degC.begin(), lowest_degC.end());
  return snap;
}

}  // namespace slabwright
