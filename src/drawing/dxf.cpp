// A drawing as DXF of release 12 (AC1009), the plain old form that programs that draw have long read: tagged groups, a
// code and a value on a line each. Groups and header variables as the openly documented DXF reference has them, from
// memory; $INSUNITS and $MEASUREMENT are of its later editions, and are there because nothing older says what a unit
// is. tests/tools/plan_read_back.py reads files back with a reader of other hands.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

#include "characters.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/drawing_dxf.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double millimetre_in_m = 0.001;
constexpr Colour paper_white{255, 255, 255};
constexpr double capital_of_size = 0.73;  // as Lettering has it

/// From paper to the units of the file.
struct ToDxf {
  Point zero;
  double units_per_m = 1.0;  ///< of paper

  double length(double m) const { return units_per_m * m; }
  Point operator()(Point p) const { return {length(p.x_m - zero.x_m), length(p.y_m - zero.y_m)}; }
};

/// To a millionth of a unit, without zeros that say nothing; a real number keeps its point.
std::string real(double value) {
  std::string text = fmt::format("{:.6f}", value);
  const std::size_t last = text.find_last_not_of('0');
  text.erase(text[last] == '.' ? last + 2 : last + 1);
  return text == "-0.0" ? "0.0" : text;
}

std::string tag(int code, std::string_view value) { return fmt::format("{:>3}\n{}\n", code, value); }
std::string tag(int code, int value) { return fmt::format("{:>3}\n{:>6}\n", code, value); }
std::string tag(int code, double value) { return tag(code, std::string_view(real(value))); }
/// A point takes group 10 + k, 20 + k and 30 + k.
std::string point_tags(int code, Point p) { return tag(code, p.x_m) + tag(code + 10, p.y_m) + tag(code + 20, 0.0); }

/// Text as a reader takes it: no character of it is a command, and what ASCII has not is written by its number.
std::string plain_ascii(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t bytes = drawn::character_bytes(text.substr(at));
    const std::string_view one = text.substr(at, std::max<std::size_t>(bytes, 1));
    const bool percents = one == "%" && ((at > 0 && text[at - 1] == '%') || text.substr(at + 1, 1) == "%");
    at += one.size();
    const auto code = bytes == 0 ? U'?' : drawn::code_point(one);
    if (code > 0xFFFF)
      out += '?';
    else if (code > 0x7E || code == U'\\')
      out += fmt::format("\\U+{:04X}", static_cast<unsigned>(code));
    else if (code < 0x20)
      out += ' ';
    else if (code == U'^')
      out += "^ ";
    else
      out += percents ? "%%%" : std::string(1, static_cast<char>(code));
  }
  return out;
}

/// Of the 255 numbered colours the nearest of those that have names, and the two greys.
int colour_number(Colour colour) {
  struct Numbered {
    int number;
    Colour colour;
  };
  constexpr Numbered all[] = {{7, {0, 0, 0}},     {8, {128, 128, 128}}, {9, {192, 192, 192}},
                              {1, {255, 0, 0}},   {2, {255, 255, 0}},   {3, {0, 255, 0}},
                              {4, {0, 255, 255}}, {5, {0, 0, 255}},     {6, {255, 0, 255}}};
  const auto far = [&](const Colour& to) {
    const int r = colour.red - to.red, g = colour.green - to.green, b = colour.blue - to.blue;
    return r * r + g * g + b * b;
  };
  const Numbered* best = &all[0];
  for (const Numbered& one : all) {
    if (far(one.colour) < far(best->colour)) best = &one;
  }
  return best->number;
}

const char* line_type(Dash dash) {
  return dash == Dash::dashes ? "DASHES" : dash == Dash::dash_dot ? "DASH_DOT" : "CONTINUOUS";
}

/// What every entity begins with.
std::string entity(const char* kind, const std::string& layer, const Pen& pen) {
  return tag(0, kind) + tag(8, layer) + tag(6, line_type(pen.dash)) + tag(62, colour_number(pen.colour));
}

struct Vertex {
  Point place;
  double bulge_ratio = 0.0;  ///< the tangent of a quarter of the arc's turn to the next vertex, > 0 to the left
};

std::string polyline(const std::string& layer, const Pen& pen, const std::vector<Vertex>& vertices, bool closed) {
  std::string text = entity("POLYLINE", layer, pen) + tag(66, 1) + point_tags(10, {}) + tag(70, closed ? 1 : 0);
  for (const Vertex& vertex : vertices) {
    text += tag(0, "VERTEX") + tag(8, layer) + point_tags(10, vertex.place);
    if (vertex.bulge_ratio != 0.0) text += tag(42, vertex.bulge_ratio);
  }
  return text + tag(0, "SEQEND") + tag(8, layer);
}

