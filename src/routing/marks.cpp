#include "marks.hpp"

#include <algorithm>
#include <cmath>

#include "bands.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

constexpr double same_m = 2e-6;

/// Sides of no-tube areas as long as this, in spacings, are followed like walls.
constexpr double long_side = 4.0;
/// Tubes on both sides of a partition lie no farther apart than this, in spacings.
constexpr double widest_gap = 2.2;
/// A row of floor lost along a partition is worse than cells off their size; so is an opening closed.
constexpr Fit loose{0.94, 1.25};
/// A joint may lie so far from the line between two tubes, in spacings: nearer to one of them it would be crossed in
/// bends.
constexpr double joint_slack = 0.15;
/// The inner limit of a band is where whole cells end.
constexpr double band_slack = 0.5;

enum Rank { axis_rank, band_rank, opening_rank, joint_rank, partition_rank, wall_rank };

double along(Point p, bool x) { return x ? p.x_m : p.y_m; }

double across_m(const Box& box, bool x) { return along(box.most, x) - along(box.least, x); }

/// A rectangle along the axes that is long one way and thin across it, so that one tube lies on either side.
bool is_partition(const LayoutTask& task, const NoTubeArea& area, bool x) {
  if (area.outline.size() != 4 || area.is_tube) return false;
  for (std::size_t i = 0; i < 4; ++i) {
    const Point a = area.outline[i], b = area.outline[(i + 1) % 4];
    if (std::abs(a.x_m - b.x_m) > same_m && std::abs(a.y_m - b.y_m) > same_m) return false;
  }
  const Box box = box_of(area.outline);
  // What lies along a wall is a stand-off before a door. Of an area that reaches beyond the floor, what lies on it.
  const Box floor = box_of(task.outline);
  const auto half_way = [](double a, double b, double least, double most) {
    return 0.5 * (std::clamp(a, least, most) + std::clamp(b, least, most));
  };
  const Point middle{half_way(box.least.x_m, box.most.x_m, floor.least.x_m, floor.most.x_m),
                     half_way(box.least.y_m, box.most.y_m, floor.least.y_m, floor.most.y_m)};
  if (distance_to_boundary_m(middle, task.outline) <= across_m(box, x)) return false;
  return across_m(box, x) + 2.0 * area.clearance_m <= widest_gap * task.spacing_m &&
         across_m(box, !x) > 3.0 * across_m(box, x) &&
         across_m(box, !x) + 2.0 * area.clearance_m > 3.0 * task.spacing_m;
}

void add_partition(const LayoutTask& task, const NoTubeArea& area, bool x, std::vector<Mark>& marks) {
  const Box box = box_of(area.outline);
  const double middle_m = 0.5 * (along(box.least, x) + along(box.most, x));
  // Where the partition is so thin that its sides would do with less, tubes keep their spacing.
  const double half_m = std::max(0.5 * task.spacing_m, 0.5 * across_m(box, x) + area.clearance_m);
  marks.push_back({Mark::Kind::floor_beside, middle_m - half_m, middle_m + half_m, 0.0, 0.0, partition_rank,
                   across_m(box, !x), loose});
}

void add_area(const LayoutTask& task, const NoTubeArea& area, bool x, std::vector<Mark>& marks) {
  if (is_partition(task, area, x)) return add_partition(task, area, x, marks);
  const Box box = box_of(area.outline);
  // A small area is best kept in one cell. It counts as a wall where the cell round it would begin.
  const Box floor = box_of(task.outline);
  const bool on_floor = along(box.least, x) > along(floor.least, x) && along(box.most, x) < along(floor.most, x);
  if (on_floor && !area.is_tube && across_m(box, x) + 2.0 * area.clearance_m <= 3.0 * task.spacing_m) {
    const double from_m = 0.5 * (along(box.least, x) + along(box.most, x)) - 0.5 * task.spacing_m;
    marks.push_back({Mark::Kind::floor_after, 0.0, from_m, 0.0, 0.0, wall_rank, 0.0, {}});
  }
  const Polygon& o = area.outline;
  for (std::size_t i = 0; i < o.size(); ++i) {
    const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
    const double run = x ? b.y_m - a.y_m : a.x_m - b.x_m;
    if (std::abs(along(a, x) - along(b, x)) > same_m || std::abs(run) < long_side * task.spacing_m) continue;
    // Counter-clockwise: the area lies to the left, the floor to the right.
    const double tube_m = along(a, x) + (run > 0.0 ? area.clearance_m : -area.clearance_m);
    const auto kind = run > 0.0 ? Mark::Kind::floor_after : Mark::Kind::floor_before;
    marks.push_back({kind, tube_m, tube_m, 0.0, 0.0, wall_rank, std::abs(run), {}});
  }
}

