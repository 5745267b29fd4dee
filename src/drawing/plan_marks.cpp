// Points by which tube is found again, corners to measure from, and how far from tube a hole may go.
#include "plan_parts.hpp"

namespace slabwright::drawn {
namespace {

constexpr double arm_m = 1.3 * mm, corner_m = 1.6 * mm;
constexpr double pen_m = 0.3 * mm;

}  // namespace

std::vector<SheetShape> mark_at(Point at, bool corner) {
  if (corner)
    return {Area{{ring_of(box_about(at, 2.0 * corner_m, 2.0 * corner_m))}, Fill{dark, Pattern::plain, dark}, {}}};
  std::vector<SheetShape> shapes{Disc{at, arm_m, white, {pen_m, dark, Dash::solid}}};
  for (const double y : {-0.7 * arm_m, 0.7 * arm_m})
    shapes.emplace_back(
        stroke({at.x_m - 0.7 * arm_m, at.y_m - y}, {at.x_m + 0.7 * arm_m, at.y_m + y}, {pen_m, dark, Dash::solid}));
  return shapes;
}

Part mark_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  for (const DrawnMark& mark : plan.mark) {
    const Point at = onto(mark.place);
    for (SheetShape& shape : mark_at(at, mark.corner)) part.shape.push_back(std::move(shape));
    const double reach = mark.corner ? corner_m : arm_m;
    part.obstacle.push_back(keep_off(at, at, reach));
    Label label = label_of(mark.name, mark.corner ? title_m : text_m, at);
    label.lettering.bold = true;
    const double w = 0.5 * label.wish.width_m + reach + 0.6 * mm, h = 0.5 * label.wish.height_m + reach + 0.4 * mm;
    for (const Point off : {Point{w, h}, Point{-w, h}, Point{w, -h}, Point{-w, -h}, Point{0.0, h}, Point{0.0, -h}})
      label.wish.spot.push_back({{at.x_m + off.x_m, at.y_m + off.y_m}, false});
    label.wish.leader_m = 60.0 * mm;
    label.wish.on_lines = OnLines::if_needed;
    label.wish.lines_first = true;
    label.on_ground = true;
    part.label.push_back(std::move(label));
  }
  return part;
}

std::vector<SheetShape> band_shapes(const DrawnFloor& plan, const Onto& onto) {
  std::vector<SheetShape> shapes;
  if (!plan.bands) return shapes;
  for (const auto& [half_m, grey_of_it] :
       {std::pair{plan.bands->doubt_m, doubt_grey}, {plan.bands->do_not_m, do_not_grey}}) {
    if (half_m <= 0.0) continue;
    for (const DrawnLoop& loop : plan.loop)
      shapes.emplace_back(Trace{onto(loop.path), {2.0 * half_m * onto.ratio, grey_of_it, Dash::solid}});
  }
  return shapes;
}

}  // namespace slabwright::drawn
