// Points by which a drawing is found again on the slab, and the bands along tube.
#include "slabwright/sitework_control.hpp"

#include <algorithm>
#include <cmath>

#include "sitework/nearest.hpp"
#include "slabwright/sitework_drill.hpp"
#include "slabwright/sitework_guide.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double least_straight_m = foot_m, on_wall_m = 0.01;
constexpr double shares[] = {1.0 / 6.0, 0.5, 5.0 / 6.0};

/// Square off a wall's line, to its left.
double off_wall_m(Point p, const PlanWall& wall) {
  const Point along = sitework::unit(sitework::minus(wall.to, wall.from));
  return sitework::cross(along, sitework::minus(p, wall.from));
}

double along_wall_m(Point p, const PlanWall& wall) {
  return sitework::dot(sitework::unit(sitework::minus(wall.to, wall.from)), sitework::minus(p, wall.from));
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

/// Two corners of the slab on a wall, with the floor to the left of the way from one to the other.
struct CornerPair {
  std::string wall;
  Point a, b;
};

/// The slab's two corners farthest apart on a wall; nothing where it has none, or where floor lies on its other side:
/// two lengths would then make two places.
std::optional<CornerPair> corners_on(const PlanWall& wall, const std::vector<Place>& outline) {
  CornerPair pair{wall.name, wall.from, wall.from};
  double least_m = HUGE_VAL, most_m = -HUGE_VAL, right_m = 0.0, left_m = 0.0;
  for (const Place& place : outline) {
    const Point p{place.x_m, place.y_m};
    const double off_m = off_wall_m(p, wall), along_m = along_wall_m(p, wall);
    left_m = std::max(left_m, off_m);
    right_m = std::max(right_m, -off_m);
    if (std::abs(off_m) > on_wall_m) continue;
    if (along_m < least_m) pair.a = p;
    if (along_m > most_m) pair.b = p;
    least_m = std::min(least_m, along_m);
    most_m = std::max(most_m, along_m);
  }
  if (most_m - least_m < least_straight_m || std::min(left_m, right_m) > on_wall_m) return std::nullopt;
  if (right_m > left_m) std::swap(pair.a, pair.b);
  return pair;
}

/// The sine of the flattest angle at which the two tapes cross over the points: a tape's error moves a place by as many
/// times more.
double flattest_sine(const CornerPair& pair, const std::vector<ControlPoint>& points) {
  double least = 1.0;
  for (const ControlPoint& point : points) {
    const Point p{point.x_m, point.y_m};
    least = std::min(least, std::abs(sitework::cross(sitework::unit(sitework::minus(pair.a, p)),
                                                     sitework::unit(sitework::minus(pair.b, p)))));
  }
  return least;
}

/// The wall from whose corners tapes cross best where they cross worst.
std::optional<CornerPair> corners_for(const std::vector<PlanWall>& walls, const std::vector<Place>& outline,
                                      const std::vector<ControlPoint>& points) {
  std::optional<CornerPair> best;
  double least = -1.0;
  for (const PlanWall& wall : walls) {
    const auto pair = corners_on(wall, outline);
    if (!pair) continue;
    const double sine = flattest_sine(*pair, points);
    // A hair more is no reason for another wall: which of two equals it is must not hang on rounding.
    if (sine <= least + 1e-6) continue;
    least = sine;
    best = pair;
  }
  return best;
}

}  // namespace

std::optional<ControlPoints> control_points(const Design& design, const LoopPlan& plan) {
  const auto walls = told_from(design, std::nullopt);
  if (!is_drawn(plan) || !walls) return std::nullopt;
  ControlPoints control;
  control.first_wall = walls->first.name;
  control.second_wall = walls->second.name;
  control.tolerance_m = 2.0 * usual_placing(design.units).sideways_m;
  for (std::size_t row = 0; row < plan.loop.size(); ++row) {
    char letter = 'a';
    for (const StraightRun& run : chosen_runs(straight_runs(*plan.loop[row].path), length_m(*plan.loop[row].path))) {
      const Point p = run.middle;
      control.point.push_back({std::to_string(row + 1) + letter++, plan.loop[row].name, run.along_m, p.x_m, p.y_m, 0.0,
                               0.0, std::abs(off_wall_m(p, walls->first)), std::abs(off_wall_m(p, walls->second))});
    }
  }
  const auto corners = corners_for(plan_walls(design), floor_shape(design.slab).outline, control.point);
  if (!corners) return std::nullopt;
  control.wall = corners->wall;
  control.a = {"A", corners->a.x_m, corners->a.y_m};
  control.b = {"B", corners->b.x_m, corners->b.y_m};
  for (ControlPoint& point : control.point) {
    point.from_a_m = distance_m(corners->a, {point.x_m, point.y_m});
    point.from_b_m = distance_m(corners->b, {point.x_m, point.y_m});
  }
  return control;
}

std::optional<DrillBands> drill_bands(const Design& design, const LoopPlan& plan) {
  if (!is_drawn(plan)) return std::nullopt;
  const double outside_m = find_tube(design.tube.size.name)->outside_diameter_m;
  const Placing placing = usual_placing(design.units);
  DrillBands bands{.diameter_m = usual_hole(design.units).diameter_m,
                   .tolerance_m = 2.0 * placing.sideways_m,
                   .concrete_above_m = tube_axis_depth_m(design) - 0.5 * outside_m,
                   .depth_tolerance_m = 2.0 * placing.depth_m};
  for (const Anchor& anchor : design.anchor) bands.diameter_m = std::max(bands.diameter_m, anchor.diameter_m);
  const ClearDistances distances = clear_distances(outside_m, placing, bands.diameter_m);
  const double mark_m = design.units == System::si ? 0.005 : 0.25 * inch_m;
  bands.do_not_m = mark_m * std::ceil(distances.do_not_m / mark_m);
  bands.doubt_m = mark_m * std::ceil(distances.doubt_m / mark_m);
  return bands;
}

}  // namespace slabwright
