// Vectors of the plane.
#pragma once
#include <cmath>

#include "slabwright/geometry.hpp"

namespace slabwright::routing {

inline Point minus(Point a, Point b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }
inline double dot(Point a, Point b) { return a.x_m * b.x_m + a.y_m * b.y_m; }
inline double cross(Point a, Point b) { return a.x_m * b.y_m - a.y_m * b.x_m; }
inline Point moved(Point a, Point along, double by) { return {a.x_m + by * along.x_m, a.y_m + by * along.y_m}; }
inline Point unit(Point a) {
  const double length = std::sqrt(dot(a, a));
  return {a.x_m / length, a.y_m / length};
}

/// Whether a point lies within a distance of the line a-b; quicker than the distance.
inline bool within(Point p, Point a, Point b, double by_m) {
  const Point along = minus(b, a), to = minus(p, a);
  const double length2 = dot(along, along), t = dot(to, along);
  Point off = to;
  if (t >= length2) off = minus(p, b);
  if (t > 0.0 && t < length2) off = moved(to, along, -t / length2);
  return dot(off, off) <= by_m * by_m;
}

}  // namespace slabwright::routing
