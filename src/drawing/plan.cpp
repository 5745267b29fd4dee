// The plan put together: every part brings shapes, obstacles and labels; all labels are placed at once; layers follow
// from the floor upwards.
#include <algorithm>
#include <iterator>

#include "plan_sheet.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace drawn;

struct Parts {
  Part number, tube, chevron, house, manifold, dimension, room, anchor, tip, mark;
};

/// Labels in the order in which they choose: what can stand in one place only goes first.
std::vector<Part*> in_order(Parts& parts) {
  return {&parts.manifold,  &parts.mark,    &parts.number, &parts.anchor, &parts.house,
          &parts.dimension, &parts.chevron, &parts.room,   &parts.tube,   &parts.tip};
}

Parts parts_of(const DrawnFloor& plan, const Frame& frame, const TubePens& pens, const Raster& raster) {
  const Onto& onto = frame.onto;
  Parts parts{number_part(plan, onto, raster), tube_part(plan, onto, pens),
              chevron_part(plan, onto, pens),  wall_part(plan, onto),
              manifold_part(plan, onto),       dimension_part(plan, onto),
              room_part(plan, onto),           anchor_part(plan, onto),
              tip_part(plan, onto, pens),      mark_part(plan, onto)};
  add(parts.house, no_tube_part(plan, onto));
  add(parts.house, joint_part(plan, onto));
  if (plan.bands) parts.chevron = {};
  return parts;
}

/// The floor without no-tube areas, for the tints to end at.
std::vector<Polygon> tinted_floor(const DrawnFloor& plan, const Onto& onto) {
  std::vector<Polygon> rings{onto(plan.floor.outline)};
  for (const Polygon& hole : plan.floor.hole) rings.push_back(onto(hole));
  return rings;
}

ColumnText column_text(const DrawnFloor& plan, const TubePens& pens) {
  ColumnText text{{}, key_lines(plan, pens), !plan.loop.empty()};
  if (pens.times_true > 1.05 && !plan.loop.empty())
    text.sentence.push_back({"Tube is drawn wider than it is, so that it can be seen.", ""});
  return text;
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
  sheet.zero = frame.onto.zero;
  sheet.pattern = unlike(plan.loop.size(), neighbours(open), light_patterns_number);
  for (const DrawnLoop& loop : plan.loop) sheet.chevrons_number += chevrons_on(loop, plan.units);
  Parts parts = parts_of(plan, frame, pens, cut);
  const Placed placed = place_all(in_order(parts), frame);
  LabelShapes labels = label_shapes(plan, frame, placed);
  sheet.ports_number = labels.ports_number;
  sheet.left_out = labels.left_out;
  Column column = column_of(plan, frame, column_text(plan, pens), labels.left_out);
  sheet.left_out.insert(sheet.left_out.end(), column.left_out.begin(), column.left_out.end());

  Picture& drawing = sheet.picture;
  drawing.width_m = frame.width_m;
  drawing.height_m = frame.height_m;
  drawing.title = joined(plan.title).text;
  drawing.title_key = joined(plan.title).key;
  drawing.description = "Plan of a heated floor with its tube loops, to scale";
  if (plan.bands)
    drawing.layer.push_back({"bands", band_shapes(plan, frame.onto), tinted_floor(plan, frame.onto)});
  else
    drawing.layer.push_back(
        {"patches", patch_shapes(plan, frame.onto, open, sheet.pattern), tinted_floor(plan, frame.onto)});
  drawing.layer.push_back({"loop-numbers", std::move(labels.number), {}});
  drawing.layer.push_back({"no-tube", std::move(parts.house.under), {}});
  drawing.layer.push_back({"tube-cool", std::move(parts.tube.under), {}});
  drawing.layer.push_back({"tube-warm", std::move(parts.tube.shape), {}});
  drawing.layer.push_back({"flow", std::move(parts.chevron.shape), {}});
  drawing.layer.push_back({"turn-ends", std::move(parts.tip.shape), {}});
  drawing.layer.push_back({"walls", std::move(parts.house.shape), {}});
  drawing.layer.push_back({"manifolds", std::move(parts.manifold.shape), {}});
  drawing.layer.push_back({"anchors", std::move(parts.anchor.shape), {}});
  drawing.layer.push_back({"marks", std::move(parts.mark.shape), {}});
  drawing.layer.push_back({"dimensions", std::move(parts.dimension.shape), {}});
  drawing.layer.push_back({"labels", std::move(labels.text), {}});
  drawing.layer.push_back({"beside", std::move(column.shape), {}});
  drawing.layer.push_back({"frame", frame_lines(frame), {}});
  return sheet;
}

}  // namespace slabwright
