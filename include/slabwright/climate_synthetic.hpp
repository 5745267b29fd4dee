// A year of hourly outside temperatures made up from monthly normals, with its coldest spell placed on purpose.
//
// Practice, not measurement: what the weather of such a place could be. The same normals and seed give the same bytes
// on every machine: a 64-bit Mersenne twister, and nothing but + - * / and sqrt behind it.
#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "climate_statistics.hpp"
#include "diagnostics.hpp"

namespace slabwright {

/// A cold spell of whole days, every one with the same wave, reaching the same lowest hour before sunrise.
struct ColdSpell {
  int first_day = 0;         ///< of the year, 0 is 1 January; the days of blending lie within the year too
  int days = 3;              ///< 1 to 10
  double lowest_degC = 0.0;  ///< the year's lowest hour
  double swing_K = 10.0;     ///< highest less lowest of its days; clear cold days swing by up to 13 K
  int blend_days = 1;        ///< 1 to 3, on either side, in which the year's own weather goes over into it
};

struct SyntheticYear {
  MonthlyNormals normals;
  /// Of a day mean's difference, what is left on the next day: 0.35 to 0.9. Months of typical years show 0.55 to 0.74.
  double persistence_share = 0.70;
  std::uint64_t seed = 1;
  std::optional<ColdSpell> spell;
};

/// Share of a day's swing below its highest, hours 1 to 24: ASHRAE Fundamentals 2009, chapter 14 table 6, the values as
/// read in open code.
const std::array<double, 24>& daily_range_shares();

/// A day's wave about its mean, for a swing of 1 K; its mean is zero.
std::array<double, 24> day_wave();

/// The 8760 hours. Monthly means are those of the normals to rounding, the spell and its blending included: what it
/// takes from a month its other days give back. With a spell, its lowest hour is the year's lowest, and no other day's
/// mean is below its days'. Refused (code `weather.spell`) where the rest of the month has no room for that.
/// Days' highest less lowest come out 2 to 9 % above `swing_K`, because the weather drifts within a day.
/// Contract: swings and deviations not negative, numbers finite, ranges as above.
Checked<std::vector<double>> synthetic_year_degC(const SyntheticYear& of);

}  // namespace slabwright
