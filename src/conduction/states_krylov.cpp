// Fields that answer at chosen rates span a space; in it the section is projected symmetrically, so that its modes
// decay and do not swing, as those of the whole do.
#include <Eigen/Eigenvalues>
#include <cmath>

#include "conduction/index.hpp"
#include "conduction/states.hpp"
#include "conduction/time_factors.hpp"

namespace slabwright::conduction {
namespace {

/// Fields that are sums of others to this, of their own size, are dropped: squares of sizes lose half of the digits.
constexpr double same_field = 1e-13;

/// Fields whose products with the conductance are 1 with themselves and 0 with each other.
Eigen::MatrixXd orthonormal(const Eigen::MatrixXd& products) {
  const Eigen::VectorXd size = products.diagonal().cwiseSqrt().cwiseMax(1e-300);
  const Eigen::MatrixXd scaled = size.cwiseInverse().asDiagonal() * products * size.cwiseInverse().asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(scaled);
  const Eigen::VectorXd& values = solver.eigenvalues();
  Index first = 0;
  while (first < values.size() && values(first) <= same_field * values(values.size() - 1)) ++first;
  const Index kept = values.size() - first;
  return size.cwiseInverse().asDiagonal() * solver.eigenvectors().rightCols(kept) *
         values.tail(kept).cwiseSqrt().cwiseInverse().asDiagonal();
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
  const Eigen::MatrixXd stored = field.capacity_J_per_mK.asDiagonal() * fields;
  const Eigen::MatrixXd base = orthonormal(fields.transpose() * system.conductance_times(fields));
  const Eigen::MatrixXd times = base.transpose() * (fields.transpose() * stored) * base;
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(times);
  const Eigen::MatrixXd shapes = base * solver.eigenvectors().rowwise().reverse();
  return {solver.eigenvalues().reverse().cwiseMax(0.0), shapes.transpose() * (fields.transpose() * drive),
          (field.outputs.of_temperatures * fields) * shapes};
}

}  // namespace slabwright::conduction
