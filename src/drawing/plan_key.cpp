// Samples of what the plan shows, with words.
#include "plan_sheet.hpp"

namespace slabwright::drawn {
namespace {

constexpr Point left{-5.5 * mm, 0.0}, right{5.5 * mm, 0.0};

std::vector<SheetShape> hollow(const TubePens& pens) {
  return {stroke(left, right, {pens.width_m, dark, Dash::solid}),
          stroke(left, right, {0.52 * pens.width_m, white, Dash::solid})};
}

KeyLine flow_line(const DrawnFloor& plan, const TubePens& pens) {
  const bool us = plan.units == System::us;
  KeyLine one{{stroke(left, right, {pens.width_m, dark, Dash::solid})}, {}};
  const double h = 1.0 * mm;
  one.sample.push_back(Trace{{line({-0.5 * h, h}, {0.6 * h, 0.0}), line({0.6 * h, 0.0}, {-0.5 * h, -h})},
                             {0.26 * mm, dark, Dash::solid}});
  one.words = {{"flow, every ", ""},
               {us ? "10 ft" : "3 m", scale_mark},
               {us ? "; numbers: feet along the loop from its supply port"
                   : "; numbers: metres along the loop from its supply port",
                ""}};
  return one;
}

void joint_lines(std::vector<KeyLine>& lines, const DrawnFloor& plan) {
  if (plan.joint.empty()) return;
  lines.push_back({{stroke(left, right, {0.6 * mm, dark, Dash::dash_dot})}, {{"joint in the concrete", ""}}});
  for (const DrawnJoint& joint : plan.joint) {
    if (joint.sleeve.empty()) continue;
    lines.push_back({{stroke(left, right, {0.6 * mm, dark, Dash::dash_dot}),
                      Disc{{}, 1.4 * mm, std::nullopt, {0.3 * mm, dark, Dash::solid}}},
                     {{"tube crosses a joint in a sleeve: number beside the ring", ""}}});
    return;
  }
}

void mark_lines(std::vector<KeyLine>& lines, const DrawnFloor& plan) {
  if (plan.bands) {
    const Box field = box_about({}, 8.0 * mm, 3.6 * mm);
    const auto band = [&](Colour colour, const char* words) {
      lines.push_back({{Area{{ring_of(field)}, Fill{colour, Pattern::plain, colour}, {0.1 * mm, dark, Dash::solid}}},
                       {{words, ""}}});
    };
    band(do_not_grey, "do not drill");
    band(doubt_grey, "in doubt: scan the floor first");
    band(white, "likely clear, if the tube lies where it is drawn");
  }
  if (plan.mark.empty()) return;
  lines.push_back({mark_at({}, false), {{"point of tube, measured from corners A and B", ""}}});
  lines.push_back({mark_at({}, true), {{"corner of the slab to measure from", ""}}});
}

}  // namespace

std::vector<KeyLine> key_lines(const DrawnFloor& plan, const TubePens& pens) {
  std::vector<KeyLine> lines;
  if (!plan.loop.empty()) {
    lines.push_back({{stroke(left, right, {pens.width_m, dark, Dash::solid})},
                     {{"tube, first half of the loop: warm, from the supply port", ""}}});
    lines.push_back({hollow(pens), {{"tube, second half: cool, back to the return port", ""}}});
    if (!plan.bands) lines.push_back(flow_line(plan, pens));
    const Box patch = box_about({}, 8.0 * mm, 4.6 * mm);
    lines.push_back({{Area{{ring_of(patch)}, patch_fill(1), {0.1 * mm, grey, Dash::solid}},
                      Lettering{{}, "n", 4.4 * mm, key_grey, true, false, Align::middle}},
                     {{"a loop's patch of floor and its number", ""}}});
    const Box square = box_about({}, 3.8 * mm, 3.8 * mm);
    lines.push_back({{Area{{ring_of(square)}, Fill{white, Pattern::plain, white}, {0.25 * mm, dark, Dash::solid}},
                      Lettering{{}, "n", small_text_m, dark, false, false, Align::middle}},
                     {{"port at the manifold: supply and return of one loop", ""}}});
  }
  mark_lines(lines, plan);
  if (!plan.tip.empty())
    lines.push_back({tip_sample(pens), {{"end of U-turns, with their line in the stake-out table", ""}}});
  joint_lines(lines, plan);
  if (!plan.no_tube.empty()) {
    const Box box = box_about({}, 8.0 * mm, 3.6 * mm);
    lines.push_back({{Area{{ring_of(box)}, Fill{white, Pattern::hatch, dark}, {0.3 * mm, dark, Dash::solid}}},
                     {{"no tube here", ""}}});
  }
  if (!plan.anchor.empty())
    lines.push_back({hole_at({}, 1.0 * mm), {{"hole to be drilled, and whether it may be", ""}}});
  if (!plan.door.empty()) {
    KeyLine door{{}, {{"door, with its width", ""}}};
    for (const double y : {-0.35 * mm, 0.35 * mm}) {
      door.sample.push_back(stroke({left.x_m, y}, {right.x_m, y}, {0.13 * mm, dark, Dash::dashes}));
    }
    for (const Point jamb : {left, right}) {
      door.sample.push_back(stroke({jamb.x_m, -1.1 * mm}, {jamb.x_m, 1.1 * mm}, {0.5 * mm, dark, Dash::solid}));
    }
    lines.push_back(std::move(door));
  }
  if (!plan.partition.empty()) {
    lines.push_back(
        {{stroke(left, right, {0.9 * mm, dark, Dash::solid}), stroke(left, right, {0.5 * mm, white, Dash::solid})},
         {{"inside wall", ""}}});
  }
  return lines;
}

}  // namespace slabwright::drawn
