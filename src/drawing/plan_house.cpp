// Walls, doors, partitions, no-tube areas, joints and rooms on the plan.
#include <algorithm>
#include <cmath>

#include "plan_parts.hpp"

namespace slabwright::drawn {
namespace {

/// The sides of a ring as lines that labels keep off.
void keep_off_ring(Part& part, const Polygon& ring, double reach_m) {
  for (std::size_t k = 0; k < ring.size(); ++k) {
    part.obstacle.push_back(keep_off(ring[k], ring[(k + 1) % ring.size()], reach_m));
  }
}

/// Lines across an area, so that nothing comes to stand in it.
void keep_out_of(Part& part, const Polygon& ring) {
  const Box box = box_round(ring);
  const double step = 1.5 * mm;
  for (double y = box.low.y_m + 0.5 * step; y < box.high.y_m; y += step) {
    const Point a{box.low.x_m, y}, b{box.high.x_m, y};
    for (const Share share : clipped(a, b, {ring, {}})) {
      const double width = b.x_m - a.x_m;
      part.obstacle.push_back(
          keep_off({a.x_m + share.from_ratio * width, y}, {a.x_m + share.to_ratio * width, y}, 0.1 * mm));
    }
  }
}

/// Which way is out of the floor from a place on its rim.
Point outward(const DrawnFloor& plan, Point from, Point to) {
  const Point middle{0.5 * (from.x_m + to.x_m), 0.5 * (from.y_m + to.y_m)};
  const Point left = across(unit(from, to));
  const bool left_is_in = where_is(shifted(middle, left, 0.05), plan.floor) == Where::inside;
  return left_is_in ? Point{-left.x_m, -left.y_m} : left;
}

/// Along the outside of a wall, the middle first.
std::vector<LabelSpot> along_wall(Point a, Point b, Point out, const Label& label) {
  const bool upright = std::abs(b.y_m - a.y_m) > 2.0 * std::abs(b.x_m - a.x_m);
  const bool slanted = !upright && std::abs(b.y_m - a.y_m) > 0.05 * std::abs(b.x_m - a.x_m);
  const double half_depth =
      slanted ? 0.5 * (std::abs(out.x_m) * label.wish.width_m + std::abs(out.y_m) * label.wish.height_m)
              : 0.5 * label.wish.height_m;
  std::vector<LabelSpot> spots;
  for (const double away : {1.4 * mm, 4.6 * mm, 7.8 * mm}) {
    for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88}) {
      const Point on = shifted(a, unit(a, b), share * distance_m(a, b));
      spots.push_back({shifted(on, out, away + half_depth), upright});
    }
  }
  return spots;
}

bool before_a_door(const DrawnFloor& plan, const Onto& onto, const Label& label, const LabelSpot& spot) {
  const double w = spot.upright ? label.wish.height_m : label.wish.width_m;
  const double h = spot.upright ? label.wish.width_m : label.wish.height_m;
  const Box box = grown(box_about(spot.middle, w, h), 6.0 * mm);
  return std::any_of(plan.door.begin(), plan.door.end(), [&](const DrawnDoor& door) {
    return overlap(box, grown(box_round({onto(door.from), onto(door.to)}), 0.1 * mm));
  });
}

Part door_part(const DrawnFloor& plan, const DrawnDoor& door, const Onto& onto) {
  Part part;
  const Point a = onto(door.from), b = onto(door.to), out = outward(plan, door.from, door.to);
  part.shape.push_back(stroke(a, b, {wall_pen_m + 0.3 * mm, white, Dash::solid}));
  for (const double by : {-0.5 * wall_pen_m, 0.5 * wall_pen_m}) {
    part.shape.push_back(stroke(shifted(a, out, by), shifted(b, out, by), {0.13 * mm, dark, Dash::dashes}));
  }
  for (const Point jamb : {a, b}) {
    part.shape.push_back(
        stroke(shifted(jamb, out, -1.1 * mm), shifted(jamb, out, 1.1 * mm), {0.5 * mm, dark, Dash::solid}));
    part.obstacle.push_back(keep_off(shifted(jamb, out, -1.1 * mm), shifted(jamb, out, 1.1 * mm), 0.4 * mm));
  }
  Label label = label_of(door.words, text_m, {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)});
  label.wish.spot = along_wall(a, b, out, label);
  label.wish.leader_m = 40.0 * mm;
  part.label.push_back(std::move(label));
  return part;
}

}  // namespace

