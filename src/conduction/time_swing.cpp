#include "conduction/time_swing.hpp"

#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>

#include "conduction/index.hpp"
#include "conduction/time_factors.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace conduction {
namespace {

constexpr double turn = 2.0 * pi;

Eigen::Map<const Eigen::VectorXd> as_vector(const std::vector<double>& numbers) {
  return {numbers.data(), static_cast<Index>(numbers.size())};
}

/// (K + i w C)(with - i behind) = B, written as a real symmetric system in pairs (with, behind): each pair is one step
/// of elimination, which needs no pivots because K and w^2 C K^-1 C + K are positive definite.
Eigen::SparseMatrix<double> pairs_matrix(const TimeField& field, double turns_per_s) {
  const Eigen::SparseMatrix<double>& conductance = field.assembly.conductance;
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(static_cast<std::size_t>(3 * conductance.nonZeros()));
  for (int column = 0; column < conductance.cols(); ++column) {
    for (Eigen::SparseMatrix<double>::InnerIterator entry(conductance, column); entry; ++entry) {
      const int row = static_cast<int>(entry.row());
      entries.emplace_back(2 * row, 2 * column, entry.value());
      entries.emplace_back(2 * row + 1, 2 * column + 1, -entry.value());
    }
    entries.emplace_back(2 * column + 1, 2 * column, turns_per_s * field.capacity_J_per_mK(column));
  }
  Eigen::SparseMatrix<double> pairs(2 * conductance.rows(), 2 * conductance.cols());
  pairs.setFromTriplets(entries.begin(), entries.end());
  return pairs;
}

}  // namespace

Swing swing_of(const TimeField& field, double period_s) {
  const Eigen::MatrixXd& drive = field.assembly.drive;
  Swing swing{drive, drive};
  if (drive.rows() == 0) return swing;
  using Elimination = Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::NaturalOrdering<int>>;
  const Elimination factor(pairs_matrix(field, turn / period_s));
  expects(factor.info() == Eigen::Success, "conduction: no swing was found");
  Eigen::MatrixXd right = Eigen::MatrixXd::Zero(2 * drive.rows(), drive.cols());
  for (Index u = 0; u < drive.rows(); ++u) right.row(2 * u) = drive.row(u);
  const Eigen::MatrixXd pairs = factor.solve(right);
  for (Index u = 0; u < drive.rows(); ++u) {
    swing.with.row(u) = pairs.row(2 * u);
    swing.behind.row(u) = pairs.row(2 * u + 1);
  }
  return swing;
}

Eigen::VectorXd drivers_at(const PeriodicDrivers& drivers, double time_s) {
  const double angle = turn * time_s / drivers.period_s;
  return as_vector(drivers.mean) + std::cos(angle) * as_vector(drivers.cosine) +
         std::sin(angle) * as_vector(drivers.sine);
}

Eigen::VectorXd temperatures_at(const TimeField& field, const PeriodicDrivers& drivers, double time_s) {
  ShiftedSystem system(field.assembly, field.capacity_J_per_mK);
  Eigen::VectorXd temperatures = system.solve(0.0, field.assembly.drive * as_vector(drivers.mean));
  if (as_vector(drivers.cosine).isZero(0.0) && as_vector(drivers.sine).isZero(0.0)) return temperatures;
  const Swing swing = swing_of(field, drivers.period_s);
  // A driver's sine is its cosine a quarter period later.
  const double angle = turn * time_s / drivers.period_s, c = std::cos(angle), s = std::sin(angle);
  const Eigen::VectorXd with = c * as_vector(drivers.cosine) + s * as_vector(drivers.sine);
  const Eigen::VectorXd behind = s * as_vector(drivers.cosine) - c * as_vector(drivers.sine);
  return temperatures + swing.with * with + swing.behind * behind;
}

}  // namespace conduction

using namespace conduction;

PeriodicDrivers steady_drivers(const DriverValues& drivers) {
  const std::vector<double> none(drivers.size(), 0.0);
  return {31557600.0, drivers, none, none};  // any period would do
}

SwingResponses swing_responses(const FieldSection& section, const std::vector<FieldPoint>& watched, double period_s,
                               const FieldOptions& options) {
  unit_responses(section, {}, options);  // holds the section's contracts
  expects(std::isfinite(period_s) && period_s > 0.0, "conduction: a period must be above 0");
  const TimeField field = time_field(section, watched, options);
  const Swing swing = swing_of(field, period_s);
  const Eigen::MatrixXd with = field.outputs.of_temperatures * swing.with + field.outputs.of_drivers;
  const Eigen::MatrixXd behind = field.outputs.of_temperatures * swing.behind;
  const std::size_t points = watched.size(), boundaries = section.boundaries.size();
  return {rows_of(with, 0, points), rows_of(behind, 0, points), rows_of(with, points, boundaries),
          rows_of(behind, points, boundaries)};
}

}  // namespace slabwright
