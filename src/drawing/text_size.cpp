// How much room a line of text takes, whatever face shows it.
#include <algorithm>
#include <array>
#include <string_view>

#include "slabwright/contract.hpp"
#include "slabwright/drawing.hpp"

namespace slabwright {
namespace {

// Advances of a wide sans-serif face from space to ~, hundredths of the size.
constexpr std::array<int, 95> advances{32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37,  32, 34, 64, 64, 64,
                                       64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 54, 100, 69, 69, 70, 78, 64,
                                       58, 78, 76, 30, 30, 66, 56, 87, 75, 79, 61, 79, 70, 64,  62, 74, 69, 99, 69,
                                       62, 69, 40, 34, 40, 84, 50, 50, 62, 64, 55, 64, 62, 36,  64, 64, 28, 28, 58,
                                       28, 98, 64, 62, 64, 64, 42, 53, 40, 64, 60, 82, 60, 60,  53, 64, 34, 64, 84};
constexpr double bold_ratio = 1.27;  // of the letter that grows most: 28 to 35
constexpr double beyond_ascii = 1.1;

bool starts_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

}  // namespace

TextSize text_size(const std::string& text, double size_m, bool bold) {
  double sum = 0.0;
  bool deep = false;
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if (code >= 32 && code < 127)
      sum += 0.01 * advances[code - 32U];
    else if (starts_character(c))
      sum += beyond_ascii;
    deep = deep || code >= 127 || std::string_view("gjpqy,;()[]{}@$/|_Q").find(c) != std::string_view::npos;
  }
  return {sum * size_m * (bold ? bold_ratio : 1.0), size_m * (deep ? 1.0 : 0.76)};
}

Box box_of(const Lettering& lettering) {
  const TextSize size = text_size(lettering.text, lettering.size_m, lettering.bold);
  return lettering.upright ? box_about(lettering.middle, size.height_m, size.width_m)
                           : box_about(lettering.middle, size.width_m, size.height_m);
}

bool overlap(const Box& a, const Box& b) {
  return a.low.x_m < b.high.x_m && b.low.x_m < a.high.x_m && a.low.y_m < b.high.y_m && b.low.y_m < a.high.y_m;
}

bool within(const Box& inner, const Box& outer) {
  return inner.low.x_m >= outer.low.x_m && inner.low.y_m >= outer.low.y_m && inner.high.x_m <= outer.high.x_m &&
         inner.high.y_m <= outer.high.y_m;
}

Box grown(const Box& box, double by_m) {
  return {{box.low.x_m - by_m, box.low.y_m - by_m}, {box.high.x_m + by_m, box.high.y_m + by_m}};
}

Box box_about(Point middle, double width_m, double height_m) {
  return {{middle.x_m - 0.5 * width_m, middle.y_m - 0.5 * height_m},
          {middle.x_m + 0.5 * width_m, middle.y_m + 0.5 * height_m}};
}

Polygon ring_of(const Box& box) {
  return {box.low, {box.high.x_m, box.low.y_m}, box.high, {box.low.x_m, box.high.y_m}};
}

Box box_round(const std::vector<Point>& corners) {
  expects(!corners.empty(), "box_round: no corners");
  Box box{corners[0], corners[0]};
  for (const Point p : corners) {
    box.low = {std::min(box.low.x_m, p.x_m), std::min(box.low.y_m, p.y_m)};
    box.high = {std::max(box.high.x_m, p.x_m), std::max(box.high.y_m, p.y_m)};
  }
  return box;
}

std::vector<Box> text_boxes(const Picture& drawing) {
  std::vector<Box> boxes;
  for (const Layer& layer : drawing.layer) {
    for (const SheetShape& shape : layer.shape) {
      if (const auto* lettering = std::get_if<Lettering>(&shape)) boxes.push_back(box_of(*lettering));
    }
  }
  return boxes;
}

std::vector<std::string> wrapped(const std::string& text, double size_m, double width_m) {
  std::vector<std::string> lines;
  std::string line;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    const std::string longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && text_size(longer, size_m, false).width_m > width_m) {
      lines.push_back(line);
      line = word;
    } else {
      line = longer;
    }
    at = end + 1;
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

}  // namespace slabwright
