// Dimensions round the plan: on each side the corners, jambs, manifolds and joint ends that lie there, and the whole.
#include <algorithm>
#include <cmath>

#include "plan_parts.hpp"

namespace slabwright::drawn {
namespace {

constexpr Pen thin{0.16 * mm, dark, Dash::solid};
constexpr double slanting_m = 24.0 * mm;  // from a slanting wall to its line: level names stand between
constexpr double same_place_m = 0.02;     // on the floor: a tape does not tell places nearer than this apart

/// A side of the floor: along x where it lies below or above, along y at the left or right.
struct SideLine {
  bool along_x = true;
  double out = -1.0;  ///< towards smaller or larger coordinates
};

double along(const SideLine& side, Point p) { return side.along_x ? p.x_m : p.y_m; }
double depth(const SideLine& side, Point p) { return side.along_x ? p.y_m : p.x_m; }
Point place(const SideLine& side, double along_m, double depth_m) {
  return side.along_x ? Point{along_m, depth_m} : Point{depth_m, along_m};
}

/// Where on the side something begins or ends, and how deep in the floor it lies.
struct Stop {
  double along_m = 0.0, depth_m = 0.0;
  bool ports = false;  ///< a manifold: its ports' numbers stand between it and the line
};

struct Wall {
  Point from, to;
};

bool faces(const DrawnFloor& plan, const SideLine& side, const Wall& wall) {
  if (std::abs(depth(side, wall.from) - depth(side, wall.to)) > 1.0e-3) return false;
  const double middle = 0.5 * (along(side, wall.from) + along(side, wall.to));
  return where_is(place(side, middle, depth(side, wall.from) + 0.05 * side.out), plan.floor.outline) == Where::outside;
}

bool lies_on(const Wall& wall, Point p, double within_m) {
  return distance_to_edge_m(p, wall.from, wall.to) < within_m;
}

void add_stops(std::vector<Stop>& stops, const DrawnFloor& plan, const SideLine& side, const Wall& wall) {
  const auto stop = [&](Point p) { stops.push_back({along(side, p), depth(side, wall.from)}); };
  stop(wall.from);
  stop(wall.to);
  for (const DrawnDoor& door : plan.door) {
    if (!lies_on(wall, door.from, 0.05) || !lies_on(wall, door.to, 0.05)) continue;
    stop(door.from);
    stop(door.to);
  }
  for (const DrawnManifold& manifold : plan.manifold) {
    // Only one that has the wall behind it.
    const Point facing = unit({}, manifold.facing);
    const bool behind = std::abs(depth(side, facing) + side.out) < 0.05;
    if (behind && lies_on(wall, manifold.place, 0.35)) {
      stops.push_back({along(side, manifold.place), depth(side, wall.from), true});
    }
  }
  for (const DrawnJoint& joint : plan.joint) {
    for (const Point end : {joint.from, joint.to}) {
      if (lies_on(wall, end, 0.05)) stop(end);
    }
  }
}

std::vector<Stop> stops_on(const DrawnFloor& plan, const SideLine& side) {
  std::vector<Stop> stops;
  const Polygon& ring = plan.floor.outline;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    const Wall wall{ring[k], ring[(k + 1) % ring.size()]};
    if (faces(plan, side, wall)) add_stops(stops, plan, side, wall);
  }
  // Of those at one place the outermost stays.
  std::sort(stops.begin(), stops.end(), [&](const Stop& a, const Stop& b) {
    return a.along_m != b.along_m ? a.along_m < b.along_m : a.depth_m * side.out > b.depth_m * side.out;
  });
  std::vector<Stop> apart;
  for (const Stop& stop : stops) {
    if (apart.empty() || stop.along_m - apart.back().along_m > same_place_m)
      apart.push_back(stop);
    else if (stop.depth_m * side.out > apart.back().depth_m * side.out)
      apart.back().depth_m = stop.depth_m;
  }
  return apart;
}

/// The text over the middle of its line, under it, or led away.
Label dimension_label(const std::string& text, Point a, Point b, Point out) {
  Label label = label_of(text, text_m, {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)});
  const bool upright = std::abs(b.y_m - a.y_m) > std::abs(b.x_m - a.x_m);
  const double away = 0.5 * label.wish.height_m + 0.5 * mm, room = distance_m(a, b) - label.wish.width_m - 1.0 * mm;
  if (room > 0.0) {
    for (const double shift : {0.0, 0.3 * room, -0.3 * room, 0.48 * room, -0.48 * room}) {
      const Point on = shifted(label.wish.target, unit(a, b), shift);
      label.wish.spot.push_back({shifted(on, out, away), upright});
      label.wish.spot.push_back({shifted(on, out, -away), upright});
    }
  }
  label.wish.leader_m = 40.0 * mm;
  return label;
}

/// A dimension on paper between two places, its line `at` out from them.
Part one(Point a, Point b, Point out, const std::string& text) {
  Part part;
  part.shape.push_back(stroke(a, b, thin));
  part.obstacle.push_back(keep_off(a, b, 0.25 * mm));
  const Point along_line = unit(a, b), tick{0.7 * (along_line.x_m + out.x_m), 0.7 * (along_line.y_m + out.y_m)};
  for (const Point end : {a, b}) {
    part.shape.push_back(
        stroke(shifted(end, tick, -1.0 * mm), shifted(end, tick, 1.0 * mm), {0.35 * mm, dark, Dash::solid}));
    part.obstacle.push_back(keep_off(end, end, 0.9 * mm));
  }
  part.label.push_back(dimension_label(text, a, b, out));
  return part;
}

