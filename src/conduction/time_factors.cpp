#include "conduction/time_factors.hpp"

#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

/// A factorisation of 10 000 unknowns takes 4 MB.
constexpr std::size_t most_kept = 32;

}  // namespace

ShiftedSystem::ShiftedSystem(const Assembly& assembly, const Eigen::VectorXd& capacity)
    : conductance_(assembly.conductance), capacity_(capacity) {}

const ShiftedSystem::Cholesky& ShiftedSystem::factor(double rate_per_s) {
  const auto found = factors_.find(rate_per_s);
  if (found != factors_.end()) return *found->second;
  if (factors_.size() == most_kept) factors_.clear();
  Eigen::SparseMatrix<double> shifted = conductance_;
  // The lower half is kept: the first entry of every column is its diagonal.
  for (Eigen::Index u = 0; u < shifted.cols(); ++u)
    shifted.valuePtr()[shifted.outerIndexPtr()[u]] += rate_per_s * capacity_(u);
  auto made = std::make_unique<Cholesky>(shifted);
  expects(made->info() == Eigen::Success, "conduction: the shifted matrix is not positive definite");
  ++factorisations_;
  return *factors_.emplace(rate_per_s, std::move(made)).first->second;
}

Eigen::MatrixXd ShiftedSystem::solve(double rate_per_s, const Eigen::MatrixXd& right) {
  if (right.rows() == 0) return right;
  return factor(rate_per_s).solve(right);
}

Eigen::MatrixXd ShiftedSystem::conductance_times(const Eigen::MatrixXd& temperatures) const {
  return conductance_.selfadjointView<Eigen::Lower>() * temperatures;
}

}  // namespace slabwright::conduction
