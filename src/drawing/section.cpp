// A section put together: every part brings shapes, obstacles and labels; all labels are placed at once; sentences
// stand below.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "section_sheet.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace drawn;

constexpr double sheet_width_m = 190.0 * mm, sheet_rim_m = 4.0 * mm, air_m = 36.0 * mm, heading_m = 8.0 * mm;
constexpr double line_m = 4.3 * mm, between_notes_m = 1.2 * mm;
constexpr double label_gap_m = 0.5 * mm, label_ground_m = 0.5 * mm;

std::vector<int> section_scales(System system) {
  if (system == System::us) return {4, 6, 8, 12, 16, 24, 32, 48, 96};
  return {5, 10, 20, 25, 50, 100};
}

struct SectionParts {
  Part material, isotherm, tube, standing, size, watched, air;
};

/// Labels in the order in which they choose.
std::vector<Part*> choosing(SectionParts& parts) {
  return {&parts.watched, &parts.air, &parts.size, &parts.material, &parts.isotherm, &parts.standing, &parts.tube};
}

struct PlacedLabels {
  std::vector<SheetShape> shape;
  std::vector<KeyedText> left_out;
};

void draw_label(PlacedLabels& made, const Label& label, const PlacedLabel& found) {
  Lettering text = label.lettering;
  text.middle = found.spot.middle;
  text.upright = found.spot.upright;
  if (!found.leader.empty()) {
    made.shape.emplace_back(Trace{found.leader, {0.15 * mm, dark, Dash::solid}});
    made.shape.emplace_back(Disc{label.wish.target, 0.4 * mm, dark, {}});
  }
  if (label.on_ground)
    made.shape.emplace_back(
        Area{{ring_of(grown(box_of(text), label_ground_m))}, Fill{white, Pattern::plain, white}, {}});
  made.shape.emplace_back(std::move(text));
}

PlacedLabels place_section_labels(SectionParts& parts, const SectionFrame& frame) {
  std::vector<Obstacle> obstacles;
  std::vector<LabelWish> wishes;
  std::vector<Label> labels;
  for (Part* part : choosing(parts)) {
    obstacles.insert(obstacles.end(), part->obstacle.begin(), part->obstacle.end());
    for (Label& label : part->label) {
      wishes.push_back(label.wish);
      labels.push_back(std::move(label));
    }
  }
  const LabelPlan plan = place_labels(grown(frame.area, -label_ground_m), obstacles, wishes, label_gap_m);
  PlacedLabels made;
  for (std::size_t k = 0; k < labels.size(); ++k) {
    if (plan.placed[k])
      draw_label(made, labels[k], *plan.placed[k]);
    else if (!labels[k].may_lack)
      made.left_out.push_back({labels[k].lettering.text, labels[k].lettering.key});
  }
  return made;
}

Lettering left_line(const KeyedText& words, double x_m, double y_m, double size_m, bool bold) {
  const TextSize size = text_size(words.text, size_m, bold);
  return {{x_m + 0.5 * size.width_m, y_m}, words.text, size_m, dark, bold, false, Align::left, words.key};
}

/// A foot or half a metre of the section.
std::vector<SheetShape> section_bar(const DrawnSection& section, const SectionFrame& frame, double x_m, double y_m) {
  const bool us = section.units == System::us;
  const double length_m = frame.onto.ratio * (us ? foot_m : 0.5);
  std::vector<SheetShape> shapes;
  shapes.emplace_back(Area{{ring_of({{x_m, y_m - 0.6 * mm}, {x_m + length_m, y_m + 0.6 * mm}})},
                           Fill{dark, Pattern::plain, dark},
                           {0.2 * mm, dark, Dash::solid}});
  const std::string words =
      fmt::format("{}, scale 1:{} where printed full size", us ? "1 ft" : "0.5 m", frame.denominator);
  shapes.emplace_back(left_line({words, scale_mark}, x_m + length_m + 2.0 * mm, y_m, section_text_m, false));
  return shapes;
}

/// Lines below the drawing, from the top down; heights are negative until the sheet knows its own.
struct Below {
  std::vector<Lettering> line;
  double height_m = 0.0;
};

Below notes_below(const DrawnSection& section, const std::vector<KeyedText>& left_out) {
  std::vector<KeyedWords> notes = section.note;
  for (const KeyedText& words : left_out) notes.push_back({{"Not shown for want of room: ", ""}, words});
  Below below;
  for (const KeyedWords& note : notes) {
    for (const KeyedText& words : wrapped(note, section_text_m, sheet_width_m - 2.0 * sheet_rim_m)) {
      below.line.push_back(left_line(words, sheet_rim_m, -(below.height_m + 0.5 * line_m), section_text_m, false));
      below.height_m += line_m;
    }
    below.height_m += between_notes_m;
  }
  return below;
}

/// Everything was laid out with the window's lower left corner at zero height.
void raise(SheetShape& shape, double by_m) {
  const auto up = [&](Point& p) { p.y_m += by_m; };
  if (auto* trace = std::get_if<Trace>(&shape)) {
    for (Piece& piece : trace->path) up(piece.from), up(piece.to), up(piece.centre);
  } else if (auto* area = std::get_if<Area>(&shape)) {
    for (Polygon& ring : area->ring) std::for_each(ring.begin(), ring.end(), up);
  } else if (auto* disc = std::get_if<Disc>(&shape)) {
    up(disc->centre);
  } else {
    up(std::get<Lettering>(shape).middle);
  }
}

