// Colebrook and White's equation, and one step towards its root.
#pragma once
#include <cmath>
#include <numbers>

namespace slabwright {

/// Colebrook and White's 2 log10, as a multiple of the natural logarithm (2 / ln 10): one log is dearer than all the
/// rest.
inline constexpr double two_log10 = 2.0 / std::numbers::ln10;

/// x = 1/sqrt(f) is the root of x + 2 log10(wall + film x) = 0, with wall = relative roughness / 3.7 and film = 2.51 /
/// Reynolds.
struct ColebrookEquation {
  double wall = 0.0;
  double film = 0.0;
};

/// One step of Halley's method, which is Newton's with the curvature: third order for the price of one logarithm. What
/// it leaves of x is less than 0.07 times the cube of what there was (both as shares of x, at f up to 0.09): the factor
/// is (film x / (wall + film x))^2 (w/3 - w^2/4), w = u/(1 + u), u = 2/ln 10 film / (wall + film x).
inline double colebrook_step(const ColebrookEquation& of, double x) {
  const double argument = of.wall + of.film * x;
  const double pull = two_log10 * of.film, both = argument + pull;
  const double residual = x + two_log10 * std::log(argument);
  return x - residual * both * argument / (both * both + 0.5 * residual * pull * of.film);
}

/// From the first line of Serghides' explicit form (1984) two steps reach rounding: the first leaves at most 6e-6 of x
/// between reynolds 4e3 and 1e8, and the error of the second goes with the cube of that.
inline double serghides_start(const ColebrookEquation& of, double reynolds) {
  return -two_log10 * std::log(of.wall + 12.0 / reynolds);
}

}  // namespace slabwright
