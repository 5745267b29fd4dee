// A path as runs along walls, slants and the turns between them.
#include "sitework/runs.hpp"

#include <algorithm>
#include <cmath>

#include "sitework/nearest.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::sitework {
namespace {

constexpr double parallel_m = 0.002;
/// Arcs wider than this many of the shortest runs are curves of their own: a wall that is round.
constexpr double wide_ratio = 4.0;
constexpr double degrees_per_rad = 180.0 / pi;

Point inward(const StakeWall& wall) {
  const Point ahead = unit(minus(wall.to, wall.from));
  return {-ahead.y_m, ahead.x_m};
}

double signed_turn_deg(Point from, Point to) {
  const double angle = angle_between_rad(from, to) * degrees_per_rad;
  return cross(from, to) >= 0.0 ? angle : -angle;
}

/// Directions of a piece at its two ends.
Point leaves(const Piece& piece, Point place) {
  if (piece.radius_m <= 0.0) return unit(minus(piece.to, piece.from));
  const Point arm = unit(minus(place, piece.centre));
  return piece.turn == Side::left ? Point{-arm.y_m, arm.x_m} : Point{arm.y_m, -arm.x_m};
}

class Runner {
 public:
  Runner(const StakeTask& task, const Walls& walls) : task_(task), walls_(walls) {}

  std::vector<Run> of(const Path& path) {
    for (const Piece& piece : path) {
      if (length_m(piece) <= 0.0) continue;
      if (before_) turn(signed_turn_deg(leaves(*before_, before_->to), leaves(piece, piece.from)));
      before_ = &piece;
      add(piece);
    }
    close_turn();
    if (!runs_.empty()) runs_.back().end_m = laid_m_;
    return std::move(runs_);
  }

 private:
  void add(const Piece& piece) {
    const double length = length_m(piece);
    const bool curve = piece.radius_m > wide_ratio * task_.least_run_m;
    if (length < task_.least_run_m || (piece.radius_m > 0.0 && !curve)) {
      add_turn(piece);
    } else {
      add_run(piece, curve);
    }
    laid_m_ += length;
  }

  void add_turn(const Piece& piece) {
    // A flat path's corners lie within the box of its arcs to less than a millimetre.
    for (const Point corner : flattened(std::vector<Piece>{piece}, 5e-4)) widen(walls_.measured(corner));
    if (piece.radius_m > 0.0) turn(sweep_rad(piece) * degrees_per_rad * (piece.turn == Side::left ? 1.0 : -1.0));
    turn_m_ += length_m(piece);
  }

  void add_run(const Piece& piece, bool curve) {
    Run run;
    run.from = walls_.measured(piece.from);
    run.to = walls_.measured(piece.to);
    if (curve) run.radius_m = piece.radius_m;
    const Point moved = minus(run.to, run.from);
    if (!curve && std::abs(moved.x_m) < parallel_m) run.kind = RunKind::first_line;
    if (!curve && std::abs(moved.y_m) < parallel_m) run.kind = RunKind::second_line;
    if (goes_on(run)) {
      runs_.back().to = run.to;
      return;
    }
    close_turn();
    runs_.push_back(run);
  }

  /// Two straight pieces on one line, with nothing between them.
  bool goes_on(const Run& run) const {
    if (runs_.empty() || run.kind == RunKind::slant || runs_.back().kind != run.kind) return false;
    return turn_m_ == 0.0 && std::abs(turn_deg_) < 1.0;
  }

  void turn(double by_deg) { turn_deg_ += by_deg; }

  void widen(Point place) {
    least_ = {std::min(least_.x_m, place.x_m), std::min(least_.y_m, place.y_m)};
    most_ = {std::max(most_.x_m, place.x_m), std::max(most_.y_m, place.y_m)};
  }

  void close_turn() {
    if (!runs_.empty()) {
      Run& run = runs_.back();
      run.turn_deg = turn_deg_;
      run.end_m = laid_m_ - 0.5 * turn_m_;
      run.turn_least = {std::min(least_.x_m, run.to.x_m), std::min(least_.y_m, run.to.y_m)};
      run.turn_most = {std::max(most_.x_m, run.to.x_m), std::max(most_.y_m, run.to.y_m)};
    }
    turn_deg_ = turn_m_ = 0.0;
    least_ = {HUGE_VAL, HUGE_VAL};
    most_ = {-HUGE_VAL, -HUGE_VAL};
  }

  const StakeTask& task_;
  const Walls& walls_;
  std::vector<Run> runs_;
  const Piece* before_ = nullptr;
  double laid_m_ = 0.0, turn_deg_ = 0.0, turn_m_ = 0.0;
  Point least_{HUGE_VAL, HUGE_VAL}, most_{-HUGE_VAL, -HUGE_VAL};
};

}  // namespace

Walls::Walls(const StakeTask& task)
    : first_from_(task.first.from),
      first_in_(inward(task.first)),
      second_from_(task.second.from),
      second_in_(inward(task.second)) {
  constexpr double least_sine = 0.05;
  expects(std::abs(cross(first_in_, second_in_)) > least_sine, "stake_out: two walls side by side");
}

Point Walls::measured(Point place) const {
  return {dot(minus(place, first_from_), first_in_), dot(minus(place, second_from_), second_in_)};
}

Point Walls::placed(Point measured) const {
  // Two lines at these distances from the walls meet there.
  const double u = measured.x_m + dot(first_from_, first_in_), v = measured.y_m + dot(second_from_, second_in_);
  const double sine = cross(first_in_, second_in_);
  return {(u * second_in_.y_m - v * first_in_.y_m) / sine, (v * first_in_.x_m - u * second_in_.x_m) / sine};
}

std::vector<Run> runs_of(const StakeTask& task, const Walls& walls, const Path& path) {
  return Runner(task, walls).of(path);
}

}  // namespace slabwright::sitework
