// Solar geometry, radiation on surfaces, and the split of global radiation.
#include <algorithm>
#include <array>
#include <cmath>

#include "slabwright/climate_sun.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double radian_deg = 180.0 / pi;
/// Sine of one degree, about: below it a wall sees a sun that the hour's middle does not stand for.
constexpr double low_sun_sine = 0.017;

double sine_deg(double angle_deg) { return std::sin(angle_deg / radian_deg); }
double cosine_deg(double angle_deg) { return std::cos(angle_deg / radian_deg); }

/// a0 + a1 cos + b1 sin + a2 cos 2 + b2 sin 2 + ... of the year's angle.
template <std::size_t n>
double year_series(const std::array<double, n>& terms, double days) {
  const double angle = 2.0 * pi * days / 365.0;
  double sum = terms[0];
  for (std::size_t at = 1; at < n; ++at) {
    const double turn = static_cast<double>((at + 1) / 2) * angle;
    sum += terms[at] * (at % 2 == 1 ? std::cos(turn) : std::sin(turn));
  }
  return sum;
}

}  // namespace

double sun_declination_deg(double days) {
  constexpr std::array<double, 7> terms{0.006918, -0.399912, 0.070257, -0.006758, 0.000907, -0.002697, 0.00148};
  return year_series(terms, days) * radian_deg;
}

double equation_of_time_s(double days) {
  constexpr std::array<double, 5> terms{0.000075, 0.001868, -0.032077, -0.014615, -0.04089};
  constexpr double radian_min = 229.2;  // as printed; 720 / pi is 229.18
  return year_series(terms, days) * radian_min * 60.0;
}

double sunlight_outside_air_W_per_m2(double days) {
  constexpr std::array<double, 5> terms{1.00011, 0.034221, 0.00128, 0.000719, 0.000077};
  return year_series(terms, days) * 1366.1;
}

SunPosition sun_position(double latitude_deg, double declination_deg, double hour_angle) {
  expects(latitude_deg >= -90.0 && latitude_deg <= 90.0, "a latitude from pole to pole");
  const double up = sine_deg(latitude_deg), across = cosine_deg(latitude_deg);
  const double sun_up = sine_deg(declination_deg), sun_across = cosine_deg(declination_deg);
  // The sun in the frame of the ground: up, west, south.
  const double vertical = up * sun_up + across * sun_across * cosine_deg(hour_angle);
  const double west = sun_across * sine_deg(hour_angle);
  const double south = up * sun_across * cosine_deg(hour_angle) - across * sun_up;
  const double altitude = std::asin(std::clamp(vertical, -1.0, 1.0)) * radian_deg;
  return {altitude, 180.0 + std::atan2(west, south) * radian_deg};
}

double days_universal(const Station& station, double hours) { return (hours * hour_s - station.time_zone_s) / day_s; }

double hour_angle_deg(const Station& station, double hours) {
  const double universal_s = hours * hour_s - station.time_zone_s;
  const double sundial_s = universal_s + equation_of_time_s(universal_s / day_s) + station.longitude_deg * 240.0;
  const double angle = std::fmod(sundial_s / day_s * 360.0 - 180.0, 360.0);
  if (angle > 180.0) return angle - 360.0;
  return angle < -180.0 ? angle + 360.0 : angle;
}

SunPosition sun_position(const Station& station, double hours) {
  const double declination = sun_declination_deg(days_universal(station, hours));
  return sun_position(station.latitude_deg, declination, hour_angle_deg(station, hours));
}

double incidence_cosine(const SunPosition& sun, const Aspect& aspect) {
  const double wall = cosine_deg(sun.altitude_deg) * cosine_deg(sun.azimuth_deg - aspect.facing_deg);
  return sine_deg(sun.altitude_deg) * cosine_deg(aspect.tilt_deg) + wall * sine_deg(aspect.tilt_deg);
}

SurfaceSun surface_sun(const SunPosition& sun, const Aspect& aspect, const Sunlight& light, double ground_share) {
  expects(aspect.tilt_deg >= 0.0 && aspect.tilt_deg <= 180.0, "a tilt from looking up to looking down");
  expects(ground_share >= 0.0 && ground_share <= 1.0, "the ground sends back a share");
  const bool high_enough = sine_deg(sun.altitude_deg) >= low_sun_sine;
  const double flat = cosine_deg(aspect.tilt_deg);
  SurfaceSun out;
  if (high_enough) out.direct_W_per_m2 = light.direct_W_per_m2 * std::max(0.0, incidence_cosine(sun, aspect));
  out.sky_W_per_m2 = light.diffuse_W_per_m2 * (1.0 + flat) / 2.0;
  out.ground_W_per_m2 = light.global_W_per_m2 * ground_share * (1.0 - flat) / 2.0;
  return out;
}

double erbs_diffuse_share(double k) {
  expects(k >= 0.0 && k <= 1.0, "clearness is a share");
  if (k <= 0.22) return 1.0 - 0.09 * k;
  if (k > 0.80) return 0.165;
  return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
}

Sunlight erbs_split(double global_W_per_m2, double altitude_deg, double outside_air_W_per_m2) {
  expects(global_W_per_m2 >= 0.0 && outside_air_W_per_m2 > 0.0, "radiation is not negative");
  constexpr double least_altitude_deg = 3.0;
  if (altitude_deg < least_altitude_deg) return {global_W_per_m2, 0.0, global_W_per_m2};
  // The least sine keeps a low sun from looking clear.
  const double sine = sine_deg(altitude_deg), flat_W_per_m2 = outside_air_W_per_m2 * std::max(0.065, sine);
  const double diffuse = global_W_per_m2 * erbs_diffuse_share(std::min(1.0, global_W_per_m2 / flat_W_per_m2));
  return {global_W_per_m2, (global_W_per_m2 - diffuse) / sine, diffuse};
}

std::vector<Sunlight> sunlight_of(const WeatherYear& year) {
  const std::vector<double>&global = year.global_W_per_m2, &direct = year.direct_W_per_m2;
  const std::vector<double>& diffuse = year.diffuse_W_per_m2;
  const bool divided = !direct.empty() && !diffuse.empty();
  std::vector<Sunlight> out;
  if (!divided && global.empty()) return out;
  out.reserve(year.dry_bulb_degC.size());
  for (std::size_t hour = 0; hour < year.dry_bulb_degC.size(); ++hour) {
    const double middle = static_cast<double>(hour) + 0.5;
    const double altitude = sun_position(year.station, middle).altitude_deg;
    const double outside = sunlight_outside_air_W_per_m2(days_universal(year.station, middle));
    if (!divided) out.push_back(erbs_split(global[hour], altitude, outside));
    if (!divided) continue;
    const double together = diffuse[hour] + direct[hour] * std::max(0.0, sine_deg(altitude));
    out.push_back({global.empty() ? together : global[hour], direct[hour], diffuse[hour]});
  }
  return out;
}

std::vector<SurfaceSun> surface_sun(const WeatherYear& year, const Aspect& aspect, const GroundReflection& ground) {
  const std::vector<Sunlight> light = sunlight_of(year);
  std::vector<SurfaceSun> out;
  out.reserve(light.size());
  for (std::size_t hour = 0; hour < light.size(); ++hour) {
    const bool snow = !year.snow_depth_m.empty() && year.snow_depth_m[hour] > 0.0;
    const SunPosition sun = sun_position(year.station, static_cast<double>(hour) + 0.5);
    out.push_back(surface_sun(sun, aspect, light[hour], snow ? ground.snow_share : ground.bare_share));
  }
  return out;
}

}  // namespace slabwright
