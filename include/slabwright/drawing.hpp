// Shapes on a sheet of paper, and the sheet as SVG. Paper is measured in metres too, from its lower left corner, x to
// the right and y up, so that what lies on a floor comes to lie on paper by one scale.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "slabwright/geometry_path.hpp"

namespace slabwright {

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  friend bool operator==(const Colour&, const Colour&) = default;
};

enum class Dash { solid, dashes, dash_dot };

struct Pen {
  double width_m = 0.0;  ///< 0: draws nothing
  Colour colour;
  Dash dash = Dash::solid;
};

/// What fills an area besides its tint. The first five are light; `hatch` is heavy.
enum class Pattern { plain, dots, rising, falling, crosses, hatch };
constexpr int light_patterns_number = 5;

struct Fill {
  Colour tint;
  Pattern pattern = Pattern::plain;
  Colour marks;  ///< of the pattern
};

/// A line along a path.
struct Trace {
  Path path;
  Pen pen;
};

/// Polygons as one area: what lies within an odd number of them is filled.
struct Area {
  std::vector<Polygon> ring;
  std::optional<Fill> fill;
  Pen pen;
};

struct Disc {
  Point centre;
  double radius_m = 0.0;
  std::optional<Colour> tint;
  Pen pen;
};

/// Where text that is narrower than its box begins or ends.
enum class Align { middle, left, right };

/// Text and the keys of the answer that it tells, in order, with a blank between them; none where it has no digit.
struct KeyedText {
  std::string text;
  std::string key;
};

/// One line of text about the middle of its box.
struct Lettering {
  Point middle;
  std::string text;
  double size_m = 0.0;  ///< of the letters: a capital is 0.73 of it high
  Colour colour;
  bool bold = false;
  bool upright = false;  ///< reads from below upwards
  Align align = Align::middle;
  std::string key = {};  ///< as in `KeyedText`
};

/// The key of a number that only belongs to a scale and not to the answer: beside an axis, along a tube, on a contour.
inline constexpr const char* scale_mark = "scale";

using SheetShape = std::variant<Trace, Area, Disc, Lettering>;

/// Shapes that lie over those of the layers before.
struct Layer {
  std::string name;  ///< a word of a-z and -, once in a drawing
  std::vector<SheetShape> shape;
  std::vector<Polygon> clip;  ///< nothing is seen outside these rings (odd-even); empty: everything is seen
};

struct Picture {
  double width_m = 0.0;
  double height_m = 0.0;
  std::string title;
  std::string description;
  std::vector<Layer> layer;
  std::string title_key = {}, description_key = {};  ///< as in `KeyedText`
};

/// A rectangle along the axes.
struct Box {
  Point low, high;
};
bool overlap(const Box& a, const Box& b);
bool within(const Box& inner, const Box& outer);
/// This much larger on every side.
Box grown(const Box& box, double by_m);
Box box_about(Point middle, double width_m, double height_m);
Polygon ring_of(const Box& box);
/// Around all corners; asks for one at least.
Box box_round(const std::vector<Point>& corners);

/// Width and height of a line of text that no usual upright sans-serif face exceeds: the advances of a wide one
/// (measured, a unit of the last digit up). Characters beyond ASCII count as 1.1 of the size.
struct TextSize {
  double width_m = 0.0;
  double height_m = 0.0;
};
TextSize text_size(const std::string& text, double size_m, bool bold);
Box box_of(const Lettering& lettering);

/// The boxes of all text in a drawing.
std::vector<Box> text_boxes(const Picture& drawing);

/// Lines no longer than this, broken at spaces; a word that is longer stands alone.
std::vector<std::string> wrapped(const std::string& text, double size_m, double width_m);

/// The drawing as one self-contained SVG 1.1 text: no scripts, no fonts or pictures of elsewhere, numbers rounded to
/// a hundredth of a millimetre, text escaped. The same drawing gives the same bytes.
std::string svg_of(const Picture& drawing);

/// The same to stand in a page: as wide as on paper, narrower where the page is, but never so narrow that its smallest
/// letters are less than 11 px high: the page lets it scroll then. `name` sets its ids apart from other drawings'.
std::string svg_inside(const Picture& drawing, const std::string& name);

/// Text as XML and HTML take it: marks escaped, what XML forbids left out, what is no UTF-8 as a question mark.
std::string escaped(std::string_view text);

}  // namespace slabwright
