// A drawing as SVG 1.1, in millimetres from the upper left corner of the sheet.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string_view>

#include "slabwright/contract.hpp"
#include "slabwright/drawing.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// Millimetres to a hundredth, without zeros that say nothing, and never "-0".
std::string in_mm(double metres) {
  const auto hundredths = static_cast<long long>(std::llround(metres * 1.0e5));
  const long long whole = std::abs(hundredths) / 100, rest = std::abs(hundredths) % 100;
  std::string text = fmt::format("{}{}", hundredths < 0 ? "-" : "", whole);
  if (rest == 0) return text;
  return text + (rest % 10 == 0 ? fmt::format(".{}", rest / 10) : fmt::format(".{:02}", rest));
}

std::string hex(Colour c) { return fmt::format("#{:02x}{:02x}{:02x}", c.red, c.green, c.blue); }

using PatternKey = std::tuple<int, std::string, std::string>;

/// What every shape asks about its sheet.
struct SheetFrame {
  double height_m = 0.0;
  std::string prefix;  ///< of every id, where several drawings share a page
};

std::string name_of(const PatternKey& key, const SheetFrame& frame) {
  return fmt::format("{}p{}-{}-{}", frame.prefix, std::get<0>(key), std::get<1>(key).substr(1),
                     std::get<2>(key).substr(1));
}

std::string at(Point p, double height_m) { return in_mm(p.x_m) + " " + in_mm(height_m - p.y_m); }

std::string outline(const Pen& pen) {
  if (pen.width_m <= 0.0) return "";
  std::string text = fmt::format(" stroke=\"{}\" stroke-width=\"{}\"", hex(pen.colour), in_mm(pen.width_m));
  if (pen.dash == Dash::dashes) text += " stroke-dasharray=\"1.6 1.2\"";
  if (pen.dash == Dash::dash_dot) text += " stroke-dasharray=\"6 1.5 0.9 1.5\"";
  return text;
}

std::string steps_of(const Path& path, double height_m) {
  std::string d;
  for (std::size_t k = 0; k < path.size(); ++k) {
    const Piece& piece = path[k];
    if (k == 0 || !(piece.from == path[k - 1].to)) d += (k == 0 ? "M" : " M") + at(piece.from, height_m);
    if (piece.radius_m <= 0.0) {
      d += " L" + at(piece.to, height_m);
      continue;
    }
    // Paper's y is turned over, so that a left turn runs against the clock there as it does on the floor.
    const bool large = sweep_rad(piece) > pi;
    d += fmt::format(" A{0} {0} 0 {1} {2} {3}", in_mm(piece.radius_m), large ? 1 : 0, piece.turn == Side::left ? 0 : 1,
                     at(piece.to, height_m));
  }
  return d;
}

std::string rings_of(const std::vector<Polygon>& rings, double height_m) {
  std::string d;
  for (const Polygon& ring : rings) {
    for (std::size_t k = 0; k < ring.size(); ++k)
      d += (k == 0 ? (d.empty() ? "M" : " M") : " L") + at(ring[k], height_m);
    if (!ring.empty()) d += " Z";
  }
  return d;
}

PatternKey key_of(const Fill& fill) { return {static_cast<int>(fill.pattern), hex(fill.tint), hex(fill.marks)}; }

std::string paint(const Fill& fill, const SheetFrame& frame) {
  return fill.pattern == Pattern::plain ? hex(fill.tint) : "url(#" + name_of(key_of(fill), frame) + ")";
}

std::string svg_shape(const Trace& trace, const SheetFrame& frame) {
  return fmt::format("<path d=\"{}\" fill=\"none\"{}/>\n", steps_of(trace.path, frame.height_m), outline(trace.pen));
}

std::string svg_shape(const Area& area, const SheetFrame& frame) {
  return fmt::format("<path d=\"{}\" fill=\"{}\" fill-rule=\"evenodd\"{}/>\n", rings_of(area.ring, frame.height_m),
                     area.fill ? paint(*area.fill, frame) : "none", outline(area.pen));
}

std::string svg_shape(const Disc& disc, const SheetFrame& frame) {
  return fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{}\"{}/>\n", in_mm(disc.centre.x_m),
                     in_mm(frame.height_m - disc.centre.y_m), in_mm(disc.radius_m),
                     disc.tint ? hex(*disc.tint) : "none", outline(disc.pen));
}

std::string svg_shape(const Lettering& text, const SheetFrame& frame) {
  const TextSize size = text_size(text.text, text.size_m, text.bold);
  // From the middle of the box down to the line that letters stand on, and along it to where they begin.
  const double below = (size.height_m > 0.9 * text.size_m ? 0.26 : 0.365) * text.size_m;
  const double start = text.align == Align::middle ? 0.0 : (text.align == Align::left ? -0.5 : 0.5) * size.width_m;
  const double x_m = text.middle.x_m, y_m = frame.height_m - text.middle.y_m;
  const std::string place = text.upright ? fmt::format("transform=\"translate({} {}) rotate(-90)\" x=\"{}\" y=\"{}\"",
                                                       in_mm(x_m), in_mm(y_m), in_mm(start), in_mm(below))
                                         : fmt::format("x=\"{}\" y=\"{}\"", in_mm(x_m + start), in_mm(y_m + below));
  const char* anchor = text.align == Align::left    ? " text-anchor=\"start\""
                       : text.align == Align::right ? " text-anchor=\"end\""
                                                    : "";
  const std::string key = text.key.empty() ? "" : fmt::format(" data-key=\"{}\"", escaped(text.key));
  return fmt::format("<text {} font-size=\"{}\" fill=\"{}\"{}{}{}>{}</text>\n", place, in_mm(text.size_m),
                     hex(text.colour), text.bold ? " font-weight=\"bold\"" : "", anchor, key, escaped(text.text));
}

