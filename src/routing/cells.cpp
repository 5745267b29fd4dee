#include "cells.hpp"

#include <algorithm>
#include <cmath>

#include "bands.hpp"
#include "heat.hpp"
#include "joints.hpp"
#include "marks.hpp"
#include "slabwright/contract.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// Lengths typed in feet and inches agree to this, metres.
constexpr double same_m = 2e-6;

/// Whole millionths of a metre, about: wherever a floor lies and whichever way it is turned, its numbers are the same.
double rounded_off(double m) {
  constexpr double parts = 1048576.0;
  return (m < 0.0 ? -1.0 : 1.0) * std::floor(std::abs(m) * parts + 0.5) / parts;
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

/// `clearance_m(i)`: of the edge from corner i.
template <class Clearance>
bool clear_of(const Polygon& polygon, const Clearance& clearance_m, Point a, Point b) {
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const double least = clearance_m(i) - same_m;
    const Point c = polygon[i], d = polygon[i + 1 < polygon.size() ? i + 1 : 0];
    if (nearer(a, b, c, d, least)) return false;
  }
  return true;
}

bool clear_of_walls(const LayoutTask& task, Point a, Point b) {
  const auto of_wall_m = [&](std::size_t i) { return wall_clearance_m(task, i); };
  if (!clear_of(task.outline, of_wall_m, a, b)) return false;
  return std::all_of(task.no_tube.begin(), task.no_tube.end(), [&](const NoTubeArea& area) {
    return clear_of(
        area.outline, [&](std::size_t) { return area.clearance_m; }, a, b);
  });
}

/// The tube of a cell runs on the lines between its quarter places and nowhere else.
bool fits(const Cells& cells, const LayoutTask& task, int cell) {
  const bool is_far = is_far_from_all(task, cells.quarter(cell, 0), cells.quarter(cell, 2));
  for (int k = 0; k < 4 && !is_far; ++k) {
    if (!clear_of_walls(task, cells.quarter(cell, k), cells.quarter(cell, (k + 1) % 4))) return false;
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
  const bool clear = is_far_from_all(task, cells.quarter(cell, 0), cells.quarter(other, 2)) ||
                     (clear_of_walls(task, cells.quarter(cell, (way + 1) % 4), cells.quarter(other, way)) &&
                      clear_of_walls(task, cells.quarter(cell, (way + 2) % 4), cells.quarter(other, (way + 3) % 4)));
  if (!clear) return;
  cells.open[index(cell)] = static_cast<std::uint8_t>(cells.open[index(cell)] | 1 << way);
  cells.open[index(other)] = static_cast<std::uint8_t>(cells.open[index(other)] | 1 << opposite(way));
}

void mark_joints(Cells& cells, const LayoutTask& task) {
  if (!task.joint.empty()) cells.joint.assign(index(cells.size()), 0);
  for (int cell = 0; cell < cells.size() && !task.joint.empty(); ++cell) {
    for (const Way way : {0, 1}) {
      const int other = cells.next(cell, way);
      if (other < 0) continue;
      const bool over = std::any_of(task.joint.begin(), task.joint.end(), [&](const JointLine& joint) {
        return meet(cells.middle(cell), cells.middle(other), joint.from, joint.to);
      });
      if (!over) continue;
      cells.joint[index(cell)] = static_cast<std::uint8_t>(cells.joint[index(cell)] | 1 << way);
      cells.joint[index(other)] = static_cast<std::uint8_t>(cells.joint[index(other)] | 1 << opposite(way));
    }
  }
}

/// Runs across a band would lie as far apart as elsewhere.
void mark_bands(Cells& cells, const LayoutTask& task) {
  if (task.band.empty()) return;
  cells.across.assign(index(cells.size()), 0);
  for (const BandStrip& strip : strips_of(task)) {
    const int ways = std::abs(strip.inward.x_m) > std::abs(strip.inward.y_m) ? 1 | 1 << 2 : 1 << 1 | 1 << 3;
    for (int cell = 0; cell < cells.size(); ++cell) {
      const Point p = cells.middle(cell);
      const double in_m = (p.x_m - strip.at.x_m) * strip.inward.x_m + (p.y_m - strip.at.y_m) * strip.inward.y_m;
      if (in_m < 0.0 || in_m > strip.depth_m || spacing_asked_m(task, p) >= task.spacing_m) continue;
      cells.across[index(cell)] = static_cast<std::uint8_t>(cells.across[index(cell)] | ways);
    }
  }
}

/// Where tube shall run one way, most of a tree's edges lie that way.
void mark_runs(Cells& cells, const LayoutTask& task) {
  if (!task.runs_along) return;
  if (cells.across.empty()) cells.across.assign(index(cells.size()), 0);
  const bool east = std::abs(task.runs_along->x_m) > std::abs(task.runs_along->y_m);
  const int ways = east ? 1 << 1 | 1 << 3 : 1 | 1 << 2;
  for (std::uint8_t& across : cells.across) {
    if (across == 0) across = static_cast<std::uint8_t>(ways);
  }
}

/// Lines between cells, halfway between their tubes; the outermost as far beyond as cells are wide.
std::vector<double> lines_between(const std::vector<double>& tubes) {
  const std::size_t last = tubes.size() - 1;
  std::vector<double> lines{tubes[0] - 0.5 * (tubes[1] - tubes[0])};
  for (std::size_t i = 1; i + 2 < tubes.size(); i += 2) lines.push_back(0.5 * (tubes[i] + tubes[i + 1]));
  lines.push_back(tubes[last] + 0.5 * (tubes[last] - tubes[last - 1]));
  return lines;
}

}  // namespace

