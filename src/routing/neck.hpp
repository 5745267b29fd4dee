// Whether the loops of a region can all get past its necks.
#pragma once
#include <optional>

#include "border.hpp"
#include "marks.hpp"

namespace slabwright::routing {

/// How many loops of the region are shut in: what lies near to its gates is too small for all of them, and not enough
/// can pass side by side to what lies beyond. 0 where none is, as far as this looks.
int loops_shut_in(const Cells& cells, const Region& region, const std::vector<Gate>& gates);

/// A place that fewer loops pass than the floor beyond it asks for.
struct Neck {
  Point place;
  int passing_number = 0;  ///< most loops that lie side by side there
  int needed_number = 0;   ///< loops that the floor beyond it would be shared by
  double beyond_m2 = 0.0;
};

/// The neck that leaves the loops beyond it longest, where that is more than a tenth above the mean or over the limit.
/// Found by the smallest cut (Ford and Fulkerson), looked for before each room that openings lead to, and at every size
/// of near floor.
std::optional<Neck> worst_neck(const Cells& cells, const std::vector<Gate>& gates, const std::vector<Opening>& openings,
                               double longest_m);

/// Openings that no passage from cell to cell leads through.
std::vector<Opening> closed_openings(const Cells& cells, const std::vector<Opening>& openings);

}  // namespace slabwright::routing
