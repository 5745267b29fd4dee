// Two implicit stages at a and 1 of the step, a = 1 - 1/sqrt 2, both with the same matrix (Alexander, Diagonally
// implicit Runge-Kutta methods for stiff ODE's, SIAM J. Numer. Anal. 14, 1977).
#include "conduction/time_step.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace slabwright::conduction {
namespace {

/// Error of a step of a mode that decays by z: (3 a^2 - 2 a^3 - 1/6) z^3. The estimate's own is a (1/2 - a) z^3.
constexpr double estimate_factor = 2.0 / 3.0;
/// A step twice as long errs eight times as much.
constexpr double may_double = 1.0 / 12.0;
constexpr int finest_halving = 40;
/// The first step of all, where the first interval says nothing about how fast things go.
constexpr int first_halving = 8;

}  // namespace

const double Stepper::inner_share = 1.0 - std::sqrt(0.5);

Stepper::Stepper(const TimeField& field, Eigen::RowVectorXd step_errors_K)
    : field_(field), system_(field.assembly, field.capacity_J_per_mK), limits_K_(std::move(step_errors_K)) {}

TimeState Stepper::start(Eigen::MatrixXd temperatures, const Eigen::MatrixXd& drivers) {
  TimeState state{std::move(temperatures), {}, Eigen::RowVectorXd::Zero(limits_K_.cols())};
  return after_jump(std::move(state), drivers);
}

TimeState Stepper::after_jump(TimeState state, const Eigen::MatrixXd& drivers) {
  state.flow = field_.assembly.drive * drivers - system_.conductance_times(state.temperatures);
  const double smallest = field_.capacity_J_per_mK.size() == 0 ? 1.0 : field_.capacity_J_per_mK.minCoeff();
  if (smallest == 0.0) {
    // So fast a change that nothing is stored: nodes without capacity settle among the others.
    const double at_once_per_s = 1e12;
    state.temperatures += system_.solve(at_once_per_s, state.flow);
    state.flow = field_.assembly.drive * drivers - system_.conductance_times(state.temperatures);
    for (Eigen::Index u = 0; u < state.flow.rows(); ++u)
      if (field_.capacity_J_per_mK(u) == 0.0) state.flow.row(u).setZero();
  }
  last_step_s_ = 0.0;
  return state;
}

Eigen::RowVectorXd Stepper::heat_entering(const Eigen::MatrixXd& temperatures, const Eigen::MatrixXd& drivers) const {
  const auto boundaries = static_cast<Eigen::Index>(field_.outputs.boundaries);
  const Eigen::MatrixXd through = field_.outputs.of_temperatures.bottomRows(boundaries) * temperatures +
                                  field_.outputs.of_drivers.bottomRows(boundaries) * drivers;
  return through.colwise().sum() + field_.let_free_W_per_m.transpose() * drivers;
}

Stepper::Tried Stepper::step(const TimeState& state, double step_s, const Eigen::MatrixXd& inner,
                             const Eigen::MatrixXd& end) {
  const double a = inner_share, rate_per_s = 1.0 / (a * step_s);
  const auto stored = (rate_per_s * field_.capacity_J_per_mK).asDiagonal();
  const auto solve = [&](const Eigen::MatrixXd& right) { return system_.solve(rate_per_s, right); };
  const Eigen::MatrixXd first = solve(field_.assembly.drive * inner + stored * state.temperatures);
  const Eigen::MatrixXd first_flow = stored * (first - state.temperatures);
  TimeState next = state;
  const Eigen::MatrixXd kept = stored * state.temperatures + (1.0 - a) / a * first_flow;
  next.temperatures = solve(field_.assembly.drive * end + kept);
  next.flow = stored * next.temperatures - kept;
  next.entered_J_per_m +=
      step_s * ((1.0 - a) * heat_entering(first, inner) + a * heat_entering(next.temperatures, end));
  const Eigen::MatrixXd error = estimate_factor / a * solve(first_flow - a * next.flow - (1.0 - a) * state.flow);
  double worst = 0.0;
  for (Eigen::Index c = 0; c < error.cols(); ++c)
    if (error.rows() > 0) worst = std::max(worst, error.col(c).cwiseAbs().maxCoeff() / limits_K_(c));
  return {std::move(next), worst};
}

TimeState Stepper::cross(TimeState state, double interval_s, const DriversWithin& drivers) {
  int halvings = last_step_s_ > 0.0 ? 0 : first_halving;
  while (last_step_s_ > 0.0 && std::ldexp(interval_s, -halvings) > 1.5 * last_step_s_) ++halvings;
  // The place is k / 2^halvings; a step may double where k is even.
  std::size_t k = 0;
  while (k < (std::size_t{1} << halvings)) {
    const double step_share = std::ldexp(1.0, -halvings), from = static_cast<double>(k) * step_share;
    const double step_s = interval_s * step_share;
    Tried tried = step(state, step_s, drivers(from + inner_share * step_share), drivers(from + step_share));
    if (tried.error_over_limit > 1.0 && halvings < finest_halving) {
      ++halvings;
      k *= 2;
      continue;
    }
    state = std::move(tried.state);
    last_step_s_ = step_s;
    ++steps_;
    ++k;
    if (tried.error_over_limit < may_double && halvings > 0 && k % 2 == 0) {
      --halvings;
      k /= 2;
      last_step_s_ *= 2.0;
    }
  }
  return state;
}

Eigen::MatrixXd Stepper::outputs(const TimeState& state, const Eigen::MatrixXd& drivers) const {
  return field_.outputs.of_temperatures * state.temperatures + field_.outputs.of_drivers * drivers;
}

Eigen::RowVectorXd Stepper::stored_J_per_m(const Eigen::MatrixXd& temperatures) const {
  return field_.capacity_J_per_mK.transpose() * temperatures;
}

}  // namespace slabwright::conduction
