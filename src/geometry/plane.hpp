// Arithmetic of points as vectors.
#pragma once
#include "slabwright/geometry.hpp"

namespace slabwright {

inline Point minus(Point a, Point b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }
inline double dot(Point a, Point b) { return a.x_m * b.x_m + a.y_m * b.y_m; }
inline double cross(Point a, Point b) { return a.x_m * b.y_m - a.y_m * b.x_m; }

/// On the straight line between two points, its ends included.
bool on_edge(Point point, Point from, Point to);

}  // namespace slabwright