/// Rise over half the chord, with + - * / and sqrt only.
double bulge_of(const Piece& piece) {
  if (piece.radius_m <= 0.0) return 0.0;
  const double half = 0.5 * distance_m(piece.from, piece.to);
  const double to_chord = std::sqrt(std::max(0.0, piece.radius_m * piece.radius_m - half * half));
  const double far = piece.radius_m + to_chord;
  const double bulge = sweep_rad(piece) > pi ? far / half : half / far;
  return piece.turn == Side::left ? bulge : -bulge;
}

/// Pieces from one break of the path to the next.
std::string unbroken_line(std::span<const Piece> path, const Pen& pen, const std::string& layer, const ToDxf& to) {
  if (path.size() == 1 && path[0].radius_m <= 0.0)
    return entity("LINE", layer, pen) + point_tags(10, to(path[0].from)) + point_tags(11, to(path[0].to));
  std::vector<Vertex> vertices;
  for (const Piece& piece : path) vertices.push_back({to(piece.from), bulge_of(piece)});
  const bool closed = path.size() > 1 && path.front().from == path.back().to;
  if (!closed) vertices.push_back({to(path.back().to)});
  return polyline(layer, pen, vertices, closed);
}

std::string dxf_shape(const Trace& trace, const Layer& layer, const ToDxf& to) {
  if (trace.pen.colour == paper_white || trace.pen.width_m <= 0.0) return "";
  const std::span<const Piece> path = trace.path;
  std::string text;
  for (std::size_t first = 0, k = 1; k <= path.size(); ++k) {
    if (k < path.size() && path[k].from == path[k - 1].to) continue;
    text += unbroken_line(path.subspan(first, k - first), trace.pen, layer.name, to);
    first = k;
  }
  return text;
}

struct Seen {
  std::vector<Point> corner;
  bool closed = false;
};

Point at_share(Point a, Point b, double share) {
  if (share <= 0.0) return a;
  return share >= 1.0 ? b : Point{a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
}

/// The ring, or the stretches of it that lie within the clip.
std::vector<Seen> seen_of(const Polygon& ring, const std::vector<Polygon>& clip) {
  if (clip.empty()) return {{ring, true}};
  const Floor window{clip[0], {clip.begin() + 1, clip.end()}};
  std::vector<Seen> all;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    const Point a = ring[k], b = ring[(k + 1) % ring.size()];
    for (const Share share : clipped(a, b, window)) {
      const Point from = at_share(a, b, share.from_ratio), to = at_share(a, b, share.to_ratio);
      if (all.empty() || !(all.back().corner.back() == from)) all.push_back({{from}, false});
      all.back().corner.push_back(to);
    }
  }
  if (all.empty() || !(all.front().corner.front() == all.back().corner.back())) return all;
  if (all.size() == 1) {
    all[0].closed = true;
    all[0].corner.pop_back();
    return all;
  }
  Seen last = std::move(all.back());
  all.pop_back();
  last.corner.insert(last.corner.end(), all[0].corner.begin() + 1, all[0].corner.end());
  all[0] = std::move(last);
  return all;
}

std::string dxf_shape(const Area& area, const Layer& layer, const ToDxf& to) {
  const bool lined = area.pen.width_m > 0.0;
  // Without a line of its own an area is seen by its tint, and the paper's is not seen.
  if (!lined && (!area.fill || (area.fill->tint == paper_white && area.fill->pattern == Pattern::plain))) return "";
  const Pen pen = lined ? area.pen : Pen{0.0, area.fill->tint, Dash::solid};
  std::string text;
  for (const Polygon& ring : area.ring) {
    for (const Seen& part : seen_of(ring, layer.clip)) {
      std::vector<Vertex> vertices;
      for (const Point& corner : part.corner) vertices.push_back({to(corner)});
      if (vertices.size() > 1) text += polyline(layer.name, pen, vertices, part.closed);
    }
  }
  return text;
}

std::string dxf_shape(const Disc& disc, const Layer& layer, const ToDxf& to) {
  const bool lined = disc.pen.width_m > 0.0;
  if (!lined && (!disc.tint || *disc.tint == paper_white)) return "";
  const Pen pen = lined ? disc.pen : Pen{0.0, *disc.tint, Dash::solid};
  return entity("CIRCLE", layer.name, pen) + point_tags(10, to(disc.centre)) + tag(40, to.length(disc.radius_m));
}

