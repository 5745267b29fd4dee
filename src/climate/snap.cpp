#include <algorithm>

#include "slabwright/climate.hpp"
#include "slabwright/climate_snap.hpp"
#include "slabwright/climate_synthetic.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {

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
  expects(shape.days >= 1 && shape.days <= 60 && shape.lead_days >= 1 && shape.lead_days <= 60, "a snap of days");
  expects(shape.swing_K >= 0.0 && shape.lowest_degC <= shape.before_degC, "a snap is colder than what is before it");
  ColdSnap snap;
  snap.lead_hours = static_cast<std::size_t>(shape.lead_days) * 24;
  const std::array<double, 24> wave = day_wave();
  const double deepest = *std::min_element(wave.begin(), wave.end());
  const std::size_t hours = static_cast<std::size_t>(shape.lead_days + shape.days) * 24;
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const double cold = shape.lowest_degC + (wave[hour % 24] - deepest) * shape.swing_K;
    const double into = (static_cast<double>(hour) + 24.5 - static_cast<double>(snap.lead_hours)) / 24.0;
    const double warm = shape.before_degC * (1.0 - into) + cold * into;
    snap.hourly_degC.push_back(into <= 0.0 ? shape.before_degC : into >= 1.0 ? cold : warm);
  }
  snap.run.hours = hours - snap.lead_hours;
  double sum = 0.0;
  for (std::size_t hour = snap.lead_hours; hour < hours; ++hour) sum += snap.hourly_degC[hour];
  snap.run.mean_degC = sum / static_cast<double>(snap.run.hours);
  snap.run.lowest_degC = shape.lowest_degC;
  return snap;
}

}  // namespace slabwright
