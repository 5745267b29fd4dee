// What a tape reads round a floor: on each side the corners, jambs, manifolds and joint ends that lie there, and the
// whole.
#include "sitework/dimensions.hpp"

#include <algorithm>
#include <cmath>

#include "sitework/nearest.hpp"

namespace slabwright::sitework {
namespace {

constexpr double same_place_m = 0.02;  // a tape does not tell places nearer than this apart
constexpr double on_wall_m = 0.05, at_wall_m = 0.35, straight_m = 1.0e-3;

/// A side of the floor: along x where it lies below or above, along y at the left or right.
struct RimSide {
  PlanSide side = PlanSide::below;
  bool along_x = true;
  double out = -1.0;  ///< towards smaller or larger coordinates

  double along(Point p) const { return along_x ? p.x_m : p.y_m; }
  double depth(Point p) const { return along_x ? p.y_m : p.x_m; }
  Point place(double along_m, double depth_m) const {
    return along_x ? Point{along_m, depth_m} : Point{depth_m, along_m};
  }
};

/// Where on the side something begins or ends, and how deep in the floor it lies.
struct RimStop {
  double along_m = 0.0, depth_m = 0.0;
};

bool faces(const Rim& rim, const RimSide& side, const RimPart& wall) {
  if (std::abs(side.depth(wall.from) - side.depth(wall.to)) > straight_m) return false;
  const double middle = 0.5 * (side.along(wall.from) + side.along(wall.to));
  return where_is(side.place(middle, side.depth(wall.from) + on_wall_m * side.out), rim.outline) == Where::outside;
}

bool lies_on(const RimPart& wall, Point p, double within_m) {
  return distance_to_edge_m(p, wall.from, wall.to) < within_m;
}

void add_stops(std::vector<RimStop>& stops, const Rim& rim, const RimSide& side, const RimPart& wall) {
  const auto stop = [&](Point p) { stops.push_back({side.along(p), side.depth(wall.from)}); };
  stop(wall.from);
  stop(wall.to);
  for (const RimPart& door : rim.door) {
    if (!lies_on(wall, door.from, on_wall_m) || !lies_on(wall, door.to, on_wall_m)) continue;
    stop(door.from);
    stop(door.to);
  }
  for (const RimManifold& manifold : rim.manifold) {
    // Only one that has the wall behind it.
    const bool behind = std::abs(side.depth(unit(manifold.facing)) + side.out) < on_wall_m;
    if (behind && lies_on(wall, manifold.place, at_wall_m)) stop(manifold.place);
  }
  for (const RimPart& joint : rim.joint) {
    for (const Point end : {joint.from, joint.to}) {
      if (lies_on(wall, end, on_wall_m)) stop(end);
    }
  }
}

std::vector<RimPart> walls_of(const Rim& rim) {
  std::vector<RimPart> walls;
  for (std::size_t k = 0; k < rim.outline.size(); ++k)
    walls.push_back({rim.outline[k], rim.outline[(k + 1) % rim.outline.size()]});
  return walls;
}

std::vector<RimStop> stops_on(const Rim& rim, const RimSide& side) {
  std::vector<RimStop> stops;
  for (const RimPart& wall : walls_of(rim)) {
    if (faces(rim, side, wall)) add_stops(stops, rim, side, wall);
  }
  // Of those at one place the outermost stays.
  std::sort(stops.begin(), stops.end(), [&](const RimStop& a, const RimStop& b) {
    return a.along_m != b.along_m ? a.along_m < b.along_m : a.depth_m * side.out > b.depth_m * side.out;
  });
  std::vector<RimStop> apart;
  for (const RimStop& stop : stops) {
    if (apart.empty() || stop.along_m - apart.back().along_m > same_place_m)
      apart.push_back(stop);
    else if (stop.depth_m * side.out > apart.back().depth_m * side.out)
      apart.back().depth_m = stop.depth_m;
  }
  return apart;
}

PlanDimension between(PlanSide side, Point from, Point to, double length_m) {
  return {side, false, from.x_m, from.y_m, to.x_m, to.y_m, length_m};
}

void add_side(std::vector<PlanDimension>& all, const Rim& rim, const RimSide& side, bool with_whole) {
  const auto stops = stops_on(rim, side);
  if (stops.size() < 2) return;
  double low = HUGE_VAL, high = -HUGE_VAL, edge = -HUGE_VAL;
  for (const Point p : rim.outline) {
    low = std::min(low, side.along(p));
    high = std::max(high, side.along(p));
    edge = std::max(edge, side.out * side.depth(p));
  }
  const bool only_whole =
      stops.size() == 2 && stops[0].along_m - low < same_place_m && high - stops[1].along_m < same_place_m;
  for (std::size_t k = 1; k < stops.size() && !only_whole; ++k) {
    all.push_back(between(side.side, side.place(stops[k - 1].along_m, stops[k - 1].depth_m),
                          side.place(stops[k].along_m, stops[k].depth_m), stops[k].along_m - stops[k - 1].along_m));
  }
  if (!with_whole) return;
  all.push_back(between(side.side, side.place(low, side.out * edge), side.place(high, side.out * edge), high - low));
  all.back().whole = true;
}

/// From the start of a slanting wall to its doors' jambs and its end.
void add_slanting(std::vector<PlanDimension>& all, const Rim& rim, const RimPart& wall) {
  const double length = distance_m(wall.from, wall.to);
  std::vector<double> stops{0.0, length};
  for (const RimPart& door : rim.door) {
    if (!lies_on(wall, door.from, on_wall_m) || !lies_on(wall, door.to, on_wall_m)) continue;
    for (const Point jamb : {door.from, door.to}) {
      const double at = distance_m(wall.from, jamb);
      if (at > same_place_m && at < length - same_place_m) stops.push_back(at);
    }
  }
  std::sort(stops.begin(), stops.end());
  const Point way = unit(minus(wall.to, wall.from));
  const auto at = [&](double along_m) { return plus(wall.from, {along_m * way.x_m, along_m * way.y_m}); };
  for (std::size_t k = 1; k < stops.size(); ++k)
    all.push_back(between(PlanSide::slanting, at(stops[k - 1]), at(stops[k]), stops[k] - stops[k - 1]));
}

}  // namespace

std::vector<PlanDimension> dimensions_of(const Rim& rim) {
  std::vector<PlanDimension> all;
  add_side(all, rim, {PlanSide::below, true, -1.0}, true);
  add_side(all, rim, {PlanSide::left, false, -1.0}, true);
  add_side(all, rim, {PlanSide::above, true, 1.0}, false);
  add_side(all, rim, {PlanSide::right, false, 1.0}, false);
  for (const RimPart& wall : walls_of(rim)) {
    const double off = std::min(std::abs(wall.from.x_m - wall.to.x_m), std::abs(wall.from.y_m - wall.to.y_m));
    if (off > straight_m) add_slanting(all, rim, wall);
  }
  return all;
}

}  // namespace slabwright::sitework
