// Anchors on the plan: where holes go, and whether they may.
#include <algorithm>

#include "plan_parts.hpp"

namespace slabwright::drawn {
namespace {

constexpr double least_radius_m = 0.8 * mm, pen_m = 0.25 * mm;

}  // namespace

std::vector<SheetShape> hole_at(Point at, double radius_m) {
  const double arm = radius_m + 0.7 * mm;
  return {Disc{at, radius_m, white, {pen_m, dark, Dash::solid}},
          stroke({at.x_m - arm, at.y_m}, {at.x_m + arm, at.y_m}, {pen_m, dark, Dash::solid}),
          stroke({at.x_m, at.y_m - arm}, {at.x_m, at.y_m + arm}, {pen_m, dark, Dash::solid})};
}

Part anchor_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  for (const DrawnAnchor& anchor : plan.anchor) {
    if (anchor.hole.empty()) continue;
    const double radius = std::max(least_radius_m, 0.5 * onto.ratio * anchor.diameter_m);
    std::vector<Point> holes;
    for (const Point& hole : anchor.hole) {
      const Point at = onto(hole);
      holes.push_back(at);
      for (SheetShape& shape : hole_at(at, radius)) part.shape.push_back(std::move(shape));
      part.obstacle.push_back(keep_off(at, at, radius + 0.7 * mm));
    }
    const Box box = grown(box_round(holes), radius + 0.7 * mm);
    // From the hole farthest to the right, or the only one.
    const Point target = *std::max_element(holes.begin(), holes.end(), [](Point a, Point b) { return a.x_m < b.x_m; });
    Label label = label_of(anchor.words, text_m, target);
    const double x = 0.5 * (box.low.x_m + box.high.x_m), y = 0.5 * (box.low.y_m + box.high.y_m);
    const double w = 0.5 * label.wish.width_m + 0.8 * mm, h = 0.5 * label.wish.height_m + 0.8 * mm;
    for (const Point at :
         {Point{x, box.high.y_m + h}, {x, box.low.y_m - h}, {box.high.x_m + w, y}, {box.low.x_m - w, y}})
      label.wish.spot.push_back({at, false});
    label.wish.leader_m = 120.0 * mm;
    label.wish.on_lines = OnLines::if_needed;
    label.wish.lines_first = true;
    label.on_ground = true;
    part.label.push_back(std::move(label));
  }
  return part;
}

}  // namespace slabwright::drawn
