// A path as runs along walls, slants and the turns between them.
#pragma once
#include <vector>

#include "slabwright/sitework_stakes.hpp"

namespace slabwright::sitework {

/// Distances from the two walls, square off each: u from the first, v from the second.
class Walls {
 public:
  explicit Walls(const StakeTask& task);
  Point measured(Point place) const;   ///< (u, v) in place of (x, y)
  Point placed(Point measured) const;  ///< and back

 private:
  Point first_from_, first_in_, second_from_, second_in_;
};

enum class RunKind { first_line, second_line, slant };

/// A straight run, or a slant or wide curve, and the turn that follows it.
struct Run {
  RunKind kind = RunKind::slant;
  Point from, to;  ///< as (u, v)
  double radius_m = 0.0;
  double end_m = 0.0;           ///< tube from the beginning of the path, half of the turn after it counted
  double turn_deg = 0.0;        ///< after it: to the left above 0
  Point turn_least, turn_most;  ///< the box of that turn, as (u, v)
};

std::vector<Run> runs_of(const StakeTask& task, const Walls& walls, const Path& path);

/// Of a run along a line: what is constant, and what changes.
inline double across(const Run& run, Point place) { return run.kind == RunKind::first_line ? place.x_m : place.y_m; }
inline double along(const Run& run, Point place) { return run.kind == RunKind::first_line ? place.y_m : place.x_m; }

}  // namespace slabwright::sitework
