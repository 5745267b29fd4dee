// The whole weather of a winter where only monthly normals are known, and ten winters with their cold snaps.
//
// Practice, not measurement. A typical year has no extremes: the ten are there to show what it hides.
#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "climate.hpp"
#include "climate_synthetic.hpp"

namespace slabwright {

/// Global radiation over what reaches the top of the air, by months. Practice: the means of four cold stations of North
/// America, less 0.01; one month of one typical year lies up to 0.13 off.
inline constexpr Monthly usual_clearness_share{0.48, 0.52, 0.48, 0.48, 0.51, 0.53, 0.52, 0.53, 0.53, 0.48, 0.41, 0.42};
/// Cloud that hides the sky where only clearness is known: 1.17 - 1.3 clearness, a line through the months of the same
/// four stations, 0.07 off on the mean. Practice; within 0 and 1.
double usual_cover_share(double clearness_share);

/// Normals of a place of which only the year's mean and half the difference between its warmest and coldest month are
/// known: a cosine that is lowest in the middle of January, days that swing by 10 K, usual_day_deviation_K. Practice.
MonthlyNormals usual_normals(double year_mean_degC, double half_swing_K);

struct MadeUpWinter {
  Station station;  ///< its latitude, longitude and time zone place the sun
  SyntheticYear dry_bulb;
  Monthly clearness_share = usual_clearness_share;  ///< 0 to 0.8
};

/// 8760 hours: dry bulb as synthetic_year_degC makes it; dew point the lowest temperature of the day; sun by days whose
/// clearness lies evenly within 0.30 of the month's (closer near 0.05 and 0.78), in an order that the seed draws, over
/// the day as Collares-Pereira and Rabl have it, split by Erbs; cover by usual_cover_share of the day. The rest stays
/// empty: relative humidity, pressure, wind, snow, infrared. Sun and cold do not know of each other; a cold day's sky
/// is clearer in truth, which is left out of the sun on the careful side. Refused as synthetic_year_degC is. Contract:
/// its ranges, latitude -90 to 90, clearness as above.
Checked<WeatherYear> made_up_winter(const MadeUpWinter& of);

/// A year with its cold snap.
struct StressWinter {
  WeatherYear year;
  ColdSpell spell;
};

struct SnapOptions {
  int days = 3;           ///< 1 to 10, whole days from midnight
  double swing_K = 10.0;  ///< highest less lowest of its days
  int blend_days = 1;     ///< 1 to 3, on either side
  std::uint64_t seed = 1;
};

/// A winter for each entry of `lowest_degC`, in its order: the same normals, other days, and a snap somewhere between
/// 10 December and 20 February down to that entry, which is the year's lowest hour. `of.dry_bulb.spell` and its seed
/// are not looked at. A mild winter has days that differ less: where a snap could not be the coldest, the spread of the
/// days is cut by a tenth, up to ten times; refused (code `weather.spell`) after that. See `ten_minima_degC` in
/// handbook_extremes.hpp for ten entries.
Checked<std::vector<StressWinter>> stress_winters(const MadeUpWinter& of, const std::vector<double>& lowest_degC,
                                                  const SnapOptions& snap = {});

/// The same from a year that was measured: its own weather, and a snap laid in at another time for each entry. Hours
/// that are colder as they are stay so, and so the year's lowest hour is the snap's or its own. Dew point keeps its
/// distance from the air, infrared its share of a black sky's; months' means fall with the snap.
/// Contract: 8760 or 8784 hours, `snap` in range.
std::vector<StressWinter> stress_winters(const WeatherYear& year, const std::vector<double>& lowest_degC,
                                         const SnapOptions& snap = {});

}  // namespace slabwright
