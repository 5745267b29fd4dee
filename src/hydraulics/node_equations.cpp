// Series and parallel for most nodes, sparse Cholesky for the rest.
#include "hydraulics/node_equations.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace slabwright {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }
std::uint32_t place(int i) { return static_cast<std::uint32_t>(i); }

Eigen::SparseMatrix<double, Eigen::ColMajor, int> upper_pattern(int rows, const std::vector<CoreLink>& links) {
  std::vector<Eigen::Triplet<double, int>> entries;
  for (int i = 0; i < rows; ++i) entries.emplace_back(i, i, 1.0);
  for (const CoreLink& link : links) entries.emplace_back(link.low, link.high, 1.0);
  Eigen::SparseMatrix<double, Eigen::ColMajor, int> pattern(rows, rows);
  pattern.setFromTriplets(entries.begin(), entries.end());
  return pattern;
}

}  // namespace

NodeEquations::NodeEquations(std::size_t nodes, const std::vector<Ends>& branches) : held_(nodes), rows_(nodes + 1) {
  Elimination order = eliminate(nodes, branches);
  steps_ = std::move(order.steps);
  core_ = std::move(order.core);
  row_.reserve(nodes);
  for (const int row : order.row) row_.push_back(place(row));
  places_.reserve(branches.size());
  for (std::size_t k = 0; k < branches.size(); ++k) {
    places_.push_back(
        {place(order.row[branches[k].from]), place(order.row[branches[k].to]), place(order.slot[k]), false});
  }
  conductance_.resize(2 * steps_.size() + core_.size() + 1);
  if (nodes > steps_.size()) prepare_core(static_cast<int>(nodes - steps_.size()));
}

void NodeEquations::prepare_core(int rows) {
  core_matrix_ = upper_pattern(rows, core_);
  core_inflow_.resize(rows);
  const auto place_of = [&](int low, int high) {
    const int* first = core_matrix_.innerIndexPtr() + core_matrix_.outerIndexPtr()[high];
    const int* last = core_matrix_.innerIndexPtr() + core_matrix_.outerIndexPtr()[high + 1];
    return static_cast<std::size_t>(std::lower_bound(first, last, low) - core_matrix_.innerIndexPtr());
  };
  for (int i = 0; i < rows; ++i) diagonal_.push_back(place_of(i, i));
  for (const CoreLink& link : core_) between_.push_back(place_of(link.low, link.high));
  factors_.analyzePattern(core_matrix_);
}

void NodeEquations::give(const std::vector<Node>& nodes, const std::vector<bool>& held) {
  holds_.clear();
  demands_.clear();
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    held_[row_[i]] = held[i];
    if (held[i]) holds_.push_back({row_[i], nodes[i].held ? nodes[i].held_pressure_Pa : 0.0});
    if (nodes[i].demand_m3_per_s != 0.0) demands_.push_back({row_[i], nodes[i].demand_m3_per_s});
  }
  for (const GivenAt& hold : holds_) rows_[hold.row].pressure = hold.amount;
  for (Place& place : places_) place.beside_given = held_[place.from] || held_[place.to];
}

void NodeEquations::begin() {
  std::fill(conductance_.begin(), conductance_.end(), 0.0);
  for (Row& row : rows_) row.to_given = row.inflow = 0.0;
  for (const GivenAt& demand : demands_) rows_[demand.row].inflow = -demand.amount;
}

void NodeEquations::add_beside_given(const Place& place, double conductance) {
  Row &from = rows_[place.from], &to = rows_[place.to];
  if (!held_[place.from]) {
    from.to_given += conductance;
    from.inflow += conductance * to.pressure;
  }
  if (!held_[place.to]) {
    to.to_given += conductance;
    to.inflow += conductance * from.pressure;
  }
}

// A node that goes hands what flows into it, and its share of the way out to given pressures, to its neighbours as
// their conductances share it. The conductances turn into those shares: the way back needs them.
bool NodeEquations::eliminate_steps() {
  double all = 0.0;
  for (std::size_t i = 0; i < steps_.size(); ++i) {
    const Step& step = steps_[i];
    Row &row = rows_[i], &one = rows_[at(step.one)], &other = rows_[at(step.other)];
    const double to_one = conductance_[2 * i], to_other = conductance_[2 * i + 1];
    const double out = 1.0 / (to_one + to_other + row.to_given);
    const double share_one = to_one * out, share_other = to_other * out;
    conductance_[2 * i] = share_one;
    conductance_[2 * i + 1] = share_other;
    conductance_[at(step.between)] += share_one * to_other;
    one.to_given += share_one * row.to_given;
    other.to_given += share_other * row.to_given;
    one.inflow += share_one * row.inflow;
    other.inflow += share_other * row.inflow;
    row.inflow *= out;
    all += row.inflow;
  }
  return std::isfinite(all);
}

bool NodeEquations::solve_core() {
  if (diagonal_.empty()) return true;
  const std::size_t first_row = steps_.size();
  double* value = core_matrix_.valuePtr();
  for (std::size_t i = 0; i < diagonal_.size(); ++i) {
    value[diagonal_[i]] = rows_[first_row + i].to_given;
    core_inflow_[static_cast<Eigen::Index>(i)] = rows_[first_row + i].inflow;
  }
  for (std::size_t j = 0; j < core_.size(); ++j) {
    const double conductance = conductance_[2 * steps_.size() + j];
    value[between_[j]] = -conductance;
    value[diagonal_[at(core_[j].low)]] += conductance;
    value[diagonal_[at(core_[j].high)]] += conductance;
  }
  factors_.factorize(core_matrix_);
  if (factors_.info() != Eigen::Success) return false;
  const Eigen::VectorXd found = factors_.solve(core_inflow_);
  if (!found.allFinite()) return false;
  for (std::size_t i = 0; i < diagonal_.size(); ++i) {
    rows_[first_row + i].pressure = found[static_cast<Eigen::Index>(i)];
  }
  return true;
}

void NodeEquations::substitute_back() {
  for (std::size_t i = steps_.size(); i-- > 0;) {
    const double one = rows_[at(steps_[i].one)].pressure, other = rows_[at(steps_[i].other)].pressure;
    rows_[i].pressure = rows_[i].inflow + conductance_[2 * i] * one + conductance_[2 * i + 1] * other;
  }
}

bool NodeEquations::solve() {
  for (const GivenAt& hold : holds_) {
    rows_[hold.row].to_given = 1.0;
    rows_[hold.row].inflow = hold.amount;
  }
  if (!eliminate_steps() || !solve_core()) return false;
  substitute_back();
  for (const GivenAt& hold : holds_) rows_[hold.row].pressure = hold.amount;
  return true;
}

}  // namespace slabwright
