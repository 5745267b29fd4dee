// A drawing as SVG 1.1, in millimetres from the upper left corner of the sheet.
#include <fmt/format.h>

#include <cmath>
#include <set>
#include <string_view>

#include "slabwright/contract.hpp"
#include "slabwright/drawing.hpp"

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

/// How many bytes of well-formed UTF-8 begin here; 0 where they are not.
std::size_t character_bytes(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text[0]);
  const std::size_t bytes = lead < 0x80U                    ? 1
                            : lead >= 0xC2U && lead < 0xE0U ? 2
                            : lead >= 0xE0U && lead < 0xF0U ? 3
                            : lead >= 0xF0U && lead < 0xF5U ? 4
                                                            : 0;
  if (bytes == 0 || text.size() < bytes) return 0;
  for (std::size_t k = 1; k < bytes; ++k) {
    if ((static_cast<unsigned char>(text[k]) & 0xC0U) != 0x80U) return 0;
  }
  const auto second = bytes > 1 ? static_cast<unsigned char>(text[1]) : 0U;
  const bool overlong = (lead == 0xE0U && second < 0xA0U) || (lead == 0xF0U && second < 0x90U);
  const bool no_character = (lead == 0xEDU && second >= 0xA0U) || (lead == 0xF4U && second >= 0x90U) ||
                            (lead == 0xEFU && second == 0xBFU && static_cast<unsigned char>(text[2]) >= 0xBEU);
  return overlong || no_character ? 0 : bytes;
}

/// Text as XML takes it: marks escaped, what XML forbids left out.
std::string escaped(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t bytes = character_bytes(text.substr(at));
    const std::string_view one = text.substr(at, std::max<std::size_t>(bytes, 1));
    at += one.size();
    if (bytes == 0)
      out += '?';
    else if (one == "<")
      out += "&lt;";
    else if (one == ">")
      out += "&gt;";
    else if (one == "&")
      out += "&amp;";
    else if (one == "\"")
      out += "&quot;";
    else if (one == "'")
      out += "&#39;";
    else if (bytes == 1 && (static_cast<unsigned char>(one[0]) < 0x20U || one[0] == 0x7F))
      out += ' ';
    else
      out += one;
  }
  return out;
}

using PatternKey = std::tuple<int, std::string, std::string>;

std::string name_of(const PatternKey& key) {
  return fmt::format("p{}-{}-{}", std::get<0>(key), std::get<1>(key).substr(1), std::get<2>(key).substr(1));
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
    const bool large = sweep_rad(piece) > 3.14159265358979;
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

std::string paint(const Fill& fill) {
  return fill.pattern == Pattern::plain ? hex(fill.tint) : "url(#" + name_of(key_of(fill)) + ")";
}

std::string svg_shape(const Trace& trace, double height_m) {
  return fmt::format("<path d=\"{}\" fill=\"none\"{}/>\n", steps_of(trace.path, height_m), outline(trace.pen));
}

std::string svg_shape(const Area& area, double height_m) {
  return fmt::format("<path d=\"{}\" fill=\"{}\" fill-rule=\"evenodd\"{}/>\n", rings_of(area.ring, height_m),
                     area.fill ? paint(*area.fill) : "none", outline(area.pen));
}

std::string svg_shape(const Disc& disc, double height_m) {
  return fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{}\"{}/>\n", in_mm(disc.centre.x_m),
                     in_mm(height_m - disc.centre.y_m), in_mm(disc.radius_m), disc.tint ? hex(*disc.tint) : "none",
                     outline(disc.pen));
}

std::string svg_shape(const Lettering& text, double height_m) {
  const TextSize size = text_size(text.text, text.size_m, text.bold);
  // From the middle of the box down to the line that letters stand on, and along it to where they begin.
  const double below = (size.height_m > 0.9 * text.size_m ? 0.26 : 0.365) * text.size_m;
  const double start = text.align == Align::middle ? 0.0 : (text.align == Align::left ? -0.5 : 0.5) * size.width_m;
  const double x_m = text.middle.x_m, y_m = height_m - text.middle.y_m;
  const std::string place = text.upright ? fmt::format("transform=\"translate({} {}) rotate(-90)\" x=\"{}\" y=\"{}\"",
                                                       in_mm(x_m), in_mm(y_m), in_mm(start), in_mm(below))
                                         : fmt::format("x=\"{}\" y=\"{}\"", in_mm(x_m + start), in_mm(y_m + below));
  const char* anchor = text.align == Align::left    ? " text-anchor=\"start\""
                       : text.align == Align::right ? " text-anchor=\"end\""
                                                    : "";
  return fmt::format("<text {} font-size=\"{}\" fill=\"{}\"{}{}>{}</text>\n", place, in_mm(text.size_m),
                     hex(text.colour), text.bold ? " font-weight=\"bold\"" : "", anchor, escaped(text.text));
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

std::string definitions(const Picture& drawing) {
  std::set<PatternKey> keys;
  std::string text;
  for (const Layer& layer : drawing.layer) {
    for (const SheetShape& shape : layer.shape) {
      const auto* area = std::get_if<Area>(&shape);
      if (area && area->fill && area->fill->pattern != Pattern::plain) keys.insert(key_of(*area->fill));
    }
    if (!layer.clip.empty()) {
      text += fmt::format("<clipPath id=\"clip-{}\"><path d=\"{}\" clip-rule=\"evenodd\"/></clipPath>\n", layer.name,
                          rings_of(layer.clip, drawing.height_m));
    }
  }
  for (const PatternKey& key : keys) {
    text += fmt::format(
        "<pattern id=\"{}\" width=\"2.4\" height=\"2.4\" patternUnits=\"userSpaceOnUse\">"
        "<rect width=\"2.4\" height=\"2.4\" fill=\"{}\"/>{}</pattern>\n",
        name_of(key), std::get<1>(key), marks_of(static_cast<Pattern>(std::get<0>(key)), std::get<2>(key)));
  }
  return text.empty() ? "" : "<defs>\n" + text + "</defs>\n";
}

}  // namespace

std::string svg_of(const Picture& drawing) {
  expects(drawing.width_m > 0.0 && drawing.height_m > 0.0, "svg_of: a sheet without size");
  const std::string width = in_mm(drawing.width_m), height = in_mm(drawing.height_m);
  std::string text = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  text += fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}mm\" height=\"{1}mm\" "
      "viewBox=\"0 0 {0} {1}\" font-family=\"sans-serif\" text-anchor=\"middle\" stroke-linejoin=\"round\">\n",
      width, height);
  text += fmt::format("<title>{}</title>\n<desc>{}</desc>\n", escaped(drawing.title), escaped(drawing.description));
  text += definitions(drawing);
  text += fmt::format("<rect width=\"{}\" height=\"{}\" fill=\"#ffffff\"/>\n", width, height);
  for (const Layer& layer : drawing.layer) {
    const std::string clip = layer.clip.empty() ? "" : fmt::format(" clip-path=\"url(#clip-{})\"", layer.name);
    text += fmt::format("<g id=\"{}\"{}>\n", layer.name, clip);
    for (const SheetShape& shape : layer.shape) {
      text += std::visit([&](const auto& one) { return svg_shape(one, drawing.height_m); }, shape);
    }
    text += "</g>\n";
  }
  return text + "</svg>\n";
}

}  // namespace slabwright
