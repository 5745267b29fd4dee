// Humidity, sun and cover to a made-up year's temperatures.
#include <algorithm>
#include <cmath>
#include <random>

#include "slabwright/climate_sun.hpp"
#include "slabwright/climate_winter.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr std::size_t year_days = 365, year_hours = 24 * year_days;

double in_radians(double angle_deg) { return angle_deg * pi / 180.0; }

/// How clearness runs through a day: more about noon, the more so the shorter the day (Collares-Pereira and Rabl 1979;
/// coefficients from memory). The formula's other factor is the sun's own height.
struct DayShape {
  double level = 0.0, noon = 0.0;
  double at(double hour_angle) const { return std::max(0.0, level + noon * std::cos(in_radians(hour_angle))); }
};
DayShape day_shape(double latitude_deg, double declination_deg) {
  const double cosine = -std::tan(in_radians(latitude_deg)) * std::tan(in_radians(declination_deg));
  const double sine = std::sin(std::acos(std::clamp(cosine, -1.0, 1.0)) - in_radians(60.0));
  return {0.409 + 0.5016 * sine, 0.6609 - 0.4767 * sine};
}

/// The sun of one hour: its height, what would fall on flat ground without air, and how much of it by the day's shape.
struct HourSun {
  double altitude_deg = 0.0, outside_W_per_m2 = 0.0, flat_W_per_m2 = 0.0, shaped_W_per_m2 = 0.0;
};

std::array<HourSun, 24> day_suns(const Station& station, std::size_t day) {
  const double noon = 24.0 * static_cast<double>(day) + 12.0;
  const double declination = sun_declination_deg(days_universal(station, noon));
  const DayShape shape = day_shape(station.latitude_deg, declination);
  std::array<HourSun, 24> out{};
  for (std::size_t hour = 0; hour < 24; ++hour) {
    const double middle = static_cast<double>(24 * day + hour) + 0.5;
    HourSun& sun = out[hour];
    sun.altitude_deg = sun_position(station, middle).altitude_deg;
    sun.outside_W_per_m2 = sunlight_outside_air_W_per_m2(days_universal(station, middle));
    sun.flat_W_per_m2 = sun.outside_W_per_m2 * std::max(0.0, std::sin(in_radians(sun.altitude_deg)));
    sun.shaped_W_per_m2 = sun.flat_W_per_m2 * shape.at(hour_angle_deg(station, middle));
  }
  return out;
}

/// A day with what it would get on flat ground without air, and by the day's shape, W h/m2.
struct SunDay {
  std::array<HourSun, 24> hour{};
  double flat_Wh_per_m2 = 0.0, shaped_Wh_per_m2 = 0.0;
};
std::vector<SunDay> sun_days(const Station& station) {
  std::vector<SunDay> out(year_days);
  for (std::size_t day = 0; day < year_days; ++day) {
    out[day].hour = day_suns(station, day);
    for (const HourSun& sun : out[day].hour) {
      out[day].flat_Wh_per_m2 += sun.flat_W_per_m2;
      out[day].shaped_Wh_per_m2 += sun.shaped_W_per_m2;
    }
  }
  return out;
}

/// Each day's clearness: evenly spread about the month's, in an order that is drawn, and shifted so that the month has
/// its own. Dull and bright days mixed have far more direct sun than days that are all alike.
std::vector<double> day_clearness(const Monthly& month_share, const std::vector<SunDay>& days, std::uint64_t seed) {
  constexpr double most_spread = 0.30, least = 0.05, most = 0.78;
  constexpr std::uint64_t another = 0x9E3779B97F4A7C15u;  // not the draws that made the temperatures
  std::mt19937_64 engine(seed ^ another);
  std::vector<double> out;
  for (int month = 1; month <= 12; ++month) {
    const double mean = month_share[static_cast<std::size_t>(month - 1)];
    const double spread = std::max(0.0, std::min({most_spread, mean - least, most - mean}));
    const std::size_t first = out.size(), length = static_cast<std::size_t>(days_of_month(month, false));
    for (std::size_t at = 0; at < length; ++at)
      out.push_back(spread * (2.0 * (static_cast<double>(at) + 0.5) / static_cast<double>(length) - 1.0));
    for (std::size_t left = length; left > 1; --left) std::swap(out[first + left - 1], out[first + engine() % left]);
    double weighed = 0.0, weight = 0.0;
    for (std::size_t day = first; day < out.size(); ++day) {
      weighed += out[day] * days[day].flat_Wh_per_m2;
      weight += days[day].flat_Wh_per_m2;
    }
    const double shift = weight > 0.0 ? mean - weighed / weight : mean;
    for (std::size_t day = first; day < out.size(); ++day) out[day] = std::max(0.0, out[day] + shift);
  }
  return out;
}

