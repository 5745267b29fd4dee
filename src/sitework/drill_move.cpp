// Where else a machine could stand.
#include <algorithm>
#include <cmath>

#include "sitework/nearest.hpp"
#include "sitework/strike.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/sitework_drill.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace sitework;

constexpr double rad_per_degree = pi / 180.0;

struct Move {
  Point shift;
  double turn_deg = 0.0;
  double moved_m = 0.0;
};

Point middle_of(const std::vector<Point>& holes) {
  Point sum{0.0, 0.0};
  for (const Point& hole : holes) sum = plus(sum, hole);
  const auto count = static_cast<double>(holes.size());
  return {sum.x_m / count, sum.y_m / count};
}

std::vector<Point> moved(const std::vector<Point>& holes, Point middle, const Move& move) {
  const double c = std::cos(move.turn_deg * rad_per_degree), s = std::sin(move.turn_deg * rad_per_degree);
  std::vector<Point> out;
  for (const Point& hole : holes) {
    const Point arm = minus(hole, middle);
    out.push_back(plus(plus(middle, move.shift), {c * arm.x_m - s * arm.y_m, s * arm.x_m + c * arm.y_m}));
  }
  return out;
}

double farthest_m(const std::vector<Point>& from, const std::vector<Point>& to) {
  double most_m = 0.0;
  for (std::size_t i = 0; i < from.size(); ++i) most_m = std::max(most_m, distance_m(from[i], to[i]));
  return most_m;
}

/// Whole steps that fit into a limit: -n to n.
int steps(double limit, double step) { return static_cast<int>(std::floor(limit / step + 1e-9)); }

/// Every move of the limits, the smallest first; of equals the one without a turn, then as counted.
std::vector<Move> all_moves(const AnchorPattern& pattern, Point middle, const MoveLimits& limits) {
  const int shifts = steps(limits.shift_m, limits.step_m), turns = steps(limits.turn_deg, limits.turn_step_deg);
  std::vector<Move> moves;
  for (int turn = -turns; turn <= turns; ++turn) {
    for (int y = -shifts; y <= shifts; ++y) {
      for (int x = -shifts; x <= shifts; ++x) {
        Move move{{x * limits.step_m, y * limits.step_m}, turn * limits.turn_step_deg, 0.0};
        move.moved_m = farthest_m(pattern.hole, moved(pattern.hole, middle, move));
        moves.push_back(move);
      }
    }
  }
  std::stable_sort(moves.begin(), moves.end(), [](const Move& a, const Move& b) { return a.moved_m < b.moved_m; });
  return moves;
}

/// Only the pieces that the holes can come near to, each run of them a path.
DrawnTube near_part(const DrawnTube& tube, Point middle, double radius_m) {
  DrawnTube part{{}, tube.outside_diameter_m, tube.concrete_above_m};
  for (const Path& path : tube.loop) {
    Path run;
    for (const Piece& piece : path) {
      if (foot_on(middle, piece).distance_m <= radius_m) {
        run.push_back(piece);
      } else if (!run.empty()) {
        part.loop.push_back(std::move(run));
        run.clear();
      }
    }
    if (!run.empty()) part.loop.push_back(std::move(run));
  }
  return part;
}

}  // namespace

PatternMove least_risk_move(const DrawnTube& tube, const TubeDoubt& doubt, const AnchorPattern& pattern,
                            const MoveLimits& limits) {
  expects(!pattern.hole.empty() && limits.step_m > 0.0 && limits.turn_step_deg > 0.0, "drill: no holes or no steps");
  const Point middle = middle_of(pattern.hole);
  const std::vector<Move> moves = all_moves(pattern, middle, limits);
  double arm_m = 0.0;
  for (const Point& hole : pattern.hole) arm_m = std::max(arm_m, distance_m(hole, middle));
  // What a re-fit moves the tube by stays within the reach.
  const DrawnTube part =
      near_part(tube, middle, arm_m + 1.5 * limits.shift_m + 2.0 * reach_m(tube, doubt, pattern.diameter_m));
  const double deep = deep_share(tube, doubt, pattern.depth_m);
  PatternMove best;
  double least = HUGE_VAL;
  for (const Move& move : moves) {
    const std::vector<Point> holes = moved(pattern.hole, middle, move);
    double sum = 0.0;
    for (const Point& place : holes)
      sum += deep * over_share(part, doubt, {place, pattern.diameter_m, pattern.depth_m});
    const bool clear = drilling_word(sum) == Drilling::likely_clear;
    // A hair less is no reason to move farther.
    if (!clear && sum >= least * (1.0 - 1e-6)) continue;
    least = sum;
    best = {move.shift, move.turn_deg, move.moved_m, holes, std::min(sum, 1.0), clear};
    if (clear) break;
  }
  return best;
}

}  // namespace slabwright
