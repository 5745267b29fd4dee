#include "conduction/grid.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

enum class Axis { x, y };

struct Span {
  double low_m, high_m;
};

double along(Axis axis, FieldPoint point) { return axis == Axis::x ? point.x_m : point.y_m; }
Span along(Axis axis, const FieldSegment& segment) {
  const double a = along(axis, segment.from), b = along(axis, segment.to);
  return {std::min(a, b), std::max(a, b)};
}
Span along(Axis axis, const MaterialRectangle& r) {
  return axis == Axis::x ? Span{r.x0_m, r.x1_m} : Span{r.y0_m, r.y1_m};
}
Axis across(Axis axis) { return axis == Axis::x ? Axis::y : Axis::x; }

bool same(double a_m, double b_m) { return std::abs(a_m - b_m) < same_line_m; }

std::vector<FieldSegment> stretches_and_planes(const FieldSection& section) {
  std::vector<FieldSegment> all;
  for (const BoundaryStretch& stretch : section.boundaries) all.push_back(stretch.where);
  for (const HeatPlane& plane : section.planes) all.push_back(plane.where);
  return all;
}

std::vector<double> named_lines(const FieldSection& section, Axis axis) {
  std::vector<double> named;
  const auto name = [&named](Span span) { named.insert(named.end(), {span.low_m, span.high_m}); };
  for (const MaterialRectangle& material : section.materials) name(along(axis, material));
  for (const FieldSegment& segment : stretches_and_planes(section)) name(along(axis, segment));
  for (const HeatLine& line : section.lines) named.push_back(along(axis, line.where));
  std::sort(named.begin(), named.end());
  named.erase(std::unique(named.begin(), named.end(), same), named.end());
  return named;
}

/// Whether a stretch lying along the line ends inside the section or a line of heat lies on it: the field is steep
/// there.
bool steep_along(const FieldSection& section, Axis axis, double at_m) {
  const std::vector<double> other = named_lines(section, across(axis));
  const auto ends_inside = [&](const FieldSegment& segment) {
    const Span here = along(axis, segment), there = along(across(axis), segment);
    const bool lies_on_line = same(here.low_m, at_m) && same(here.high_m, at_m);
    return lies_on_line && !(same(there.low_m, other.front()) && same(there.high_m, other.back()));
  };
  const auto lies_on = [&](const HeatLine& line) { return same(along(axis, line.where), at_m); };
  const std::vector<FieldSegment> all = stretches_and_planes(section);
  return std::any_of(all.begin(), all.end(), ends_inside) ||
         std::any_of(section.lines.begin(), section.lines.end(), lies_on);
}

/// Cells growing from a fine end over a reach, shrunk together to fill it exactly.
std::vector<double> growing_cells(double reach_m, bool even, const FieldOptions& options) {
  std::vector<double> cells;
  double sum_m = 0.0, size_m = options.first_cell_m;
  while (sum_m < reach_m || (even && cells.size() % 2 == 1)) {
    cells.push_back(size_m);
    sum_m += size_m;
    size_m = std::min(size_m * options.growth, options.largest_cell_m);
  }
  for (double& cell : cells) cell *= reach_m / sum_m;
  return cells;
}

/// An even number of cells over a gap between two named lines.
std::vector<double> cells_between(double gap_m, bool fine_at_low, bool fine_at_high, const FieldOptions& options) {
  if (!fine_at_low && !fine_at_high) {
    const double pairs = std::ceil(gap_m / (2.0 * options.largest_cell_m));
    return std::vector<double>(2 * static_cast<std::size_t>(pairs), gap_m / (2.0 * pairs));
  }
  const bool both = fine_at_low && fine_at_high;
  std::vector<double> cells = growing_cells(both ? gap_m / 2.0 : gap_m, !both, options);
  if (both)
    cells.insert(cells.end(), cells.rbegin(), cells.rend());
  else if (fine_at_high)
    std::reverse(cells.begin(), cells.end());
  return cells;
}

std::vector<double> graded(const FieldSection& section, Axis axis, const FieldOptions& options) {
  const std::vector<double> named = named_lines(section, axis);
  const std::size_t last = named.size() - 1;
  const auto fine = [&](std::size_t line) {
    return (line != 0 && line != last) || steep_along(section, axis, named[line]);
  };
  std::vector<double> lines{named.front()};
  for (std::size_t gap = 0; gap < last; ++gap) {
    double at_m = named[gap];
    for (const double cell : cells_between(named[gap + 1] - at_m, fine(gap), fine(gap + 1), options)) {
      lines.push_back(at_m += cell);
    }
    lines.back() = named[gap + 1];
  }
  return lines;
}

std::vector<double> every_second(const std::vector<double>& lines) {
  std::vector<double> kept;
  for (std::size_t i = 0; i < lines.size(); i += 2) kept.push_back(lines[i]);
  return kept;
}

}  // namespace

Lines graded_lines(const FieldSection& section, const FieldOptions& options) {
  return {graded(section, Axis::x, options), graded(section, Axis::y, options)};
}

Lines every_second(const Lines& lines) { return {every_second(lines.x_m), every_second(lines.y_m)}; }

Grid grid_on(Lines lines, const std::vector<MaterialRectangle>& materials) {
  Grid grid{std::move(lines), {}};
  grid.conductivity_W_per_mK.assign((grid.columns() + 1) * (grid.rows() + 1), 0.0);
  for (const MaterialRectangle& material : materials) {
    const std::size_t right = line_at(grid.lines.x_m, material.x1_m), top = line_at(grid.lines.y_m, material.y1_m);
    for (std::size_t j = line_at(grid.lines.y_m, material.y0_m) + 1; j <= top; ++j) {
      for (std::size_t i = line_at(grid.lines.x_m, material.x0_m) + 1; i <= right; ++i) {
        grid.conductivity(i, j) = material.conductivity_W_per_mK;
      }
    }
  }
  return grid;
}

std::size_t line_at(const std::vector<double>& lines_m, double at_m) {
  const auto found = std::lower_bound(lines_m.begin(), lines_m.end(), at_m - same_line_m);
  expects(found != lines_m.end() && *found < at_m + same_line_m, "conduction: no grid line at a named coordinate");
  return static_cast<std::size_t>(found - lines_m.begin());
}

}  // namespace slabwright::conduction
