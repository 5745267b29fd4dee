// What a year of hourly temperatures comes to. Every function takes the 8760 or 8784 hours of a year, from 1 January,
// and throws std::logic_error for anything else. Nothing is joined over the year's end: in a typical year December and
// January are of different winters.
#pragma once
#include <array>
#include <cstddef>
#include <vector>

namespace slabwright {

using Hourly = std::vector<double>;
using Monthly = std::array<double, 12>;

double year_mean_degC(const Hourly& hourly_degC);
Monthly month_means_degC(const Hourly& hourly_degC);
/// Half of the difference between the warmest and the coldest month: the swing that formulas for the ground ask for.
double half_swing_K(const Monthly& mean_degC);
/// Which hour is the lowest, counted from 0; the first of equals.
std::size_t lowest_hour(const Hourly& hourly_degC);

/// The temperature that this share of the year's hours reaches: 0.996 and 0.99 are the usual heating design values, of
/// which a year has 35 and 87 colder hours. No rounding between hours: a value that did occur. `share` 0 to 1.
double reached_degC(const Hourly& hourly_degC, double share);

/// 24-hour means from midnight to midnight.
std::vector<double> day_means_degC(const Hourly& hourly_degC);
/// Highest less lowest of each day.
std::vector<double> day_swings_K(const Hourly& hourly_degC);

/// How a day's want of heat is counted. The hours are the truth for a load that follows the outside at once; the two
/// daily ways miss cold nights of warm days, which matters near a low base.
enum class DegreeDays {
  hourly,       ///< sum over hours of what they lack, over 24
  day_mean,     ///< sum over days of what the 24-hour mean lacks
  day_extremes  ///< the same of (highest + lowest) / 2
};

/// Heating degree days below `base_degC`, kelvin-days a year.
double degree_days_Kd(const Hourly& hourly_degC, double base_degC, DegreeDays way = DegreeDays::hourly);

/// Degree days of a number of days from their mean and the standard deviation of the day means, taken as a normal law:
/// Schoenau and Kehrig 1990, Energy and Buildings 14. `deviation_K` above zero.
double degree_days_of_normals_Kd(double base_degC, double mean_degC, double deviation_K, double days);

/// Hours below a limit, strictly.
struct HoursBelow {
  int hours = 0;
  int runs = 0;                ///< how many times it goes below
  int longest = 0;             ///< hours of the longest run
  std::size_t first_hour = 0;  ///< where the longest begins, counted from 0; the first of equals
};
HoursBelow hours_below(const Hourly& hourly_degC, double limit_degC);

/// A run of hours and its mean.
struct ColdRun {
  std::size_t first_hour = 0;  ///< counted from 0
  std::size_t hours = 0;
  double mean_degC = 0.0;
  double lowest_degC = 0.0;
};
/// The coldest 24 `days` hours in a row, beginning at any hour; the first of equals. `days` 1 to 365.
ColdRun coldest_run(const Hourly& hourly_degC, int days);

/// Monthly normals, as much as a made-up year needs (see climate_synthetic.hpp).
struct MonthlyNormals {
  Monthly mean_degC{};
  Monthly swing_K{};      ///< mean of the days' highest less lowest
  Monthly deviation_K{};  ///< standard deviation of the day means about their month's mean
};
MonthlyNormals normals_of(const Hourly& hourly_degC);

/// How much of a day's difference from its month's mean is left on the next: correlation of neighbouring days of
/// November to March, pairs within a month. Zero where no day differs.
double day_persistence(const Hourly& hourly_degC);

/// The spread of day means where no source gives it: 0.534 sqrt(days) (1.45 - 0.0290 mean + 0.0664 spread of the twelve
/// means), after Erbs. From memory, so practice: against the files of four cold stations January comes out within a
/// third, single months of a typical year at up to 2.3 times their own.
Monthly usual_day_deviation_K(const Monthly& mean_degC);

}  // namespace slabwright
