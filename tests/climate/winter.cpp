// A made-up winter's humidity and sun, and winters with their snaps.
#include "slabwright/climate_winter.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>

#include "slabwright/climate_sun.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

MadeUpWinter inland() {
  MadeUpWinter of;
  of.station.latitude_deg = 45.0;
  of.station.longitude_deg = -93.0;
  of.station.time_zone_s = -6.0 * 3600.0;
  of.dry_bulb.normals = usual_normals(7.0, 13.0);
  return of;
}

WeatherYear winter_of(const MadeUpWinter& of) {
  auto year = made_up_winter(of);
  REQUIRE(year);
  return *year.value;
}

bool same_bytes(const std::vector<double>& a, const std::vector<double>& b) {
  return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0;
}
bool same_bytes(const WeatherYear& a, const WeatherYear& b) {
  return same_bytes(a.dry_bulb_degC, b.dry_bulb_degC) && same_bytes(a.dew_point_degC, b.dew_point_degC) &&
         same_bytes(a.global_W_per_m2, b.global_W_per_m2) && same_bytes(a.direct_W_per_m2, b.direct_W_per_m2);
}

/// Global radiation over what reaches the top of the air, by months, in quarters of an hour.
Monthly clearness_of(const WeatherYear& year) {
  Monthly fell{}, outside{};
  for (std::size_t hour = 0; hour < 8760; ++hour) {
    const auto month = static_cast<std::size_t>(calendar_hour(hour, false).month - 1);
    fell[month] += year.global_W_per_m2[hour];
    for (const double part : {0.125, 0.375, 0.625, 0.875}) {
      const double at = static_cast<double>(hour) + part;
      const double sine = std::sin(sun_position(year.station, at).altitude_deg * pi / 180.0);
      outside[month] += sunlight_outside_air_W_per_m2(days_universal(year.station, at)) * std::max(0.0, sine) / 4.0;
    }
  }
  for (std::size_t month = 0; month < 12; ++month) fell[month] /= outside[month];
  return fell;
}

const std::vector<double> lows{-36.0, -33.0, -31.0, -30.0, -29.0, -28.0, -27.0, -26.0, -25.0, -24.0};

}  // namespace

TEST_CASE("normals of mean and half swing have both, and are coldest in January") {
  const MonthlyNormals normals = usual_normals(7.0, 13.0);
  double sum = 0.0;
  for (int month = 1; month <= 12; ++month)
    sum += normals.mean_degC[static_cast<std::size_t>(month - 1)] * days_of_month(month, false);
  CHECK(sum / 365.0 == Approx(7.0));
  CHECK(half_swing_K(normals.mean_degC) == Approx(13.0).epsilon(0.01));
  CHECK(std::min_element(normals.mean_degC.begin(), normals.mean_degC.end()) == normals.mean_degC.begin());
}

TEST_CASE("a made-up winter keeps its months, and its air is never drier than saturated") {
  const MadeUpWinter of = inland();
  const WeatherYear year = winter_of(of);
  const Monthly found = month_means_degC(year.dry_bulb_degC);
  for (std::size_t month = 0; month < 12; ++month)
    CHECK(found[month] == Approx(of.dry_bulb.normals.mean_degC[month]).margin(1e-10));
  std::size_t saturated = 0;
  for (std::size_t hour = 0; hour < 8760; ++hour) {
    REQUIRE(year.dew_point_degC[hour] <= year.dry_bulb_degC[hour]);
    saturated += year.dew_point_degC[hour] == year.dry_bulb_degC[hour] ? 1 : 0;
  }
  CHECK(saturated >= 365);  // once a day at least
  CHECK(saturated < 500);
  CHECK(year.wind_m_per_s.empty());
  for (const double sky : sky_degC(year)) REQUIRE(sky < 40.0);
}

