// Degree days from a mean and a spread, the usual spread, and the wave of a day.
#include <cmath>

#include "slabwright/climate_snap.hpp"
#include "slabwright/climate_statistics.hpp"
#include "slabwright/climate_synthetic.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source worked{"Schoenau and Kehrig 1990, degree days", "worked textbook example, Denver in May",
                    Oracle::published};
const Source recomputed{"Schoenau and Kehrig 1990, degree days", "the same by an independent script", Oracle::derived};
const Source wave{"ASHRAE Fundamentals 2009, chapter 14 table 6", "daily range, sums and temperatures by hand",
                  Oracle::derived};
const Source spread{"Erbs, spread of day means", "four cold stations, means of their typical years, by a script",
                    Oracle::derived};

double f_days(double base_F, double mean_F, double deviation_F, double days) {
  return 1.8 * degree_days_of_normals_Kd((base_F - 32.0) / 1.8, (mean_F - 32.0) / 1.8, deviation_F / 1.8, days);
}

/// Cooling is the same law seen from above: (mean - base) days more than heating.
double cooling_f_days(double base_F, double mean_F, double deviation_F, double days) {
  return f_days(base_F, mean_F, deviation_F, days) + (mean_F - base_F) * days;
}

struct Site {
  std::string name;
  Monthly mean_degC;
  std::string january, april;
};

}  // namespace

TEST_CASE("degree days of a month from its mean and spread") {
  CHECK_PUBLISHED(worked, "heating, base 60 F, degF d", "156.5", f_days(60.0, 57.2, 8.7, 31.0));
  CHECK_PUBLISHED(worked, "cooling, base 60 F, degF d", "69.7", cooling_f_days(60.0, 57.2, 8.7, 31.0));
  CHECK_PUBLISHED(recomputed, "heating, base 60 F, degF d", "156.5195", f_days(60.0, 57.2, 8.7, 31.0));
  CHECK_PUBLISHED(recomputed, "cooling, base 60 F, degF d", "69.7195", cooling_f_days(60.0, 57.2, 8.7, 31.0));
  CHECK_PUBLISHED(recomputed, "base 18.333, mean -11.39, spread 6.82, 31 d, K d", "921.413",
                  degree_days_of_normals_Kd(18.333, -11.39, 6.82, 31.0));
  CHECK_PUBLISHED(recomputed, "base 18.333, mean 16.51, spread 4.50, 31 d, K d", "88.4142",
                  degree_days_of_normals_Kd(18.333, 16.51, 4.50, 31.0));
  CHECK_PUBLISHED(recomputed, "base 7.2222, mean 2.04, spread 5.27, 31 d, K d", "174.697",
                  degree_days_of_normals_Kd(7.2222, 2.04, 5.27, 31.0));
  CHECK_PUBLISHED(recomputed, "base and mean 10, spread 5, 30 d, K d", "59.8413",
                  degree_days_of_normals_Kd(10.0, 10.0, 5.0, 30.0));
}

TEST_CASE("the wave of a day") {
  double sum = 0.0;
  for (const double share : daily_range_shares()) sum += share;
  CHECK_PUBLISHED(wave, "sum of the 24 shares", "12.87", sum);
  CHECK_PUBLISHED(wave, "their mean", "0.53625", sum / 24.0);
  // Highest -5 and a swing of 10 K, so that the lowest is -15.
  const ColdSnap snap = made_up_snap({0.0, 1, 1, -15.0, 10.0});
  const auto hour = [&](std::size_t ending) { return snap.hourly_degC[snap.lead_hours + ending - 1]; };
  CHECK_PUBLISHED(wave, "highest -5 degC, swing 10 K: hour 5", "-15.0", hour(5));
  CHECK_PUBLISHED(wave, "highest -5 degC, swing 10 K: hour 12", "-6.3", hour(12));
  CHECK_PUBLISHED(wave, "highest -5 degC, swing 10 K: hour 15", "-5.0", hour(15));
  CHECK_PUBLISHED(wave, "highest -5 degC, swing 10 K: hour 24", "-13.2", hour(24));
  CHECK_PUBLISHED(wave, "highest -5 degC, swing 10 K: mean", "-10.3625", snap.run.mean_degC);
}

TEST_CASE("the usual spread of day means") {
  const Within rounded{0.0051, 0.0, "means rounded to 0.01 K"};
  for (const Site& site : {Site{"Minneapolis",
                                {-11.39, -4.84, 2.04, 7.54, 16.51, 20.36, 23.78, 20.63, 15.83, 8.20, 0.30, -6.97},
                                "7.54",
                                "5.81"},
                           Site{"Hibbing",
                                {-15.56, -13.86, -3.24, 3.34, 9.67, 16.99, 18.08, 18.29, 14.85, 6.44, 0.51, -11.05},
                                "8.02",
                                "6.28"},
                           Site{"Chicago",
                                {-4.65, -2.52, 3.82, 9.95, 15.31, 21.11, 24.13, 21.77, 18.13, 10.98, 4.73, -3.69},
                                "6.67",
                                "5.32"},
                           Site{"Denver",
                                {0.79, -0.05, 6.13, 5.83, 15.49, 23.10, 22.27, 22.61, 19.16, 10.04, 2.90, 1.43},
                                "5.98",
                                "5.46"}}) {
    const Monthly ours = usual_day_deviation_K(site.mean_degC);
    CHECK_PUBLISHED(spread, site.name + ", January, K", site.january, ours[0], rounded);
    CHECK_PUBLISHED(spread, site.name + ", April, K", site.april, ours[3], rounded);
  }
}
