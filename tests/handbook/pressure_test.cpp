// Pressure tests: the gas law, the wall of the tube, and verdicts that follow from errors.
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_pressure_test.hpp"

#include <cmath>

#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr double sea_Pa = standard_atmosphere_Pa;
TestReading us(double psi, double degF) { return {psi * psi_Pa, (degF - 32.0) / 1.8}; }
JudgedTest air(const TestReading& then, const TestReading& now, const TestErrors& errors = {1.0 * psi_Pa, 1.0, 1.0e3}) {
  return judge_air(then, now, errors, sea_Pa);
}

}  // namespace

TEST_CASE("at one temperature a tight test reads what it read") {
  for (const double psi : {5.0, 60.0, 150.0})
    for (const double degF : {-20.0, 20.0, 70.0, 120.0})
      for (const double atmosphere_Pa : {60e3, sea_Pa})
        CHECK(air_reading_Pa(us(psi, degF), us(psi, degF).degC, atmosphere_Pa) == Approx(psi * psi_Pa).epsilon(1e-12));
}

TEST_CASE("a reading carried to another temperature and back is the reading, and goes in one step or in two") {
  const TestReading then = us(60.0, 70.0);
  for (const double degC : {-30.0, -5.0, 10.0, 50.0}) {
    const TestReading there{air_reading_Pa(then, degC, sea_Pa), degC};
    CHECK(air_reading_Pa(there, then.degC, sea_Pa) == Approx(then.gauge_Pa).epsilon(1e-12));
    CHECK(air_reading_Pa(there, 2.0, sea_Pa) == Approx(air_reading_Pa(then, 2.0, sea_Pa)).epsilon(1e-12));
  }
}

TEST_CASE("higher up the same fall of temperature takes a little less") {
  const TestReading then = us(60.0, 70.0);
  const double sea = air_reading_Pa(then, us(0.0, 20.0).degC, sea_Pa);
  const double mountain = air_reading_Pa(then, us(0.0, 20.0).degC, 83.0e3);
  CHECK(mountain > sea);
  CHECK(mountain - sea == Approx((sea_Pa - 83.0e3) * (1.0 - 479.67 / 529.67)).epsilon(1e-9));
}

TEST_CASE("the verdict goes from holds over cannot tell to leaks as the reading falls, and never back") {
  const TestReading then = us(60.0, 70.0);
  int last = 0, seen[3] = {0, 0, 0};
  for (double psi = 53.0; psi >= 30.0; psi -= 0.05) {
    const int verdict = static_cast<int>(air(then, us(psi, 20.0)).verdict);
    CHECK(verdict >= last);
    last = verdict;
    ++seen[verdict];
  }
  for (const int times : seen) CHECK(times > 0);
}

TEST_CASE("what a tight tube reads in the cold holds, and the reading of before would be too much") {
  CHECK(air(us(60.0, 70.0), us(53.0, 20.0)).verdict == TestVerdict::holds);
  CHECK(air(us(60.0, 70.0), us(40.0, 20.0)).verdict == TestVerdict::leaks);
  CHECK(air(us(60.0, 70.0), us(50.0, 70.0)).verdict == TestVerdict::leaks);
  const JudgedTest warm = air(us(60.0, 70.0), us(60.0, 20.0));
  CHECK(warm.verdict == TestVerdict::cannot_tell);
  CHECK(warm.why == TestWhy::rose);
}

TEST_CASE("errors widen the band, and a gauge that sees no leak says so") {
  const TestReading then = us(60.0, 70.0), now = us(60.0, 70.0);
  double last_Pa = 0.0;
  for (const TestErrors& errors : {TestErrors{0.5 * psi_Pa, 0.5, 0.0}, TestErrors{0.5 * psi_Pa, 0.5, 1e3},
                                   TestErrors{0.5 * psi_Pa, 2.0, 1e3}, TestErrors{2.0 * psi_Pa, 2.0, 1e3}}) {
    const JudgedTest test = judge_air(then, now, errors, sea_Pa);
    CHECK(test.doubt_Pa > last_Pa);
    CHECK(test.least_Pa < test.expected_Pa);
    CHECK(test.most_Pa > test.expected_Pa);
    CHECK(test.verdict == TestVerdict::holds);
    last_Pa = test.doubt_Pa;
  }
  CHECK(judge_air(then, now, {10.0 * psi_Pa, 1.0, 1e3}, sea_Pa).why == TestWhy::too_coarse);
}

TEST_CASE("a thin wall gives as the ring formula has it") {
  // dV/V = p d / (E t) (5/4 - nu), ends closed and free.
  constexpr double modulus_Pa = 600e6, poisson = 0.45, thin = 1e-4;
  const double expected = 2.0 / (thin * modulus_Pa) * (1.25 - poisson);
  CHECK(bore_give_per_Pa(1.0 + thin, modulus_Pa, poisson) == Approx(expected).epsilon(1e-3));
}

TEST_CASE("the bore of PE-X gives what its wall and modulus say") {
  const PexBore tube;
  constexpr double ninth = 1.0 / (1.0 - 2.0 / 9.0), poisson = 0.45;
  CHECK(bore_give_per_Pa(ninth, 1000e6, poisson) == Approx(tube.least_give_per_Pa).epsilon(0.03));
  CHECK(bore_give_per_Pa(ninth, 400e6, poisson) == Approx(tube.most_give_per_Pa).epsilon(0.03));
}

TEST_CASE("water is judged at like temperature only, and falls as the tube warms") {
  const WaterSwing swing = water_swing(2.07e-4, 6e5);
  CHECK(swing.most_Pa_per_K < swing.least_Pa_per_K);
  CHECK(swing.least_Pa_per_K < 0.0);
  CHECK(water_swing(5.0e-4, 6e5).least_Pa_per_K == 0.0);
  const TestErrors fine{0.1e5, 0.5, 1e3};
  CHECK(judge_water({6e5, 20.0}, {5.9e5, 20.0}, fine, swing).verdict == TestVerdict::holds);
  CHECK(judge_water({6e5, 20.0}, {4.0e5, 20.0}, fine, swing).verdict == TestVerdict::leaks);
  for (const double degC : {10.0, 18.0, 22.0, 40.0}) {
    const JudgedTest other = judge_water({6e5, 20.0}, {5.0e5, degC}, fine, swing);
    CHECK(other.why == TestWhy::unlike);
    CHECK(other.verdict == TestVerdict::cannot_tell);
    CHECK((other.expected_Pa > 6e5) == (degC < 20.0));
    CHECK(other.least_Pa <= other.expected_Pa);
    CHECK(other.expected_Pa <= other.most_Pa);
  }
  CHECK(judge_water({6e5, 1.0}, {6e5, 0.0}, fine, swing).why == TestWhy::frozen);
}

TEST_CASE("a usual gauge has its reading below three quarters of its scale") {
  CHECK(usual_gauge(60.0 * psi_Pa, Customary::us).scale_Pa == Approx(100.0 * psi_Pa));
  CHECK(usual_gauge(75.0 * psi_Pa, Customary::us).scale_Pa == Approx(100.0 * psi_Pa));
  CHECK(usual_gauge(76.0 * psi_Pa, Customary::us).scale_Pa == Approx(160.0 * psi_Pa));
  CHECK(usual_gauge(4e5, Customary::si).scale_Pa == Approx(6e5));
  CHECK(usual_gauge(4e5, Customary::si).error_Pa == Approx(0.12e5));
}
