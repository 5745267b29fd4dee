// Small things that all parts of a plan use.
#include "plan_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "slabwright/units_exact.hpp"

namespace slabwright::drawn {

Polygon Onto::operator()(Polygon ring) const {
  for (Point& p : ring) p = (*this)(p);
  return ring;
}

Path Onto::operator()(Path path) const {
  for (Piece& piece : path) {
    piece = {(*this)(piece.from), (*this)(piece.to), ratio * piece.radius_m, (*this)(piece.centre), piece.turn};
  }
  return path;
}

TubePens tube_pens(const DrawnFloor& plan, const Onto& onto) {
  const double true_m = onto.ratio * plan.tube_diameter_m;
  if (true_m >= least_tube_m || true_m <= 0.0) return {std::max(true_m, least_tube_m), 1.0};
  // No wider than leaves a third of the pitch as floor on either side, however small the sheet.
  const double width = std::max(true_m, std::min(least_tube_m, 0.4 * onto.ratio * plan.spacing_m));
  return {width, width / true_m};
}

Label label_of(const KeyedText& text, double size_m, Point target) {
  Label label;
  const TextSize size = text_size(text.text, size_m, false);
  label.lettering = {target, text.text, size_m, dark, false, false, Align::middle, text.key};
  label.wish.width_m = size.width_m;
  label.wish.height_m = size.height_m;
  label.wish.target = target;
  label.what = text;
  return label;
}

void add(Part& to, Part&& more) {
  const auto move = [](auto& into, auto& from) {
    into.insert(into.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
  };
  move(to.under, more.under);
  move(to.shape, more.shape);
  move(to.obstacle, more.obstacle);
  move(to.label, more.label);
}

Obstacle keep_off(Point from, Point to, double reach_m) { return {from, to, reach_m, Hardness::solid}; }

Trace stroke(Point from, Point to, Pen pen) { return {{line(from, to)}, pen}; }

Path part_of(const Path& path, double from_m, double to_m) {
  Path part;
  for (const Piece& piece : path) {
    const double length = length_m(piece), a = std::max(from_m, 0.0), b = std::min(to_m, length);
    if (length > 0.0 && a < b) {
      Piece cut = piece;
      if (a > 0.0) cut.from = point_at({&piece, 1}, a);
      if (b < length) cut.to = point_at({&piece, 1}, b);
      part.push_back(cut);
    }
    from_m -= length;
    to_m -= length;
  }
  return part;
}

Point unit(Point from, Point to) {
  const double length = distance_m(from, to);
  return length > 0.0 ? Point{(to.x_m - from.x_m) / length, (to.y_m - from.y_m) / length} : Point{1.0, 0.0};
}

Point shifted(Point p, Point along, double by_m) { return {p.x_m + by_m * along.x_m, p.y_m + by_m * along.y_m}; }

Point across(Point along) { return {-along.y_m, along.x_m}; }

}  // namespace slabwright::drawn

namespace slabwright {

std::string length_words(double length_m, System system) {
  if (system == System::si) {
    const auto millimetres = std::llround(length_m * 1000.0);
    return fmt::format("{:.{}f} m", static_cast<double>(millimetres) / 1000.0, millimetres % 10 == 0 ? 2 : 3);
  }
  const long long quarters = std::llround(length_m / inch_m * 4.0);
  const long long feet = quarters / 48, inches = quarters % 48 / 4, rest = quarters % 4;
  constexpr const char* fractions[] = {"", "1/4", "1/2", "3/4"};
  if (feet > 0 && inches == 0 && rest == 0) return fmt::format("{} ft", feet);
  std::string small = fmt::format("{}", inches);
  if (rest > 0) small = inches > 0 ? fmt::format("{} {}", inches, fractions[rest]) : fractions[rest];
  return feet > 0 ? fmt::format("{} ft {} in", feet, small) : fmt::format("{} in", small);
}

}  // namespace slabwright
