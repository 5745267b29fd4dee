// The place of a path that is nearest to a point.
#pragma once
#include <cstddef>
#include <span>
#include <vector>

#include "slabwright/geometry_path.hpp"

namespace slabwright::sitework {

struct Foot {
  Point place;
  Point ahead;              ///< along the path there, of length 1
  double along_m = 0.0;     ///< from the beginning of the piece or path
  double distance_m = 0.0;  ///< from the point asked about
};

Foot foot_on(Point point, const Piece& piece);

/// Where a path passes a point: the nearest place of each run of pieces that comes within `reach_m` and leaves again,
/// or comes nearer a second time. In the order of the path.
std::vector<Foot> passes_of(Point point, std::span<const Piece> path, double reach_m);

/// The nearest place of several paths, the first of equals; at least one of them has a piece.
struct NearestFoot {
  std::size_t loop = 0;
  Foot foot;
};
NearestFoot nearest_of(Point point, const std::vector<Path>& loops);

inline Point minus(Point a, Point b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }
inline Point plus(Point a, Point b) { return {a.x_m + b.x_m, a.y_m + b.y_m}; }
inline double dot(Point a, Point b) { return a.x_m * b.x_m + a.y_m * b.y_m; }
inline double cross(Point a, Point b) { return a.x_m * b.y_m - a.y_m * b.x_m; }
/// Of length 1; (1, 0) for a direction without length.
Point unit(Point direction);

}  // namespace slabwright::sitework