void raise(Picture& picture, double by_m) {
  for (Layer& layer : picture.layer) {
    for (SheetShape& shape : layer.shape) raise(shape, by_m);
    for (Polygon& ring : layer.clip) {
      for (Point& p : ring) p.y_m += by_m;
    }
  }
}

void expect_section(const DrawnSection& section) {
  const Box& window = section.window;
  expects(window.low.x_m < 0.0 && window.high.x_m > 0.0 && window.low.y_m < 0.0 && window.high.y_m >= 0.0,
          "draw_section: a window round the foot of wall or leaf");
}

}  // namespace

namespace drawn {

SectionFrame section_frame(const DrawnSection& section) {
  const double wide_m = section.window.high.x_m - section.window.low.x_m;
  const double high_m = -section.window.low.y_m;
  SectionFrame frame;
  frame.denominator = 0;
  for (const int one : section_scales(section.units)) {
    if (frame.denominator == 0 && wide_m / one <= sheet_width_m - 2.0 * sheet_rim_m) frame.denominator = one;
  }
  if (frame.denominator == 0)
    frame.denominator = static_cast<int>(std::ceil(wide_m / (sheet_width_m - 2.0 * sheet_rim_m)));
  const double ratio = 1.0 / frame.denominator;
  const double left_m = 0.5 * (sheet_width_m - ratio * wide_m);
  frame.onto = {{left_m - ratio * section.window.low.x_m, ratio * high_m}, ratio};
  frame.ground = {{left_m, 0.0}, {left_m + ratio * wide_m, ratio * high_m}};
  frame.area = {{sheet_rim_m, 0.0}, {sheet_width_m - sheet_rim_m, frame.ground.high.y_m + air_m}};
  frame.width_m = sheet_width_m;
  frame.height_m = frame.area.high.y_m + heading_m + sheet_rim_m;
  return frame;
}

Label section_label(const KeyedText& words, Point target, double leader_m) {
  const TextSize size = text_size(words.text, section_text_m, false);
  Label label;
  label.lettering = {target, words.text, section_text_m, dark, false, false, Align::middle, words.key};
  label.wish.width_m = size.width_m;
  label.wish.height_m = size.height_m;
  label.wish.target = target;
  label.wish.leader_m = leader_m;
  label.wish.on_lines = OnLines::if_needed;
  label.on_ground = true;
  return label;
}

}  // namespace drawn

SectionSheet draw_section(const DrawnSection& section) {
  expect_section(section);
  const SectionFrame frame = section_frame(section);
  SectionSheet sheet;
  sheet.scale_ratio = frame.onto.ratio;
  sheet.level_degC = section_levels_degC(section);
  SectionParts parts{material_part(section, frame),     isotherm_part(section, frame, sheet.level_degC),
                     section_tube_part(section, frame), standing_part(section, frame),
                     size_part(section, frame),         watched_part(section, frame),
                     air_part(section, frame)};
  PlacedLabels labels = place_section_labels(parts, frame);
  sheet.left_out = labels.left_out;
  Below below = notes_below(section, labels.left_out);
  const double bar_y_m = -3.5 * mm, notes_y_m = -7.0 * mm;
  std::vector<SheetShape> words = section_bar(section, frame, frame.ground.low.x_m, bar_y_m);
  for (Lettering& line : below.line) {
    line.middle.y_m += notes_y_m;
    words.emplace_back(std::move(line));
  }
  const double title_y_m = frame.area.high.y_m + 0.5 * heading_m;
  // A long name of a door makes its letters smaller, not shorter.
  const double room_m = sheet_width_m - 2.0 * sheet_rim_m;
  const double title_size_m = title_m * std::min(1.0, room_m / text_size(section.title.text, title_m, true).width_m);
  words.emplace_back(left_line(section.title, sheet_rim_m, title_y_m, title_size_m, true));

  Picture& drawing = sheet.picture;
  const double lift_m = below.height_m - notes_y_m + sheet_rim_m;
  drawing.width_m = frame.width_m;
  drawing.height_m = frame.height_m + lift_m;
  drawing.title = section.title.text;
  drawing.title_key = section.title.key;
  drawing.description =
      "Vertical section through the edge of a heated floor, with lines of equal temperature, to scale";
  const std::vector<Polygon> clip = material_rings(section, frame);
  drawing.layer.push_back({"material", std::move(parts.material.under), {}});
  drawing.layer.push_back({"isotherms", std::move(parts.isotherm.shape), clip});
  drawing.layer.push_back({"tube", std::move(parts.tube.shape), {}});
  drawing.layer.push_back({"standing", std::move(parts.standing.shape), {}});
  drawing.layer.push_back({"sizes", std::move(parts.size.shape), {}});
  drawing.layer.push_back({"places", std::move(parts.watched.shape), {}});
  drawing.layer.push_back({"labels", std::move(labels.shape), {}});
  drawing.layer.push_back({"words", std::move(words), {}});
  raise(drawing, lift_m);
  sheet.zero = {frame.onto.zero.x_m, frame.onto.zero.y_m + lift_m};
  return sheet;
}

}  // namespace slabwright
