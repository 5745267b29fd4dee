// The few states' outputs, fitted to the steps of all modes. Truncation chooses the decays well, but sizes for swings
// of every length; fitted sizes err by a half to a quarter of it from an hour after a step on.
#include <Eigen/Dense>
#include <algorithm>
#include <vector>

#include "slabwright/units_exact.hpp"

#include "conduction/index.hpp"
#include "conduction/states.hpp"

namespace slabwright::conduction {
namespace {

/// What follows at once cannot follow shorter times, so these weigh less.
constexpr double full_weight_s = hour_s;
/// Ten times the slowest mode of 15 m of ground.
constexpr double longest_s = 1e9;
/// Modes that take no time have gone.
constexpr double no_time_s = 1e-3;

std::vector<double> times_after_step(double first_s, double ratio) {
  std::vector<double> times_s;
  for (double time_s = first_s; time_s < longest_s; time_s *= ratio) times_s.push_back(time_s);
  return times_s;
}

/// [mode]: the share that a mode has still to go.
Eigen::VectorXd still_to_go(const Modes& modes, double time_s) {
  return (-time_s * modes.time_s.cwiseMax(no_time_s).cwiseInverse()).array().exp();
}

/// [output][driver]: what outputs have still to go.
Eigen::MatrixXd missing(const Modes& modes, double time_s) {
  return modes.output * still_to_go(modes, time_s).asDiagonal() * modes.input;
}

}  // namespace

Modes with_fitted_outputs(Modes few, const Modes& all, const Eigen::VectorXd& driver_scale) {
  if (few.time_s.size() == 0 || few.input.cols() == 0) return few;
  const std::vector<double> times_s = times_after_step(full_weight_s / 8.0, 1.3);
  const Index drivers = few.input.cols(), rows = drivers * static_cast<Index>(times_s.size());
  Eigen::MatrixXd states(rows, few.time_s.size()), wanted(rows, few.output.rows());
  for (std::size_t i = 0; i < times_s.size(); ++i) {
    const Index row = drivers * static_cast<Index>(i);
    const Eigen::VectorXd scale = std::min(1.0, times_s[i] / full_weight_s) * driver_scale;
    const Eigen::VectorXd to_go = still_to_go(few, times_s[i]);
    states.middleRows(row, drivers) = scale.asDiagonal() * few.input.transpose() * to_go.asDiagonal();
    wanted.middleRows(row, drivers) = scale.asDiagonal() * missing(all, times_s[i]).transpose();
  }
  few.output = states.colPivHouseholderQr().solve(wanted).transpose();
  return few;
}

Eigen::MatrixXd step_errors(const Modes& few, const Modes& all, double from_s) {
  Eigen::MatrixXd errors = Eigen::MatrixXd::Zero(all.output.rows(), all.input.cols());
  for (const double time_s : times_after_step(from_s, 1.1))
    errors = errors.cwiseMax((missing(few, time_s) - missing(all, time_s)).cwiseAbs());
  return errors;
}

}  // namespace slabwright::conduction
