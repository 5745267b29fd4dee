#include <cmath>

#include "slabwright/answer_gauge.hpp"
#include "slabwright/fluid.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// Of water by volume, about the temperatures of the two readings.
double water_growth_per_K(double then_degC, double now_degC) {
  constexpr double half_K = 0.5;
  const double middle_degC = 0.5 * (then_degC + now_degC);
  return volume_ratio(Mixture{}, middle_degC - half_K, middle_degC + half_K) - 1.0;
}

/// Until the same hour of another day, when the air is likeliest to be as warm as it was.
double until_like_s(const std::optional<double>& after_s) {
  constexpr double least_s = hour_s;
  if (!after_s) return day_s;
  const double left_s = std::ceil(*after_s / day_s) * day_s - *after_s;
  return left_s < least_s ? left_s + day_s : left_s;
}

}  // namespace

GaugeAnswer gauge_answer(const GaugeAsked& asked) {
  GaugeAnswer answer;
  answer.medium = asked.medium == TestMedium::air ? "air" : "water";
  answer.then_Pa = asked.then.gauge_Pa;
  answer.then_degC = asked.then.degC;
  answer.now_Pa = asked.now.gauge_Pa;
  answer.now_degC = asked.now.degC;
  answer.atmosphere_Pa = air_pressure_Pa(asked.altitude_m);
  const UsualGauge usual = usual_gauge(asked.then.gauge_Pa, asked.system == System::us ? Customary::us : Customary::si);
  if (!asked.gauge_error_Pa) answer.scale_Pa = usual.scale_Pa;
  TestErrors errors;
  errors.gauge_Pa = answer.gauge_error_Pa = asked.gauge_error_Pa.value_or(usual.error_Pa);
  errors.thermometer_K = answer.thermometer_error_K = asked.thermometer_error_K.value_or(errors.thermometer_K);
  if (asked.medium == TestMedium::air) {
    answer.judged = judge_air(asked.then, asked.now, errors, answer.atmosphere_Pa);
  } else {
    const double growth_per_K = water_growth_per_K(asked.then.degC, asked.now.degC);
    const WaterSwing swing = water_swing(growth_per_K, asked.then.gauge_Pa + answer.atmosphere_Pa);
    answer.judged = judge_water(asked.then, asked.now, errors, swing);
    answer.swing_least_Pa = swing.least_Pa_per_K;
    answer.swing_most_Pa = swing.most_Pa_per_K;
  }
  answer.after_s = asked.after_s;
  if (asked.after_s && answer.judged.verdict == TestVerdict::leaks)
    answer.hourly_Pa = -answer.judged.off_Pa * hour_s / *asked.after_s;
  answer.wait_s = until_like_s(asked.after_s);
  return answer;
}

int exit_code(const GaugeAnswer& answer) {
  constexpr int codes[] = {0, 2, 3};
  return codes[static_cast<std::size_t>(answer.judged.verdict)];
}

}  // namespace slabwright
