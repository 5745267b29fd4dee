// Vectors of the plane, and boxes along its axes.
#pragma once
#include <algorithm>
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

/// From the least x and y of a polygon to the most.
struct Box {
  Point least{HUGE_VAL, HUGE_VAL}, most{-HUGE_VAL, -HUGE_VAL};
};
inline Box box_of(const Polygon& polygon) {
  Box box;
  for (const Point p : polygon) {
    box.least = {std::min(box.least.x_m, p.x_m), std::min(box.least.y_m, p.y_m)};
    box.most = {std::max(box.most.x_m, p.x_m), std::max(box.most.y_m, p.y_m)};
  }
  return box;
}

inline Box box_of(Point a, Point b) {
  return {{std::min(a.x_m, b.x_m), std::min(a.y_m, b.y_m)}, {std::max(a.x_m, b.x_m), std::max(a.y_m, b.y_m)}};
}
inline bool apart(const Box& a, const Box& b, double by_m) {
  return a.least.x_m > b.most.x_m + by_m || b.least.x_m > a.most.x_m + by_m || a.least.y_m > b.most.y_m + by_m ||
         b.least.y_m > a.most.y_m + by_m;
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

/// Whether the boxes of two lines lie nearer to each other than this, along both axes.
inline bool boxes_nearer(Point a, Point b, Point c, Point d, double by_m) {
  return std::min(a.x_m, b.x_m) < std::max(c.x_m, d.x_m) + by_m &&
         std::min(c.x_m, d.x_m) < std::max(a.x_m, b.x_m) + by_m &&
         std::min(a.y_m, b.y_m) < std::max(c.y_m, d.y_m) + by_m &&
         std::min(c.y_m, d.y_m) < std::max(a.y_m, b.y_m) + by_m;
}

/// Whether two lines lie nearer to each other than this; quicker than the distance where their boxes do not.
inline bool nearer(Point a, Point b, Point c, Point d, double by_m) {
  return boxes_nearer(a, b, c, d, by_m) && distance_of_edges_m(a, b, c, d) < by_m;
}

}  // namespace slabwright::routing
