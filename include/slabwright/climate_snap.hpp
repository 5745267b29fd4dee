// A few days of cold as an hourly series: cut out of a year, or made up.
#pragma once
#include <cstddef>
#include <vector>

#include "climate_statistics.hpp"

namespace slabwright {

/// Days of lead first, then the cold run.
struct ColdSnap {
  std::vector<double> hourly_degC;
  std::size_t lead_hours = 0;  ///< where the run begins in `hourly_degC`
  ColdRun run;                 ///< mean, lowest, and the year's hour it begins at; 0 for a made-up one
  bool over_new_year = false;  ///< the lead begins in December and the run is in January
};

/// The coldest run of this many days with the days before it. Where they reach back over 1 January the end of December
/// is taken, although a typical year's December is of another winter; `over_new_year` says so.
/// `days` 1 to 60, `lead_days` 0 to 60.
ColdSnap cold_snap(const Hourly& hourly_degC, int days, int lead_days);

/// Steady cold, one day of going over, then days of one wave each. All of it practice.
struct SnapShape {
  double before_degC = 0.0;  ///< held for the lead
  int lead_days = 7;         ///< 1 to 60, the day of going over included
  int days = 3;              ///< 1 to 60
  double lowest_degC = 0.0;  ///< the worst hour, once a day before sunrise
  double swing_K = 10.0;     ///< highest less lowest of a day; 0 or more
};
ColdSnap made_up_snap(const SnapShape& shape);

/// The same with each day's own worst hour. From one day's to the next's the wave's foot goes in a straight line, so
/// that no hour is colder than the coldest that was given. `shape.days` and `shape.lowest_degC` are not looked at;
/// 1 to 60 days.
ColdSnap made_up_snap(const SnapShape& shape, const Hourly& lowest_degC);

}  // namespace slabwright
