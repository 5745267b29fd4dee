// Points by which a drawing is found again on the slab, and the bands along tube.
#include "slabwright/sitework_control.hpp"

#include <algorithm>
#include <cmath>

#include "sitework/nearest.hpp"
#include "sitework/strike.hpp"
#include "slabwright/sitework_guide.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double least_straight_m = foot_m, on_wall_m = 0.01;
constexpr double shares[] = {1.0 / 6.0, 0.5, 5.0 / 6.0};

bool drawn(const LoopPlan& plan) {
  return !plan.loop.empty() &&
         std::all_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return l.path && !l.path->empty(); });
}

/// Square off a wall's line, to its left.
double off_wall_m(Point p, const PlanWall& wall) {
  const Point along = sitework::unit(sitework::minus(wall.to, wall.from));
  return sitework::cross(along, sitework::minus(p, wall.from));
}

double along_wall_m(Point p, const PlanWall& wall) {
  return sitework::dot(sitework::unit(sitework::minus(wall.to, wall.from)), sitework::minus(p, wall.from));
}

/// The slab's two corners farthest apart on a wall; its own ends where it has none.
std::pair<Point, Point> corners_on(const PlanWall& wall, const std::vector<Place>& outline) {
  std::pair<Point, Point> ends{wall.from, wall.to};
  bool found = false;
  for (const Place& place : outline) {
    const Point p{place.x_m, place.y_m};
    if (std::abs(off_wall_m(p, wall)) > on_wall_m) continue;
    if (!found) ends = {p, p};
    found = true;
    if (along_wall_m(p, wall) < along_wall_m(ends.first, wall)) ends.first = p;
    if (along_wall_m(p, wall) > along_wall_m(ends.second, wall)) ends.second = p;
  }
  return distance_m(ends.first, ends.second) > least_straight_m ? ends : std::pair{wall.from, wall.to};
}

struct StraightRun {
  double along_m = 0.0;
  Point middle;
};

std::vector<StraightRun> straight_runs(const Path& path) {
  std::vector<StraightRun> runs;
  double along_m = 0.0;
  for (const Piece& piece : path) {
    const double length = length_m(piece);
    if (piece.radius_m <= 0.0 && length >= least_straight_m)
      runs.push_back(
          {along_m + 0.5 * length, {0.5 * (piece.from.x_m + piece.to.x_m), 0.5 * (piece.from.y_m + piece.to.y_m)}});
    along_m += length;
  }
  return runs;
}

/// The runs nearest to the shares of a loop, each once, in the order of the tube.
std::vector<StraightRun> chosen_runs(std::vector<StraightRun> runs, double loop_m) {
  std::vector<StraightRun> chosen;
  for (const double share : shares) {
    const auto nearest = std::min_element(runs.begin(), runs.end(), [&](const StraightRun& a, const StraightRun& b) {
      return std::abs(a.along_m - share * loop_m) < std::abs(b.along_m - share * loop_m);
    });
    if (nearest == runs.end()) break;
    chosen.push_back(*nearest);
    runs.erase(nearest);
  }
  std::sort(chosen.begin(), chosen.end(),
            [](const StraightRun& a, const StraightRun& b) { return a.along_m < b.along_m; });
  return chosen;
}

}  // namespace

std::optional<ControlPoints> control_points(const Design& design, const LoopPlan& plan) {
  const auto walls = told_from(design, std::nullopt);
  if (!drawn(plan) || !walls) return std::nullopt;
  const auto [a, b] = corners_on(walls->first, floor_shape(design.slab).outline);
  ControlPoints control;
  control.wall = control.first_wall = walls->first.name;
  control.second_wall = walls->second.name;
  control.a = {"A", a.x_m, a.y_m};
  control.b = {"B", b.x_m, b.y_m};
  control.tolerance_m = 2.0 * usual_placing(design.units).sideways_m;
  for (std::size_t row = 0; row < plan.loop.size(); ++row) {
    char letter = 'a';
    for (const StraightRun& run : chosen_runs(straight_runs(*plan.loop[row].path), length_m(*plan.loop[row].path))) {
      const Point p = run.middle;
      control.point.push_back({std::to_string(row + 1) + letter++, plan.loop[row].name, run.along_m, p.x_m, p.y_m,
                               distance_m(a, p), distance_m(b, p), std::abs(off_wall_m(p, walls->first)),
                               std::abs(off_wall_m(p, walls->second))});
    }
  }
  return control;
}

std::optional<DrillBands> drill_bands(const Design& design, const LoopPlan& plan) {
  if (!drawn(plan)) return std::nullopt;
  const double outside_m = find_tube(design.tube.size.name)->outside_diameter_m;
  const Placing placing = usual_placing(design.units);
  const UsualHole hole = usual_hole(design.units);
  DrillBands bands{hole.diameter_m, hole.depth_m, 2.0 * placing.sideways_m, 0.0, 0.0};
  const double both_m = 0.5 * (outside_m + hole.diameter_m), s = placing.sideways_m;
  const double above_m = tube_axis_depth_m(design) - 0.5 * outside_m;
  const double deep = sitework::normal_share(hole.depth_m - above_m, placing.depth_m);
  const auto strike = [&](double d) {
    return deep * (sitework::normal_share(both_m - d, s) - sitework::normal_share(-both_m - d, s));
  };
  // The chance falls with the distance: halves until the distance is known to a tenth of a millimetre.
  const auto nearer_than = [&](double share) {
    double low = 0.0, high = both_m + 8.0 * s;
    if (strike(low) < share) return 0.0;
    while (high - low > 1e-4) (strike(0.5 * (low + high)) < share ? high : low) = 0.5 * (low + high);
    return high;
  };
  bands.do_not_m = nearer_than(do_not_drill_share);
  bands.doubt_m = nearer_than(likely_clear_share);
  return bands;
}

}  // namespace slabwright
