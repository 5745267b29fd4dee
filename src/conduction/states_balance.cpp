// Balanced truncation of a system made symmetric: inputs and outputs together drive it and are watched.
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

#include "conduction/index.hpp"
#include "conduction/states.hpp"

namespace slabwright::conduction {
namespace {

/// How strongly pairs of modes are driven and felt together; it has the two Gramians' place, which are one here.
Eigen::MatrixXd gramian(const Eigen::VectorXd& time_s, const Eigen::MatrixXd& felt) {
  Eigen::MatrixXd gramian = felt * felt.transpose();
  for (Index i = 0; i < gramian.rows(); ++i)
    for (Index j = 0; j < gramian.cols(); ++j)
      gramian(i, j) *= std::sqrt(time_s(i)) * std::sqrt(time_s(j)) / (time_s(i) + time_s(j));
  return gramian;
}

/// The number that keeps twice the sum of what is left out below the bound. Values rise.
Index states_needed(const Eigen::VectorXd& values, const Truncation& truncation) {
  double left_out = 0.0;
  Index needed = values.size();
  while (needed > 0 && 2.0 * (left_out + std::max(0.0, values(values.size() - needed))) < truncation.bound) {
    left_out += std::max(0.0, values(values.size() - needed));
    --needed;
  }
  return std::min(needed, truncation.most_states);
}

}  // namespace

Modes balanced(const Modes& modes, const Eigen::VectorXd& driver_scale, const Eigen::VectorXd& output_scale,
               const Truncation& truncation) {
  // Modes that take no time are part of what follows at once.
  const Index count = (modes.time_s.array() > 0.0).count();
  const Eigen::VectorXd time_s = modes.time_s.head(count), root = time_s.cwiseSqrt();
  Eigen::MatrixXd felt(count, modes.input.cols() + modes.output.rows());
  felt << modes.input.topRows(count) * driver_scale.asDiagonal(),
      (output_scale.asDiagonal() * modes.output.leftCols(count)).transpose();
  felt = (time_s.array() / (time_s.array() + truncation.fast_s)).matrix().asDiagonal() * felt;
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> strengths(gramian(time_s, felt));
  const Index kept = states_needed(strengths.eigenvalues(), truncation);
  const Eigen::MatrixXd base = strengths.eigenvectors().rightCols(kept);
  // The long-time form: the section's answer in 1/s is cut, which leaves the steady answer whole.
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> cut(base.transpose() * time_s.asDiagonal() * base);
  const Eigen::VectorXd new_time_s = cut.eigenvalues().reverse();
  const Eigen::MatrixXd turn = base * cut.eigenvectors().rowwise().reverse();
  const Eigen::VectorXd per_root = new_time_s.cwiseSqrt().cwiseInverse();
  return {new_time_s, per_root.asDiagonal() * (turn.transpose() * (root.asDiagonal() * modes.input.topRows(count))),
          (modes.output.leftCols(count) * root.asDiagonal() * turn) * per_root.asDiagonal()};
}

}  // namespace slabwright::conduction
