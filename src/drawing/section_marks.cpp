// Sizes, watched places and the words for the air in a section.
#include <algorithm>
#include <cmath>

#include "section_sheet.hpp"

namespace slabwright::drawn {
namespace {

constexpr double fine_pen_m = 0.18 * mm, cross_tick_m = 0.9 * mm, cross_arm_m = 0.9 * mm, mark_gap_m = 0.9 * mm;
constexpr double size_reach_m = 40.0 * mm, place_reach_m = 60.0 * mm;

void add_size(Part& part, const DrawnSize& size, const SectionFrame& frame) {
  const Pen pen{fine_pen_m, dark, Dash::solid};
  const Point from = frame.onto(size.from), to = frame.onto(size.to);
  part.shape.emplace_back(stroke(from, to, pen));
  for (const Point end : {from, to}) {
    part.shape.emplace_back(stroke({end.x_m - cross_tick_m, end.y_m - cross_tick_m},
                                   {end.x_m + cross_tick_m, end.y_m + cross_tick_m},
                                   {2.0 * fine_pen_m, dark, Dash::solid}));
  }
  for (const auto& [thing, end] : {std::pair{frame.onto(size.from_thing), from}, {frame.onto(size.to_thing), to}}) {
    if (distance_m(thing, end) > 0.0) part.shape.emplace_back(stroke(thing, end, {fine_pen_m, grey, Dash::solid}));
  }
  part.obstacle.push_back({from, to, cross_tick_m, Hardness::mark});
  const Point middle{0.5 * (from.x_m + to.x_m), 0.5 * (from.y_m + to.y_m)};
  Label label = section_label(size.words, middle, size_reach_m);
  const double x = 0.5 * label.wish.width_m + cross_tick_m + mark_gap_m,
               y = 0.5 * label.wish.height_m + cross_tick_m + mark_gap_m;
  const bool upright = std::abs(to.y_m - from.y_m) > std::abs(to.x_m - from.x_m);
  for (const double side : {1.0, -1.0}) {
    label.wish.spot.push_back(
        {upright ? Point{middle.x_m + side * x, middle.y_m} : Point{middle.x_m, middle.y_m + side * y}, false});
  }
  for (const Point end : {from, to}) {
    const double away = end.x_m < middle.x_m || end.y_m < middle.y_m ? -1.0 : 1.0;
    label.wish.spot.push_back(
        {upright ? Point{end.x_m, end.y_m + away * y} : Point{end.x_m + away * x, end.y_m}, false});
  }
  part.label.push_back(std::move(label));
}

}  // namespace

Part size_part(const DrawnSection& section, const SectionFrame& frame) {
  Part part;
  for (const DrawnSize& size : section.size) add_size(part, size, frame);
  return part;
}

Part watched_part(const DrawnSection& section, const SectionFrame& frame) {
  Part part;
  for (const DrawnWatched& watched : section.watched) {
    const Point at = frame.onto(watched.place);
    for (const double slope : {1.0, -1.0}) {
      part.shape.emplace_back(stroke({at.x_m - cross_arm_m, at.y_m - slope * cross_arm_m},
                                     {at.x_m + cross_arm_m, at.y_m + slope * cross_arm_m},
                                     {0.45 * mm, dark, Dash::solid}));
    }
    part.obstacle.push_back(keep_off(at, at, cross_arm_m));
    Label label = section_label(watched.words, at, place_reach_m);
    label.lettering.bold = true;
    label.wish.width_m = text_size(watched.words.text, section_text_m, true).width_m;
    const double x = cross_arm_m + mark_gap_m + 0.5 * label.wish.width_m,
                 y = cross_arm_m + mark_gap_m + 0.5 * label.wish.height_m;
    for (const Point by : {Point{x, 0.0}, {-x, 0.0}, {0.0, -y}, {0.0, y}, {x, -y}, {-x, -y}, {x, y}, {-x, y}})
      label.wish.spot.push_back({{at.x_m + by.x_m, at.y_m + by.y_m}, false});
    part.label.push_back(std::move(label));
  }
  return part;
}

Part air_part(const DrawnSection& section, const SectionFrame& frame) {
  Part part;
  const double floor_m = frame.onto({0.0, 0.0}).y_m, top_m = frame.area.high.y_m;
  const double outer_m = frame.onto({-section.standing.thickness_m, 0.0}).x_m, inner_m = frame.onto({0.0, 0.0}).x_m;
  const auto add_words = [&](const KeyedText& words, double from_m, double to_m, double y_m) {
    Label label = section_label(words, {0.5 * (from_m + to_m), y_m}, 0.0);
    label.lettering.bold = true;
    label.wish.width_m = text_size(words.text, section_text_m, true).width_m;
    for (const double down : {0.0, 5.0 * mm, 10.0 * mm}) {
      for (const double share : {0.5, 0.3, 0.7, 0.15, 0.85}) {
        const double middle = from_m + share * (to_m - from_m);
        label.wish.spot.push_back({{middle, y_m - down}, false});
      }
    }
    part.label.push_back(std::move(label));
  };
  add_words(section.outdoor_words, frame.area.low.x_m, outer_m, top_m - 4.0 * mm);
  add_words(section.room_words, inner_m, frame.area.high.x_m, top_m - 4.0 * mm);
  if (!section.near_words) return part;
  Label label = section_label(*section.near_words, {inner_m + 3.0 * mm, floor_m + 2.0 * mm}, place_reach_m);
  for (const double up : {14.0 * mm, 18.0 * mm, 22.0 * mm})
    label.wish.spot.push_back({{inner_m + 1.5 * mm + 0.5 * label.wish.width_m, floor_m + up}, false});
  part.label.push_back(std::move(label));
  return part;
}

}  // namespace slabwright::drawn
