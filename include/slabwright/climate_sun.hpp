// Where the sun stands, and what it, the sky and the ground before it send on a surface; how cold the sky is.
//
// A direction counts from north over east, as the wind's does: east 90, south 180, west 270. `days` runs in universal
// time from 0 h of 1 January, which is 0. A typical year has no year of its own, so the sun is that of a mean year: up
// to 0.1 degrees off around the equinoxes, because of the leap day.
#pragma once
#include <vector>

#include "climate.hpp"

namespace slabwright {

/// Angle of the sun over the equator: the Fourier series of Spencer 1971.
double sun_declination_deg(double days);
/// Sundial less clock, s: the series of ASHRAE Fundamentals, chapter 14, which is Spencer's.
double equation_of_time_s(double days);
/// What reaches the top of the air, on a plane square to the sun: 1366.1 W/m2 at the mean distance, Spencer's series.
double sunlight_outside_air_W_per_m2(double days);

struct SunPosition {
  double altitude_deg = 0.0;  ///< above the horizon, without refraction; negative at night
  double azimuth_deg = 0.0;   ///< 0 to 360
};

/// `hour_angle_deg` is 0 when the sun stands highest, and grows by 15 an hour. Latitude -90 to 90.
SunPosition sun_position(double latitude_deg, double declination_deg, double hour_angle_deg);
/// `hours` since the beginning of 1 January in the station's standard time: i + 1/2 for entry i of a weather year.
double days_universal(const Station& station, double hours);
double hour_angle_deg(const Station& station, double hours);
SunPosition sun_position(const Station& station, double hours);

/// How a surface lies: tilt 0 lies flat and looks up, 90 is a wall. Tilt 0 to 180.
struct Aspect {
  double tilt_deg = 90.0;
  double facing_deg = 180.0;
};

/// Cosine of the angle between the sun and the square to the surface; negative where the sun is behind it.
double incidence_cosine(const SunPosition& sun, const Aspect& aspect);

/// The three figures of weather files.
struct Sunlight {
  double global_W_per_m2 = 0.0;
  double direct_W_per_m2 = 0.0;  ///< on a plane square to the sun
  double diffuse_W_per_m2 = 0.0;
};

/// What falls on a surface, by where it comes from.
struct SurfaceSun {
  double direct_W_per_m2 = 0.0;
  double sky_W_per_m2 = 0.0;
  double ground_W_per_m2 = 0.0;
  double total_W_per_m2() const { return direct_W_per_m2 + sky_W_per_m2 + ground_W_per_m2; }
};

/// Sky equally bright everywhere (Liu and Jordan): diffuse (1 + cos tilt) / 2 from the sky, global (1 - cos tilt) / 2
/// times `ground_share` from the ground; 0.2 is usual, snow sends back 0.6 to 0.8 (from memory). A sun lower than one
/// degree sends nothing directly, since the hour's direct light then came from elsewhere.
SurfaceSun surface_sun(const SunPosition& sun, const Aspect& aspect, const Sunlight& light, double ground_share = 0.2);

/// Diffuse over global radiation of an hour; `clearness` is global over what reaches the top of the air, 0 to 1. Erbs,
/// Klein and Duffie 1982, Solar Energy 28:293-302.
double erbs_diffuse_share(double clearness);
/// Splits global radiation by it. With the sun lower than 3 degrees all is diffuse. `outside_air_W_per_m2` is
/// sunlight_outside_air_W_per_m2.
Sunlight erbs_split(double global_W_per_m2, double altitude_deg, double outside_air_W_per_m2);

/// Share of a black sky's radiation: clear air by its dew point (Clark and Allen 1978), more with cloud (Walton 1983),
/// as the EPW data dictionary prints it. `opaque_share` is cover, 0 to 1.
double sky_emissivity(double dew_point_degC, double opaque_share);
/// Infrared from the sky on flat ground.
double sky_infrared_W_per_m2(double air_degC, double dew_point_degC, double opaque_share);
/// The black sky that sends as much.
double sky_degC(double infrared_W_per_m2);

/// The year's radiation by hours, split by Erbs where it has global radiation only; empty where it has none.
std::vector<Sunlight> sunlight_of(const WeatherYear& year);

/// What the ground sends back, bare and in hours with snow on it (where the year knows of snow). A bright snow warms
/// windows; the default does not count on it.
struct GroundReflection {
  double bare_share = 0.2;
  double snow_share = 0.2;
};
/// The year on one surface; empty where it has no radiation.
std::vector<SurfaceSun> surface_sun(const WeatherYear& year, const Aspect& aspect, const GroundReflection& ground = {});

/// Sky temperature by hours: from the infrared, else from dew point and cover, without cover as a clear sky, which is
/// the cold side; empty where the year has no dew point either.
std::vector<double> sky_degC(const WeatherYear& year);

}  // namespace slabwright
