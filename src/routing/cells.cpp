#include "cells.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright::routing {
namespace {

/// Lengths typed in feet and inches agree to this, metres.
constexpr double same_m = 2e-6;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

Point unit(Point a) {
  const double length = std::sqrt(a.x_m * a.x_m + a.y_m * a.y_m);
  return {a.x_m / length, a.y_m / length};
}

/// Whole millionths of a metre, about: wherever a floor lies and whichever way it is turned, its numbers are the same.
double rounded_off(double m) {
  constexpr double parts = 1048576.0;
  return std::floor(m * parts + 0.5) / parts;
}

Point turned(Point p, const LayoutTask& task) {
  const Point north = unit(task.manifold.front().facing), at = task.manifold.front().place;
  const Point d{p.x_m - at.x_m, p.y_m - at.y_m};
  return {rounded_off(d.x_m * north.y_m - d.y_m * north.x_m), rounded_off(d.x_m * north.x_m + d.y_m * north.y_m)};
}

Polygon turned(const Polygon& polygon, const LayoutTask& task) {
  Polygon made;
  for (const Point& p : polygon) made.push_back(turned(p, task));
  return normalized(made);
}

double wall_clearance_m(const LayoutTask& task, std::size_t edge) {
  return task.edge_clearance_m.empty() ? task.wall_clearance_m : task.edge_clearance_m[edge];
}

bool boxes_nearer(Point a, Point b, Point c, Point d, double by) {
  return std::min(a.x_m, b.x_m) < std::max(c.x_m, d.x_m) + by && std::min(c.x_m, d.x_m) < std::max(a.x_m, b.x_m) + by &&
         std::min(a.y_m, b.y_m) < std::max(c.y_m, d.y_m) + by && std::min(c.y_m, d.y_m) < std::max(a.y_m, b.y_m) + by;
}

/// `clearance_m(i)`: of the edge from corner i.
template <class Clearance>
bool clear_of(const Polygon& polygon, const Clearance& clearance_m, Point a, Point b) {
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const double least = clearance_m(i) - same_m;
    const Point c = polygon[i], d = polygon[i + 1 < polygon.size() ? i + 1 : 0];
    if (boxes_nearer(a, b, c, d, least) && distance_of_edges_m(a, b, c, d) < least) return false;
  }
  return true;
}

/// The tube of a cell runs on the lines between its quarter places and nowhere else.
bool fits(const Cells& cells, const LayoutTask& task, int cell) {
  for (int k = 0; k < 4; ++k) {
    if (!keeps_clear(task, cells.quarter(cell, k), cells.quarter(cell, (k + 1) % 4))) return false;
  }
  for (const NoTubeArea& area : task.no_tube) {
    if (where_is(cells.quarter(cell, 0), area.outline) != Where::outside) return false;
  }
  return true;
}

void open_between(Cells& cells, const LayoutTask& task, int cell, Way way) {
  const int other = cells.next(cell, way);
  if (other < 0 || cells.is(cell) != Kind::free || cells.is(other) != Kind::free) return;
  // The two tubes of a passage: from the quarters on this side to their mirror images in the neighbour.
  const bool clear = keeps_clear(task, cells.quarter(cell, (way + 1) % 4), cells.quarter(other, way)) &&
                     keeps_clear(task, cells.quarter(cell, (way + 2) % 4), cells.quarter(other, (way + 3) % 4));
  if (!clear) return;
  cells.open[index(cell)] = static_cast<std::uint8_t>(cells.open[index(cell)] | 1 << way);
  cells.open[index(other)] = static_cast<std::uint8_t>(cells.open[index(other)] | 1 << opposite(way));
}

/// A wall at right angles to an axis, on that axis: the tube nearest to it lies at `tube_m`, to the side of `sign`.
struct Wall {
  double tube_m = 0.0;
  double sign = 1.0;
  double length_m = 0.0;
};

