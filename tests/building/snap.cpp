// The cold snap of a design: made up, the user's own, or cut out of a year of weather.
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <numeric>

#include "climate/written.hpp"
#include "slabwright/building_snap.hpp"
#include "slabwright/climate_statistics.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double rounding_K = 1e-9;

Design shop(double outdoor_degC, double coldest_degC) {
  Design design = from_keys({{"units", "SI"}, {"climate.outdoor", "-20 C"}}).design;
  design.climate.outdoor_degC = outdoor_degC;
  design.climate.coldest_degC = coldest_degC;
  return design;
}

double lowest(const Snap& snap) { return *std::min_element(snap.hourly_degC.begin(), snap.hourly_degC.end()); }

void check_nowhere_warmer(const Snap& colder, const Snap& warmer) {
  REQUIRE(colder.hourly_degC.size() == warmer.hourly_degC.size());
  CHECK(colder.lead_hours == warmer.lead_hours);
  double most_K = -1e9;
  for (std::size_t hour = 0; hour < colder.hourly_degC.size(); ++hour)
    most_K = std::max(most_K, colder.hourly_degC[hour] - warmer.hourly_degC[hour]);
  CHECK(most_K <= rounding_K);
}

/// What holds of every snap cut out of a year.
void check_of_year(const WeatherYear& year) {
  const double lowest_hour_degC = year.dry_bulb_degC[lowest_hour(year.dry_bulb_degC)];
  Design design = shop(reached_degC(year.dry_bulb_degC, 0.996), lowest_hour_degC - 5.0);
  for (const int days : {1, 3, 10}) {
    design.climate.snap_days = days;
    const Snap snap = snap_of(design, &year);
    CHECK(snap.lead_hours == 240);
    CHECK(snap.hourly_degC.size() == 240 + 24 * static_cast<std::size_t>(days));
    CHECK(lowest(snap) == Approx(lowest_hour_degC - 5.0).margin(rounding_K));
    CHECK(snap.coldest_degC == lowest(snap));
    Design colder = design;
    colder.climate.coldest_degC = *design.climate.coldest_degC - 3.0;
    check_nowhere_warmer(snap_of(colder, &year), snap);
    // A day of the run is no colder than the coldest day anywhere in the series.
    CHECK(snap.coldest_day_degC <= coldest_run(year.dry_bulb_degC, days).mean_degC);
  }
}

}  // namespace

TEST_CASE("a made-up snap: a week half way to the design weather, a day of going over, then the days") {
  Design design = shop(-20.0, -30.0);
  for (const int days : {1, 3, 10}) {
    design.climate.snap_days = days;
    const Snap snap = snap_of(design);
    CHECK(snap.lead_hours == 8 * 24);
    REQUIRE(snap.hourly_degC.size() == static_cast<std::size_t>(8 + days) * 24);
    const double half_way_degC = 0.5 * (design.climate.mean_degC - design.climate.half_swing_K - 20.0);
    CHECK(std::all_of(snap.hourly_degC.begin(), snap.hourly_degC.begin() + 7 * 24,
                      [&](double t) { return t == half_way_degC; }));
    CHECK(lowest(snap) == Approx(-30.0).margin(rounding_K));
    CHECK(snap.coldest_degC == lowest(snap));
    CHECK(*std::max_element(snap.hourly_degC.end() - 24, snap.hourly_degC.end()) == Approx(-20.0));
    // The wave's mean lies 0.46375 of the swing above its lowest.
    CHECK(snap.coldest_day_degC == Approx(-30.0 + 0.46375 * 10.0));
  }
}

TEST_CASE("a snap says what it is") {
  Design design = shop(-20.0, -30.0);
  CHECK(snap_of(design).how == "3 days at -25.4 C, worst hour -30.0 C, after a week at -12.5 C");
  design.climate.snap_days = 1;
  CHECK(snap_of(design).how == "1 day at -25.4 C, worst hour -30.0 C, after a week at -12.5 C");
  const Design us = from_keys({{"climate.outdoor", "-12 F"}, {"climate.coldest", "-26 F"}}).design;
  CHECK(snap_of(us).how == "3 days at -18 F, worst hour -26 F, after a week at 6 F");
}

