// Fields that answer at chosen rates span a space; in it the section is projected symmetrically, so that its modes
// decay and do not swing, as those of the whole do.
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

#include "conduction/index.hpp"
#include "conduction/states.hpp"
#include "conduction/time_factors.hpp"

namespace slabwright::conduction {
namespace {

/// Fields that are sums of others to this share of their own size are dropped. A last bit of what goes in moves what is
/// left of such a field by a bit over this share: at a ten-millionth answers moved in their eighth digit, and were no
/// nearer to the whole field's.
constexpr double same_field = 3e-4;

double size_of(const Eigen::VectorXd& field, const ShiftedSystem& system) {
  return std::sqrt(std::max(0.0, field.dot(system.conductance_times(field).col(0))));
}

/// The same space by fields whose products with the conductance are 1 with themselves and 0 with each other. One field
/// after the other is freed of those before it: eigenvectors of the table of all products would be squares, in which
/// what is nearly a sum of others keeps three digits, and each C library's own three.
Eigen::MatrixXd orthonormal(const Eigen::MatrixXd& fields, const ShiftedSystem& system) {
  Eigen::MatrixXd base(fields.rows(), fields.cols()), times(fields.rows(), fields.cols());
  Index kept = 0;
  for (Index i = 0; i < fields.cols(); ++i) {
    Eigen::VectorXd field = fields.col(i);
    const double whole = size_of(field, system);
    // Freed twice, so that what rounding left the first time goes too.
    for (int pass = 0; pass < 2; ++pass) field -= base.leftCols(kept) * (times.leftCols(kept).transpose() * field);
    const double left = size_of(field, system);
    if (left <= same_field * whole) continue;
    base.col(kept) = field / left;
    times.col(kept) = system.conductance_times(base.col(kept)).col(0);
    ++kept;
  }
  return base.leftCols(kept);
}

}  // namespace

Modes krylov_modes(const TimeField& field, const Eigen::MatrixXd& drive, const std::vector<double>& rates_per_s) {
  const auto points = static_cast<Index>(field.outputs.points);
  Eigen::MatrixXd sources(drive.rows(), drive.cols() + points);
  sources << drive, Eigen::MatrixXd(field.outputs.of_temperatures.topRows(points).transpose());
  ShiftedSystem system(field.assembly, field.capacity_J_per_mK);
  Eigen::MatrixXd fields(sources.rows(), sources.cols() * static_cast<Index>(rates_per_s.size()));
  for (std::size_t i = 0; i < rates_per_s.size(); ++i)
    fields.middleCols(static_cast<Index>(i) * sources.cols(), sources.cols()) = system.solve(rates_per_s[i], sources);
  const Eigen::MatrixXd base = orthonormal(fields, system);
  const Eigen::MatrixXd times = base.transpose() * (field.capacity_J_per_mK.asDiagonal() * base);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(times);
  const Eigen::MatrixXd shapes = base * solver.eigenvectors().rowwise().reverse();
  return {solver.eigenvalues().reverse().cwiseMax(0.0), shapes.transpose() * drive,
          field.outputs.of_temperatures * shapes};
}

}  // namespace slabwright::conduction
