// Tube on the plan: solid and hollow, chevrons along the flow, patches and the loops' numbers.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "plan_parts.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::drawn {
namespace {

struct Marks {
  double step_m;
  int numbered_every;
  int step_number;  ///< the step in the reader's units
};
Marks marks_in(System system) { return system == System::us ? Marks{10.0 * foot_m, 5, 10} : Marks{3.0, 5, 3}; }

/// Direction of flow at a distance from the supply.
Point flow_at(const Path& path, double at_m, double length_m) {
  const double by = 0.002;
  return unit(point_at(path, std::max(0.0, at_m - by)), point_at(path, std::min(length_m, at_m + by)));
}

struct Chevron {
  double half_width_m, back_m, pen_m;
};
Chevron chevron_for(const DrawnFloor& plan, const Onto& onto, const TubePens& pens, bool numbered) {
  const double pitch = onto.ratio * plan.spacing_m;
  const double half = std::max(std::min((numbered ? 1.25 : 0.95) * mm, 0.36 * pitch), 0.75 * pens.width_m);
  return {half, 1.1 * half, numbered ? 0.34 * mm : 0.24 * mm};
}

Trace chevron_at(Point tip, Point flow, const Chevron& size) {
  const Point front = shifted(tip, flow, 0.5 * size.back_m), back = shifted(tip, flow, -0.5 * size.back_m);
  const Point left = shifted(back, across(flow), size.half_width_m);
  const Point right = shifted(back, across(flow), -size.half_width_m);
  return {{line(left, front), line(front, right)}, {size.pen_m, dark, Dash::solid}};
}

/// Beside the tube, in the gap to the next one; further along; on the tube itself as the last.
std::vector<LabelSpot> number_spots(Point at, Point flow, const Label& label, double pitch_m, double tube_m) {
  const bool upright = std::abs(flow.y_m) > std::abs(flow.x_m);
  const double beside = std::min(0.5 * pitch_m, 0.5 * label.wish.height_m + 0.5 * tube_m + 0.45 * mm);
  const double half = 0.5 * label.wish.width_m;
  std::vector<LabelSpot> spots;
  for (const double along : {half + 1.3 * mm, -half - 1.3 * mm, 0.0, half + 3.0 * mm, -half - 3.0 * mm}) {
    for (const double side : {beside, -beside}) {
      spots.push_back({shifted(shifted(at, flow, along), across(flow), side), upright});
    }
  }
  for (const double along : {half + 1.6 * mm, -half - 1.6 * mm, half + 3.2 * mm}) {
    spots.push_back({shifted(at, flow, along), upright});
  }
  return spots;
}

}  // namespace

Part tube_part(const DrawnFloor& plan, const Onto& onto, const TubePens& pens) {
  Part part;
  for (const DrawnLoop& loop : plan.loop) {
    const double length = length_m(loop.path);
    const Path warm = onto(part_of(loop.path, 0.0, 0.5 * length)),
               cool = onto(part_of(loop.path, 0.5 * length, length));
    part.under.push_back(Trace{cool, {pens.width_m, dark, Dash::solid}});
    part.under.push_back(Trace{cool, {0.52 * pens.width_m, white, Dash::solid}});
    part.shape.push_back(Trace{warm, {pens.width_m, dark, Dash::solid}});
    const auto corners = flattened(onto(loop.path), 0.1 * mm);
    for (std::size_t k = 1; k < corners.size(); ++k) {
      part.obstacle.push_back({corners[k - 1], corners[k], 0.5 * pens.width_m + 0.15 * mm, Hardness::line});
    }
  }
  return part;
}

int chevrons_on(const DrawnLoop& loop, System system) {
  return static_cast<int>(std::ceil(length_m(loop.path) / marks_in(system).step_m - 1.0e-9)) - 1;
}

