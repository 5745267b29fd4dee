// Tables of one variable.
#include <algorithm>
#include <cmath>
#include <utility>

#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {
namespace {

using Points = std::vector<TablePoint>;

// The row at the left of the piece in which `at` lies.
std::size_t piece(const Points& points, double at) {
  const auto right = std::upper_bound(points.begin() + 1, points.end() - 1, at,
                                      [](double x, const TablePoint& point) { return x < point.at; });
  return static_cast<std::size_t>(right - points.begin()) - 1;
}

double chord(const Points& points, std::size_t left) {
  return (points[left + 1].value - points[left].value) / (points[left + 1].at - points[left].at);
}

double width(const Points& points, std::size_t left) { return points[left + 1].at - points[left].at; }

// The weighted harmonic mean of the two chords: level wherever the table turns, and never so steep that a piece
// overshoots.
double inner_slope(const Points& points, std::size_t i) {
  const double before = chord(points, i - 1), after = chord(points, i);
  if (before * after <= 0.0) return 0.0;
  const double near = 2.0 * width(points, i) + width(points, i - 1);
  const double far = width(points, i) + 2.0 * width(points, i - 1);
  return (near + far) / (near / before + far / after);
}

// The parabola through the three rows at an end, held to the end chord's sign and to three times its size.
double end_slope(double first, double second, double first_chord, double second_chord) {
  const double slope = ((2.0 * first + second) * first_chord - first * second_chord) / (first + second);
  if (slope * first_chord <= 0.0) return 0.0;
  if (first_chord * second_chord <= 0.0 && std::abs(slope) > 3.0 * std::abs(first_chord)) return 3.0 * first_chord;
  return slope;
}

std::vector<double> monotone_slopes(const Points& points) {
  const std::size_t last = points.size() - 1;
  if (last == 1) return {chord(points, 0), chord(points, 0)};
  std::vector<double> slopes(points.size());
  for (std::size_t i = 1; i < last; ++i) slopes[i] = inner_slope(points, i);
  slopes[0] = end_slope(width(points, 0), width(points, 1), chord(points, 0), chord(points, 1));
  slopes[last] =
      end_slope(width(points, last - 1), width(points, last - 2), chord(points, last - 1), chord(points, last - 2));
  return slopes;
}

bool outside(const Points& points, double at) { return at < points.front().at || at > points.back().at; }

TableValue clamped(const Points& points, double at) {
  return {at < points.front().at ? points.front().value : points.back().value, 0.0, true};
}

}  // namespace

bool is_table(const Points& points) {
  if (points.size() < 2) return false;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!std::isfinite(points[i].at) || !std::isfinite(points[i].value)) return false;
    if (i > 0 && points[i].at <= points[i - 1].at) return false;
  }
  return true;
}

TableValue linear_in_table(const Points& points, double at) {
  expects(is_table(points) && !std::isnan(at), "linear_in_table: two rows or more, rising, finite");
  if (outside(points, at)) return clamped(points, at);
  const std::size_t left = piece(points, at);
  const double slope = chord(points, left);
  // Counted from the nearer row, so that both rows are met exactly.
  const bool first_half = at - points[left].at < points[left + 1].at - at;
  const TablePoint& from = points[first_half ? left : left + 1];
  return {from.value + slope * (at - from.at), slope, false};
}

MonotoneTable::MonotoneTable(Points points) : points_(std::move(points)) {
  expects(is_table(points_), "MonotoneTable: two rows or more, rising, finite");
  slopes_ = monotone_slopes(points_);
}

TableValue MonotoneTable::at(double at) const {
  expects(!std::isnan(at), "MonotoneTable: not a number");
  if (outside(points_, at)) return clamped(points_, at);
  const std::size_t left = piece(points_, at);
  const double w = width(points_, left), t = (at - points_[left].at) / w;
  const double a = points_[left].value, b = points_[left + 1].value;
  const double slope_a = slopes_[left] * w, slope_b = slopes_[left + 1] * w;
  // a + slope_a t + bend t^2 + twist t^3 is the cubic with these ends and end slopes.
  const double bend = 3.0 * (b - a) - 2.0 * slope_a - slope_b, twist = slope_a + slope_b - 2.0 * (b - a);
  if (t == 1.0) return {b, slopes_[left + 1], false};
  return {a + t * (slope_a + t * (bend + t * twist)), (slope_a + t * (2.0 * bend + 3.0 * t * twist)) / w, false};
}

}  // namespace slabwright