std::vector<Wall> walls_of(const LayoutTask& task, bool x) {
  std::vector<Wall> walls;
  const Polygon& o = task.outline;
  double least = HUGE_VAL, most = -HUGE_VAL;
  for (std::size_t i = 0; i < o.size(); ++i) {
    const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
    const double at = x ? a.x_m : a.y_m, to = x ? b.x_m : b.y_m, run = x ? b.y_m - a.y_m : a.x_m - b.x_m;
    least = std::min(least, at);
    most = std::max(most, at);
    if (std::abs(to - at) > same_m) continue;
    const double sign = run > 0.0 ? -1.0 : 1.0;  // counter-clockwise: the floor lies to the left
    walls.push_back({at + sign * wall_clearance_m(task, i), sign, std::abs(run)});
  }
  // A small no-tube area is best kept in one cell. It counts as a wall where the cell round it would begin.
  for (const NoTubeArea& area : task.no_tube) {
    double from = HUGE_VAL, to = -HUGE_VAL;
    for (const Point p : area.outline) {
      from = std::min(from, x ? p.x_m : p.y_m);
      to = std::max(to, x ? p.x_m : p.y_m);
    }
    const bool small = to - from + 2.0 * area.clearance_m <= 3.0 * task.spacing_m;
    if (small && from > least && to < most) walls.push_back({0.5 * (from + to) - 0.5 * task.spacing_m, 1.0, 0.0});
  }
  // Where an outermost wall slants, its farthest corner stands for it.
  const auto stands_at = [&](double at) {
    for (std::size_t i = 0; i < o.size(); ++i) {
      const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
      if (std::abs((x ? a.x_m : a.y_m) - at) <= same_m && std::abs((x ? b.x_m : b.y_m) - at) <= same_m) return true;
    }
    return false;
  };
  if (!stands_at(least)) walls.push_back({least + task.wall_clearance_m, 1.0, 0.0});
  if (!stands_at(most)) walls.push_back({most - task.wall_clearance_m, -1.0, 0.0});
  return walls;
}

double line_of(const Wall& wall, double cell_m) { return wall.tube_m - wall.sign * 0.25 * cell_m; }

/// Cells as they are asked for.
struct Wanted {
  double cell_m = 0.0;
  Fit fit;
};

/// Cells between two walls: the nearest number, but rather wide cells than ones that are too narrow.
int count_of(double length_m, const Wanted& wanted) {
  const double cell_m = wanted.cell_m;
  const int nearest = std::max(1, static_cast<int>(std::floor(length_m / cell_m + 0.5)));
  return nearest > 1 && length_m < wanted.fit.squeezed * nearest * cell_m ? nearest - 1 : nearest;
}
bool fills_well(double length_m, const Wanted& wanted) {
  const double stretch = length_m / (count_of(length_m, wanted) * wanted.cell_m);
  return stretch >= wanted.fit.squeezed && stretch <= wanted.fit.stretched;
}

/// The outermost walls, and of those between them the longest ones that cells of about the right size fit between.
std::vector<Wall> chosen(std::vector<Wall> walls, const Wanted& wanted) {
  const double cell_m = wanted.cell_m;
  const auto before = [&](const Wall& a, const Wall& b) { return line_of(a, cell_m) < line_of(b, cell_m); };
  std::stable_sort(walls.begin(), walls.end(), before);
  std::vector<Wall> kept{walls.front(), walls.back()};
  std::stable_sort(walls.begin(), walls.end(), [](const Wall& a, const Wall& b) { return a.length_m > b.length_m; });
  for (const Wall& wall : walls) {
    const auto place = std::upper_bound(kept.begin(), kept.end(), wall, before);
    if (place == kept.begin() || place == kept.end()) continue;
    const double left = line_of(wall, cell_m) - line_of(*(place - 1), cell_m);
    const double right = line_of(*place, cell_m) - line_of(wall, cell_m);
    if (left > same_m && right > same_m && fills_well(left, wanted) && fills_well(right, wanted)) {
      kept.insert(place, wall);
    }
  }
  return kept;
}

/// A wall's line lies a quarter of its cells from its tube, and the cells are what lies between lines: a few rounds
/// bring the two together.
std::vector<double> lines_of(const std::vector<Wall>& walls, const Wanted& wanted) {
  const std::size_t parts = walls.size() - 1;
  std::vector<double> line(walls.size()), size(parts, wanted.cell_m);
  std::vector<int> count(parts);
  for (int round = 0; round < 40; ++round) {
    for (std::size_t k = 0; k < walls.size(); ++k) {
      const bool first = k == 0, last = k == parts;
      line[k] = line_of(walls[k], first || (!last && walls[k].sign > 0.0) ? size[k] : size[k - 1]);
    }
    for (std::size_t k = 0; k < parts; ++k) {
      const double length = line[k + 1] - line[k];
      if (round == 0) count[k] = count_of(length, wanted);
      size[k] = length / count[k];
    }
  }
  std::vector<double> all;
  for (std::size_t k = 0; k < parts; ++k) {
    for (int i = 0; i < count[k]; ++i) all.push_back(line[k] + i * size[k]);
  }
  all.push_back(line.back());
  return all;
}

