// What the lines between cells must suit, on one axis: walls, partitions, openings, joints, bands.
#pragma once
#include "cells.hpp"

namespace slabwright::routing {

struct Mark {
  enum class Kind : std::uint8_t {
    floor_after,   ///< a wall with floor on its right: `right_m` is its nearest tube
    floor_before,  ///< a wall with floor on its left: `left_m` is its nearest tube
    floor_beside,  ///< a partition: a tube on either side
    line           ///< a line between cells, at `left_m`
  };
  Kind kind = Kind::line;
  double left_m = 0.0, right_m = 0.0;
  double slack_m = 0.0;   ///< a line may lie so far off
  double cells_m = 0.0;   ///< of a line: of the cells behind it, which another line ends
  int rank = 0;           ///< lower ones come first
  double length_m = 0.0;  ///< and longer ones of the same rank
  Fit fit;                ///< of the cells on either side
};

/// Marks along x, or else along y, in no order.
std::vector<Mark> marks_of(const LayoutTask& task, bool x, const Fit& fit);

/// Where a partition ends before the next one, or before a wall, in line with it.
struct Opening {
  Point from, to;            ///< on its middle line, along an axis
  double clearance_m = 0.0;  ///< of its ends
  double width_m() const { return distance_m(from, to); }
  /// Least width that a loop passes: two tubes a spacing apart and their clearances.
  double least_m(double spacing_m) const { return spacing_m + 2.0 * clearance_m; }
};

/// Thin rectangles along an axis count as partitions.
std::vector<Opening> openings_of(const LayoutTask& task);

/// A floor's tube lines, two for each cell.
std::vector<double> tube_lines(const LayoutTask& task, bool x, const Fit& fit);

/// The clearance of an edge of the outline.
double wall_clearance_m(const LayoutTask& task, std::size_t edge);

}  // namespace slabwright::routing
