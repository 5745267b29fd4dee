// The sun's place, its light on surfaces, the split of global radiation.
#include <cmath>

#include "slabwright/climate_sun.hpp"
#include "slabwright/units_exact.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source series{"Fourier series of the sun, Spencer 1971", "values by an independent script", Oracle::derived};
const Source geometry{"Solar geometry of the textbooks", "examples worked again by a script", Oracle::derived};
const Source exercise{"Solar geometry of the textbooks", "printed exercise, latitude 38.54", Oracle::published};
const Source place{"Reda and Andreas 2004, Solar Energy 76:577-589", "NREL/TP-560-34302, worked example",
                   Oracle::published};
const Source place_again{"Reda and Andreas 2004, Solar Energy 76:577-589",
                         "the same instant by the Fourier series of whole days, by a script", Oracle::derived};
const Source erbs{"Erbs, Klein and Duffie 1982, Solar Energy 28:293-302", "diffuse share by a script", Oracle::derived};
const Source erbs_code{"Erbs, Klein and Duffie 1982, Solar Energy 28:293-302",
                       "test values of an open-source library, whole W/m2", Oracle::reference_code};
const Source erbs_again{"Erbs, Klein and Duffie 1982, Solar Energy 28:293-302", "the same by a script",
                        Oracle::derived};
const Source wall{"ASHRAE Fundamentals, light on a vertical surface, and Liu and Jordan's sky", "by a script",
                  Oracle::derived};

double degrees_of(double cosine) { return std::acos(cosine) * 180.0 / pi; }

/// Zenith and azimuth from the south, west positive, as the textbooks count.
double zenith_deg(const SunPosition& sun) { return 90.0 - sun.altitude_deg; }
double from_south_deg(const SunPosition& sun) { return sun.azimuth_deg - 180.0; }

}  // namespace

TEST_CASE("declination and equation of time") {
  struct Row {
    int day;
    const char *declination, *minutes;
  };
  for (const Row& row :
       {Row{21, "-20.0859", "-10.6031"}, Row{34, "-16.7638", "-13.4885"}, Row{44, "-13.6284", "-14.2613"},
        Row{80, "-0.0659", "-7.8626"}, Row{105, "9.4808", "-0.2364"}, Row{172, "23.4520", "-1.3247"},
        Row{202, "20.6367", "-6.3542"}, Row{264, "1.0261", "6.8979"}, Row{355, "-23.4199", "2.1742"}}) {
    const std::string day = "day " + std::to_string(row.day) + ", ";
    CHECK_PUBLISHED(series, day + "declination, deg", row.declination, sun_declination_deg(row.day - 1.0));
    CHECK_PUBLISHED(series, day + "equation of time, min", row.minutes, equation_of_time_s(row.day - 1.0) / 60.0);
  }
}

TEST_CASE("the sun's place and its angle to a surface") {
  Station station;
  station.longitude_deg = -89.4;
  station.time_zone_s = -6.0 * 3600.0;
  const double sundial_h = 12.0 + hour_angle_deg(station, 33.0 * 24.0 + 10.5) / 15.0;
  const Within day{0.1, 0.0, "theirs is of the whole day; it changes by up to half a minute a day"};
  CHECK_PUBLISHED(geometry, "3 February 10:30, 89.4 W: sundial, min past 10", "18.9", (sundial_h - 10.0) * 60.0, day);

  const Aspect slope{45.0, 195.0};
  const SunPosition february = sun_position(43.0, -14.0, -22.5);
  const double cosine = incidence_cosine(february, slope);
  CHECK_PUBLISHED(geometry, "13 February 10:30, 45 deg slope, deg", "35.18", degrees_of(cosine));
  CHECK_PUBLISHED(geometry, "the same: over a flat surface", "1.6660", cosine / incidence_cosine(february, {0.0, 0.0}));
  CHECK_PUBLISHED(geometry, "13 February 9:30, zenith, deg", "66.547", zenith_deg(sun_position(43.0, -14.0, -37.5)));
  CHECK_PUBLISHED(geometry, "13 February 9:30, azimuth, deg", "-40.08",
                  from_south_deg(sun_position(43.0, -14.0, -37.5)));
  CHECK_PUBLISHED(geometry, "1 July 18:30, zenith, deg", "79.644", zenith_deg(sun_position(43.0, 23.1, 97.5)));
  CHECK_PUBLISHED(geometry, "1 July 18:30, azimuth, deg", "112.02", from_south_deg(sun_position(43.0, 23.1, 97.5)));

  const double there = incidence_cosine(sun_position(38.54, -14.0, -22.5), slope);
  CHECK_PUBLISHED(exercise, "13 February 10:30, 45 deg slope, cosine", "0.832", there);
  CHECK_PUBLISHED(exercise, "13 February 10:30, 45 deg slope, deg", "33.7", degrees_of(there));
}

