// Draws the fields of the theory pages as SVG: lines of equal temperature in a floor's edge, the line of freezing
// heavy.
//   field_pictures manuals
#include <fmt/format.h>

#include <cmath>
#include <fstream>
#include <iostream>
#include <string>
#include <vector>

#include "slabwright/conduction_edge.hpp"

using namespace slabwright;

namespace {

constexpr double in_from_m = -0.60, in_to_m = 1.00, deep_m = 1.00;  // the window: from outside into the room
constexpr double step_m = 0.0125;
constexpr double scale = 480.0;  // units of the picture to the metre
constexpr double indoor_degC = 12.0, outdoor_degC = -25.0, ground_degC = 7.0, tube_W_per_m2 = 20.0;

struct Picture {
  std::string name, title;
  EdgeDetail detail;
};

EdgeDetail bare(bool door) {
  EdgeDetail detail;
  if (door)
    detail.kind = DoorEdge{};
  else
    detail.kind = WallEdge{};
  detail.half_width_m = 4.0;
  detail.slab_thickness_m = 0.127;
  detail.tube_depth_m = 0.0635;
  detail.last_tube_in_m = door ? 0.15 : 0.0;
  return detail;
}

std::vector<Picture> pictures() {
  const InsulatingBoard r10{1.76, 0.05};
  EdgeBuild under;
  under.under = {{r10, std::nullopt}};
  EdgeBuild board = under;
  board.outside = EdgeBoard{r10, 0.60};
  EdgeBuild strip = under;
  strip.thermal_break = ThermalBreak{r10, 0.0};
  return {{"field-wall-bare", "wall, R-10 under the slab, bare edge", with_build(bare(false), under)},
          {"field-wall-board", "wall, R-10 under the slab and outside its edge", with_build(bare(false), board)},
          {"field-door-bare", "big door, the slab run through under the leaf", with_build(bare(true), under)},
          {"field-door-strip", "big door, R-10 strip across the slab under the leaf", with_build(bare(true), strip)}};
}

class Field {
 public:
  explicit Field(const EdgeDetail& detail)
      : columns_(static_cast<std::size_t>(std::lround((in_to_m - in_from_m) / step_m)) + 1),
        rows_(static_cast<std::size_t>(std::lround(deep_m / step_m)) + 1) {
    std::vector<EdgePoint> points;
    for (std::size_t j = 0; j < rows_; ++j) {
      for (std::size_t i = 0; i < columns_; ++i) points.push_back({in_m(i), static_cast<double>(j) * step_m});
    }
    for (const std::vector<double>& w : edge_responses(detail, points).weights) {
      degC_.push_back(w[edge_row::indoor] * indoor_degC + w[edge_row::outdoor] * outdoor_degC +
                      w[edge_row::ground] * ground_degC + w[edge_row::tube_heat] * tube_W_per_m2);
    }
  }

  /// A line of equal temperature as short strokes, cell by cell.
  std::string line(double at_degC) const {
    std::string path;
    for (std::size_t j = 0; j + 1 < rows_; ++j) {
      for (std::size_t i = 0; i + 1 < columns_; ++i) path += stroke(i, j, at_degC);
    }
    return path;
  }

  /// The temperature of a line, written where it leaves the picture at the bottom.
  std::string label(double at_degC) const {
    for (std::size_t i = 0; i + 1 < columns_; ++i) {
      const Corner a = corner(i, rows_ - 1), b = corner(i + 1, rows_ - 1);
      if ((a.degC < at_degC) == (b.degC < at_degC)) continue;
      const double x = a.x + (at_degC - a.degC) / (b.degC - a.degC) * (b.x - a.x);
      return fmt::format(
          "<text x=\"{:.1f}\" y=\"{:.1f}\" fill=\"#222\" stroke=\"#fff\" stroke-width=\"4\" paint-order=\"stroke\" "
          "text-anchor=\"middle\">{:.0f}</text>\n",
          x, a.y - 8.0, at_degC);
    }
    return {};
  }