Part wall_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  Area walls{{onto(plan.floor.outline)}, std::nullopt, {wall_pen_m, dark, Dash::solid}};
  for (const Polygon& hole : plan.floor.hole) walls.ring.push_back(onto(hole));
  for (const Polygon& ring : walls.ring) keep_off_ring(part, ring, 0.6 * mm);
  part.shape.emplace_back(std::move(walls));
  for (const DrawnPartition& wall : plan.partition) {
    part.shape.push_back(stroke(onto(wall.from), onto(wall.to), {0.9 * mm, dark, Dash::solid}));
    part.shape.push_back(stroke(onto(wall.from), onto(wall.to), {0.5 * mm, white, Dash::solid}));
    part.obstacle.push_back({onto(wall.from), onto(wall.to), 0.7 * mm, Hardness::mark});
  }
  for (const DrawnDoor& door : plan.door) add(part, door_part(plan, door, onto));
  for (const DrawnWall& wall : plan.wall) {
    const Point a = onto(wall.from), b = onto(wall.to);
    Label label = label_of(wall.name, text_m, {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)});
    label.wish.spot = along_wall(a, b, outward(plan, wall.from, wall.to), label);
    // Before a door the door's own name stands.
    std::stable_partition(label.wish.spot.begin(), label.wish.spot.end(),
                          [&](const LabelSpot& spot) { return !before_a_door(plan, onto, label, spot); });
    label.wish.leader_m = 40.0 * mm;
    part.label.push_back(std::move(label));
  }
  return part;
}

namespace {

/// In the area, where its name has room: in the middle, else above or below.
std::vector<LabelSpot> spots_in(const Polygon& ring, const Label& label) {
  const Box box = box_round(ring);
  const Point middle{0.5 * (box.low.x_m + box.high.x_m), 0.5 * (box.low.y_m + box.high.y_m)};
  std::vector<LabelSpot> spots;
  for (const bool upright : {false, true}) {
    const double w = upright ? label.wish.height_m : label.wish.width_m;
    const double h = upright ? label.wish.width_m : label.wish.height_m;
    for (const double share : {0.0, 0.5, -0.5, 1.0, -1.0}) {
      for (const double aside : {0.0, 1.0, -1.0}) {
        const Point at{middle.x_m + aside * (0.5 * (box.high.x_m - box.low.x_m - w) - 0.9 * mm),
                       middle.y_m + share * (0.5 * (box.high.y_m - box.low.y_m - h) - 0.9 * mm)};
        if (inside(ring_of(grown(box_about(at, w, h), 0.8 * mm)), ring, 0.0)) spots.push_back({at, upright});
      }
    }
  }
  return spots;
}

/// Close by: on either side, above, below.
std::vector<LabelSpot> spots_beside(const Box& box, const Label& label) {
  const double x = 0.5 * (box.low.x_m + box.high.x_m), y = 0.5 * (box.low.y_m + box.high.y_m);
  std::vector<LabelSpot> spots;
  for (const double away : {0.9 * mm, 2.4 * mm, 4.2 * mm}) {
    const double w = 0.5 * label.wish.width_m + away, h = 0.5 * label.wish.height_m + away;
    for (const Point at : {Point{box.high.x_m + w, y},
                           {box.low.x_m - w, y},
                           {x, box.high.y_m + h},
                           {x, box.low.y_m - h},
                           {box.high.x_m + w, y + h},
                           {box.low.x_m - w, y + h},
                           {box.high.x_m + w, y - h},
                           {box.low.x_m - w, y - h}})
      spots.push_back({at, false});
  }
  return spots;
}

}  // namespace

Part no_tube_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  for (const DrawnNoTube& area : plan.no_tube) {
    const Polygon ring = onto(area.outline);
    part.under.push_back(Area{{ring}, Fill{white, Pattern::hatch, dark}, {0.3 * mm, dark, Dash::solid}});
    keep_off_ring(part, ring, 0.4 * mm);
    const Box box = box_round(ring);
    Label label = label_of(area.name, text_m, {0.5 * (box.low.x_m + box.high.x_m), 0.5 * (box.low.y_m + box.high.y_m)});
    label.wish.spot = spots_in(ring, label);
    const bool fits = !label.wish.spot.empty();
    for (const LabelSpot& spot : spots_beside(box, label)) label.wish.spot.push_back(spot);
    label.wish.leader_m = 250.0 * mm;
    label.wish.on_lines = OnLines::if_needed;
    label.wish.lines_first = true;
    label.on_ground = fits;
    if (area.name.text.empty() || !fits) keep_out_of(part, ring);
    if (!area.name.text.empty()) part.label.push_back(std::move(label));
  }
  return part;
}