TEST_CASE("the sun's place against the accurate algorithm") {
  const Station station{"", "", 39.742476, -105.1786, -7.0 * 3600.0, 1830.14};
  const double hours = 289.0 * 24.0 + 12.0 + 30.5 / 60.0;
  const SunPosition sun = sun_position(station, hours);
  const Within mean_year{0.2, 0.0, "series of a mean year, no refraction"};
  CHECK_PUBLISHED(place, "17 October 2003 12:30:30, zenith, deg", "50.11162", zenith_deg(sun), mean_year);
  CHECK_PUBLISHED(place, "17 October 2003 12:30:30, azimuth, deg", "194.34024", sun.azimuth_deg, mean_year);
  CHECK_PUBLISHED(place, "17 October 2003 12:30:30, declination, deg", "-9.31434",
                  sun_declination_deg(days_universal(station, hours)), mean_year);
  // What the fraction of the day is worth: a third of a degree.
  const double sundial_h = 12.0 + 30.5 / 60.0 + (-105.1786 + 105.0) / 15.0 + equation_of_time_s(289.0) / 3600.0;
  const SunPosition whole = sun_position(39.742476, sun_declination_deg(289.0), 15.0 * (sundial_h - 12.0));
  CHECK_PUBLISHED(place_again, "zenith, deg", "49.7865", zenith_deg(whole));
  CHECK_PUBLISHED(place_again, "azimuth, deg", "194.4892", whole.azimuth_deg);
}

TEST_CASE("the split of global radiation") {
  struct Share {
    double clearness;
    const char* diffuse;
  };
  for (const Share& row : {Share{0.1, "0.99100"}, Share{0.22, "0.98020"}, Share{0.3, "0.94860"}, Share{0.4, "0.83999"},
                           Share{0.5, "0.65915"}, Share{0.6, "0.43948"}, Share{0.7, "0.24398"}, Share{0.8, "0.16527"},
                           Share{0.81, "0.165"}})
    CHECK_PUBLISHED(erbs, "clearness " + std::to_string(row.clearness).substr(0, 4), row.diffuse,
                    erbs_diffuse_share(row.clearness));

  struct Split {
    double global, zenith;
    int day;
    const char *diffuse_code, *direct_code, *diffuse, *direct;
  };
  for (const Split& row :
       {Split{50, 85, 1, "42", "97", "41.570", "96.719"}, Split{1000, 10, 1, "218", "794", "217.860", "794.206"},
        Split{1000, 10, 171, "171", "842", "170.790", "842.002"}}) {
    const std::string at = "day " + std::to_string(row.day) + ", zenith " +
                           std::to_string(static_cast<int>(row.zenith)) + " deg, " +
                           std::to_string(static_cast<int>(row.global)) + " W/m2: ";
    const Sunlight light = erbs_split(row.global, 90.0 - row.zenith, sunlight_outside_air_W_per_m2(row.day - 1.0));
    CHECK_PUBLISHED(erbs_code, at + "diffuse, W/m2", row.diffuse_code, light.diffuse_W_per_m2);
    CHECK_PUBLISHED(erbs_code, at + "direct, W/m2", row.direct_code, light.direct_W_per_m2);
    CHECK_PUBLISHED(erbs_again, at + "diffuse, W/m2", row.diffuse, light.diffuse_W_per_m2);
    CHECK_PUBLISHED(erbs_again, at + "direct, W/m2", row.direct, light.direct_W_per_m2);
  }
}

TEST_CASE("light on a wall") {
  const auto on = [](double direct, double diffuse, const SunPosition& sun, double ground_share) {
    const double global = direct * std::sin(sun.altitude_deg * pi / 180.0) + diffuse;
    return surface_sun(sun, {90.0, 180.0}, {global, direct, diffuse}, ground_share);
  };
  const SurfaceSun straight = on(800.0, 90.0, {25.0, 180.0}, 0.2);
  CHECK_PUBLISHED(wall, "straight before it, altitude 25: direct, W/m2", "725.05", straight.direct_W_per_m2);
  CHECK_PUBLISHED(wall, "straight before it, altitude 25: ground, W/m2", "42.81", straight.ground_W_per_m2);
  CHECK_PUBLISHED(wall, "straight before it, altitude 25: total, W/m2", "812.86", straight.total_W_per_m2());
  const SunPosition aside{40.0, 225.0};
  const SurfaceSun slanting = on(600.0, 120.0, aside, 0.2);
  CHECK_PUBLISHED(wall, "45 deg aside, altitude 40: angle, deg", "57.202",
                  degrees_of(incidence_cosine(aside, {90.0, 180.0})));
  CHECK_PUBLISHED(wall, "45 deg aside, altitude 40: direct, W/m2", "325.01", slanting.direct_W_per_m2);
  CHECK_PUBLISHED(wall, "45 deg aside, altitude 40: total, W/m2", "435.57", slanting.total_W_per_m2());
}
