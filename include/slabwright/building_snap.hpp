// The cold that the building must get through: an hourly outdoor series that ends in the design's cold snap.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "slabwright/climate.hpp"
#include "slabwright/design.hpp"

namespace slabwright {

/// Before the first hour the year's own wave is meant to stand; the lead is cold enough to cover what it leaves out.
struct Snap {
  std::vector<double> hourly_degC;  ///< the lead first, then the snap; entry i is of the hour from i to i + 1
  std::size_t lead_hours = 0;       ///< where the snap begins in `hourly_degC`
  double coldest_degC = 0.0;        ///< the lowest hour of the whole series
  double coldest_day_degC = 0.0;    ///< the lowest mean of 24 hours in a row
  std::string how;                  ///< "3 days at -16 F, worst hour -24 F, after a week at -12 F"
};

/// The snap of a design, all of it practice.
///
/// Without weather: a week half way from the coldest month to `outdoor`, a day of going over, then `snap_days` days
/// that each reach `coldest` before sunrise and swing by `snap_swing`. With weather: the coldest `snap_days` days of
/// its year with the 10 days before them, lowered as a whole where no hour is as cold as `coldest`; colder hours stay
/// as they are. The user's own list of daily lowest temperatures stands in place of either and knows no `coldest`.
///
/// A colder `coldest` gives a snap that is nowhere warmer. Where `coldest` is warmer than `outdoor` the lead is no
/// colder than it. Contract: the design has an `outdoor`; a settled design then has a `coldest`.
Snap snap_of(const Design& design, const WeatherYear* weather = nullptr);

}  // namespace slabwright