void add_sun(WeatherYear& year, const SunDay& day, double clearness_share) {
  const double share = day.shaped_Wh_per_m2 > 0.0 ? clearness_share * day.flat_Wh_per_m2 / day.shaped_Wh_per_m2 : 0.0;
  for (const HourSun& sun : day.hour) {
    const Sunlight light = erbs_split(share * sun.shaped_W_per_m2, sun.altitude_deg, sun.outside_W_per_m2);
    year.global_W_per_m2.push_back(light.global_W_per_m2);
    year.direct_W_per_m2.push_back(light.direct_W_per_m2);
    year.diffuse_W_per_m2.push_back(light.diffuse_W_per_m2);
  }
}

void add_dew_point(WeatherYear& year, std::size_t day) {
  const auto from = year.dry_bulb_degC.begin() + static_cast<std::ptrdiff_t>(24 * day);
  year.dew_point_degC.insert(year.dew_point_degC.end(), 24, *std::min_element(from, from + 24));
}

}  // namespace

double usual_cover_share(double clearness_share) { return std::clamp(1.17 - 1.3 * clearness_share, 0.0, 1.0); }

MonthlyNormals usual_normals(double mean_degC, double half_swing_K) {
  constexpr double coldest_day = 15.0, swing_K = 10.0;
  MonthlyNormals out;
  double first = 0.0, sum = 0.0;
  for (int month = 1; month <= 12; ++month) {
    const double length = days_of_month(month, false), turn = 2.0 * pi * (first + length / 2.0 - coldest_day) / 365.0;
    double& mean = out.mean_degC[static_cast<std::size_t>(month - 1)];
    mean = mean_degC - half_swing_K * std::cos(turn);
    sum += mean * length;
    first += length;
  }
  // Twelve months stand for the curve, and their mean is to be the year's.
  for (double& mean : out.mean_degC) mean += mean_degC - sum / 365.0;
  out.swing_K.fill(swing_K);
  out.deviation_K = usual_day_deviation_K(out.mean_degC);
  return out;
}

Checked<WeatherYear> made_up_winter(const MadeUpWinter& of) {
  for (const double share : of.clearness_share) expects(share >= 0.0 && share <= 0.8, "a clearness from 0 to 0.8");
  auto dry_bulb = synthetic_year_degC(of.dry_bulb);
  if (!dry_bulb) return {std::nullopt, std::move(dry_bulb.said)};
  WeatherYear year;
  year.station = of.station;
  year.dry_bulb_degC = std::move(*dry_bulb.value);
  for (auto* series :
       {&year.dew_point_degC, &year.global_W_per_m2, &year.direct_W_per_m2, &year.diffuse_W_per_m2, &year.opaque_share})
    series->reserve(year_hours);
  const std::vector<SunDay> days = sun_days(year.station);
  const std::vector<double> clearness = day_clearness(of.clearness_share, days, of.dry_bulb.seed);
  for (std::size_t day = 0; day < year_days; ++day) {
    add_dew_point(year, day);
    add_sun(year, days[day], clearness[day]);
    year.opaque_share.insert(year.opaque_share.end(), 24, usual_cover_share(clearness[day]));
  }
  return {std::move(year), {}};
}

}  // namespace slabwright
