// Statistics of years that can be summed by hand.
#include "slabwright/climate_statistics.hpp"

#include <cmath>

#include "slabwright/climate.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// A year in which every hour has the number of its month.
Hourly months_as_numbers(bool leap) {
  Hourly out;
  for (std::size_t hour = 0; hour < (leap ? 8784u : 8760u); ++hour) out.push_back(calendar_hour(hour, leap).month);
  return out;
}

/// A wave each day, and from `day` on for `days` days ten kelvin colder.
Hourly with_cold_days(int day, int days) {
  Hourly out;
  for (int hour = 0; hour < 8760; ++hour) {
    const bool cold = hour >= day * 24 && hour < (day + days) * 24;
    out.push_back(std::sin(2.0 * 3.14159265358979 * (hour % 24 - 9) / 24.0) - (cold ? 10.0 : 0.0));
  }
  return out;
}

}  // namespace

TEST_CASE("means of months, and their half swing") {
  for (const bool leap : {false, true}) {
    const Monthly means = month_means_degC(months_as_numbers(leap));
    for (std::size_t month = 0; month < 12; ++month) CHECK(means[month] == static_cast<double>(month + 1));
    CHECK(half_swing_K(means) == 5.5);
  }
  CHECK(year_mean_degC(Hourly(8760, -3.0)) == -3.0);
  CHECK_THROWS_AS(year_mean_degC(Hourly(8759, 0.0)), std::logic_error);
}

TEST_CASE("design values leave 35 and 87 hours of a year colder") {
  Hourly year;
  for (int hour = 0; hour < 8760; ++hour) year.push_back((hour * 37) % 8760);
  CHECK(reached_degC(year, 0.996) == 35.0);
  CHECK(reached_degC(year, 0.99) == 87.0);
  CHECK(reached_degC(year, 1.0) == 0.0);
  CHECK(reached_degC(year, 0.0) == 8759.0);
  CHECK(hours_below(year, reached_degC(year, 0.996)).hours == 35);
}

TEST_CASE("degree days by three ways") {
  Hourly year(8760, 10.0);
  CHECK(degree_days_Kd(year, 18.0) == Approx(8.0 * 365.0));
  CHECK(degree_days_Kd(year, 10.0) == 0.0);
  // One day with twelve hours at 0 and twelve at 14: mean and middle 7, so 1 below 8; by hours 8 / 2.
  for (std::size_t hour = 0; hour < 24; ++hour) year[hour] = hour < 12 ? 0.0 : 14.0;
  CHECK(degree_days_Kd(year, 8.0, DegreeDays::day_mean) == Approx(1.0));
  CHECK(degree_days_Kd(year, 8.0, DegreeDays::day_extremes) == Approx(1.0));
  CHECK(degree_days_Kd(year, 8.0, DegreeDays::hourly) == Approx(4.0));
  // Three hours at 0 and 21 at 14: mean 12.25, middle 7.
  for (std::size_t hour = 3; hour < 12; ++hour) year[hour] = 14.0;
  CHECK(degree_days_Kd(year, 8.0, DegreeDays::day_mean) == 0.0);
  CHECK(degree_days_Kd(year, 8.0, DegreeDays::day_extremes) == Approx(1.0));
  CHECK(degree_days_Kd(year, 8.0, DegreeDays::hourly) == Approx(1.0));
}

TEST_CASE("hours below a limit and their longest run") {
  Hourly year(8760, 5.0);
  for (const std::size_t hour : {0u, 1u, 10u, 11u, 12u, 8758u, 8759u}) year[hour] = -1.0;
  const HoursBelow below = hours_below(year, 0.0);
  CHECK(below.hours == 7);
  CHECK(below.runs == 3);
  CHECK(below.longest == 3);
  CHECK(below.first_hour == 10);
  CHECK(hours_below(year, -1.0).hours == 0);
}

TEST_CASE("the coldest run is found where it is, for every length asked") {
  const Hourly year = with_cold_days(200, 5);
  for (const int days : {1, 2, 3, 5}) {
    const ColdRun run = coldest_run(year, days);
    CHECK(run.mean_degC == Approx(-10.0));
    CHECK(run.first_hour >= 200 * 24);
    CHECK(run.first_hour + run.hours <= 205 * 24);
    CHECK(run.lowest_degC == Approx(-11.0));
  }
  const ColdRun week = coldest_run(year, 7);
  CHECK(week.mean_degC == Approx(-50.0 / 7.0).margin(0.1));
  CHECK(coldest_run(with_cold_days(0, 2), 2).first_hour == 0);
  CHECK(coldest_run(with_cold_days(363, 2), 2).first_hour == 363 * 24);
  CHECK(coldest_run(Hourly(8760, 1.0), 3).first_hour == 0);
  CHECK_THROWS_AS(coldest_run(year, 0), std::logic_error);
}

TEST_CASE("normals and persistence of a year of plain waves") {
  const MonthlyNormals normals = normals_of(with_cold_days(0, 1));
  CHECK(normals.swing_K[6] == Approx(2.0));
  CHECK(normals.deviation_K[6] == Approx(0.0).margin(1e-12));
  // One of 31 days 10 K colder: squares 100 (1 - 1/31), over 30.
  CHECK(normals.deviation_K[0] == Approx(std::sqrt(100.0 * (1.0 - 1.0 / 31.0) / 30.0)));
  CHECK(day_persistence(Hourly(8760, 2.0)) == 0.0);
}