/// Cells of exactly this size from the first wall on; less than one is left over before the last.
std::vector<double> exact_lines_of(const std::vector<Wall>& walls, double cell_m) {
  double from = HUGE_VAL, to = -HUGE_VAL;
  for (const Wall& wall : walls) {
    from = std::min(from, line_of(wall, cell_m));
    to = std::max(to, line_of(wall, cell_m));
  }
  std::vector<double> all{from};
  const int count = std::max(1, static_cast<int>((to - from + same_m) / cell_m));
  for (int k = 1; k <= count; ++k) all.push_back(from + k * cell_m);
  return all;
}

}  // namespace

double Cells::width_m(int cell) const { return x_m[index(column(cell)) + 1] - x_m[index(column(cell))]; }
double Cells::depth_m(int cell) const { return y_m[index(row(cell)) + 1] - y_m[index(row(cell))]; }

Point Cells::quarter(int cell, int corner) const {
  const double right = corner == 1 || corner == 2 ? 0.75 : 0.25, up = corner >= 2 ? 0.75 : 0.25;
  return {x_m[index(column(cell))] + right * width_m(cell), y_m[index(row(cell))] + up * depth_m(cell)};
}

LayoutTask seen_from_manifold(const LayoutTask& task) {
  LayoutTask seen = task;
  seen.outline = turned(task.outline, task);
  expects(task.edge_clearance_m.empty() || seen.outline.size() == task.edge_clearance_m.size(),
          "seen_from_manifold: clearances by edge of an outline that is not normalized");
  for (NoTubeArea& area : seen.no_tube) area.outline = turned(area.outline, task);
  for (EdgeBand& band : seen.band) band.outline = turned(band.outline, task);
  for (LossArea& area : seen.loss) area.outline = turned(area.outline, task);
  for (JointLine& joint : seen.joint) joint = {turned(joint.from, task), turned(joint.to, task)};
  seen.manifold.front().place = {0.0, 0.0};
  seen.manifold.front().facing = {0.0, 1.0};
  return seen;
}

Point seen_from_outside(Point p, const LayoutTask& task) {
  const Point north = unit(task.manifold.front().facing), at = task.manifold.front().place;
  return {at.x_m + p.x_m * north.y_m + p.y_m * north.x_m, at.y_m - p.x_m * north.x_m + p.y_m * north.y_m};
}

bool keeps_clear(const LayoutTask& task, Point a, Point b) {
  if (!clear_of(
          task.outline, [&](std::size_t i) { return wall_clearance_m(task, i); }, a, b))
    return false;
  for (const NoTubeArea& area : task.no_tube) {
    if (!clear_of(
            area.outline, [&](std::size_t) { return area.clearance_m; }, a, b))
      return false;
  }
  return true;
}

Cells cells_of(const LayoutTask& task, const Fit& fit) {
  const Wanted wanted{2.0 * task.spacing_m, fit};
  Cells cells;
  const auto lines = [&](bool x) {
    const std::vector<Wall> walls = walls_of(task, x);
    return task.exact_spacing ? exact_lines_of(walls, wanted.cell_m) : lines_of(chosen(walls, wanted), wanted);
  };
  cells.x_m = lines(true);
  cells.y_m = lines(false);
  cells.columns = static_cast<int>(cells.x_m.size()) - 1;
  cells.rows = static_cast<int>(cells.y_m.size()) - 1;
  cells.kind.assign(index(cells.size()), Kind::outside);
  cells.open.assign(index(cells.size()), 0);
  for (int cell = 0; cell < cells.size(); ++cell) {
    const Point a = cells.quarter(cell, 0), b = cells.quarter(cell, 2);
    const Point middle{0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
    if (where_is(middle, task.outline) == Where::outside) continue;
    cells.kind[index(cell)] = fits(cells, task, cell) ? Kind::free : Kind::blocked;
  }
  for (int cell = 0; cell < cells.size(); ++cell) {
    open_between(cells, task, cell, 0);
    open_between(cells, task, cell, 1);
  }
  return cells;
}

}  // namespace slabwright::routing