double Cells::width_m(int cell) const { return x_m[index(column(cell)) + 1] - x_m[index(column(cell))]; }
double Cells::depth_m(int cell) const { return y_m[index(row(cell)) + 1] - y_m[index(row(cell))]; }

Point Cells::quarter(int cell, int corner) const {
  const int right = corner == 1 || corner == 2 ? 1 : 0, up = corner >= 2 ? 1 : 0;
  return {tube_x_m[index(2 * column(cell) + right)], tube_y_m[index(2 * row(cell) + up)]};
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
  if (task.runs_along) {
    const Point north = unit(task.manifold.front().facing), runs = *task.runs_along;
    seen.runs_along = {runs.x_m * north.y_m - runs.y_m * north.x_m, runs.x_m * north.x_m + runs.y_m * north.y_m};
  }
  for (Polygon& floor : seen.own_floor) floor = turned(floor, task);
  seen.manifold.front().place = {0.0, 0.0};
  seen.manifold.front().facing = {0.0, 1.0};
  return seen;
}

Point seen_from_outside(Point p, const LayoutTask& task) {
  const Point north = unit(task.manifold.front().facing), at = task.manifold.front().place;
  return {at.x_m + p.x_m * north.y_m + p.y_m * north.x_m, at.y_m - p.x_m * north.x_m + p.y_m * north.y_m};
}

bool keeps_clear(const LayoutTask& task, Point a, Point b) {
  return clear_of_walls(task, a, b) && std::none_of(task.joint.begin(), task.joint.end(),
                                                    [&](const JointLine& joint) { return lies_along(joint, a, b); });
}

bool is_far_from_all(const LayoutTask& task, Point a, Point b) {
  const auto near_edge_of = [&](const Polygon& polygon, const auto& clearance_m) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point c = polygon[i], d = polygon[i + 1 < polygon.size() ? i + 1 : 0];
      if (boxes_nearer(a, b, c, d, clearance_m(i) - same_m)) return true;
    }
    return false;
  };
  if (near_edge_of(task.outline, [&](std::size_t i) { return wall_clearance_m(task, i); })) return false;
  for (const NoTubeArea& area : task.no_tube) {
    if (near_edge_of(area.outline, [&](std::size_t) { return area.clearance_m; })) return false;
  }
  return std::none_of(task.joint.begin(), task.joint.end(),
                      [&](const JointLine& joint) { return boxes_nearer(a, b, joint.from, joint.to, off_joint_m); });
}

Cells cells_of(const LayoutTask& task, const Fit& fit) {
  Cells cells;
  cells.tube_x_m = tube_lines(task, true, fit);
  cells.tube_y_m = tube_lines(task, false, fit);
  cells.x_m = lines_between(cells.tube_x_m);
  cells.y_m = lines_between(cells.tube_y_m);
  cells.columns = static_cast<int>(cells.x_m.size()) - 1;
  cells.rows = static_cast<int>(cells.y_m.size()) - 1;
  cells.kind.assign(index(cells.size()), Kind::outside);
  cells.open.assign(index(cells.size()), 0);
  for (int cell = 0; cell < cells.size(); ++cell) {
    if (where_is(cells.middle(cell), task.outline) == Where::outside) continue;
    cells.kind[index(cell)] = fits(cells, task, cell) ? Kind::free : Kind::blocked;
  }
  for (int cell = 0; cell < cells.size(); ++cell) {
    open_between(cells, task, cell, 0);
    open_between(cells, task, cell, 1);
  }
  mark_joints(cells, task);
  mark_bands(cells, task);
  mark_runs(cells, task);
  for (int cell = 0; cell < cells.size() && !task.loss.empty(); ++cell) {
    double sum = 0.0;
    for (int k = 0; k < 4; ++k) sum += loss_ratio_at(task, cells.quarter(cell, k));
    cells.loss.push_back(0.25 * sum);
  }
  return cells;
}

}  // namespace slabwright::routing
