// Least squares: straight lines by their own formula, curved fits by their truth, and what nothing fixes.
#include <cmath>

#include "slabwright/maths_least_squares.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

const std::vector<double> at{0.0, 1.0, 2.0, 3.5, 5.0};

}  // namespace

TEST_CASE("a straight line is that of the normal equations, with their standard errors") {
  const std::vector<double> read{1.1, 2.9, 5.2, 7.9, 11.2};
  const double error = 0.2;
  const LeastSquares fit = least_squares({0.0, 0.0}, [&](const std::vector<double>& x) {
    std::vector<double> left;
    for (std::size_t i = 0; i < at.size(); ++i) left.push_back((read[i] - x[0] - x[1] * at[i]) / error);
    return left;
  });
  double mean = 0.0, mean_read = 0.0, across = 0.0, both = 0.0;
  for (std::size_t i = 0; i < at.size(); ++i) {
    mean += at[i] / 5.0;
    mean_read += read[i] / 5.0;
  }
  for (std::size_t i = 0; i < at.size(); ++i) {
    across += (at[i] - mean) * (at[i] - mean);
    both += (at[i] - mean) * (read[i] - mean_read);
  }
  CHECK(fit.stop == Stop::converged);
  CHECK(fit.x[1] == Approx(both / across));
  CHECK(fit.x[0] == Approx(mean_read - mean * both / across));
  CHECK(fit.covariance[1][1] == Approx(error * error / across));
  CHECK(fit.covariance[0][0] == Approx(error * error * (1.0 / 5.0 + mean * mean / across)));
  CHECK(fit.covariance[0][1] == Approx(-error * error * mean / across));
}

TEST_CASE("a curve is found from afar") {
  const auto model = [](const std::vector<double>& x, double t) { return x[0] * std::exp(-x[1] * t) + x[2]; };
  const std::vector<double> truth{2.0, 0.7, 0.4};
  const LeastSquares fit = least_squares({0.5, 2.0, 0.0}, [&](const std::vector<double>& x) {
    std::vector<double> left;
    for (const double t : at) left.push_back((model(truth, t) - model(x, t)) / 0.01);
    return left;
  });
  CHECK(fit.stop == Stop::converged);
  // A millionth of the standard errors, which are some hundredths.
  for (std::size_t i = 0; i < 3; ++i) CHECK(fit.x[i] == Approx(truth[i]).epsilon(1e-6));
  CHECK(fit.squares < 1e-6);
}

TEST_CASE("the valley of Rosenbrock's function is followed to its end") {
  // Rosenbrock 1960, Comput. J. 3(3): 100 (y - x^2)^2 + (1 - x)^2 from (-1.2, 1).
  const LeastSquares fit = least_squares({-1.2, 1.0}, [](const std::vector<double>& x) {
    return std::vector<double>{10.0 * (x[1] - x[0] * x[0]), 1.0 - x[0]};
  });
  CHECK(fit.stop == Stop::converged);
  CHECK(fit.x[0] == Approx(1.0).epsilon(1e-6));
  CHECK(fit.x[1] == Approx(1.0).epsilon(1e-6));
}

TEST_CASE("what nothing fixes is said, and what is no number") {
  const LeastSquares sum_only = least_squares({0.3, 0.3}, [](const std::vector<double>& x) {
    return std::vector<double>{x[0] + x[1] - 1.0, 2.0 * (x[0] + x[1] - 1.0)};
  });
  CHECK(sum_only.stop == Stop::no_solution);
  CHECK(sum_only.covariance.empty());
  const LeastSquares not_a_number =
      least_squares({1.0}, [](const std::vector<double>& x) { return std::vector<double>{std::log(-x[0])}; });
  CHECK(not_a_number.stop == Stop::not_finite);
  CHECK_THROWS_AS(least_squares({}, [](const std::vector<double>&) { return std::vector<double>{}; }),
                  std::logic_error);
  CHECK_THROWS_AS(least_squares({1.0, 2.0}, [](const std::vector<double>&) { return std::vector<double>{0.0}; }),
                  std::logic_error);
}
