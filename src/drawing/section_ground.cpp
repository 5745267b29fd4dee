// Materials of a section, what stands on its slab, and its tube.
#include <algorithm>
#include <cmath>

#include "section_sheet.hpp"

namespace slabwright::drawn {
namespace {

constexpr double outline_m = 0.3 * mm, surface_m = 0.6 * mm, covering_m = 1.6 * mm;
/// A part's words stand this far from it at most.
constexpr double words_reach_m = 70.0 * mm;

Fill fill_of(SectionInk ink) {
  switch (ink) {
    case SectionInk::ground: return {{246, 242, 234}, Pattern::dots, {168, 158, 140}};
    case SectionInk::concrete: return {{222, 223, 226}, Pattern::plain, grey};
    case SectionInk::foam: return {white, Pattern::crosses, {96, 98, 104}};
    case SectionInk::other: return {{240, 240, 240}, Pattern::rising, {120, 122, 128}};
  }
  return {};
}

std::optional<Box> cut_to_box(const Box& box, const Box& window) {
  const Box cut{{std::max(box.low.x_m, window.low.x_m), std::max(box.low.y_m, window.low.y_m)},
                {std::min(box.high.x_m, window.high.x_m), std::min(box.high.y_m, window.high.y_m)}};
  if (cut.low.x_m >= cut.high.x_m || cut.low.y_m >= cut.high.y_m) return std::nullopt;
  return cut;
}

Box onto_paper(const SectionFrame& frame, const Box& box) { return {frame.onto(box.low), frame.onto(box.high)}; }

bool covers(const Box& over, Point p) {
  return over.low.x_m < p.x_m && p.x_m < over.high.x_m && over.low.y_m < p.y_m && p.y_m < over.high.y_m;
}

/// A place of the rectangle that no later one covers, from its middle out; its middle where there is none.
Point seen_place(const DrawnSection& section, std::size_t k, const Box& cut) {
  const Point middle{0.5 * (cut.low.x_m + cut.high.x_m), 0.5 * (cut.low.y_m + cut.high.y_m)};
  // Not its very middle: sizes have their words there.
  constexpr double shares[] = {0.5, 0.3, 0.7, 0.1, 0.9}, shares_up[] = {0.3, 0.7, 0.5, 0.1, 0.9};
  for (const double x : shares) {
    for (const double y : shares_up) {
      const Point at{cut.low.x_m + x * (cut.high.x_m - cut.low.x_m), cut.low.y_m + y * (cut.high.y_m - cut.low.y_m)};
      bool seen = true;
      for (std::size_t later = k + 1; later < section.material.size() && seen; ++later)
        seen = !covers(section.material[later].box, at);
      if (seen) return at;
    }
  }
  return middle;
}

}  // namespace

Part material_part(const DrawnSection& section, const SectionFrame& frame) {
  Part part;
  for (std::size_t k = 0; k < section.material.size(); ++k) {
    const DrawnMaterial& material = section.material[k];
    const auto cut = cut_to_box(material.box, section.window);
    if (!cut) continue;
    const bool ground = material.ink == SectionInk::ground;
    const Pen pen = ground ? Pen{} : Pen{outline_m, dark, Dash::solid};
    part.under.emplace_back(Area{{ring_of(onto_paper(frame, *cut))}, fill_of(material.ink), pen});
    if (material.words.text.empty()) continue;
    const Point target = frame.onto(seen_place(section, k, *cut));
    Label label = section_label(material.words, target, words_reach_m);
    // What is larger than its words has them on it.
    const Box paper = onto_paper(frame, *cut);
    if (paper.high.y_m - paper.low.y_m > 1.5 * label.wish.height_m &&
        paper.high.x_m - paper.low.x_m > label.wish.width_m)
      label.wish.spot.push_back({target, false});
    part.label.push_back(std::move(label));
  }
  return part;
}

std::vector<Polygon> material_rings(const DrawnSection& section, const SectionFrame& frame) {
  std::vector<Box> boxes;
  std::vector<double> x;
  for (const DrawnMaterial& material : section.material) {
    const auto cut = cut_to_box(material.box, section.window);
    if (!cut) continue;
    boxes.push_back(*cut);
    x.insert(x.end(), {cut->low.x_m, cut->high.x_m});
  }
  std::sort(x.begin(), x.end());
  x.erase(std::unique(x.begin(), x.end()), x.end());
  std::vector<Polygon> rings;
  for (std::size_t k = 0; k + 1 < x.size(); ++k) {
    // Within a strip between two neighbouring sides rectangles are spans of height.
    std::vector<std::pair<double, double>> spans;
    for (const Box& box : boxes) {
      if (box.low.x_m <= x[k] && x[k + 1] <= box.high.x_m) spans.emplace_back(box.low.y_m, box.high.y_m);
    }
    std::sort(spans.begin(), spans.end());
    for (std::size_t n = 0; n < spans.size();) {
      auto [low, high] = spans[n];
      for (++n; n < spans.size() && spans[n].first <= high; ++n) high = std::max(high, spans[n].second);
      rings.push_back(ring_of(onto_paper(frame, {{x[k], low}, {x[k + 1], high}})));
    }
  }
  return rings;
}

Part standing_part(const DrawnSection& section, const SectionFrame& frame) {
  const DrawnStanding& standing = section.standing;
  const Point foot = frame.onto({-standing.thickness_m, 0.0}), face = frame.onto({0.0, 0.0});
  const double top_m = frame.area.high.y_m;
  Part part;
  const Fill fill = standing.leaf ? Fill{{150, 152, 158}, Pattern::plain, grey} : Fill{white, Pattern::rising, grey};
  const Box box{foot, {face.x_m, top_m}};
  part.shape.emplace_back(Area{{ring_of(box)}, fill, {outline_m, dark, Dash::solid}});
  // It goes on: its top is no edge.
  part.shape.emplace_back(stroke({box.low.x_m, top_m}, box.high, {2.0 * outline_m, white, Dash::solid}));
  part.obstacle.push_back(keep_off({0.5 * (foot.x_m + face.x_m), foot.y_m}, {0.5 * (foot.x_m + face.x_m), top_m},
                                   0.5 * (face.x_m - foot.x_m) + 0.4 * mm));
  if (section.covering) {
    const Box strip{face, {frame.ground.high.x_m, face.y_m + covering_m}};
    part.shape.emplace_back(Area{{ring_of(strip)}, fill_of(SectionInk::other), {outline_m, dark, Dash::solid}});
    const Point on{strip.low.x_m + 0.75 * (strip.high.x_m - strip.low.x_m), face.y_m + 0.5 * covering_m};
    part.obstacle.push_back(keep_off({strip.low.x_m, on.y_m}, {strip.high.x_m, on.y_m}, covering_m));
    part.label.push_back(section_label(*section.covering, on, words_reach_m));
  }
  for (const Polygon& ring : material_rings(section, frame)) {
    // Lower left corner first, upper right one third.
    const double from_m = ring[0].x_m, to_m = ring[2].x_m;
    const bool under = from_m >= foot.x_m - 0.5 * surface_m && to_m <= face.x_m + 0.5 * surface_m;
    if (!under) part.shape.emplace_back(stroke({from_m, ring[2].y_m}, ring[2], {surface_m, dark, Dash::solid}));
  }
  if (!standing.words.text.empty()) {
    Label label = section_label(standing.words, {0.5 * (foot.x_m + face.x_m), top_m - 12.0 * mm}, words_reach_m);
    part.label.push_back(std::move(label));
  }
  return part;
}

Part section_tube_part(const DrawnSection& section, const SectionFrame& frame) {
  Part part;
  const double radius_m = std::max(0.5 * section.tube_diameter_m * frame.onto.ratio, 0.5 * mm);
  for (const Point& axis : section.tube) {
    const Point at = frame.onto(axis);
    part.shape.emplace_back(Disc{at, radius_m, white, {0.4 * mm, dark, Dash::solid}});
    part.obstacle.push_back(keep_off(at, at, radius_m + 0.3 * mm));
  }
  return part;
}

}  // namespace slabwright::drawn