TEST_CASE("the sun of a made-up winter shines by day, and as much as its clearness says") {
  MadeUpWinter of = inland();
  const WeatherYear year = winter_of(of);
  double dark = 0.0, worst = 0.0;
  for (std::size_t hour = 0; hour < 8760; ++hour) {
    const double sine = std::sin(sun_position(year.station, static_cast<double>(hour) + 0.5).altitude_deg * pi / 180.0);
    if (sine <= 0.0) dark = std::max(dark, year.global_W_per_m2[hour]);
    const double sum = year.diffuse_W_per_m2[hour] + year.direct_W_per_m2[hour] * std::max(0.0, sine);
    worst = std::max(worst, std::abs(sum - year.global_W_per_m2[hour]));
  }
  CHECK(dark == 0.0);
  CHECK(worst < 1e-9);
  const Monthly found = clearness_of(year);
  // The sun of the hour's middle stands for the hour: 1 per cent in December.
  for (std::size_t month = 0; month < 12; ++month)
    CHECK(found[month] == Approx(of.clearness_share[month]).epsilon(0.015));
  // Days differ, and so there is direct sun: days all alike would leave 0.7 diffuse at this clearness.
  double global = 0.0, diffuse = 0.0, brightest = 0.0, dullest = 1e9;
  for (std::size_t day = 0; day < 31; ++day) {
    double sum = 0.0;
    for (std::size_t hour = 24 * day; hour < 24 * day + 24; ++hour) {
      sum += year.global_W_per_m2[hour];
      diffuse += year.diffuse_W_per_m2[hour];
    }
    global += sum;
    brightest = std::max(brightest, sum);
    dullest = std::min(dullest, sum);
  }
  CHECK(diffuse / global > 0.4);
  CHECK(diffuse / global < 0.6);
  CHECK(brightest > 3.0 * dullest);
  of.clearness_share.fill(0.0);
  for (const double global : winter_of(of).global_W_per_m2) REQUIRE(global == 0.0);
  of.station.latitude_deg = 80.0;  // weeks without night, weeks without day
  of.clearness_share.fill(0.5);
  const WeatherYear polar = winter_of(of);
  CHECK(polar.global_W_per_m2[12] == 0.0);
  CHECK(polar.global_W_per_m2[24 * 172] > 0.0);
  of.clearness_share[3] = 0.9;
  CHECK_THROWS_AS(made_up_winter(of), std::logic_error);
}

TEST_CASE("clear skies have little cloud") {
  CHECK(usual_cover_share(0.75) < 0.25);
  CHECK(usual_cover_share(0.3) > 0.75);
  CHECK(usual_cover_share(0.0) == 1.0);
}

TEST_CASE("ten made-up winters: each has its snap, the same seed the same bytes") {
  const MadeUpWinter of = inland();
  SnapOptions snap;
  for (snap.seed = 1; snap.seed <= 5; ++snap.seed) {
    const auto ten = stress_winters(of, lows, snap);
    REQUIRE(ten);
    REQUIRE(ten.value->size() == 10);
    for (std::size_t at = 0; at < 10; ++at) {
      const StressWinter& winter = (*ten.value)[at];
      const std::size_t coldest = lowest_hour(winter.year.dry_bulb_degC);
      CHECK(winter.year.dry_bulb_degC[coldest] == lows[at]);
      CHECK(static_cast<int>(coldest / 24) - winter.spell.first_day >= 0);
      CHECK(static_cast<int>(coldest / 24) - winter.spell.first_day < winter.spell.days);
      CHECK((winter.spell.first_day >= 343 || winter.spell.first_day + winter.spell.days <= 51));
      CHECK(month_means_degC(winter.year.dry_bulb_degC)[0] == Approx(of.dry_bulb.normals.mean_degC[0]));
    }
    CHECK(!same_bytes(ten.value->front().year, ten.value->back().year));
    const auto again = stress_winters(of, lows, snap);
    for (std::size_t at = 0; at < 10; ++at) CHECK(same_bytes((*again.value)[at].year, (*ten.value)[at].year));
    ++snap.seed;
    CHECK(!same_bytes(stress_winters(of, lows, snap).value->front().year, ten.value->front().year));
    --snap.seed;
  }
  // A snap in the middle of autumn's warmth: no spread of days makes room for it.
  CHECK(!stress_winters(of, {0.0}, {10, 10.0, 1, 1}));
  CHECK_THROWS_AS(stress_winters(of, lows, {11, 10.0, 1, 1}), std::logic_error);
}

TEST_CASE("a measured year takes a snap only where it is the colder one") {
  WeatherYear year = winter_of(inland());
  year.sky_infrared_W_per_m2.assign(8760, 250.0);
  const double own = year.dry_bulb_degC[lowest_hour(year.dry_bulb_degC)];
  const std::vector<StressWinter> ten = stress_winters(year, lows);
  REQUIRE(ten.size() == 10);
  for (std::size_t at = 0; at < 10; ++at) {
    const WeatherYear& cold = ten[at].year;
    CHECK(cold.dry_bulb_degC[lowest_hour(cold.dry_bulb_degC)] == std::min(own, lows[at]));
    for (std::size_t hour = 0; hour < 8760; ++hour) {
      const double lowered = year.dry_bulb_degC[hour] - cold.dry_bulb_degC[hour];
      const int day = static_cast<int>(hour / 24), begins = ten[at].spell.first_day;
      REQUIRE(lowered >= 0.0);
      if (lowered > 0.0) REQUIRE((day >= begins - 1 && day <= begins + ten[at].spell.days));
      REQUIRE(year.dew_point_degC[hour] - cold.dew_point_degC[hour] == Approx(lowered).margin(1e-12));
      REQUIRE((cold.sky_infrared_W_per_m2[hour] < 250.0) == (lowered > 0.0));
    }
  }
  CHECK(ten[0].spell.first_day != ten[1].spell.first_day);
}