Part side_chain(const DrawnFloor& plan, const Onto& onto, const SideLine& side, bool with_whole) {
  const auto stops = stops_on(plan, side);
  Part part;
  if (stops.size() < 2) return part;
  const Box floor = box_round(plan.floor.outline);
  const double rim = depth(side, onto(side.out < 0.0 ? floor.low : floor.high));
  const double low = along(side, floor.low), high = along(side, floor.high);
  const bool only_whole =
      stops.size() == 2 && stops[0].along_m - low < same_place_m && high - stops[1].along_m < same_place_m;
  const Point out = place(side, 0.0, side.out);
  const auto on_paper = [&](double along_m, double depth_m) {
    return place(side, along(side, onto(place(side, along_m, 0.0))), depth_m);
  };
  const double at = rim + side.out * zone_m, far = only_whole ? at : at + side.out * chain_m;
  if (!only_whole) {
    for (std::size_t k = 0; k < stops.size(); ++k) {
      const double past = stops[k].ports ? zone_m - 2.2 * mm : 1.3 * mm;
      const double from = depth(side, onto(place(side, 0.0, stops[k].depth_m))) + side.out * past;
      const Point a = on_paper(stops[k].along_m, from), b = on_paper(stops[k].along_m, at + side.out * 1.2 * mm);
      part.shape.push_back(stroke(a, b, thin));
      part.obstacle.push_back(keep_off(a, b, 0.15 * mm));
      if (k == 0) continue;
      add(part, one(on_paper(stops[k - 1].along_m, at), on_paper(stops[k].along_m, at), out,
                    length_words(stops[k].along_m - stops[k - 1].along_m, plan.units)));
    }
  }
  if (!with_whole) return part;
  for (const double end : {low, high}) {
    part.shape.push_back(
        stroke(on_paper(end, rim + side.out * 1.3 * mm), on_paper(end, far + side.out * 1.2 * mm), thin));
  }
  add(part, one(on_paper(low, far), on_paper(high, far), out, length_words(high - low, plan.units)));
  return part;
}

/// From the start of a slanting wall to its doors' jambs and its end.
std::vector<double> stops_along(const DrawnFloor& plan, const Wall& wall) {
  const double length = distance_m(wall.from, wall.to);
  std::vector<double> stops{0.0, length};
  for (const DrawnDoor& door : plan.door) {
    if (!lies_on(wall, door.from, 0.05) || !lies_on(wall, door.to, 0.05)) continue;
    for (const Point jamb : {door.from, door.to}) {
      const double at = distance_m(wall.from, jamb);
      if (at > same_place_m && at < length - same_place_m) stops.push_back(at);
    }
  }
  std::sort(stops.begin(), stops.end());
  return stops;
}

/// A wall that lies along neither axis has its own line, beyond its name; letters lie level.
Part slanting_wall(const DrawnFloor& plan, const Onto& onto, const Wall& wall) {
  const Point way = unit(wall.from, wall.to);
  Point out = across(way);
  const Point middle{0.5 * (wall.from.x_m + wall.to.x_m), 0.5 * (wall.from.y_m + wall.to.y_m)};
  if (where_is(shifted(middle, out, 0.05), plan.floor.outline) != Where::outside) out = {-out.x_m, -out.y_m};
  const auto stops = stops_along(plan, wall);
  Part part;
  for (std::size_t k = 0; k < stops.size(); ++k) {
    const Point at_wall = onto(shifted(wall.from, way, stops[k])), b = shifted(at_wall, out, slanting_m);
    part.shape.push_back(stroke(shifted(at_wall, out, 1.3 * mm), shifted(b, out, 1.2 * mm), thin));
    if (k == 0) continue;
    const Point a = shifted(onto(shifted(wall.from, way, stops[k - 1])), out, slanting_m);
    Part next = one(a, b, out, length_words(stops[k] - stops[k - 1], plan.units));
    LabelWish& wish = next.label[0].wish;
    wish.spot.clear();
    const double reach = 0.5 * (std::abs(out.x_m) * wish.width_m + std::abs(out.y_m) * wish.height_m) + 0.8 * mm;
    for (const double share : {0.5, 0.35, 0.65}) {
      const Point on = shifted(a, unit(a, b), share * distance_m(a, b));
      for (const double side : {1.0, -1.0}) wish.spot.push_back({shifted(on, out, side * reach), false});
    }
    add(part, std::move(next));
  }
  return part;
}

}  // namespace

Part dimension_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  add(part, side_chain(plan, onto, {true, -1.0}, true));
  add(part, side_chain(plan, onto, {false, -1.0}, true));
  for (const SideLine side : {SideLine{true, 1.0}, SideLine{false, 1.0}}) {
    const auto stops = stops_on(plan, side);
    const Box floor = box_round(plan.floor.outline);
    const bool whole = stops.size() == 2 && stops[1].along_m - stops[0].along_m >
                                                along(side, floor.high) - along(side, floor.low) - same_place_m;
    if (!whole) add(part, side_chain(plan, onto, side, false));
  }
  const Polygon& ring = plan.floor.outline;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    const Wall wall{ring[k], ring[(k + 1) % ring.size()]};
    const bool slanting =
        std::min(std::abs(wall.from.x_m - wall.to.x_m), std::abs(wall.from.y_m - wall.to.y_m)) > 1.0e-3;
    if (slanting) add(part, slanting_wall(plan, onto, wall));
  }
  return part;
}

}  // namespace slabwright::drawn
