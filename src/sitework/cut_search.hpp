// The least length of coils that pieces can come off: a bound that is proved, and a search that stops in time.
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "slabwright/sitework.hpp"

namespace slabwright::sitework {

/// A hair is no length.
inline constexpr double rounding_m = 1e-9;

/// The shortest of the coils, shortest first, that holds so much, or nothing.
std::optional<double> shortest_coil(const std::vector<double>& rising_m, double length_m);

/// What each piece must pay of its coil at least. The pieces of a coil share its length by their own: a piece pays
/// least in the coil that can be filled best around it. The sum over pieces is no more than any way of cutting buys.
/// The best fill is a subset sum on a grid of cells, each piece rounded down and the fill up.
std::vector<double> least_shares_m(const std::vector<double>& pieces_m, const std::vector<double>& rising_m);

/// Lengths that whole coils can add up to.
class CoilSums {
 public:
  /// `most_m`: sums are asked for up to here.
  CoilSums(const std::vector<double>& coils_m, double most_m);
  /// The least such sum that is no less than this; the length itself where coils are no whole feet or metres, or
  /// beyond `most_m`.
  double next_m(double length_m) const;

 private:
  double unit_m_ = 0.0;
  std::vector<std::size_t> next_;  ///< [units]: the least sum from here on
};

/// Coils filled one after the other, each from the longest piece left, all ways that could be better than `start` being
/// tried until a number of steps is used up. `least` tells whether all were.
CoilChoice searched(const std::vector<double>& pieces_m, const std::vector<double>& rising_m, const CoilChoice& start);

}  // namespace slabwright::sitework
