// The plan put together: every part brings shapes, obstacles and labels; all labels are placed at once; layers follow
// from the floor upwards.
#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "plan_sheet.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace drawn;

struct Parts {
  Part number, tube, chevron, house, manifold, dimension, room;
};

/// Labels in the order in which they choose: what can stand in one place only goes first.
std::vector<Part*> in_order(Parts& parts) {
  return {&parts.manifold, &parts.number, &parts.house, &parts.dimension, &parts.chevron, &parts.room, &parts.tube};
}

struct Placed {
  std::vector<Label> label;
  LabelPlan plan;
};

Placed place_all(Parts& parts, const Frame& frame) {
  Placed placed;
  std::vector<Obstacle> obstacles;
  std::vector<LabelWish> wishes;
  for (Part* part : in_order(parts)) {
    obstacles.insert(obstacles.end(), part->obstacle.begin(), part->obstacle.end());
    for (Label& label : part->label) {
      wishes.push_back(label.wish);
      placed.label.push_back(std::move(label));
    }
  }
  placed.plan = place_labels(frame.plan, obstacles, wishes, 0.35 * mm);
  return placed;
}

void append(std::vector<SheetShape>& to, std::vector<SheetShape> more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// Where line work had to be covered, a white ground that hides little more than the letters need.
void ground(std::vector<SheetShape>& shapes, const Lettering& text, double by_m) {
  shapes.emplace_back(Area{{ring_of(grown(box_of(text), by_m))}, Fill{white, Pattern::plain, white}, {}});
}

struct LabelShapes {
  std::vector<SheetShape> number;  ///< grey, below the tube
  std::vector<SheetShape> text;
  std::vector<std::string> left_out;
  int ports_number = 0;
};

LabelShapes label_shapes(const DrawnFloor& plan, const Frame& frame, const Placed& placed) {
  LabelShapes made;
  for (std::size_t k = 0; k < placed.label.size(); ++k) {
    const Label& label = placed.label[k];
    const auto& found = placed.plan.placed[k];
    if (!found) {
      made.left_out.push_back(label.what);
      continue;
    }
    if (!found->leader.empty()) {
      made.text.emplace_back(Trace{found->leader, {0.15 * mm, dark, Dash::solid}});
      made.text.emplace_back(Disc{label.wish.target, 0.35 * mm, dark, {}});
    }
    if (!label.port.empty()) {
      append(made.text, port_row(plan, frame.onto, label.manifold, *found));
      made.ports_number += static_cast<int>(label.port.size());
      continue;
    }
    Lettering text = label.lettering;
    text.middle = found->spot.middle;
    text.upright = found->spot.upright;
    const bool below = label.wish.on_lines == OnLines::freely && found->leader.empty();
    if (found->covers) ground(made.text, text, 0.2 * mm);
    if (label.on_ground && found->leader.empty()) ground(made.text, text, 0.7 * mm);
    (below ? made.number : made.text).emplace_back(std::move(text));
  }
  return made;
}

Parts parts_of(const DrawnFloor& plan, const Frame& frame, const TubePens& pens, const Raster& raster) {
  const Onto& onto = frame.onto;
  Parts parts{number_part(plan, onto, raster),
              tube_part(plan, onto, pens),
              chevron_part(plan, onto, pens),
              wall_part(plan, onto),
              manifold_part(plan, onto),
              dimension_part(plan, onto),
              room_part(plan, onto)};
  add(parts.house, no_tube_part(plan, onto));
  add(parts.house, joint_part(plan, onto));
  return parts;
}

/// The floor without no-tube areas, for the tints to end at.
std::vector<Polygon> tinted_floor(const DrawnFloor& plan, const Onto& onto) {
  std::vector<Polygon> rings{onto(plan.floor.outline)};
  for (const Polygon& hole : plan.floor.hole) rings.push_back(onto(hole));
  return rings;
}

std::vector<SheetShape> frame_lines(const Frame& frame) {
  const Box whole = grown({frame.plan.low, frame.column.high}, 2.0 * mm);
  return {Area{{ring_of(whole)}, std::nullopt, {0.35 * mm, dark, Dash::solid}}};
}

}  // namespace

PlanSheet draw_plan(const DrawnFloor& plan) {
  expects(plan.floor.outline.size() >= 3, "draw_plan: a floor without an outline");
  for (const DrawnLoop& loop : plan.loop) expects(!loop.path.empty(), "draw_plan: a loop without a path");
  const Frame frame = frame_for(plan);
  const TubePens pens = tube_pens(plan, frame.onto);
  const Box floor = box_round(plan.floor.outline);
  const double extent = std::max(floor.high.x_m - floor.low.x_m, floor.high.y_m - floor.low.y_m);
  const double spacing = plan.spacing_m > 0.0 ? plan.spacing_m : 0.05 * extent;
  const double cell = std::max(spacing / 6.0, extent / 1000.0);
  const Raster open = nearest_loops(plan, cell, 1.3 * spacing);
  const Raster cut = cut_to(plan.floor, open);

  PlanSheet sheet;
  sheet.scale_ratio = frame.onto.ratio;
  sheet.pattern = unlike(plan.loop.size(), neighbours(open), light_patterns_number);
  for (const DrawnLoop& loop : plan.loop) sheet.chevrons_number += chevrons_on(loop, plan.units);
  Parts parts = parts_of(plan, frame, pens, cut);
  const Placed placed = place_all(parts, frame);
  LabelShapes labels = label_shapes(plan, frame, placed);
  sheet.ports_number = labels.ports_number;
  sheet.left_out = labels.left_out;
  Column column = column_of(plan, frame, pens, labels.left_out);
  sheet.left_out.insert(sheet.left_out.end(), column.left_out.begin(), column.left_out.end());

  Picture& drawing = sheet.picture;
  drawing.width_m = frame.width_m;
  drawing.height_m = frame.height_m;
  drawing.title = plan.title;
  drawing.description =
      fmt::format("Plan of a heated floor with {} tube loops, scale 1:{}", plan.loop.size(), frame.denominator);
  drawing.layer.push_back(
      {"patches", patch_shapes(plan, frame.onto, open, sheet.pattern), tinted_floor(plan, frame.onto)});
  drawing.layer.push_back({"loop-numbers", std::move(labels.number), {}});
  drawing.layer.push_back({"no-tube", std::move(parts.house.under), {}});
  drawing.layer.push_back({"tube", std::move(parts.tube.shape), {}});
  drawing.layer.push_back({"flow", std::move(parts.chevron.shape), {}});
  drawing.layer.push_back({"walls", std::move(parts.house.shape), {}});
  drawing.layer.push_back({"manifolds", std::move(parts.manifold.shape), {}});
  drawing.layer.push_back({"dimensions", std::move(parts.dimension.shape), {}});
  drawing.layer.push_back({"labels", std::move(labels.text), {}});
  drawing.layer.push_back({"beside", std::move(column.shape), {}});
  drawing.layer.push_back({"frame", frame_lines(frame), {}});
  return sheet;
}

}  // namespace slabwright
