// Sparse Cholesky for the node balances.
#include "hydraulics/node_equations.hpp"

#include <algorithm>
#include <numeric>

namespace slabwright {
namespace {

using Matrix = Eigen::SparseMatrix<double, Eigen::ColMajor, int>;

Matrix upper_pattern(const std::vector<int>& row, const std::vector<Ends>& branches) {
  std::vector<Eigen::Triplet<double, int>> entries;
  entries.reserve(row.size() + branches.size());
  for (const int at : row) entries.emplace_back(at, at, 1.0);
  for (const auto [from, to] : branches) {
    entries.emplace_back(std::min(row[from], row[to]), std::max(row[from], row[to]), 1.0);
  }
  Matrix pattern(static_cast<int>(row.size()), static_cast<int>(row.size()));
  pattern.setFromTriplets(entries.begin(), entries.end());
  return pattern;
}

// Minimum degree. Numbering the rows by it here spares the package a reordered copy in every round.
std::vector<int> elimination_order(std::size_t nodes, const std::vector<Ends>& branches) {
  std::vector<int> row(nodes);
  std::iota(row.begin(), row.end(), 0);
  const Matrix pattern = upper_pattern(row, branches);
  Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> order;
  Eigen::AMDOrdering<int>()(pattern.selfadjointView<Eigen::Upper>(), order);
  for (int i = 0; i < static_cast<int>(nodes); ++i) row[static_cast<std::size_t>(order.indices()[i])] = i;
  return row;
}

}  // namespace

NodeEquations::NodeEquations(std::size_t nodes, const std::vector<Ends>& branches)
    : branches_(branches), row_(elimination_order(nodes, branches)), matrix_(upper_pattern(row_, branches)) {
  diagonal_.reserve(nodes);
  between_.reserve(branches.size());
  for (const int row : row_) diagonal_.push_back(slot_of(row, row));
  for (const auto [from, to] : branches) between_.push_back(slot_of(row_[from], row_[to]));
  flow_in_.resize(static_cast<Eigen::Index>(nodes));
  pressures_.assign(nodes, 0.0);
  factors_.analyzePattern(matrix_);
}

std::size_t NodeEquations::slot_of(int row, int other_row) const {
  const int* first = matrix_.innerIndexPtr() + matrix_.outerIndexPtr()[std::max(row, other_row)];
  const int* last = matrix_.innerIndexPtr() + matrix_.outerIndexPtr()[std::max(row, other_row) + 1];
  return static_cast<std::size_t>(std::lower_bound(first, last, std::min(row, other_row)) - matrix_.innerIndexPtr());
}

bool NodeEquations::solve(const std::vector<double>& conductance, const std::vector<bool>& held,
                          const std::vector<double>& right) {
  std::fill_n(matrix_.valuePtr(), matrix_.nonZeros(), 0.0);
  for (std::size_t i = 0; i < diagonal_.size(); ++i) {
    flow_in_[row_[i]] = right[i];
    if (held[i]) value(diagonal_[i]) = 1.0;
  }
  for (std::size_t k = 0; k < branches_.size(); ++k) {
    const auto [from, to] = branches_[k];
    const double c = conductance[k];
    if (!held[from]) value(diagonal_[from]) += c;
    if (!held[to]) value(diagonal_[to]) += c;
    if (!held[from] && !held[to]) value(between_[k]) -= c;
    if (held[from] && !held[to]) flow_in_[row_[to]] += c * right[from];
    if (held[to] && !held[from]) flow_in_[row_[from]] += c * right[to];
  }
  factors_.factorize(matrix_);
  if (factors_.info() != Eigen::Success) return false;
  const Eigen::VectorXd found = factors_.solve(flow_in_);
  if (!found.allFinite()) return false;
  for (std::size_t i = 0; i < pressures_.size(); ++i) pressures_[i] = found[row_[i]];
  return true;
}

}  // namespace slabwright