std::string marks_of(Pattern pattern, const std::string& colour) {
  const std::string pen = fmt::format("fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"", colour,
                                      pattern == Pattern::hatch ? "0.22" : "0.14");
  switch (pattern) {
    case Pattern::dots: return fmt::format("<circle cx=\"1.2\" cy=\"1.2\" r=\"0.2\" fill=\"{}\"/>", colour);
    case Pattern::rising: return "<path d=\"M0.6 1.8 L1.8 0.6\" " + pen + "/>";
    case Pattern::falling: return "<path d=\"M0.6 0.6 L1.8 1.8\" " + pen + "/>";
    case Pattern::crosses: return "<path d=\"M1.2 0.8 L1.2 1.6 M0.8 1.2 L1.6 1.2\" " + pen + "/>";
    case Pattern::hatch: return "<path d=\"M-0.2 1.4 L1.4 -0.2 M-0.2 2.6 L2.6 -0.2 M1 2.6 L2.6 1\" " + pen + "/>";
    case Pattern::plain: break;
  }
  return "";
}

std::string definitions(const Picture& drawing, const SheetFrame& frame) {
  std::set<PatternKey> keys;
  std::string text;
  for (const Layer& layer : drawing.layer) {
    for (const SheetShape& shape : layer.shape) {
      const auto* area = std::get_if<Area>(&shape);
      if (area && area->fill && area->fill->pattern != Pattern::plain) keys.insert(key_of(*area->fill));
    }
    if (!layer.clip.empty()) {
      text += fmt::format("<clipPath id=\"{}clip-{}\"><path d=\"{}\" clip-rule=\"evenodd\"/></clipPath>\n",
                          frame.prefix, layer.name, rings_of(layer.clip, drawing.height_m));
    }
  }
  for (const PatternKey& key : keys) {
    text += fmt::format(
        "<pattern id=\"{}\" width=\"2.4\" height=\"2.4\" patternUnits=\"userSpaceOnUse\">"
        "<rect width=\"2.4\" height=\"2.4\" fill=\"{}\"/>{}</pattern>\n",
        name_of(key, frame), std::get<1>(key), marks_of(static_cast<Pattern>(std::get<0>(key)), std::get<2>(key)));
  }
  return text.empty() ? "" : "<defs>\n" + text + "</defs>\n";
}

std::string content(const Picture& drawing, const SheetFrame& frame) {
  const auto keyed = [](const KeyedText& told) {
    return told.key.empty() ? std::string{} : fmt::format(" data-key=\"{}\"", escaped(told.key));
  };
  std::string text = fmt::format("<title{}>{}</title>\n<desc{}>{}</desc>\n", keyed({drawing.title, drawing.title_key}),
                                 escaped(drawing.title), keyed({drawing.description, drawing.description_key}),
                                 escaped(drawing.description));
  text += definitions(drawing, frame);
  text += fmt::format("<rect width=\"{}\" height=\"{}\" fill=\"#ffffff\"/>\n", in_mm(drawing.width_m),
                      in_mm(drawing.height_m));
  for (const Layer& layer : drawing.layer) {
    const std::string clip =
        layer.clip.empty() ? "" : fmt::format(" clip-path=\"url(#{}clip-{})\"", frame.prefix, layer.name);
    text += fmt::format("<g id=\"{}{}\"{}>\n", frame.prefix, layer.name, clip);
    for (const SheetShape& shape : layer.shape)
      text += std::visit([&](const auto& one) { return svg_shape(one, frame); }, shape);
    text += "</g>\n";
  }
  return text + "</svg>\n";
}

/// The smallest letters of the drawing; its height where it has none.
double smallest_letters_m(const Picture& drawing) {
  double smallest_m = drawing.height_m;
  for (const Layer& layer : drawing.layer)
    for (const SheetShape& shape : layer.shape)
      if (const auto* text = std::get_if<Lettering>(&shape)) smallest_m = std::min(smallest_m, text->size_m);
  return smallest_m;
}

constexpr const char* letters = "font-family=\"sans-serif\" text-anchor=\"middle\" stroke-linejoin=\"round\"";

}  // namespace

std::string svg_of(const Picture& drawing) {
  expects(drawing.width_m > 0.0 && drawing.height_m > 0.0, "svg_of: a sheet without size");
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" +
         fmt::format(
             "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}mm\" height=\"{1}mm\" "
             "viewBox=\"0 0 {0} {1}\" {2}>\n",
             in_mm(drawing.width_m), in_mm(drawing.height_m), letters) +
         content(drawing, {drawing.height_m, ""});
}

std::string svg_inside(const Picture& drawing, const std::string& name) {
  expects(drawing.width_m > 0.0 && drawing.height_m > 0.0, "svg_inside: a sheet without size");
  constexpr double readable_px = 11.0;
  return fmt::format("<svg viewBox=\"0 0 {0} {1}\" role=\"img\" style=\"width:{0}mm;min-width:{2:.0f}px\" {3}>\n",
                     in_mm(drawing.width_m), in_mm(drawing.height_m),
                     std::ceil(readable_px * drawing.width_m / smallest_letters_m(drawing)), letters) +
         content(drawing, {drawing.height_m, name + "-"});
}

}  // namespace slabwright