Part chevron_part(const DrawnFloor& plan, const Onto& onto, const TubePens& pens) {
  const Marks marks = marks_in(plan.units);
  Part part;
  for (const DrawnLoop& loop : plan.loop) {
    const double length = length_m(loop.path);
    for (int k = 1; k <= chevrons_on(loop, plan.units); ++k) {
      const Point at = onto(point_at(loop.path, k * marks.step_m));
      const Point flow = flow_at(loop.path, k * marks.step_m, length);
      const bool numbered = k % marks.numbered_every == 0;
      const Chevron size = chevron_for(plan, onto, pens, numbered);
      part.shape.push_back(chevron_at(at, flow, size));
      part.obstacle.push_back({at, at, size.half_width_m, Hardness::mark});
      if (!numbered) continue;
      Label label = label_of({fmt::format("{}", k * marks.step_number), scale_mark}, small_text_m, at);
      label.what = joined({{label.lettering.text, scale_mark}, {" along loop ", ""}, loop.number});
      label.wish.spot = number_spots(at, flow, label, onto.ratio * plan.spacing_m, pens.width_m);
      label.wish.leader_m = 25.0 * mm;
      label.wish.lines_first = true;
      label.wish.on_lines = OnLines::if_needed;
      part.label.push_back(std::move(label));
    }
  }
  return part;
}

Part number_part(const DrawnFloor& plan, const Onto& onto, const Raster& raster) {
  const auto places = wide_places(raster, plan.loop.size(), 9.0 * mm / onto.ratio);
  Part part;
  for (std::size_t k = 0; k < plan.loop.size(); ++k) {
    const std::string& text = plan.loop[k].number.text;
    const Point anywhere = point_at(plan.loop[k].path, 0.5 * length_m(plan.loop[k].path));
    const double radius = places[k].empty() ? 0.0 : onto.ratio * places[k][0].radius_m;
    const TextSize one = text_size(text, 1.0, true);
    const double fits = radius / (0.5 * std::sqrt(one.width_m * one.width_m + one.height_m * one.height_m));
    Label label;
    label.lettering = {{},
                       text,
                       std::clamp(fits, 3.6 * mm, 12.0 * mm),
                       number_grey,
                       true,
                       false,
                       Align::middle,
                       plan.loop[k].number.key};
    const TextSize size = text_size(text, label.lettering.size_m, true);
    label.wish.width_m = size.width_m;
    label.wish.height_m = size.height_m;
    label.wish.on_lines = OnLines::freely;
    label.wish.leader_m = 60.0 * mm;
    label.what = joined({{"number of loop ", ""}, plan.loop[k].number});
    label.wish.target = onto(places[k].empty() ? anywhere : places[k][0].middle);
    for (const WidePlace& place : places[k]) label.wish.spot.push_back({onto(place.middle), false});
    if (places[k].empty()) label.wish.spot.push_back({onto(anywhere), false});
    part.label.push_back(std::move(label));
  }
  return part;
}

Fill patch_fill(int pattern) {
  static constexpr std::array<Colour, light_patterns_number> tints{
      {{247, 241, 228}, {230, 239, 247}, {232, 243, 230}, {248, 234, 236}, {238, 234, 247}}};
  static constexpr std::array<Pattern, light_patterns_number> patterns{Pattern::plain, Pattern::dots, Pattern::rising,
                                                                       Pattern::crosses, Pattern::falling};
  const auto k = static_cast<std::size_t>(std::clamp(pattern, 0, light_patterns_number - 1));
  return {tints[k], patterns[k], {150, 152, 158}};
}

std::vector<SheetShape> patch_shapes(const DrawnFloor& plan, const Onto& onto, const Raster& raster,
                                     const std::vector<int>& pattern) {
  std::vector<SheetShape> shapes;
  for (std::size_t k = 0; k < plan.loop.size(); ++k) {
    Area area{{}, patch_fill(pattern[k]), {0.1 * mm, grey, Dash::solid}};
    for (const Polygon& ring : patch_rings(raster, static_cast<int>(k))) area.ring.push_back(onto(ring));
    shapes.emplace_back(std::move(area));
  }
  return shapes;
}

}  // namespace slabwright::drawn
