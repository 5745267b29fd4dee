// Exact steps and rest of dx/dt = A x + B u.
#include <Eigen/LU>
#include <cmath>
#include <cstddef>

#include "maths/exponential.hpp"
#include "maths/linear_rows.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/maths_linear.hpp"

namespace slabwright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double fastest = 1e9;  // beyond it half of the digits are rounding

MatrixRows rows_of(const MatrixXd& matrix) {
  MatrixRows rows(static_cast<std::size_t>(matrix.rows()));
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (Index j = 0; j < matrix.cols(); ++j) rows[i].push_back(matrix(static_cast<Index>(i), j));
  return rows;
}

// Inputs in units of their own, in which each pushes the state by one in all: a large or a small unit of an input must
// not decide how often the whole is halved.
VectorXd pushes(const MatrixXd& inputs) {
  VectorXd sizes = inputs.cwiseAbs().colwise().sum().transpose();
  for (Index i = 0; i < sizes.size(); ++i)
    if (sizes[i] == 0.0) sizes[i] = 1.0;
  return sizes;
}

void add_product(std::vector<double>& sum, const MatrixRows& rows, const std::vector<double>& x) {
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (std::size_t j = 0; j < x.size(); ++j) sum[i] += rows[i][j] * x[j];
}

bool fits(const LinearStep& step, std::size_t states, std::size_t inputs) {
  return states == step.keep.size() && (step.held.empty() || step.held[0].size() == inputs);
}

}  // namespace

LinearStep exact_step(const LinearSystem& system, double dt_s) {
  expects_system(system);
  expects(std::isfinite(dt_s) && dt_s >= 0.0, "a step back in time");
  const MatrixXd a = matrix_of(system.of_states, system.of_states.size()) * dt_s;
  expects(column_norm(a) <= fastest, "a step far too long for the fastest state");
  const MatrixXd b = matrix_of(system.of_inputs, input_count(system)) * dt_s;
  const VectorXd sizes = pushes(b);
  const Index n = a.rows(), m = b.cols();
  MatrixXd all = MatrixXd::Zero(n + 2 * m, n + 2 * m);
  all.topLeftCorner(n, n) = a;
  all.block(0, n, n, m) = b * sizes.cwiseInverse().asDiagonal();
  all.block(n, n + m, m, m).setIdentity();
  const MatrixXd done = exponential(all).topRows(n);
  expects(done.allFinite(), "a state grows beyond all numbers");
  return {dt_s, rows_of(done.leftCols(n)), rows_of(done.middleCols(n, m) * sizes.asDiagonal()),
          rows_of(done.rightCols(m) * sizes.asDiagonal())};
}

std::vector<double> after_step(const LinearStep& step, const std::vector<double>& state,
                               const std::vector<double>& inputs) {
  expects(fits(step, state.size(), inputs.size()), "state or inputs that do not fit the step");
  std::vector<double> next(state.size(), 0.0);
  add_product(next, step.keep, state);
  add_product(next, step.held, inputs);
  return next;
}

std::vector<double> after_step(const LinearStep& step, const std::vector<double>& state,
                               const std::vector<double>& at_start, const std::vector<double>& at_end) {
  expects(at_start.size() == at_end.size(), "inputs at a step's two ends that do not fit each other");
  std::vector<double> next = after_step(step, state, at_start), change = at_end;
  for (std::size_t i = 0; i < change.size(); ++i) change[i] -= at_start[i];
  add_product(next, step.turned, change);
  return next;
}

std::optional<std::vector<double>> steady_state(const LinearSystem& system, const std::vector<double>& inputs) {
  expects_system(system);
  expects(inputs.size() == input_count(system), "inputs that do not fit the system");
  MatrixXd a = matrix_of(system.of_states, system.of_states.size());
  VectorXd rest = -matrix_of(system.of_inputs, inputs.size()) *
                  Eigen::Map<const VectorXd>(inputs.data(), static_cast<Index>(inputs.size()));
  // Fast rows and slow ones in one size, or a slow state would pass for one that nothing holds.
  for (Index i = 0; i < a.rows(); ++i) {
    const double size = a.row(i).cwiseAbs().maxCoeff();
    if (size == 0.0) return std::nullopt;
    a.row(i) /= size;
    rest[i] /= size;
  }
  const Eigen::FullPivLU<MatrixXd> parts(a);
  if (!parts.isInvertible()) return std::nullopt;
  const VectorXd x = parts.solve(rest);
  return std::vector<double>(x.data(), x.data() + x.size());
}

}  // namespace slabwright
