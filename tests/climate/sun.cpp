// What holds for any sun: symmetry, sums over the sphere, and what a year makes of the series that it has.
#include "slabwright/climate_sun.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// Standard time is sundial time but for the equation of time.
Station station_at(double latitude_deg) {
  Station station;
  station.latitude_deg = latitude_deg;
  station.longitude_deg = -90.0;
  station.time_zone_s = -6.0 * 3600.0;
  return station;
}

/// Global radiation in step with the sun's height, some cloud, and dew point and cover.
WeatherYear plain_year() {
  WeatherYear year;
  year.station = station_at(45.0);
  for (std::size_t hour = 0; hour < 8760; ++hour) {
    const double altitude = sun_position(year.station, static_cast<double>(hour) + 0.5).altitude_deg;
    year.dry_bulb_degC.push_back(-5.0);
    year.dew_point_degC.push_back(-8.0);
    year.global_W_per_m2.push_back(600.0 * std::max(0.0, std::sin(altitude * pi / 180.0)));
  }
  return year;
}

}  // namespace

TEST_CASE("noon stands in the south, morning mirrors afternoon, and the year swings by the tilt of the axis") {
  const SunPosition noon = sun_position(45.0, -20.0, 0.0);
  CHECK(noon.altitude_deg == Approx(25.0));
  CHECK(noon.azimuth_deg == Approx(180.0));
  CHECK(sun_position(-45.0, -20.0, 0.0).altitude_deg == Approx(65.0));
  CHECK(std::cos(sun_position(-45.0, -20.0, 0.0).azimuth_deg * pi / 180.0) == Approx(1.0));  // in the north
  for (const double angle : {10.0, 50.0, 95.0}) {
    const SunPosition before = sun_position(45.0, 10.0, -angle), after = sun_position(45.0, 10.0, angle);
    CHECK(before.altitude_deg == Approx(after.altitude_deg));
    CHECK(before.azimuth_deg == Approx(360.0 - after.azimuth_deg));
    CHECK(before.azimuth_deg < 180.0);
  }
  double highest = -90.0, lowest = 90.0;
  for (int day = 0; day < 365; ++day) {
    highest = std::max(highest, sun_declination_deg(day));
    lowest = std::min(lowest, sun_declination_deg(day));
  }
  CHECK(highest == Approx(23.45).margin(0.05));
  CHECK(lowest == Approx(-23.45).margin(0.05));
}

TEST_CASE("the hour angle runs through the day and never beyond half a turn") {
  const Station station = station_at(45.0);
  for (double hours = 0.0; hours < 8760.0; hours += 0.25) {
    const double angle = hour_angle_deg(station, hours);
    REQUIRE(std::abs(angle) <= 180.0);
    const double expected = 15.0 * (std::fmod(hours, 24.0) - 12.0);
    const double apart = std::remainder(angle - expected, 360.0);
    REQUIRE(std::abs(apart) < 4.3);  // the equation of time never passes 17 minutes
  }
}

TEST_CASE("flat ground gets the global radiation, and the four walls with the roof miss nothing of the sky") {
  const SunPosition sun{35.0, 140.0};
  const double sine = std::sin(35.0 * pi / 180.0);
  const Sunlight light{500.0 * sine + 100.0, 500.0, 100.0};
  const SurfaceSun flat = surface_sun(sun, {0.0, 0.0}, light);
  CHECK(flat.total_W_per_m2() == Approx(light.global_W_per_m2));
  CHECK(flat.ground_W_per_m2 == 0.0);
  const SurfaceSun under = surface_sun(sun, {180.0, 0.0}, light, 1.0);
  CHECK(under.direct_W_per_m2 == 0.0);
  CHECK(under.total_W_per_m2() == Approx(light.global_W_per_m2));
  double squares = std::pow(incidence_cosine(sun, {0.0, 0.0}), 2);
  for (const double facing : {180.0, 270.0}) squares += std::pow(incidence_cosine(sun, {90.0, facing}), 2);
  CHECK(squares == Approx(1.0));
  CHECK(surface_sun(sun, {90.0, 320.0}, light).direct_W_per_m2 == 0.0);
  CHECK(surface_sun({0.5, 180.0}, {90.0, 180.0}, light).direct_W_per_m2 == 0.0);
}

TEST_CASE("the split keeps the sum, and takes a low sun for a diffuse one") {
  for (const double altitude : {4.0, 20.0, 70.0}) {
    for (const double clearness : {0.05, 0.3, 0.7, 0.9, 1.0}) {
      const double sine = std::sin(altitude * pi / 180.0), global = 1400.0 * sine * clearness;
      const Sunlight light = erbs_split(global, altitude, 1400.0);
      CHECK(light.diffuse_W_per_m2 + light.direct_W_per_m2 * sine == Approx(global));
      CHECK(light.direct_W_per_m2 >= 0.0);
    }
  }
  CHECK(erbs_split(30.0, 2.0, 1400.0).direct_W_per_m2 == 0.0);
  CHECK(erbs_split(30.0, 2.0, 1400.0).diffuse_W_per_m2 == 30.0);
  // The pieces of the curve meet, as far as its printed figures go.
  CHECK(erbs_diffuse_share(0.2199999) == Approx(erbs_diffuse_share(0.2200001)).epsilon(0.001));
  CHECK(erbs_diffuse_share(0.7999999) == Approx(erbs_diffuse_share(0.8000001)).epsilon(0.005));
}

TEST_CASE("a year has its sun and its sky from what it holds") {
  WeatherYear year = plain_year();
  const std::vector<Sunlight> split = sunlight_of(year);
  REQUIRE(split.size() == 8760);
  for (const Sunlight& light : split) REQUIRE(light.diffuse_W_per_m2 <= light.global_W_per_m2);

  // With the split at hand, the global radiation is not needed.
  const std::vector<SurfaceSun> south = surface_sun(year, {});
  for (const Sunlight& light : split) {
    year.direct_W_per_m2.push_back(light.direct_W_per_m2);
    year.diffuse_W_per_m2.push_back(light.diffuse_W_per_m2);
  }
  year.global_W_per_m2.clear();
  const std::vector<SurfaceSun> again = surface_sun(year, {});
  for (std::size_t hour = 0; hour < south.size(); hour += 5)
    REQUIRE(again[hour].total_W_per_m2() == Approx(south[hour].total_W_per_m2()).margin(1e-9));

  year.snow_depth_m.assign(8760, 0.0);
  year.snow_depth_m[12] = 0.1;
  const std::vector<SurfaceSun> snow = surface_sun(year, {}, {0.2, 0.7});
  CHECK(snow[12].ground_W_per_m2 == Approx(3.5 * again[12].ground_W_per_m2));
  CHECK(snow[36].ground_W_per_m2 == again[36].ground_W_per_m2);
  year.direct_W_per_m2.clear();
  CHECK(sunlight_of(year).empty());
  CHECK(surface_sun(year, {}).empty());

  CHECK(sky_degC(year)[3] == Approx(sky_degC(sky_infrared_W_per_m2(-5.0, -8.0, 0.0))));
  year.opaque_share.assign(8760, 0.5);
  CHECK(sky_degC(year)[3] == Approx(sky_degC(sky_infrared_W_per_m2(-5.0, -8.0, 0.5))));
  year.sky_infrared_W_per_m2.assign(8760, 283.571);
  CHECK(sky_degC(year)[3] == Approx(-7.22).margin(0.01));
  year.sky_infrared_W_per_m2.clear();
  year.dew_point_degC.clear();
  CHECK(sky_degC(year).empty());
}
