// What few states say: every state is one exponential, so nothing here is approximate.
#include <cmath>

#include "slabwright/conduction_states.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double turn = 2.0 * pi;

double product(const std::vector<double>& row, const std::vector<double>& values) {
  double sum = 0.0;
  for (std::size_t i = 0; i < row.size(); ++i) sum += row[i] * values[i];
  return sum;
}

std::size_t drivers_of(const FewStates& states) { return states.direct.empty() ? 0 : states.direct.front().size(); }

void expect_fits(const FewStates& states, const DriverValues& drivers) {
  expects(states.direct.empty() || drivers.size() == drivers_of(states), "states: a value is needed for each driver");
}

void expect_fits(const FewStates& states, const StateValues& state, double dt_s) {
  expects(state.size() == states.decay_per_s.size(), "states: a value is needed for each state");
  expects(std::isfinite(dt_s) && dt_s >= 0.0, "states: time runs forward");
}

/// Mean of a straight rise from 0 to 1 over z time constants as the state follows it: 1 - (1 - exp(-z)) / z.
double followed_rise(double z) {
  // Below this the difference loses digits and four terms of its series do not.
  if (z < 1e-2) return z / 2.0 * (1.0 - z / 3.0 * (1.0 - z / 4.0 * (1.0 - z / 5.0 * (1.0 - z / 6.0))));
  return 1.0 + std::expm1(-z) / z;
}

/// Of each output over each driver, direct plus output x input with each state's part weighed.
template <class Number, class Part>
std::vector<std::vector<Number>> gains_with(const FewStates& states, Part part) {
  std::vector<Number> parts;
  for (const double decay_per_s : states.decay_per_s) parts.push_back(part(decay_per_s));
  std::vector<std::vector<Number>> gains;
  for (std::size_t output = 0; output < states.direct.size(); ++output) {
    gains.emplace_back(states.direct[output].begin(), states.direct[output].end());
    for (std::size_t k = 0; k < parts.size(); ++k)
      for (std::size_t driver = 0; driver < gains.back().size(); ++driver)
        gains.back()[driver] += parts[k] * (states.output[output][k] * states.input[k][driver]);
  }
  return gains;
}

}  // namespace

StateValues steady_state(const FewStates& states, const DriverValues& drivers) {
  expect_fits(states, drivers);
  StateValues state;
  for (const std::vector<double>& row : states.input) state.push_back(product(row, drivers));
  return state;
}

StateValues swinging_state(const FewStates& states, const PeriodicDrivers& drivers, double time_s) {
  expects(drivers.period_s > 0.0, "states: a period must be above 0");
  StateValues state = steady_state(states, drivers.mean);
  const StateValues cosine = steady_state(states, drivers.cosine), sine = steady_state(states, drivers.sine);
  const double per_s = turn / drivers.period_s, c = std::cos(per_s * time_s), s = std::sin(per_s * time_s);
  for (std::size_t k = 0; k < state.size(); ++k) {
    // 1 / (1 + i r), its real part and what lags behind.
    const double r = per_s / states.decay_per_s[k], with = 1.0 / (1.0 + r * r), behind = r * with;
    state[k] += cosine[k] * (with * c + behind * s) + sine[k] * (with * s - behind * c);
  }
  return state;
}

StateValues after_constant(const FewStates& states, const StateValues& from, const DriverValues& drivers, double dt_s) {
  expect_fits(states, from, dt_s);
  StateValues state = steady_state(states, drivers);
  for (std::size_t k = 0; k < state.size(); ++k)
    state[k] += std::exp(-states.decay_per_s[k] * dt_s) * (from[k] - state[k]);
  return state;
}

StateValues after_straight(const FewStates& states, const StateValues& from, const DriverValues& at_start,
                           const DriverValues& at_end, double dt_s) {
  expect_fits(states, at_start);
  expect_fits(states, at_end);
  return after_step(states, states_step(states, dt_s), from, at_start, at_end);
}

StatesStep states_step(const FewStates& states, double dt_s) {
  expects(std::isfinite(dt_s) && dt_s >= 0.0, "states: time runs forward");
  StatesStep step;
  step.dt_s = dt_s;
  for (const double decay_per_s : states.decay_per_s) {
    const double rise = followed_rise(decay_per_s * dt_s), followed = -std::expm1(-decay_per_s * dt_s);
    step.keep_share.push_back(1.0 - followed);
    step.start_share.push_back(followed - rise);
    step.end_share.push_back(rise);
  }
  return step;
}

StateValues after_step(const FewStates& states, const StatesStep& step, const StateValues& from,
                       const DriverValues& at_start, const DriverValues& at_end) {
  expect_fits(states, from, step.dt_s);
  StateValues state(from.size());
  for (std::size_t k = 0; k < state.size(); ++k)
    state[k] = step.keep_share[k] * from[k] + step.start_share[k] * product(states.input[k], at_start) +
               step.end_share[k] * product(states.input[k], at_end);
  return state;
}

double watched_value(const FewStates& states, std::size_t output, const StateValues& state,
                     const DriverValues& drivers) {
  return product(states.output[output], state) + product(states.direct[output], drivers);
}

std::vector<double> watched_values(const FewStates& states, const StateValues& state, const DriverValues& drivers) {
  expect_fits(states, drivers);
  expect_fits(states, state, 0.0);
  std::vector<double> values;
  for (std::size_t output = 0; output < states.direct.size(); ++output)
    values.push_back(watched_value(states, output, state, drivers));
  return values;
}

std::vector<std::vector<std::complex<double>>> swing_gains(const FewStates& states, double period_s) {
  expects(std::isfinite(period_s) && period_s > 0.0, "states: a period must be above 0");
  return gains_with<std::complex<double>>(states, [period_s](double decay_per_s) {
    return 1.0 / std::complex<double>(1.0, turn / (period_s * decay_per_s));
  });
}

std::vector<std::vector<double>> step_values(const FewStates& states, double time_s) {
  expects(time_s >= 0.0, "states: time runs forward");
  return gains_with<double>(states, [time_s](double decay_per_s) { return -std::expm1(-decay_per_s * time_s); });
}

}  // namespace slabwright
