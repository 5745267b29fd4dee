// The floor's temperatures on a sheet of their own, beside the plan and at its scale.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "plan_sheet.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/drawing_warmth.hpp"

namespace slabwright {
namespace {

using namespace drawn;

constexpr Colour pale{254, 245, 234}, deep{214, 118, 52};
constexpr double contour_pen_m = 0.25 * mm, cross_m = 1.3 * mm;
/// Lines shorter than this go without a number; longer ones have one at either end of so much.
constexpr double least_numbered_m = 18.0 * mm, between_numbers_m = 140.0 * mm;
/// Rings shorter than this are specks.
constexpr double least_ring_m = 10.0 * mm;
/// A number stands on its line, this far from walls.
constexpr double off_walls_m = 3.0 * mm;

Colour tint(std::size_t band, std::size_t bands) {
  const double share = bands > 1 ? static_cast<double>(band) / static_cast<double>(bands - 1) : 0.0;
  const auto mix = [&](std::uint8_t a, std::uint8_t b) {
    return static_cast<std::uint8_t>(std::lround(a + share * (static_cast<double>(b) - a)));
  };
  return {mix(pale.red, deep.red), mix(pale.green, deep.green), mix(pale.blue, deep.blue)};
}

/// "64 F", "18.5 C".
std::string degrees_words(double degC, System system) {
  return system == System::us ? fmt::format("{:.0f} F", 1.8 * degC + 32.0)
                              : fmt::format("{:g} C", std::round(10.0 * degC) / 10.0);
}

double round_m(const Polygon& ring) {
  double length = 0.0;
  for (std::size_t k = 0; k < ring.size(); ++k) length += distance_m(ring[k], ring[(k + 1) % ring.size()]);
  return length;
}

/// Places on a ring where its number may stand: on the floor, away from walls, from `from_m` along it on.
std::vector<LabelSpot> spots_on(const Polygon& ring, const Floor& floor_on_paper, double from_m) {
  std::vector<LabelSpot> spots;
  double at_m = 0.0, next_m = from_m;
  const double whole_m = round_m(ring);
  for (int round = 0; round < 2; ++round) {
    for (std::size_t k = 0; k < ring.size() && next_m < from_m + whole_m; ++k) {
      const Point a = ring[k], b = ring[(k + 1) % ring.size()];
      const double length = distance_m(a, b);
      for (; next_m < at_m + length && next_m < from_m + whole_m; next_m += 4.0 * mm) {
        const Point at = shifted(a, unit(a, b), std::max(0.0, next_m - at_m));
        if (where_is(at, floor_on_paper) != Where::inside) continue;
        if (distance_to_boundary_m(at, floor_on_paper.outline) < off_walls_m) continue;
        spots.push_back({at, std::abs(b.y_m - a.y_m) > std::abs(b.x_m - a.x_m)});
      }
      at_m += length;
    }
  }
  return spots;
}

/// Numbers on the lines of one level. A line that has none is a line that is short or runs along a wall.
void number_lines(Part& part, const std::vector<Polygon>& rings, const Floor& floor, const KeyedText& words) {
  for (const Polygon& ring : rings) {
    const double whole_m = round_m(ring);
    if (whole_m < least_numbered_m) continue;
    const int number = 1 + static_cast<int>(whole_m / between_numbers_m);
    for (int n = 0; n < std::min(number, 6); ++n) {
      Label label = label_of(words, small_text_m, ring.front());
      label.wish.spot = spots_on(ring, floor, (n + 0.5) * whole_m / number);
      label.on_ground = true;
      if (!label.wish.spot.empty()) part.label.push_back(std::move(label));
    }
  }
}

struct Warmth {
  std::vector<SheetShape> tint;
  Part line;
};

Warmth tints_and_lines(const DrawnFloor& plan, const DrawnWarmth& warmth, const Onto& onto,
                       const std::vector<double>& levels) {
  Warmth made;
  Floor floor{onto(plan.floor.outline), {}};
  for (const Polygon& hole : plan.floor.hole) floor.hole.push_back(onto(hole));
  // Hatching leaves no room for numbers.
  for (const DrawnNoTube& area : plan.no_tube) floor.hole.push_back(onto(area.outline));
  made.tint.push_back(Area{{floor.outline}, Fill{tint(0, levels.size() + 1), Pattern::plain, dark}, {}});
  for (std::size_t k = 0; k < levels.size(); ++k) {
    Area area{{}, Fill{tint(k + 1, levels.size() + 1), Pattern::plain, dark}, {contour_pen_m, dark, Dash::solid}};
    for (const Polygon& ring : warmer_than(warmth, levels[k])) {
      Polygon drawn = onto(ring);
      if (round_m(drawn) >= least_ring_m) area.ring.push_back(std::move(drawn));
    }
    number_lines(made.line, area.ring, floor, {degrees_words(levels[k], plan.units), scale_mark});
    made.tint.emplace_back(std::move(area));
  }
  return made;
}

std::vector<SheetShape> cross_at(Point at) {
  std::vector<SheetShape> cross;
  for (const double slope : {1.0, -1.0}) {
    cross.push_back(stroke({at.x_m - cross_m, at.y_m - slope * cross_m}, {at.x_m + cross_m, at.y_m + slope * cross_m},
                           {0.4 * mm, dark, Dash::solid}));
  }
  return cross;
}

Part spot_part(const std::vector<DrawnSpot>& spots, const Onto& onto) {
  Part part;
  for (const DrawnSpot& spot : spots) {
    const Point at = onto(spot.place);
    for (SheetShape& shape : cross_at(at)) part.shape.push_back(std::move(shape));
    part.obstacle.push_back(keep_off(at, at, cross_m));
    Label label = label_of(spot.words, text_m, at);
    const double x = cross_m + 0.8 * mm + 0.5 * label.wish.width_m, y = cross_m + 0.6 * mm + 0.5 * label.wish.height_m;
    for (const Point by : {Point{x, 0}, {-x, 0}, {0, y}, {0, -y}, {x, y}, {-x, y}, {x, -y}, {-x, -y}})
      label.wish.spot.push_back({{at.x_m + by.x_m, at.y_m + by.y_m}, false});
    label.wish.leader_m = 120.0 * mm;
    label.on_ground = true;
    part.label.push_back(std::move(label));
  }
  return part;
}

std::vector<KeyLine> warmth_key(const DrawnFloor& plan, const std::vector<double>& levels, bool spots) {
  std::vector<KeyLine> lines;
  const Box box = box_about({}, 8.0 * mm, 3.6 * mm);
  for (std::size_t k = levels.size() + 1; k-- > 0;) {
    const auto level = [&](std::size_t row) { return KeyedText{degrees_words(levels[row], plan.units), scale_mark}; };
    KeyedWords words{{"as warm everywhere", ""}};
    if (!levels.empty() && k == levels.size())
      words = {level(k - 1), {" and warmer", ""}};
    else if (!levels.empty() && k == 0)
      words = {{"colder than ", ""}, level(0)};
    else if (!levels.empty())
      words = {level(k - 1), {" to ", ""}, level(k)};
    lines.push_back({{Area{{ring_of(box)},
                           Fill{tint(k, levels.size() + 1), Pattern::plain, dark},
                           {contour_pen_m, dark, Dash::solid}}},
                     words});
  }
  if (spots) lines.push_back({cross_at({}), {{"warmest and coldest place, over or between tubes", ""}}});
  DrawnFloor rest = plan;
  rest.loop.clear();
  for (KeyLine& one : key_lines(rest, {})) lines.push_back(std::move(one));
  return lines;
}

/// Manifolds without their ports.
Part manifolds(const DrawnFloor& plan, const Onto& onto) {
  Part part = manifold_part(plan, onto);
  part.label.erase(std::remove_if(part.label.begin(), part.label.end(), [](const Label& l) { return !l.port.empty(); }),
                   part.label.end());
  return part;
}

/// Names and rings of what stands on the floor may lie on tints, not on numbers.
Part house(const DrawnFloor& plan, const Onto& onto) {
  Part part = wall_part(plan, onto);
  add(part, no_tube_part(plan, onto));
  return part;
}

}  // namespace

WarmthSheet draw_warmth(const DrawnFloor& plan, const DrawnWarmth& warmth, const std::vector<DrawnSpot>& spots) {
  expects(plan.floor.outline.size() >= 3, "draw_warmth: a floor without an outline");
  const Frame frame = frame_for(plan);
  DrawnFloor shown = plan;
  shown.joint.clear();
  shown.anchor.clear();
  WarmthSheet sheet;
  sheet.scale_ratio = frame.onto.ratio;
  sheet.level_degC = contour_levels_degC(warmth, plan.units);
  Warmth drawn = tints_and_lines(shown, warmth, frame.onto, sheet.level_degC);
  Part walls = house(shown, frame.onto), manifold = manifolds(shown, frame.onto), marks = spot_part(spots, frame.onto),
       rooms = room_part(shown, frame.onto), sizes = dimension_part(shown, frame.onto);
  for (Label& label : rooms.label) label.on_ground = true;
  const Placed placed = place_all({&manifold, &marks, &walls, &rooms, &sizes, &drawn.line}, frame);
  LabelShapes labels = label_shapes(shown, frame, placed);
  // A line without a number lies between two that have one.
  std::vector<std::string> numbers;
  for (const double level : sheet.level_degC) numbers.push_back(degrees_words(level, plan.units));
  for (const KeyedText& words : labels.left_out) {
    if (std::find(numbers.begin(), numbers.end(), words.text) == numbers.end()) sheet.left_out.push_back(words);
  }
  Column column =
      column_of(shown, frame, {{}, warmth_key(shown, sheet.level_degC, !spots.empty()), false}, sheet.left_out);
  sheet.left_out.insert(sheet.left_out.end(), column.left_out.begin(), column.left_out.end());
  std::vector<Polygon> clip{frame.onto(plan.floor.outline)};
  for (const Polygon& hole : plan.floor.hole) clip.push_back(frame.onto(hole));
  sheet.picture = {
      frame.width_m, frame.height_m, joined(plan.title).text, "Temperatures of a heated floor, to scale", {}};
  sheet.picture.title_key = joined(plan.title).key;
  auto& layers = sheet.picture.layer;
  layers.push_back({"warmth", std::move(drawn.tint), std::move(clip)});
  layers.push_back({"no-tube", std::move(walls.under), {}});
  layers.push_back({"walls", std::move(walls.shape), {}});
  layers.push_back({"manifolds", std::move(manifold.shape), {}});
  layers.push_back({"spots", std::move(marks.shape), {}});
  layers.push_back({"dimensions", std::move(sizes.shape), {}});
  layers.push_back({"numbers", std::move(labels.number), {}});
  layers.push_back({"labels", std::move(labels.text), {}});
  layers.push_back({"beside", std::move(column.shape), {}});
  layers.push_back({"frame", frame_lines(frame), {}});
  return sheet;
}

}  // namespace slabwright
