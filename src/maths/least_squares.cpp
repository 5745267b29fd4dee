// Least squares by Marquardt's method.
#include "slabwright/maths_least_squares.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// An unknown is not fixed where its direction carries less than this of the best-fixed one's weight.
constexpr double least_pivot_share = 1e-13;
constexpr double first_damping = 1e-3, least_damping = 1e-12, most_damping = 1e12;

VectorXd eigen(const std::vector<double>& x) {
  return Eigen::Map<const VectorXd>(x.data(), static_cast<Index>(x.size()));
}
std::vector<double> plain(const VectorXd& x) { return {x.data(), x.data() + x.size()}; }

MatrixXd slopes(const std::vector<double>& x, const Leftovers& leftovers, double step) {
  MatrixXd all;
  for (std::size_t i = 0; i < x.size(); ++i) {
    std::vector<double> up = x, down = x;
    up[i] += step;
    down[i] -= step;
    const VectorXd slope = (eigen(leftovers(up)) - eigen(leftovers(down))) / (2.0 * step);
    if (i == 0) all.resize(slope.size(), static_cast<Index>(x.size()));
    all.col(static_cast<Index>(i)) = slope;
  }
  return all;
}

/// Empty where some mix of unknowns is not fixed.
MatrixXd covariance_of(const MatrixXd& normal) {
  // Judged by the unknowns' own scales, or a small unit would look like a strong hold.
  const VectorXd scale = normal.diagonal().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
  const MatrixXd even = scale.asDiagonal() * normal * scale.asDiagonal();
  const Eigen::SelfAdjointEigenSolver<MatrixXd> parts(even);
  const VectorXd weight = parts.eigenvalues();
  if (!(weight.minCoeff() > least_pivot_share * weight.maxCoeff())) return {};
  const MatrixXd inverse = parts.eigenvectors() * weight.cwiseInverse().asDiagonal() * parts.eigenvectors().transpose();
  return scale.asDiagonal() * inverse * scale.asDiagonal();
}

/// One try of a step: the damping doubles as a record of how the last tries went.
class Search {
 public:
  Search(LeastSquares& at, const Leftovers& leftovers, const LeastSquaresOptions& options)
      : at_(at), leftovers_(leftovers), options_(options) {}

  void run() {
    while (at_.rounds < options_.most_rounds && at_.stop == Stop::rounds_spent) {
      ++at_.rounds;
      const MatrixXd slope = slopes(at_.x, leftovers_, options_.difference);
      normal_ = slope.transpose() * slope;
      down_ = -slope.transpose() * eigen(at_.leftover);
      const MatrixXd covariance = covariance_of(normal_);
      if (covariance.size() == 0) {
        at_.stop = Stop::no_solution;
        at_.covariance.clear();
        return;
      }
      keep(covariance);
      step(covariance);
    }
  }

 private:
  void keep(const MatrixXd& covariance) {
    at_.covariance.assign(at_.x.size(), std::vector<double>(at_.x.size()));
    for (std::size_t i = 0; i < at_.x.size(); ++i) {
      for (std::size_t j = 0; j < at_.x.size(); ++j)
        at_.covariance[i][j] = covariance(static_cast<Index>(i), static_cast<Index>(j));
    }
  }

  /// Damps until the squares fall. A step that is small beside the standard errors ends the search.
  void step(const MatrixXd& covariance) {
    for (; damping_ <= most_damping; damping_ *= 4.0) {
      MatrixXd damped = normal_;
      damped.diagonal() *= 1.0 + damping_;
      const VectorXd by = damped.ldlt().solve(down_);
      const VectorXd to = eigen(at_.x) + by;
      std::vector<double> leftover = leftovers_(plain(to));
      const double squares = eigen(leftover).squaredNorm();
      const double worst = (by.array().abs() / covariance.diagonal().array().sqrt()).maxCoeff();
      const bool settled = worst <= options_.tolerance;
      if (squares <= at_.squares) {
        at_.x = plain(to);
        at_.leftover = std::move(leftover);
        at_.squares = squares;
        damping_ = std::max(0.1 * damping_, least_damping);
      }
      if (settled) at_.stop = Stop::converged;
      if (settled || squares <= at_.squares) return;
    }
    // Downhill on paper, uphill by the numbers: rounding is all that is left.
    at_.stop = Stop::converged;
  }

  LeastSquares& at_;
  const Leftovers& leftovers_;
  const LeastSquaresOptions& options_;
  MatrixXd normal_;
  VectorXd down_;
  double damping_ = first_damping;
};

}  // namespace

LeastSquares least_squares(std::vector<double> x, const Leftovers& leftovers, const LeastSquaresOptions& options) {
  expects(!x.empty(), "least_squares: one unknown at least");
  LeastSquares at;
  at.x = std::move(x);
  at.leftover = leftovers(at.x);
  expects(at.leftover.size() >= at.x.size(), "least_squares: a leftover for each unknown at least");
  at.squares = eigen(at.leftover).squaredNorm();
  if (!std::isfinite(at.squares)) {
    at.stop = Stop::not_finite;
    return at;
  }
  Search(at, leftovers, options).run();
  return at;
}

}  // namespace slabwright
