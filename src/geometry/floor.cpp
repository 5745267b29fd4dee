// Straight lines that meet, and polygons with holes.
#include <algorithm>
#include <cmath>

#include "slabwright/geometry_path.hpp"

namespace slabwright {
namespace {

bool on_edge(Point point, Point from, Point to) {
  return std::min(from.x_m, to.x_m) <= point.x_m && point.x_m <= std::max(from.x_m, to.x_m) &&
         std::min(from.y_m, to.y_m) <= point.y_m && point.y_m <= std::max(from.y_m, to.y_m) &&
         side_of(from, to, point) == Side::on;
}

bool boxes_apart(Point a, Point b, Point c, Point d) {
  return std::max(a.x_m, b.x_m) < std::min(c.x_m, d.x_m) || std::max(c.x_m, d.x_m) < std::min(a.x_m, b.x_m) ||
         std::max(a.y_m, b.y_m) < std::min(c.y_m, d.y_m) || std::max(c.y_m, d.y_m) < std::min(a.y_m, b.y_m);
}

/// Where a-b passes an edge or a corner of the polygon, as shares of a-b.
void add_cuts(Point a, Point b, const Polygon& polygon, std::vector<double>& shares) {
  const Point along{b.x_m - a.x_m, b.y_m - a.y_m};
  const double length2 = along.x_m * along.x_m + along.y_m * along.y_m;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point c = polygon[i], d = polygon[i + 1 < polygon.size() ? i + 1 : 0];
    const Point edge{d.x_m - c.x_m, d.y_m - c.y_m}, gap{c.x_m - a.x_m, c.y_m - a.y_m};
    const double cross = along.x_m * edge.y_m - along.y_m * edge.x_m;
    if (cross != 0.0) shares.push_back((gap.x_m * edge.y_m - gap.y_m * edge.x_m) / cross);
    if (length2 > 0.0) shares.push_back((gap.x_m * along.x_m + gap.y_m * along.y_m) / length2);
  }
}

}  // namespace

bool meet(Point a, Point b, Point c, Point d) {
  if (boxes_apart(a, b, c, d)) return false;
  const Side abc = side_of(a, b, c), abd = side_of(a, b, d), cda = side_of(c, d, a), cdb = side_of(c, d, b);
  const bool touching = abc == Side::on || abd == Side::on || cda == Side::on || cdb == Side::on;
  if (!touching) return abc != abd && cda != cdb;
  return on_edge(c, a, b) || on_edge(d, a, b) || on_edge(a, c, d) || on_edge(b, c, d);
}

double distance_of_edges_m(Point a, Point b, Point c, Point d) {
  if (meet(a, b, c, d)) return 0.0;
  return std::min(std::min(distance_to_edge_m(a, c, d), distance_to_edge_m(b, c, d)),
                  std::min(distance_to_edge_m(c, a, b), distance_to_edge_m(d, a, b)));
}

double area_m2(const Floor& floor) {
  double area = std::abs(signed_area_m2(floor.outline));
  for (const Polygon& hole : floor.hole) area -= std::abs(signed_area_m2(hole));
  return area;
}

Where where_is(Point point, const Floor& floor) {
  const Where in_outline = where_is(point, floor.outline);
  if (in_outline != Where::inside) return in_outline;
  for (const Polygon& hole : floor.hole) {
    const Where in_hole = where_is(point, hole);
    if (in_hole != Where::outside) return in_hole == Where::inside ? Where::outside : Where::boundary;
  }
  return Where::inside;
}

double distance_to_boundary_m(Point point, const Floor& floor) {
  double least = distance_to_boundary_m(point, floor.outline);
  for (const Polygon& hole : floor.hole) least = std::min(least, distance_to_boundary_m(point, hole));
  return least;
}

std::vector<Share> clipped(Point a, Point b, const Floor& floor) {
  std::vector<double> shares{0.0, 1.0};
  add_cuts(a, b, floor.outline, shares);
  for (const Polygon& hole : floor.hole) add_cuts(a, b, hole, shares);
  std::sort(shares.begin(), shares.end());
  std::vector<Share> parts;
  for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
    const double from = std::max(0.0, shares[k]), to = std::min(1.0, shares[k + 1]);
    if (to <= from) continue;
    const double middle = 0.5 * (from + to);
    const Point at{a.x_m + middle * (b.x_m - a.x_m), a.y_m + middle * (b.y_m - a.y_m)};
    if (where_is(at, floor) == Where::outside) continue;
    if (!parts.empty() && parts.back().to_ratio == from) {
      parts.back().to_ratio = to;
    } else {
      parts.push_back({from, to});
    }
  }
  return parts;
}

}  // namespace slabwright
