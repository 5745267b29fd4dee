// Weighted least squares over a few unknowns, and how well the data fix them.
#pragma once
#include <functional>
#include <vector>

#include "slabwright/maths.hpp"
#include "slabwright/maths_linear.hpp"

namespace slabwright {

struct LeastSquaresOptions {
  double tolerance = 1e-6;   ///< last step over the unknown's standard error, in the worst unknown
  double difference = 1e-4;  ///< half the step of the central differences; the unknowns are of the order of one
  int most_rounds = 60;
};

/// `covariance` is that of the unknowns where each leftover has a standard error of 1, from the slopes at the end.
struct LeastSquares {
  std::vector<double> x;
  std::vector<double> leftover;
  double squares = 0.0;  ///< sum of the leftovers' squares
  MatrixRows covariance;
  Stop stop = Stop::rounds_spent;
  int rounds = 0;
};

using Leftovers = std::function<std::vector<double>(const std::vector<double>&)>;

/// The least sum of squares near x (Marquardt 1963, J. Soc. Indust. Appl. Math. 11(2)): Gauss's step, shortened along
/// the steepest way down while it leads upwards. Each leftover is data less model over its standard error; what is
/// known beforehand of an unknown is one more leftover. `no_solution`: some mix of unknowns that nothing fixes (no
/// covariance then). `not_finite`: no numbers at the start.
/// Contract (std::logic_error): one unknown at least, as many leftovers at least.
LeastSquares least_squares(std::vector<double> x, const Leftovers& leftovers, const LeastSquaresOptions& options = {});

}  // namespace slabwright
