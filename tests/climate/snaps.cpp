// Cold snaps cut out of a year, and made up.
#include "slabwright/climate_snap.hpp"
#include "slabwright/climate_synthetic.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/climate.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// Every hour its own number, but for a cold plateau.
Hourly with_plateau(std::size_t first, std::size_t hours) {
  Hourly out;
  for (std::size_t hour = 0; hour < 8760; ++hour)
    out.push_back(hour >= first && hour < first + hours ? -20.0 : static_cast<double>(hour));
  return out;
}

}  // namespace

TEST_CASE("a snap is cut out with the days before it") {
  const ColdSnap snap = cold_snap(with_plateau(5000, 48), 2, 3);
  CHECK(snap.run.first_hour == 5000);
  CHECK(snap.run.mean_degC == -20.0);
  REQUIRE(snap.hourly_degC.size() == 5 * 24);
  CHECK(snap.lead_hours == 72);
  CHECK(snap.hourly_degC[0] == 5000.0 - 72.0);
  CHECK(snap.hourly_degC[71] == 4999.0);
  CHECK(snap.hourly_degC[72] == -20.0);
  CHECK(snap.hourly_degC.back() == -20.0);
  CHECK(!snap.over_new_year);
}

TEST_CASE("days before January come from December, and the snap says so") {
  const ColdSnap snap = cold_snap(with_plateau(0, 24), 1, 2);
  CHECK(snap.over_new_year);
  CHECK(snap.hourly_degC[0] == 8760.0 - 48.0);
  CHECK(snap.hourly_degC[47] == 8759.0);
  CHECK(snap.hourly_degC[48] == -20.0);
  CHECK(!cold_snap(with_plateau(0, 24), 1, 0).over_new_year);
  CHECK_THROWS_AS(cold_snap(with_plateau(0, 24), 61, 0), std::logic_error);
}

TEST_CASE("a made-up snap: steady, over in a day, and its worst hour every day") {
  const SnapShape shape{-12.0, 5, 3, -30.0, 8.0};
  const ColdSnap snap = made_up_snap(shape);
  REQUIRE(snap.hourly_degC.size() == 8 * 24);
  CHECK(snap.lead_hours == 5 * 24);
  for (std::size_t hour = 0; hour < 4 * 24; ++hour)
    if (snap.hourly_degC[hour] != -12.0) FAIL(hour);
  for (std::size_t day = 5; day < 8; ++day) {
    const auto begin = snap.hourly_degC.begin() + static_cast<std::ptrdiff_t>(24 * day);
    CHECK(*std::min_element(begin, begin + 24) == -30.0);
    CHECK(*std::max_element(begin, begin + 24) == Approx(-22.0));
    CHECK(std::min_element(begin, begin + 24) - begin == 4);
  }
  for (std::size_t hour = 4 * 24; hour < 5 * 24; ++hour) {
    CHECK(snap.hourly_degC[hour] <= -12.0);
    CHECK(snap.hourly_degC[hour] > -30.0);
  }
  // The wave's mean lies 0.46375 of the swing above its lowest.
  CHECK(snap.run.mean_degC == Approx(-30.0 + 0.46375 * 8.0));
  CHECK(snap.run.lowest_degC == -30.0);
  CHECK_THROWS_AS(made_up_snap({-12.0, 5, 3, -10.0, 8.0}), std::logic_error);
  CHECK_THROWS_AS(made_up_snap({-12.0, 0, 3, -20.0, 8.0}), std::logic_error);
}

TEST_CASE("a made-up snap with each day's own worst hour") {
  const SnapShape shape{-12.0, 2, 1, 0.0, 8.0};
  const Hourly worst{-20.0, -31.0, -25.0};
  const std::array<double, 24> wave = day_wave();
  const ColdSnap snap = made_up_snap(shape, worst);
  REQUIRE(snap.hourly_degC.size() == 5 * 24);
  CHECK(snap.lead_hours == 48);
  for (std::size_t day = 0; day < 3; ++day) CHECK(snap.hourly_degC[48 + 24 * day + 4] == worst[day]);
  CHECK(*std::min_element(snap.hourly_degC.begin(), snap.hourly_degC.end()) == -31.0);
  CHECK(snap.run.lowest_degC == -31.0);
  // Half way from one worst hour to the next the foot of the wave is half way between them.
  CHECK(snap.hourly_degC[48 + 16] == Approx(-25.5 + 8.0 * (wave[16] - *std::min_element(wave.begin(), wave.end()))));
  CHECK_THROWS_AS(made_up_snap(shape, Hourly{}), std::logic_error);
  CHECK(made_up_snap(shape, Hourly(2, -30.0)).hourly_degC == made_up_snap({-12.0, 2, 2, -30.0, 8.0}).hourly_degC);
}
