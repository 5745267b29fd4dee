// Sun and sky on a building.
#include "slabwright/building_sun.hpp"

#include <algorithm>
#include <numeric>

#include "slabwright/climate_winter.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

WeatherYear made_year() {
  MadeUpWinter of;
  of.station.latitude_deg = 45.0;
  of.station.longitude_deg = -90.0;
  of.station.time_zone_s = -6.0 * 3600.0;
  of.dry_bulb.normals = usual_normals(7.0, 12.0);
  return *made_up_winter(of).value;
}

double total(const std::vector<double>& values, std::size_t first = 0, std::size_t behind = 8760) {
  return std::accumulate(values.begin() + static_cast<std::ptrdiff_t>(first),
                         values.begin() + static_cast<std::ptrdiff_t>(behind), 0.0);
}

}  // namespace

TEST_CASE("each face has the year of its aspect, and the mean wall a quarter of each") {
  WeatherYear year = made_year();
  year.snow_depth_m.assign(8760, 0.0);
  std::fill_n(year.snow_depth_m.begin(), 1000, 0.2);
  const GroundReflection ground{0.2, 0.7};
  const BuildingSun sun = building_sun(year, ground);
  const auto same = [&](const std::vector<double>& series, const Aspect& aspect) {
    const std::vector<SurfaceSun> alone = surface_sun(year, aspect, ground);
    for (std::size_t hour = 0; hour < 8760; ++hour) REQUIRE(series[hour] == alone[hour].total_W_per_m2());
  };
  same(sun.north_W_per_m2, {90.0, 0.0});
  same(sun.east_W_per_m2, {90.0, 90.0});
  same(sun.south_W_per_m2, {90.0, 180.0});
  same(sun.west_W_per_m2, {90.0, 270.0});
  same(sun.roof_W_per_m2, {0.0, 180.0});
  for (std::size_t hour = 0; hour < 8760; ++hour)
    REQUIRE(sun.wall_W_per_m2[hour] == Approx((sun.north_W_per_m2[hour] + sun.east_W_per_m2[hour] +
                                               sun.south_W_per_m2[hour] + sun.west_W_per_m2[hour]) /
                                              4.0));
}

TEST_CASE("a roof gets the global radiation, a south wall the winter's sun, a north wall the least") {
  const WeatherYear year = made_year();
  const BuildingSun sun = building_sun(year);
  CHECK(total(sun.roof_W_per_m2) == Approx(total(year.global_W_per_m2)).epsilon(0.002));  // the lowest sun is left out
  const std::size_t february = 59 * 24;
  const double south = total(sun.south_W_per_m2, 0, february), roof = total(sun.roof_W_per_m2, 0, february);
  CHECK(south > roof);
  CHECK(total(sun.north_W_per_m2, 0, february) < 0.4 * south);
  // Morning and evening are alike but for the equation of time.
  CHECK(total(sun.east_W_per_m2) == Approx(total(sun.west_W_per_m2)).epsilon(0.05));
  CHECK(building_sun(WeatherYear{}).roof_W_per_m2.empty());
}

TEST_CASE("sol-air by hand") {
  CHECK(sol_air_excess_K(roof_face, 500.0, 0.0, -20.0) == Approx((0.6 * 500.0 - 0.9 * 5.0 * 20.0) / 25.0));
  CHECK(sol_air_excess_K(wall_face, 500.0, 0.0, -20.0) == Approx((0.6 * 500.0 - 0.5 * 0.9 * 5.0 * 20.0) / 25.0));
  CHECK(sol_air_excess_K(roof_face, 0.0, 5.0, 5.0) == 0.0);
  CHECK(sol_air_excess_K(roof_face, 0.0, 5.0, -15.0) == Approx(-3.6));
  CHECK_THROWS_AS(sol_air_excess_K(roof_face, -1.0, 0.0, 0.0), std::logic_error);
}

TEST_CASE("by the hours of a year, with what the year has") {
  WeatherYear year = made_year();
  const BuildingSun sun = building_sun(year);
  const std::vector<double> sky = sky_degC(year);
  const SolAir both = sol_air_of(year, sun);
  REQUIRE(both.wall_K.size() == 8760);
  for (std::size_t hour = 0; hour < 8760; hour += 7) {
    const double air = year.dry_bulb_degC[hour];
    REQUIRE(both.roof_K[hour] == sol_air_excess_K(roof_face, sun.roof_W_per_m2[hour], air, sky[hour]));
    REQUIRE(both.wall_K[hour] == sol_air_excess_K(wall_face, sun.wall_W_per_m2[hour], air, sky[hour]));
  }
  const SolAir sky_only = sol_air_of(year, {});
  CHECK(*std::max_element(sky_only.roof_K.begin(), sky_only.roof_K.end()) < 0.0);
  year.dew_point_degC.clear();
  const SolAir sun_only = sol_air_of(year, sun);
  CHECK(*std::min_element(sun_only.wall_K.begin(), sun_only.wall_K.end()) == 0.0);
  CHECK(total(sol_air_of(year, {}).wall_K) == 0.0);
}
