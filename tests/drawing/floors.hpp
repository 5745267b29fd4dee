// Floors with tube for plans: loops side by side, each up and down its own strip from the wall below.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/drawing_plan.hpp"

namespace floors {

using namespace slabwright;

constexpr double foot_m = 0.3048;

/// Up at the left, back and forth downwards, back to the wall at the right: `rows` runs across.
inline Path loop_in(double left_m, double width_m, double height_m, double spacing_m) {
  const double l = left_m + 0.5 * spacing_m, r = left_m + width_m - 0.5 * spacing_m;
  std::vector<Point> corners{{l, 0.0}};
  bool at_left = true;
  for (double y = height_m - 0.5 * spacing_m; y > spacing_m; y -= spacing_m) {
    const double inner_l = l + spacing_m, inner_r = r - spacing_m;
    const bool first = corners.size() == 1;
    corners.push_back({first ? l : at_left ? inner_l : inner_r, y});
    corners.push_back({at_left ? inner_r : inner_l, y});
    at_left = !at_left;
  }
  const double last_y = corners.back().y_m - 0.5 * spacing_m;
  corners.push_back({corners.back().x_m, last_y});
  corners.push_back({r, last_y});
  corners.push_back({r, 0.0});
  return rounded(corners, 0.4 * spacing_m);
}

/// Below to the manifold and on, above from jamb to jamb, and the whole.
inline void add_dimensions(DrawnFloor& floor, double w, double d) {
  const auto add = [&](DrawnSide side, bool whole, Point from, Point to) {
    floor.dimension.push_back({side, whole, from, to, {length_words(distance_m(from, to), floor.units), "length_m"}});
  };
  add(DrawnSide::below, false, {0, 0}, {0.5 * w, 0});
  add(DrawnSide::below, false, {0.5 * w, 0}, {w, 0});
  add(DrawnSide::below, true, {0, 0}, {w, 0});
  add(DrawnSide::left, true, {0, 0}, {0, d});
  const double stops[] = {0.0, 0.2 * w, 0.2 * w + 3.0, w};
  for (int k = 1; k < 4; ++k) add(DrawnSide::above, false, {stops[k - 1], d}, {stops[k], d});
}

/// A rectangle with a name on every wall, doors, a joint with sleeves, no-tube areas and so many loops.
inline DrawnFloor hall(std::size_t loops, double width_ft, double depth_ft, System units = System::us) {
  DrawnFloor floor;
  floor.title = {{"Hall", ""}};
  floor.units = units;
  floor.spacing_m = foot_m;
  floor.tube_diameter_m = 0.0159;
  const double w = width_ft * foot_m, d = depth_ft * foot_m;
  floor.floor.outline = rectangle(w, d);
  floor.wall = {{{0, 0}, {w, 0}, {"south wall", ""}}, {{w, d}, {0, d}, {"north wall", ""}}};
  floor.door = {{{0.2 * w, d}, {0.2 * w + 3.0, d}, {"big door, 9 ft 10 in", "door.width_m"}}};
  floor.no_tube = {{{{0.5 * w, 0.5 * d}, {0.5 * w + 0.4, 0.5 * d}, {0.5 * w + 0.4, 0.5 * d + 0.4}}, {"column", ""}}};
  floor.manifold = {{{"wall manifold", ""}, {0.5 * w, 0.0}, {0.0, 1.0}}};
  floor.joint = {{{0.3 * w, 0.0}, {0.3 * w, d}, {"joint", ""}, {}}};
  for (int k = 1; k <= 6; ++k) {
    floor.joint[0].sleeve.push_back({{0.3 * w, d - foot_m * k}, {std::to_string(k), "sleeve.number"}});
  }
  add_dimensions(floor, w, d);
  const double strip = w / static_cast<double>(loops);
  for (std::size_t k = 0; k < loops; ++k) {
    const std::string name = std::to_string(k + 1);
    const double left_m = static_cast<double>(k) * strip;
    floor.loop.push_back(
        {{name, "loop.number"}, 0, {name, "loop.port"}, loop_in(left_m, strip, d, foot_m), {"20 ft", "loop.length_m"}});
  }
  return floor;
}

inline std::size_t count(std::string_view text, std::string_view part) {
  std::size_t number = 0;
  for (std::size_t at = text.find(part); at != std::string_view::npos; at = text.find(part, at + part.size())) ++number;
  return number;
}

/// Empty where every element that begins also ends, in order, and nothing stands raw that XML takes for a mark.
inline std::string xml_fault(std::string_view text) {
  std::vector<std::string> open;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '&' && text.substr(at, 8).find(';') == std::string_view::npos) return "a bare &";
    if (text[at] == '>') return "a bare >";
    if (text[at] != '<') continue;
    const std::size_t end = text.find('>', at);
    if (end == std::string_view::npos) return "an element without an end";
    const std::string_view inside = text.substr(at + 1, end - at - 1);
    if (inside.find('<') != std::string_view::npos) return "a < inside an element";
    if (count(inside, "\"") % 2 != 0) return "quotes that do not pair";
    const std::string name(
        inside.substr(inside[0] == '/' ? 1 : 0, inside.find_first_of(" /", 1) - (inside[0] == '/' ? 1 : 0)));
    if (inside[0] == '/') {
      if (open.empty() || open.back() != std::string(inside.substr(1))) return "an end without a beginning: " + name;
      open.pop_back();
    } else if (inside[0] != '?' && inside.back() != '/') {
      open.push_back(name);
    }
    at = end;
  }
  return open.empty() ? "" : "no end of " + open.back();
}

}  // namespace floors