void add_walls(const LayoutTask& task, bool x, std::vector<Mark>& marks) {
  const Polygon& o = task.outline;
  double least = HUGE_VAL, most = -HUGE_VAL;
  for (std::size_t i = 0; i < o.size(); ++i) {
    const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
    const double at = along(a, x), run = x ? b.y_m - a.y_m : a.x_m - b.x_m;
    least = std::min(least, at);
    most = std::max(most, at);
    if (std::abs(along(b, x) - at) > same_m) continue;
    const double clearance_m = wall_clearance_m(task, i);
    // Counter-clockwise: the floor lies to the left.
    const bool before = run > 0.0;
    const double tube_m = at + (before ? -clearance_m : clearance_m);
    marks.push_back({before ? Mark::Kind::floor_before : Mark::Kind::floor_after,
                     tube_m,
                     tube_m,
                     0.0,
                     0.0,
                     wall_rank,
                     std::abs(run),
                     {}});
  }
  // Where an outermost wall slants, its farthest corner stands for it.
  const auto stands_at = [&](double at) {
    for (std::size_t i = 0; i < o.size(); ++i) {
      const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
      if (std::abs(along(a, x) - at) <= same_m && std::abs(along(b, x) - at) <= same_m) return true;
    }
    return false;
  };
  const double first_m = least + task.wall_clearance_m, last_m = most - task.wall_clearance_m;
  if (!stands_at(least)) marks.push_back({Mark::Kind::floor_after, first_m, first_m, 0.0, 0.0, wall_rank, 0.0, {}});
  if (!stands_at(most)) marks.push_back({Mark::Kind::floor_before, last_m, last_m, 0.0, 0.0, wall_rank, 0.0, {}});
}

void add_openings(const LayoutTask& task, bool x, std::vector<Mark>& marks) {
  for (const Opening& opening : openings_of(task)) {
    const double from_m = along(opening.from, x), to_m = along(opening.to, x);
    const double spare_m = to_m - from_m - opening.least_m(task.spacing_m);
    if (to_m - from_m <= same_m || spare_m < -same_m) continue;
    const double cell_m = 2.0 * task.spacing_m;
    const int pairs = 1 + static_cast<int>(std::floor((spare_m + same_m) / cell_m));
    const double first_m = 0.5 * (from_m + to_m) - 0.5 * cell_m * pairs;
    const double slack_m = std::max(0.0, 0.5 * (spare_m - cell_m * (pairs - 1)));
    // Better wide cells beside it than a room without tube.
    for (const Fit& fit : {loose, Fit{0.94, 1.9}}) {
      marks.push_back({Mark::Kind::line, first_m, first_m, slack_m, cell_m * pairs, opening_rank, to_m - from_m, fit});
    }
  }
}

void add_joints(const LayoutTask& task, bool x, std::vector<Mark>& marks) {
  for (const JointLine& joint : task.joint) {
    const double at = along(joint.from, x);
    const double run = std::abs(along(joint.to, !x) - along(joint.from, !x));
    if (std::abs(along(joint.to, x) - at) > 0.01 * run || run == 0.0) continue;
    const double middle = 0.5 * (at + along(joint.to, x));
    marks.push_back(
        {Mark::Kind::line, middle, middle, joint_slack * task.spacing_m, 0.0, joint_rank, run, {0.94, 1.2}});
  }
}

void add_bands(const LayoutTask& task, bool x, std::vector<Mark>& marks) {
  for (const BandStrip& strip : strips_of(task)) {
    if (std::abs(along(strip.inward, x)) < 0.5) continue;
    const double at_m = along(strip.at, x) + along(strip.inward, x) * strip.depth_m;
    marks.push_back({Mark::Kind::line,
                     at_m,
                     at_m,
                     band_slack * 2.0 * strip.spacing_m,
                     0.0,
                     band_rank,
                     strip.depth_m,
                     {0.94, 1.25}});
  }
}

