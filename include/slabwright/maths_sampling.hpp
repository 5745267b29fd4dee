// Points spread evenly over a box of several dimensions, and the band that many answers lie in.
#pragma once
#include <cstddef>
#include <cstdint>
#include <vector>

namespace slabwright {

/// [point][dimension].
using SamplePoints = std::vector<std::vector<double>>;

inline constexpr std::size_t sample_dimensions_most = 12;

/// The first points of Sobol's sequence (USSR Comput. Maths. Math. Phys. 7(4), 1967) with the direction numbers of Joe
/// and Kuo (SIAM J. Sci. Comput. 30(5), 2008), in the order of the Gray code. Starts at the corner (0, ..., 0).
/// Of any 2^m points in a row that begin at a multiple of 2^m, each coordinate has exactly one in each cell of width
/// 2^-m, and each pair of coordinates 2^t in each rectangle of area 2^(t-m) whose sides are powers of two, t at most
/// the sum of the degrees of the two polynomials less 2: 0 for the first two dimensions, at most 8 for the last.
/// Contract (std::logic_error): 1 to 12 dimensions, at most 2^32 points.
SamplePoints sobol_points(std::size_t count, std::size_t dimensions);

/// The same sequence with its binary digits scrambled by the seed (Owen 1995, nested uniform scrambling: each digit
/// is turned over or not by what stands before it), in [0, 1). The cells above hold for every seed, each point alone is
/// spread evenly, and the mean of several seeds has no bias, so that seeds tell how far a mean is off. Take 2^m points.
/// Same seed, same bytes on every machine. A longer sequence begins with the shorter. Contract as above.
SamplePoints quasi_random(std::size_t count, std::size_t dimensions, std::uint64_t seed);

/// The smallest of the values that at least this share of them do not exceed (the sample's distribution turned round,
/// definition 1 of Hyndman and Fan 1996). Always one of the values, never something between two of them: infinite ones
/// ("does not happen") are fine, and half of an even number is the lower of the two in the middle.
/// Contract: at least one value, none of them NaN, share 0 (the smallest) to 1 (the largest).
double quantile(std::vector<double> values, double share);

/// Nine of ten values lie between low and high.
struct Band {
  double low, middle, high;  ///< quantiles 0.05, 0.50 and 0.95
};
Band band_of(std::vector<double> values);

}  // namespace slabwright
