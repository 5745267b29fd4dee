// What a plan is put together from: pens and sizes, the way from floor to paper, and the parts that bring shapes,
// obstacles and labels.
#pragma once
#include <string>
#include <vector>

#include "patches.hpp"
#include "slabwright/drawing_labels.hpp"
#include "slabwright/drawing_plan.hpp"

namespace slabwright::drawn {

constexpr double mm = 0.001;

constexpr Colour dark{24, 28, 34}, grey{120, 124, 130}, white{255, 255, 255};
/// Dark enough to be read on a pale patch, light enough to lie below tube.
constexpr Colour number_grey{118, 120, 124}, key_grey{98, 100, 104};

// Letters on a plan that hangs on a wall: read at arm's length.
constexpr double small_text_m = 2.2 * mm, text_m = 2.8 * mm, title_m = 4.2 * mm;
constexpr double wall_pen_m = 0.7 * mm;
/// Below this width solid and hollow tube look alike on paper.
constexpr double least_tube_m = 0.55 * mm;
/// Round the floor: walls' names, doors and ports; then dimensions.
constexpr double zone_m = 13.0 * mm, chain_m = 8.0 * mm, margin_m = 25.0 * mm;

/// From the floor to paper.
struct Onto {
  Point zero;  ///< where the floor's zero comes to lie
  double ratio = 1.0;

  Point operator()(Point p) const { return {zero.x_m + ratio * p.x_m, zero.y_m + ratio * p.y_m}; }
  Polygon operator()(Polygon ring) const;
  Path operator()(Path path) const;
};

/// A text that wants a place, or a row of ports that does.
struct Label {
  LabelWish wish;
  Lettering lettering;
  std::vector<KeyedText> port;  ///< numbers in squares in place of a text
  std::size_t manifold = 0;     ///< whose ports they are
  KeyedText what;               ///< to say where no place is found
  bool on_ground = false;       ///< a white ground lies below it wherever it stands
  bool may_lack = false;        ///< left out without a word where it finds no place: a table has it
};

/// What one kind of thing adds to the plan.
struct Part {
  std::vector<SheetShape> under;  ///< below the tube
  std::vector<SheetShape> shape;
  std::vector<Obstacle> obstacle;
  std::vector<Label> label;
};

struct TubePens {
  double width_m = 0.0;     ///< on paper
  double times_true = 1.0;  ///< how much wider than the tube is
};
TubePens tube_pens(const DrawnFloor& plan, const Onto& onto);

/// A text's wish without spots.
Label label_of(const KeyedText& text, double size_m, Point target);
void add(Part& to, Part&& more);

/// A straight line on paper that no label may cover.
Obstacle keep_off(Point from, Point to, double reach_m);
Trace stroke(Point from, Point to, Pen pen);

/// The part of a path between two distances from its start.
Path part_of(const Path& path, double from_m, double to_m);
Point unit(Point from, Point to);
Point shifted(Point p, Point along, double by_m);
Point across(Point along);  ///< to the left of it

Part tube_part(const DrawnFloor& plan, const Onto& onto, const TubePens& pens);
/// Chevrons along the tube, and the numbers of some.
Part chevron_part(const DrawnFloor& plan, const Onto& onto, const TubePens& pens);
int chevrons_on(const DrawnLoop& loop, System system);
/// Bars at the ends of U-turns, and the names of their lines.
Part tip_part(const DrawnFloor& plan, const Onto& onto, const TubePens& pens);
std::vector<SheetShape> tip_sample(const TubePens& pens);
/// Each loop's number in its patch.
Part number_part(const DrawnFloor& plan, const Onto& onto, const Raster& raster);
std::vector<SheetShape> patch_shapes(const DrawnFloor& plan, const Onto& onto, const Raster& raster,
                                     const std::vector<int>& pattern);
Fill patch_fill(int pattern);

Part wall_part(const DrawnFloor& plan, const Onto& onto);
Part no_tube_part(const DrawnFloor& plan, const Onto& onto);
Part joint_part(const DrawnFloor& plan, const Onto& onto);
/// A ring with a cross for each hole.
std::vector<SheetShape> hole_at(Point at, double radius_m);
Part anchor_part(const DrawnFloor& plan, const Onto& onto);
/// Points to measure from and to, and the bands along tube.
Part mark_part(const DrawnFloor& plan, const Onto& onto);
std::vector<SheetShape> mark_at(Point at, bool corner);
std::vector<SheetShape> band_shapes(const DrawnFloor& plan, const Onto& onto);
/// Bands by their words.
constexpr Colour do_not_grey{150, 152, 156}, doubt_grey{218, 220, 224};
Part room_part(const DrawnFloor& plan, const Onto& onto);
Part manifold_part(const DrawnFloor& plan, const Onto& onto);
Part dimension_part(const DrawnFloor& plan, const Onto& onto);

/// Squares with the numbers of ports, and lines to the ports where the row stands at its manifold.
std::vector<SheetShape> port_row(const DrawnFloor& plan, const Onto& onto, std::size_t manifold,
                                 const PlacedLabel& placed);

}  // namespace slabwright::drawn
