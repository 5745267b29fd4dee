// Sparse Cholesky for the node balances.
#include "hydraulics/node_equations.hpp"

#include <algorithm>

namespace slabwright {
namespace {

std::size_t slot_of(const Eigen::SparseMatrix<double, Eigen::ColMajor, int>& matrix, std::size_t row,
                    std::size_t column) {
  const int* first = matrix.innerIndexPtr() + matrix.outerIndexPtr()[column];
  const int* last = matrix.innerIndexPtr() + matrix.outerIndexPtr()[column + 1];
  return static_cast<std::size_t>(std::lower_bound(first, last, static_cast<int>(row)) - matrix.innerIndexPtr());
}

}  // namespace

NodeEquations::NodeEquations(std::size_t nodes, const std::vector<Ends>& branches) : branches_(branches) {
  std::vector<Eigen::Triplet<double, int>> entries;
  entries.reserve(nodes + branches.size());
  for (std::size_t i = 0; i < nodes; ++i) entries.emplace_back(static_cast<int>(i), static_cast<int>(i), 1.0);
  for (const Ends& ends : branches) {
    entries.emplace_back(static_cast<int>(std::max(ends.from, ends.to)), static_cast<int>(std::min(ends.from, ends.to)),
                         0.0);
  }
  matrix_.resize(static_cast<int>(nodes), static_cast<int>(nodes));
  matrix_.setFromTriplets(entries.begin(), entries.end());
  for (std::size_t i = 0; i < nodes; ++i) diagonal_.push_back(slot_of(matrix_, i, i));
  for (const Ends& ends : branches) {
    between_.push_back(slot_of(matrix_, std::max(ends.from, ends.to), std::min(ends.from, ends.to)));
  }
  flow_in_ = pressures_ = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(nodes));
  if (nodes > 0) factors_.analyzePattern(matrix_);
}

bool NodeEquations::solve(const std::vector<double>& conductance, const std::vector<bool>& held,
                          const std::vector<double>& right) {
  std::fill_n(matrix_.valuePtr(), matrix_.nonZeros(), 0.0);
  for (std::size_t i = 0; i < diagonal_.size(); ++i) {
    flow_in_[static_cast<Eigen::Index>(i)] = right[i];
    if (held[i]) value(diagonal_[i]) = 1.0;
  }
  for (std::size_t k = 0; k < branches_.size(); ++k) {
    const auto [from, to] = branches_[k];
    const double c = conductance[k];
    if (!held[from]) value(diagonal_[from]) += c;
    if (!held[to]) value(diagonal_[to]) += c;
    if (!held[from] && !held[to]) value(between_[k]) -= c;
    if (held[from] && !held[to]) flow_in_[static_cast<Eigen::Index>(to)] += c * right[from];
    if (held[to] && !held[from]) flow_in_[static_cast<Eigen::Index>(from)] += c * right[to];
  }
  factors_.factorize(matrix_);
  if (factors_.info() != Eigen::Success) return false;
  const Eigen::VectorXd found = factors_.solve(flow_in_);
  if (!found.allFinite()) return false;
  pressures_ = found;
  return true;
}

}  // namespace slabwright