namespace {

/// Rings where tube passes, with their sleeves' numbers.
Part sleeve_part(const DrawnFloor& plan, const DrawnJoint& joint, const Onto& onto) {
  Part part;
  for (const DrawnSleeve& sleeve : joint.sleeve) {
    const Point at = onto(sleeve.place);
    const double radius = std::min(1.4 * mm, 0.42 * onto.ratio * plan.spacing_m);
    part.shape.push_back(Disc{at, radius, std::nullopt, {0.3 * mm, dark, Dash::solid}});
    part.obstacle.push_back(keep_off(at, at, radius + 0.2 * mm));
    Label label = label_of(sleeve.number, small_text_m, at);
    label.what = joined({{"sleeve ", ""}, sleeve.number});
    // Close to the ring and to the tube that it belongs to; the next ring along the joint may be near.
    const double x = radius + 0.4 * mm + 0.5 * label.wish.width_m, y = radius + 0.4 * mm + 0.5 * label.wish.height_m;
    const double near = 0.5 * tube_pens(plan, onto).width_m + 0.3 * mm;
    const double low_x = near + 0.5 * label.wish.width_m, low_y = near + 0.5 * label.wish.height_m;
    for (const Point by : {Point{x, low_y},
                           {-x, low_y},
                           {x, -low_y},
                           {-x, -low_y},
                           {low_x, y},
                           {-low_x, y},
                           {low_x, -y},
                           {-low_x, -y},
                           {x, y},
                           {-x, y},
                           {x, -y},
                           {-x, -y},
                           {x, 0},
                           {-x, 0}}) {
      label.wish.spot.push_back({{at.x_m + by.x_m, at.y_m + by.y_m}, false});
    }
    label.wish.leader_m = 30.0 * mm;
    label.wish.on_lines = OnLines::if_needed;
    part.label.push_back(std::move(label));
  }
  return part;
}

/// The name at the joint's ends, where it speaks for the line without standing on tube.
Part joint_name(const DrawnJoint& joint, Point a, Point b) {
  Part part;
  Label label = label_of(joint.name, text_m, {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)});
  const Point along = unit(a, b);
  for (const double away : {2.0 * mm, 6.0 * mm}) {
    for (const auto& [end, way] : {std::pair{a, Point{-along.x_m, -along.y_m}}, {b, along}}) {
      const bool upright = std::abs(way.y_m) > std::abs(way.x_m);
      label.wish.spot.push_back({shifted(end, way, away + 0.5 * label.wish.width_m), upright});
    }
  }
  // Else beside it, from its ends in.
  const double off = 0.5 * label.wish.height_m + 0.9 * mm;
  const bool upright = std::abs(along.y_m) > std::abs(along.x_m);
  const double long_m = distance_m(a, b);
  for (double in = 0.5 * label.wish.width_m + 3.0 * mm; in < 0.5 * long_m; in += 6.0 * mm) {
    for (const double at : {long_m - in, in}) {
      for (const double side : {off, -off})
        label.wish.spot.push_back({shifted(shifted(a, along, at), across(along), side), upright});
    }
  }
  label.wish.on_lines = OnLines::if_needed;
  label.wish.lines_first = true;
  label.wish.target = b;
  label.wish.leader_m = 40.0 * mm;
  part.label.push_back(std::move(label));
  return part;
}

}  // namespace

Part joint_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  for (const DrawnJoint& joint : plan.joint) {
    const Point a = onto(joint.from), b = onto(joint.to);
    part.shape.push_back(stroke(a, b, {0.6 * mm, dark, Dash::dash_dot}));
    part.obstacle.push_back({a, b, 0.5 * mm, Hardness::mark});
    add(part, sleeve_part(plan, joint, onto));
    if (!joint.name.text.empty()) add(part, joint_name(joint, a, b));
  }
  return part;
}

Part room_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  for (const DrawnRoom& room : plan.room) {
    if (room.name.text.empty()) continue;
    const Polygon ring = onto(room.outline);
    const Box box = box_round(ring);
    Label label =
        label_of(room.name, 3.0 * mm, {0.5 * (box.low.x_m + box.high.x_m), 0.5 * (box.low.y_m + box.high.y_m)});
    label.wish.on_lines = OnLines::if_needed;
    label.wish.lines_first = true;
    // A fine net over the room, what is nearest to its upper left corner first.
    for (double y = box.high.y_m - 3.0 * mm; y > box.low.y_m; y -= 1.0 * mm) {
      for (double x = box.low.x_m + 2.0 * mm; x < box.high.x_m; x += 6.0 * mm) {
        for (const bool upright : {false, true}) {
          const double w = upright ? label.wish.height_m : label.wish.width_m;
          const double h = upright ? label.wish.width_m : label.wish.height_m;
          if (inside(ring_of(box_about({x, y}, w, h)), ring, 0.0)) label.wish.spot.push_back({{x, y}, upright});
        }
      }
    }
    label.wish.leader_m = 250.0 * mm;
    part.label.push_back(std::move(label));
  }
  return part;
}

}  // namespace slabwright::drawn