TEST_CASE("every key of the snap moves it, and colder is nowhere warmer") {
  const Design design = shop(-20.0, -30.0);
  const Snap base = snap_of(design);
  Design longer = design, calmer = design;
  longer.climate.snap_days = 4;
  calmer.climate.snap_swing_K = 4.0;
  CHECK(snap_of(longer).hourly_degC.size() == base.hourly_degC.size() + 24);
  check_nowhere_warmer(snap_of(calmer), base);
  CHECK(snap_of(calmer).coldest_day_degC < base.coldest_day_degC);
  for (const double colder : {-30.5, -35.0, -60.0}) check_nowhere_warmer(snap_of(shop(-20.0, colder)), base);
  check_nowhere_warmer(snap_of(shop(-25.0, -30.0)), base);
}

TEST_CASE("a coldest hour warmer than the design weather makes a snap of its own warmth") {
  const Snap odd = snap_of(shop(-20.0, -10.0));
  CHECK(odd.coldest_degC == -10.0);
  check_nowhere_warmer(snap_of(shop(-20.0, -15.0)), odd);
  check_nowhere_warmer(snap_of(shop(-20.0, -25.0)), odd);
}

TEST_CASE("the user's own days stand in place of all else") {
  Design design = shop(-12.0, -40.0);
  design.climate.snap = {{-18.0}, {-27.0}, {-22.0}};
  const Snap snap = snap_of(design);
  CHECK(snap.lead_hours == 8 * 24);
  REQUIRE(snap.hourly_degC.size() == 11 * 24);
  CHECK(lowest(snap) == -27.0);
  for (std::size_t day = 0; day < 3; ++day)
    CHECK(snap.hourly_degC[snap.lead_hours + 24 * day + 4] == design.climate.snap[day].lowest_degC);
  const WeatherYear none;
  CHECK(snap_of(design, &none).hourly_degC == snap.hourly_degC);
}

TEST_CASE("a year's coldest days, lowered as a whole to the coldest hour") {
  WeatherYear year;
  for (std::size_t hour = 0; hour < 8760; ++hour) year.dry_bulb_degC.push_back(invented_degC(hour));
  check_of_year(year);
  // Hours that are colder than the coldest stay.
  const double coldest = year.dry_bulb_degC[lowest_hour(year.dry_bulb_degC)];
  const Snap snap = snap_of(shop(coldest + 5.0, coldest + 3.0), &year);
  CHECK(snap.how.find("colder") == std::string::npos);
  for (const double hour : snap.hourly_degC)
    if (hour < coldest) FAIL(hour);
  CHECK(snap_of(shop(coldest + 5.0, coldest - 8.0), &year).how.find(", the weather file's coldest made ") !=
        std::string::npos);
}

TEST_CASE("a snap needs the design weather") {
  CHECK_THROWS_AS(snap_of(from_keys({{"slab.size", "36 x 30 ft"}}).design), std::logic_error);
}

// SLABWRIGHT_WEATHER names the folder of real files; without it there is nothing to read.
TEST_CASE("snaps of real typical years, and the week before them") {
  const char* folder = std::getenv("SLABWRIGHT_WEATHER");
  if (folder == nullptr || !std::filesystem::is_directory(folder)) return;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() != ".epw") continue;
    INFO(entry.path().filename().string());
    std::ifstream in(entry.path(), std::ios::binary);
    const auto file = read_weather(std::string{std::istreambuf_iterator<char>(in), {}});
    REQUIRE(file);
    const Hourly& hourly = file.value->year.dry_bulb_degC;
    check_of_year(file.value->year);
    // What lets a week half way from the coldest month to the 99.6 % hour stand for what comes before a snap.
    const Monthly means = month_means_degC(hourly);
    const double month_degC = *std::min_element(means.begin(), means.end());
    const double half_way_degC = 0.5 * (month_degC + reached_degC(hourly, 0.996));
    CHECK(coldest_run(hourly, 7).mean_degC > half_way_degC - 0.1);
    CHECK(coldest_run(hourly, 7).mean_degC < half_way_degC + 1.5);
  }
}
