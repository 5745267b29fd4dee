// Areas, crossings, and what lies in what.
#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/plane.hpp"
#include "slabwright/geometry.hpp"
#include "slabwright/geometry_path.hpp"

namespace slabwright {
namespace {

std::size_t after(std::size_t i, std::size_t size) { return i + 1 < size ? i + 1 : 0; }

/// Whether c lies in the box of a and b, its edges included.
bool between(Point a, Point b, Point c) {
  return std::min(a.x_m, b.x_m) <= c.x_m && c.x_m <= std::max(a.x_m, b.x_m) && std::min(a.y_m, b.y_m) <= c.y_m &&
         c.y_m <= std::max(a.y_m, b.y_m);
}

/// Edges with a common corner: they meet elsewhere only where one runs back on the other.
bool runs_back(Point from, Point corner, Point to) {
  return side_of(from, corner, to) == Side::on && dot(minus(from, corner), minus(to, corner)) > 0.0;
}

/// Where the straight line a-b is cut by c-d, as a share of a-b; nothing where they are parallel or miss.
std::optional<double> cut_share(Point a, Point b, Point c, Point d) {
  const Point along = minus(b, a), other = minus(d, c), gap = minus(c, a);
  const double cross = along.x_m * other.y_m - along.y_m * other.x_m;
  if (cross == 0.0) return std::nullopt;
  const double share = (gap.x_m * other.y_m - gap.y_m * other.x_m) / cross;
  const double other_share = (gap.x_m * along.y_m - gap.y_m * along.x_m) / cross;
  const bool hit = share > 0.0 && share < 1.0 && other_share >= 0.0 && other_share <= 1.0;
  return hit ? std::optional<double>(share) : std::nullopt;
}

/// Where an edge enters or leaves the outer polygon, or passes a corner of it; both its ends too, in order.
std::vector<double> cuts_of(Point from, Point to, std::span<const Point> outer) {
  std::vector<double> shares{0.0, 1.0};
  const double length2 = dot(minus(to, from), minus(to, from));
  for (std::size_t i = 0; i < outer.size(); ++i) {
    if (const auto share = cut_share(from, to, outer[i], outer[after(i, outer.size())])) shares.push_back(*share);
    const double foot = length2 > 0.0 ? dot(minus(outer[i], from), minus(to, from)) / length2 : 0.0;
    if (foot > 0.0 && foot < 1.0) shares.push_back(foot);
  }
  std::sort(shares.begin(), shares.end());
  return shares;
}

/// A place well inside: half way between two corners' heights and two walls there, where the less of both is most.
Point place_within(std::span<const Point> polygon) {
  std::vector<double> heights;
  for (const Point& corner : polygon) heights.push_back(corner.y_m);
  std::sort(heights.begin(), heights.end());
  Point place = polygon[0];
  double most_m = 0.0;
  for (std::size_t k = 0; k + 1 < heights.size(); ++k) {
    const double y = 0.5 * (heights[k] + heights[k + 1]);
    std::vector<double> walls;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i], b = polygon[after(i, polygon.size())];
      if ((a.y_m > y) != (b.y_m > y)) walls.push_back(a.x_m + (y - a.y_m) / (b.y_m - a.y_m) * (b.x_m - a.x_m));
    }
    std::sort(walls.begin(), walls.end());
    for (std::size_t i = 0; i + 1 < walls.size(); i += 2) {
      const double room_m = std::min(walls[i + 1] - walls[i], heights[k + 1] - heights[k]);
      if (room_m <= most_m) continue;
      most_m = room_m;
      place = {0.5 * (walls[i] + walls[i + 1]), y};
    }
  }
  return place;
}

/// Whether a thing holds at every corner of a polygon and at a place of every piece into which another cuts its edges.
template <class Holds>
bool all_along(std::span<const Point> polygon, std::span<const Point> other, Holds holds) {
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point from = polygon[i], to = polygon[after(i, polygon.size())], along = minus(to, from);
    if (!holds(from, true)) return false;
    const std::vector<double> cuts = cuts_of(from, to, other);
    for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
      const double middle = 0.5 * (cuts[k] + cuts[k + 1]);
      if (!holds({from.x_m + middle * along.x_m, from.y_m + middle * along.y_m}, false)) return false;
    }
  }
  return true;
}

}  // namespace

bool on_edge(Point point, Point from, Point to) {
  return between(from, to, point) && side_of(from, to, point) == Side::on;
}

