// A response surface: what a slow calculation says at a few points, carried over to all points of a box.
#pragma once
#include <cstddef>
#include <cstdint>
#include <vector>

#include "slabwright/maths_sampling.hpp"

namespace slabwright {

/// For each output a full polynomial of second degree,
///   c + sum over i of z_i (b_i + sum over j from i on of q_ij z_j),   z_i = (x_i - middle_i) * per_half_i,
/// z from -1 to 1 over the range of the points that it was fitted to.
struct Surface {
  std::size_t outputs = 0;
  std::vector<double> middle;    ///< [dimension]
  std::vector<double> per_half;  ///< [dimension]: 1 over half the range; 0 where nothing varied
  /// Output after output: c, then for each i b_i and q_ii, q_i(i+1) and so on.
  std::vector<double> coefficients;
};

/// Coefficients of one output: 1 + d + d (d + 1) / 2.
std::size_t surface_terms(std::size_t dimensions);

struct SurfaceFit {
  Surface surface;
  /// [output]: root of the mean square of what is left at the fitted points. Kinder than the error elsewhere, and 0
  /// where there are no more points than terms.
  std::vector<double> residual;
};

/// Least squares by a pivoted orthogonal factorisation. A dimension in which all points agree is dropped: the surface
/// is right at that coordinate and does not look at it.
/// Contracts (std::logic_error): 1 to 12 dimensions; as many rows of values as points, of one width above 0; all
/// finite; as many points as surface_terms of the dimensions that vary, or more; points that tell the terms apart (a
/// dimension of two values alone does not tell its square).
SurfaceFit fit_surface(const SamplePoints& points, const std::vector<std::vector<double>>& values);

/// Takes no memory. Outside the range it goes on as the polynomial does, which is no answer to anything.
/// Contract: a point of as many dimensions, an output that there is.
double surface_value(const Surface& surface, const std::vector<double>& point, std::size_t output = 0);

struct SurfaceError {
  double largest;  ///< difference without its sign
  double rms;      ///< root of the mean square difference
};

/// [output]: the surface against values at points that it has not seen. Contract: as fit_surface, one point or more.
std::vector<SurfaceError> surface_error(const Surface& surface, const SamplePoints& points,
                                        const std::vector<std::vector<double>>& values);

/// Where to ask the slow calculation, in the unit box: its centre, the centres of its faces (low and high of each
/// dimension in turn), so that the extremes are in, and points of quasi_random for the rest. Twice surface_terms is a
/// fair count. Points for the error: quasi_random with another seed.
/// Contract: 1 to 12 dimensions; count 1 + 2 dimensions or more.
SamplePoints surface_points(std::size_t dimensions, std::size_t count, std::uint64_t seed);

}  // namespace slabwright