 private:
  struct Corner {
    double x, y, degC;
  };
  static double in_m(std::size_t i) { return in_from_m + static_cast<double>(i) * step_m; }
  Corner corner(std::size_t i, std::size_t j) const {
    return {(in_to_m - in_m(i)) * scale, static_cast<double>(j) * step_m * scale, degC_[j * columns_ + i]};
  }
  std::string stroke(std::size_t i, std::size_t j, double at_degC) const {
    const Corner corners[] = {corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)};
    std::string stroke;
    for (std::size_t c = 0; c < 4; ++c) {
      const Corner &a = corners[c], &b = corners[(c + 1) % 4];
      if ((a.degC < at_degC) == (b.degC < at_degC)) continue;
      const double share = (at_degC - a.degC) / (b.degC - a.degC);
      stroke += fmt::format("{}{:.1f} {:.1f}", stroke.empty() ? "M" : "L", a.x + share * (b.x - a.x),
                            a.y + share * (b.y - a.y));
    }
    return stroke;
  }

  std::size_t columns_, rows_;
  std::vector<double> degC_;
};

std::string rectangle(double in_from, double in_to, double from_m, double to_m, std::string_view look) {
  const double low = std::max(in_from, in_from_m), high = std::min(in_to, in_to_m), bottom = std::min(to_m, deep_m);
  if (high <= low || bottom <= from_m) return {};
  return fmt::format("<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" {}/>\n",
                     (in_to_m - high) * scale, from_m * scale, (high - low) * scale, (bottom - from_m) * scale, look);
}

/// Concrete grey, foam hatched pale, soil white.
std::string materials(const EdgeDetail& detail) {
  const auto* door = std::get_if<DoorEdge>(&detail.kind);
  const double nose_in_m = door ? -(door->leaf_m + door->nose_m) : -std::get<WallEdge>(detail.kind).width_m;
  std::string all = rectangle(nose_in_m, detail.half_width_m, 0.0, detail.slab_thickness_m, "fill=\"#ddd\"");
  for (const EdgePart& part : detail.parts) {
    const bool foam = part.conductivity_W_per_mK < 0.1;
    all += rectangle(part.in_from_m, part.in_to_m, part.depth_from_m, part.depth_to_m,
                     foam ? "fill=\"#cfe3f5\" stroke=\"#7aa7cf\"" : "fill=\"#ddd\"");
  }
  return all;
}

std::string drawing(const Picture& picture) {
  const Field field(picture.detail);
  const double width = (in_to_m - in_from_m) * scale, height = deep_m * scale, head = 46.0;
  std::string svg = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {:.0f} {:.0f}\" font-family=\"sans-serif\" "
      "font-size=\"13\">\n<text x=\"6\" y=\"16\">{}</text>\n<text x=\"6\" y=\"36\">room {:.0f} C, tubes {:.0f} "
      "W/m2</text>"
      "<text x=\"{:.0f}\" y=\"36\" text-anchor=\"end\">outdoors {:.0f} C</text>\n<g transform=\"translate(0 {:.0f})\" "
      "fill=\"none\">\n",
      width, height + head, picture.title, indoor_degC, tube_W_per_m2, width - 6, outdoor_degC, head);
  svg += materials(picture.detail);
  std::string labels;
  for (double degC = -24.0; degC <= 20.0; degC += 2.0) {
    const std::string path = field.line(degC);
    if (path.empty()) continue;
    labels += field.label(degC);
    svg += fmt::format("<path d=\"{}\" stroke=\"#222\" stroke-width=\"{}\"/>\n", path, degC == 0.0 ? "2.6" : "0.6");
  }
  svg += labels;
  svg += fmt::format("<rect width=\"{:.0f}\" height=\"{:.0f}\" stroke=\"#222\"/>\n</g>\n</svg>\n", width, height);
  return svg;
}

}  // namespace

int main(int count, char** words) {
  if (count != 2) {
    std::cerr << "usage: field_pictures FOLDER\n";
    return 64;
  }
  for (const Picture& picture : pictures()) {
    std::ofstream(std::string(words[1]) + "/" + picture.name + ".svg") << drawing(picture);
  }
  return 0;
}