double signed_area_m2(std::span<const Point> polygon) {
  double twice = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = minus(polygon[i], polygon[0]), b = minus(polygon[after(i, polygon.size())], polygon[0]);
    twice += a.x_m * b.y_m - a.y_m * b.x_m;
  }
  return 0.5 * twice;
}

double perimeter_m(std::span<const Point> polygon) {
  double sum = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) sum += distance_m(polygon[i], polygon[after(i, polygon.size())]);
  return sum;
}

Polygon normalized(std::span<const Point> polygon) {
  Polygon corners;
  for (const Point& corner : polygon) {
    if (corners.empty() || !(corner == corners.back())) corners.push_back(corner);
  }
  while (corners.size() > 1 && corners.back() == corners.front()) corners.pop_back();
  if (signed_area_m2(corners) < 0.0) std::reverse(corners.begin(), corners.end());
  return corners;
}

std::optional<Crossing> self_crossing(std::span<const Point> polygon) {
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point a = polygon[i], b = polygon[after(i, n)];
    for (std::size_t j = i + 1; j < n; ++j) {
      const Point c = polygon[j], d = polygon[after(j, n)];
      const bool follows = j == i + 1, precedes = after(j, n) == i;
      bool bad = false;
      if (follows) bad = runs_back(a, b, d);
      if (precedes) bad = bad || runs_back(c, a, b);
      if (!follows && !precedes) bad = meet(a, b, c, d);
      if (bad) return Crossing{i, j};
    }
  }
  return std::nullopt;
}

Where where_is(Point point, std::span<const Point> polygon) {
  bool odd = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i], b = polygon[after(i, polygon.size())];
    if (on_edge(point, a, b)) return Where::boundary;
    // A ray to the right: it passes an edge whose ends lie above and not above it, with the point on its left.
    const bool up = a.y_m <= point.y_m && b.y_m > point.y_m, down = b.y_m <= point.y_m && a.y_m > point.y_m;
    if (up && side_of(a, b, point) == Side::left) odd = !odd;
    if (down && side_of(b, a, point) == Side::left) odd = !odd;
  }
  return odd ? Where::inside : Where::outside;
}

double distance_m(Point a, Point b) { return std::sqrt(dot(minus(a, b), minus(a, b))); }

double distance_to_edge_m(Point point, Point from, Point to) {
  const Point along = minus(to, from);
  const double length2 = dot(along, along);
  const double share = length2 > 0.0 ? std::clamp(dot(minus(point, from), along) / length2, 0.0, 1.0) : 0.0;
  return distance_m(point, {from.x_m + share * along.x_m, from.y_m + share * along.y_m});
}

double distance_to_boundary_m(Point point, std::span<const Point> polygon) {
  double least = HUGE_VAL;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    least = std::min(least, distance_to_edge_m(point, polygon[i], polygon[after(i, polygon.size())]));
  }
  return least;
}

// The outer polygon has no holes, so its inside holds all of the inner polygon once it holds its boundary. Each edge is
// cut wherever it may pass from inside to outside; between two cuts one place speaks for the whole piece. That place is
// rounded, and where both edges lie on one slanting line it may land beside it: by less than `rounding_m`. A boundary
// held only within a tolerance may follow a spike of the outer polygon that is thinner than that, with nothing of it
// behind: so no outer edge may pass through the inner polygon, and a place well within that must lie in the outer one.
bool inside(std::span<const Point> inner, std::span<const Point> outer, double slack_m) {
  double reach_m = 0.0;
  for (const Point& p : inner) reach_m = std::max({reach_m, std::abs(p.x_m), std::abs(p.y_m)});
  const double rounding_m = 8.0 * std::numeric_limits<double>::epsilon() * reach_m;
  const double tolerance_m = std::max(slack_m, rounding_m);
  const auto held = [&](Point p, bool corner) {
    if (where_is(p, outer) != Where::outside) return true;
    // A distance is rounded, to nothing too; of a corner without slack only the exact answer counts.
    return (!corner || slack_m > 0.0) && distance_to_boundary_m(p, outer) <= tolerance_m;
  };
  const auto clear_of_inner = [&](Point p, bool) {
    return where_is(p, inner) != Where::inside || distance_to_boundary_m(p, inner) <= tolerance_m;
  };
  return all_along(inner, outer, held) && all_along(outer, inner, clear_of_inner) && held(place_within(inner), false);
}

Polygon rectangle(double width_m, double depth_m) {
  return {{0.0, 0.0}, {width_m, 0.0}, {width_m, depth_m}, {0.0, depth_m}};
}

}  // namespace slabwright
