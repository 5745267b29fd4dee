#include "slabwright/handbook_pressure_test.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double coarse_share = 0.1;           // of the first reading
constexpr double water_give_per_Pa = 4.6e-10;  // at 20 degC, from memory
constexpr double trapped_air_share = 0.01;
constexpr double scale_error_share = 0.02, scale_used_share = 0.75;

constexpr std::array<double, 9> us_scales_psi{15, 30, 60, 100, 160, 200, 300, 400, 600};
constexpr std::array<double, 9> si_scales_bar{1, 1.6, 2.5, 4, 6, 10, 16, 25, 40};

double kelvin(double degC) { return degC + zero_degC_K; }

double root_of_squares(std::initializer_list<double> errors) {
  double sum = 0.0;
  for (const double error : errors) sum += error * error;
  return std::sqrt(sum);
}

/// Band and errors to a verdict.
void conclude(JudgedTest& test, const TestReading& then, double now_Pa) {
  const bool coarse = test.doubt_Pa > coarse_share * then.gauge_Pa;
  if (now_Pa < test.least_Pa - test.doubt_Pa)
    test.why = TestWhy::fell;
  else if (now_Pa < test.least_Pa)
    test.why = TestWhy::in_between;
  else if (now_Pa > test.most_Pa)
    test.why = TestWhy::rose;
  else
    test.why = coarse ? TestWhy::too_coarse : TestWhy::within;
  test.verdict = test.why == TestWhy::fell     ? TestVerdict::leaks
                 : test.why == TestWhy::within ? TestVerdict::holds
                                               : TestVerdict::cannot_tell;
}

}  // namespace

double air_reading_Pa(const TestReading& then, double degC, double atmosphere_Pa) {
  expects(then.gauge_Pa >= 0.0 && atmosphere_Pa > 0.0, "pressures of a test");
  expects(then.degC > -zero_degC_K && degC > -zero_degC_K, "temperatures of a test");
  return (then.gauge_Pa + atmosphere_Pa) * kelvin(degC) / kelvin(then.degC) - atmosphere_Pa;
}

double bore_give_per_Pa(double outside_over_inside, double modulus_Pa, double poisson) {
  expects(outside_over_inside > 1.0 && modulus_Pa > 0.0, "a wall");
  const double square = outside_over_inside * outside_over_inside;
  const double axial = 1.0 / (square - 1.0);  // stress along the tube over the pressure
  const double round = (square + 1.0) * axial + poisson - poisson * axial;
  return (2.0 * round + (1.0 - 2.0 * poisson) * axial) / modulus_Pa;
}

WaterSwing water_swing(double water_growth_per_K, double absolute_Pa) {
  expects(absolute_Pa > 0.0, "an absolute pressure");
  const PexBore tube;
  const double softest = tube.most_give_per_Pa + water_give_per_Pa + trapped_air_share / absolute_Pa;
  const double stiffest = tube.least_give_per_Pa + water_give_per_Pa;
  return {std::min(0.0, water_growth_per_K - tube.least_growth_per_K) / softest,
          std::min(0.0, water_growth_per_K - tube.most_growth_per_K) / stiffest};
}

UsualGauge usual_gauge(double reading_Pa, Customary c) {
  const bool us = c == Customary::us;
  const double unit_Pa = us ? psi_Pa : 1e5;
  const std::array<double, 9>& scales = us ? us_scales_psi : si_scales_bar;
  const auto fits = [&](double scale) { return reading_Pa <= scale_used_share * scale * unit_Pa * (1.0 + 1e-9); };
  const auto found = std::find_if(scales.begin(), scales.end(), fits);
  const double scale_Pa = (found == scales.end() ? scales.back() : *found) * unit_Pa;
  return {scale_Pa, scale_error_share * scale_Pa};
}

JudgedTest judge_air(const TestReading& then, const TestReading& now, const TestErrors& errors, double atmosphere_Pa) {
  const PexBore tube;
  JudgedTest test;
  test.expected_Pa = air_reading_Pa(then, now.degC, atmosphere_Pa);
  test.off_Pa = now.gauge_Pa - test.expected_Pa;
  const double before_Pa = then.gauge_Pa + atmosphere_Pa, after_Pa = test.expected_Pa + atmosphere_Pa;
  const double ratio = after_Pa / before_Pa;
  test.one_kelvin_Pa = before_Pa / kelvin(then.degC);
  const double thermometer_Pa = test.one_kelvin_Pa * errors.thermometer_K;
  test.doubt_Pa = root_of_squares(
      {ratio * errors.gauge_Pa, errors.gauge_Pa, ratio * thermometer_Pa, thermometer_Pa, errors.barometer_Pa});
  test.tube_Pa = (tube.most_give_per_Pa - tube.least_give_per_Pa) * then.gauge_Pa * before_Pa;
  // A bore that shrank in the cold holds its air at a higher pressure than the constant volume has it.
  const double bore_Pa = after_Pa * tube.most_growth_per_K * (then.degC - now.degC);
  test.least_Pa = test.expected_Pa - test.doubt_Pa - test.tube_Pa + std::min(bore_Pa, 0.0);
  test.most_Pa = test.expected_Pa + test.doubt_Pa + std::max(bore_Pa, 0.0);
  conclude(test, then, now.gauge_Pa);
  return test;
}

JudgedTest judge_water(const TestReading& then, const TestReading& now, const TestErrors& errors,
                       const WaterSwing& swing) {
  JudgedTest test;
  const double warmer_K = now.degC - then.degC,
               likely_Pa_per_K = -std::sqrt(swing.least_Pa_per_K * swing.most_Pa_per_K);
  const bool like = std::abs(warmer_K) <= std::sqrt(2.0) * errors.thermometer_K;
  test.one_kelvin_Pa = likely_Pa_per_K;
  test.expected_Pa = like ? then.gauge_Pa : std::max(0.0, then.gauge_Pa + likely_Pa_per_K * warmer_K);
  test.off_Pa = now.gauge_Pa - test.expected_Pa;
  const double thermometer_Pa = std::abs(likely_Pa_per_K) * errors.thermometer_K;
  test.doubt_Pa = root_of_squares({errors.gauge_Pa, errors.gauge_Pa, thermometer_Pa, thermometer_Pa});
  test.tube_Pa = PexBore{}.relaxes_share * then.gauge_Pa;
  const double one_Pa = like ? 0.0 : swing.least_Pa_per_K * warmer_K,
               other_Pa = like ? 0.0 : swing.most_Pa_per_K * warmer_K;
  test.least_Pa = std::max(0.0, then.gauge_Pa + std::min(one_Pa, other_Pa) - test.doubt_Pa - test.tube_Pa);
  test.most_Pa = then.gauge_Pa + std::max(one_Pa, other_Pa) + test.doubt_Pa;
  conclude(test, then, now.gauge_Pa);
  if (now.degC <= 0.0 || then.degC <= 0.0)
    test.why = TestWhy::frozen;
  else if (!like)
    test.why = TestWhy::unlike;
  else
    return test;
  test.verdict = TestVerdict::cannot_tell;
  return test;
}

}  // namespace slabwright