std::string dxf_shape(const Lettering& text, const Layer& layer, const ToDxf& to) {
  const double half = 0.5 * text_size(text.text, text.size_m, text.bold).width_m;
  const double along = text.align == Align::middle ? 0.0 : text.align == Align::left ? -half : half;
  const Point at = to({text.middle.x_m + (text.upright ? 0.0 : along), text.middle.y_m + (text.upright ? along : 0.0)});
  const int side = text.align == Align::left ? 0 : text.align == Align::middle ? 1 : 2;
  return entity("TEXT", layer.name, {0.0, text.colour, Dash::solid}) + point_tags(10, at) +
         tag(40, to.length(capital_of_size * text.size_m)) + tag(1, plain_ascii(text.text)) +
         tag(50, text.upright ? 90.0 : 0.0) + tag(7, "STANDARD") + tag(72, side) + point_tags(11, at) + tag(73, 2);
}

std::string section(const char* name, const std::string& content) {
  return tag(0, "SECTION") + tag(2, name) + content + tag(0, "ENDSEC");
}

std::string variable(const char* name, const std::string& value) { return tag(9, name) + value; }

std::string header(const Picture& drawing, const ToDxf& to, System units) {
  const auto corner = [&](Point p) { return tag(10, to(p).x_m) + tag(20, to(p).y_m) + tag(30, 0.0); };
  const bool us = units == System::us;
  return section("HEADER", variable("$ACADVER", tag(1, "AC1009")) + variable("$EXTMIN", corner({})) +
                               variable("$EXTMAX", corner({drawing.width_m, drawing.height_m})) +
                               variable("$LUNITS", tag(70, 2)) + variable("$INSUNITS", tag(70, us ? 1 : 4)) +
                               variable("$MEASUREMENT", tag(70, us ? 0 : 1)));
}

std::string table(const char* name, int rows, const std::string& content) {
  return tag(0, "TABLE") + tag(2, name) + tag(70, rows) + content + tag(0, "ENDTAB");
}

/// A dash's length, a gap's as a negative number; all in metres of paper.
std::string dashed(const char* name, const std::vector<double>& parts_m, const ToDxf& to) {
  double whole = 0.0;
  for (const double part : parts_m) whole += std::abs(part);
  std::string text = tag(0, "LTYPE") + tag(2, name) + tag(70, 0) + tag(3, "") + tag(72, 65) +
                     tag(73, static_cast<int>(parts_m.size())) + tag(40, to.length(whole));
  for (const double part : parts_m) text += tag(49, to.length(part));
  return text;
}

std::string tables(const Picture& drawing, const ToDxf& to) {
  const std::string types = dashed("CONTINUOUS", {}, to) + dashed("DASHES", {0.0016, -0.0012}, to) +
                            dashed("DASH_DOT", {0.006, -0.0015, 0.0009, -0.0015}, to);
  const auto layer = [](const std::string& name) {
    return tag(0, "LAYER") + tag(2, name) + tag(70, 0) + tag(62, 7) + tag(6, "CONTINUOUS");
  };
  std::string layers = layer("0");
  for (const Layer& one : drawing.layer) layers += layer(one.name);
  // Letters of the plainest stroke face, narrowed so that words stay within their boxes.
  const std::string style = tag(0, "STYLE") + tag(2, "STANDARD") + tag(70, 0) + tag(40, 0.0) + tag(41, 0.7) +
                            tag(50, 0.0) + tag(71, 0) + tag(42, 1.0) + tag(3, "txt") + tag(4, "");
  return section("TABLES", table("LTYPE", 3, types) +
                               table("LAYER", static_cast<int>(drawing.layer.size()) + 1, layers) +
                               table("STYLE", 1, style));
}

}  // namespace

std::string dxf_of(const Picture& drawing, const DxfFloor& floor) {
  expects(floor.scale_ratio > 0.0, "dxf_of: a scale that is not above zero");
  const bool us = floor.units == System::us;
  const ToDxf to{floor.zero, 1.0 / floor.scale_ratio / (us ? inch_m : millimetre_in_m)};
  std::string text = tag(999, plain_ascii(drawing.title)) + tag(999, plain_ascii(drawing.description)) +
                     tag(999, us ? "Lengths in inches." : "Lengths in millimetres.") +
                     header(drawing, to, floor.units) + tables(drawing, to) + section("BLOCKS", "");
  std::string entities;
  for (const Layer& layer : drawing.layer) {
    for (const SheetShape& shape : layer.shape)
      entities += std::visit([&](const auto& one) { return dxf_shape(one, layer, to); }, shape);
  }
  return text + section("ENTITIES", entities) + tag(0, "EOF");
}

}  // namespace slabwright
