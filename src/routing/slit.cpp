#include "slit.hpp"

#include <algorithm>
#include <cmath>
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// A manifold at a wall stands no farther from it than this, in spacings.
constexpr double most_off_wall = 1.0;
constexpr double half_width_m = 0.0005;
/// In spacings: a little less than half, so that cells squeezed a little fit on both sides.
constexpr double slit_clearance = 0.48;
/// A slit behind is worth one beside it that is so much shorter; one to a border is worth less than one to a wall.
constexpr double beside_price = 1.4, border_price = 1.5;

double cross(Point a, Point b) { return a.x_m * b.y_m - a.y_m * b.x_m; }

struct Hit {
  std::size_t edge = 0;
  double by_m = HUGE_VAL;
};

/// The nearest edge from a place along a direction.
Hit nearest_edge(const Zone& zone, Point from, Point along) {
  Hit best;
  const std::size_t n = zone.corner.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point a = zone.corner[i], b = zone.corner[i + 1 < n ? i + 1 : 0];
    const Point edge{b.x_m - a.x_m, b.y_m - a.y_m}, to{a.x_m - from.x_m, a.y_m - from.y_m};
    const double across = cross(along, edge);
    if (across == 0.0) continue;
    const double by_m = cross(to, edge) / across, share = cross(to, along) / across;
    if (by_m > 0.0 && share >= 0.0 && share <= 1.0 && by_m < best.by_m) best = {i, by_m};
  }
  return best;
}

struct Slit {
  Hit hit;
  Point along;
  bool behind = false;
};

Slit best_slit(const Zone& zone, Point place, Point north) {
  const Point east{north.y_m, -north.x_m};
  Slit best;
  double least = HUGE_VAL;
  for (const Point way : {Point{-north.x_m, -north.y_m}, Point{-east.x_m, -east.y_m}, east}) {
    const bool behind = dot(way, north) < -0.5;
    const Hit hit = nearest_edge(zone, place, way);
    if (hit.by_m == HUGE_VAL) continue;
    const double price =
        hit.by_m * (behind ? 1.0 : beside_price) * (zone.edge[hit.edge].is_border ? border_price : 1.0);
    if (price >= least) continue;
    least = price;
    best = {hit, way, behind};
  }
  return best;
}

/// The line round the slit, both ends on the zone's edge.
std::vector<Point> line_round(const Zone& zone, const Slit& slit, Point place, double bar_m) {
  const Point inward{-slit.along.x_m, -slit.along.y_m}, side{-slit.along.y_m, slit.along.x_m};
  const auto on_edge = [&](double off_m) {
    const Point from = moved(place, side, off_m);
    const std::size_t next = slit.hit.edge + 1 < zone.corner.size() ? slit.hit.edge + 1 : 0;
    const Point a = zone.corner[slit.hit.edge], b = zone.corner[next];
    const Point edge{b.x_m - a.x_m, b.y_m - a.y_m}, to{a.x_m - from.x_m, a.y_m - from.y_m};
    return moved(from, slit.along, cross(to, edge) / cross(slit.along, edge));
  };
  const auto at = [&](double across_m, double inward_m) {
    return moved(moved(place, side, across_m), inward, inward_m);
  };
  if (!slit.behind) {
    // The bar itself runs on to the wall.
    return {on_edge(half_width_m), at(half_width_m, bar_m), at(-half_width_m, bar_m), on_edge(-half_width_m)};
  }
  return {on_edge(half_width_m),
          at(half_width_m, -2.0 * half_width_m),
          at(bar_m, -2.0 * half_width_m),
          at(bar_m, 0.0),
          at(-bar_m, 0.0),
          at(-bar_m, -2.0 * half_width_m),
          at(-half_width_m, -2.0 * half_width_m),
          on_edge(-half_width_m)};
}

}  // namespace

bool stands_free(const LayoutTask& task, const PortRow& manifold) {
  return distance_to_boundary_m(manifold.place, task.outline) > most_off_wall * task.spacing_m;
}

Zone with_slit(const Zone& zone, const LayoutTask& task, const PortRow& manifold, int loops) {
  const Slit slit = best_slit(zone, manifold.place, unit(manifold.facing));
  if (slit.hit.by_m == HUGE_VAL) return zone;
  const double bar_m = (loops + 0.5) * manifold.port_pitch_m;
  std::vector<Point> line = line_round(zone, slit, manifold.place, bar_m);
  const Point a = zone.corner[slit.hit.edge];
  if (distance_m(a, line.back()) < distance_m(a, line.front())) std::reverse(line.begin(), line.end());
  Zone made;
  const double clearance_m = slit_clearance * task.spacing_m;
  for (std::size_t i = 0; i < zone.corner.size(); ++i) {
    made.corner.push_back(zone.corner[i]);
    made.edge.push_back(zone.edge[i]);
    if (i != slit.hit.edge) continue;
    for (const Point& p : line) {
      made.corner.push_back(p);
      made.edge.push_back({clearance_m, true});
    }
    made.edge.back() = zone.edge[i];
  }
  return made;
}

}  // namespace slabwright::routing
