// Plane geometry: polygons and their relations. Metres; x to the right, y up. Decisions are exact on the numbers given,
// so that every compiler takes the same ones.
#pragma once
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace slabwright {

struct Point {
  double x_m = 0.0;
  double y_m = 0.0;
  friend bool operator==(const Point&, const Point&) = default;
};

/// Corners of a polygon, one after the other; the last is joined to the first. Functions on it ask for three corners
/// or more where they say nothing else.
using Polygon = std::vector<Point>;

/// Which side of the line from a to b the point c lies on.
enum class Side { right, on, left };

/// The sign of the exact determinant (Shewchuk 1997: a rounding bound first, then expansions). Coordinates below 1e100.
Side side_of(Point a, Point b, Point c);

/// Positive where the corners turn counter-clockwise. Zero for fewer than three corners.
double signed_area_m2(std::span<const Point> polygon);
double perimeter_m(std::span<const Point> polygon);

/// Without the corner that closes it, without repeated corners, counter-clockwise. Fewer than three corners may be
/// left.
Polygon normalized(std::span<const Point> polygon);

/// Two edges that meet elsewhere than at a shared corner; edge i runs from corner i to the next.
struct Crossing {
  std::size_t first = 0;
  std::size_t second = 0;
};
/// The first such pair of a normalized polygon: edges that cross, touch, lie on each other, or run back on themselves.
/// Every pair is looked at: n (n - 1) / 2 of them.
std::optional<Crossing> self_crossing(std::span<const Point> polygon);

enum class Where { outside, boundary, inside };
Where where_is(Point point, std::span<const Point> polygon);

double distance_m(Point a, Point b);
/// From a point to the nearest place of a straight line between two.
double distance_to_edge_m(Point point, Point from, Point to);
double distance_to_boundary_m(Point point, std::span<const Point> polygon);

/// Whether a simple polygon lies in another one, its boundary included. What lies within `slack_m` of the outer
/// boundary counts as inside: corners typed in feet and inches do not fall on a slanting wall to the last bit.
bool inside(std::span<const Point> inner, std::span<const Point> outer, double slack_m);

/// A rectangle with one corner at zero.
Polygon rectangle(double width_m, double depth_m);

}  // namespace slabwright