/// Whether the line between two places, ends left out, meets the outline or a no-tube area.
bool open_floor(const LayoutTask& task, Point from, Point to) {
  const Point a{from.x_m + 0.01 * (to.x_m - from.x_m), from.y_m + 0.01 * (to.y_m - from.y_m)};
  const Point b{to.x_m - 0.01 * (to.x_m - from.x_m), to.y_m - 0.01 * (to.y_m - from.y_m)};
  const auto apart = [&](const Polygon& o) {
    for (std::size_t i = 0; i < o.size(); ++i) {
      if (meet(a, b, o[i], o[i + 1 < o.size() ? i + 1 : 0])) return false;
    }
    return true;
  };
  return where_is(a, task.outline) == Where::inside && apart(task.outline) &&
         std::all_of(task.no_tube.begin(), task.no_tube.end(), [&](const NoTubeArea& area) {
           return where_is(a, area.outline) == Where::outside && apart(area.outline);
         });
}

/// From the end of a partition along its middle line to the next partition or wall.
std::optional<Opening> opening_from(const LayoutTask& task, const NoTubeArea& area, bool x, bool forward) {
  const Box box = box_of(area.outline);
  const double middle_m = 0.5 * (along(box.least, x) + along(box.most, x));
  const double end_m = along(forward ? box.most : box.least, !x), sign = forward ? 1.0 : -1.0;
  const auto place = [&](double at_m) { return x ? Point{middle_m, at_m} : Point{at_m, middle_m}; };
  double next_m = HUGE_VAL, clearance_m = area.clearance_m;
  const auto look = [&](const Polygon& o, std::size_t i, double asked_m) {
    const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
    const double from = along(a, x), to = along(b, x);
    if ((from > middle_m) == (to > middle_m)) return;
    const double at = along(a, !x) + (along(b, !x) - along(a, !x)) * (middle_m - from) / (to - from);
    const double away_m = sign * (at - end_m);
    if (away_m < same_m || away_m >= next_m) return;
    next_m = away_m;
    clearance_m = std::max(area.clearance_m, asked_m);
  };
  for (std::size_t i = 0; i < task.outline.size(); ++i) look(task.outline, i, wall_clearance_m(task, i));
  for (const NoTubeArea& other : task.no_tube) {
    for (std::size_t i = 0; i < other.outline.size(); ++i) look(other.outline, i, other.clearance_m);
  }
  if (next_m == HUGE_VAL) return std::nullopt;
  const Point from = place(forward ? end_m : end_m - next_m), to = place(forward ? end_m + next_m : end_m);
  if (!open_floor(task, from, to)) return std::nullopt;
  return Opening{from, to, clearance_m};
}

}  // namespace

double wall_clearance_m(const LayoutTask& task, std::size_t edge) {
  return task.edge_clearance_m.empty() ? task.wall_clearance_m : task.edge_clearance_m[edge];
}

std::vector<Opening> openings_of(const LayoutTask& task) {
  std::vector<Opening> all;
  for (const NoTubeArea& area : task.no_tube) {
    for (const bool x : {true, false}) {
      if (!is_partition(task, area, x)) continue;
      for (const bool forward : {true, false}) {
        const auto made = opening_from(task, area, x, forward);
        // Between two partitions it is found from either.
        const auto same = [&](const Opening& o) {
          return distance_m(o.from, made->from) < same_m && distance_m(o.to, made->to) < same_m;
        };
        if (made && std::none_of(all.begin(), all.end(), same)) all.push_back(*made);
      }
    }
  }
  return all;
}

std::vector<Mark> marks_of(const LayoutTask& task, bool x, const Fit& fit) {
  std::vector<Mark> marks;
  add_walls(task, x, marks);
  for (const NoTubeArea& area : task.no_tube) add_area(task, area, x, marks);
  for (Mark& mark : marks) {
    if (mark.rank == wall_rank) mark.fit = fit;
  }
  if (x && fit.about_axis) {
    marks.push_back({Mark::Kind::line, 0.0, 0.0, 0.0, 0.0, axis_rank, 0.0, fit});
  }
  add_openings(task, x, marks);
  add_joints(task, x, marks);
  add_bands(task, x, marks);
  return marks;
}

}  // namespace slabwright::routing
