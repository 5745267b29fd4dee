// Where tube can be found again: points on straight runs, told from two fixed corners of the slab; and how far from
// tube a usual hole is likely clear.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/routing.hpp"

namespace slabwright {

/// A corner of the slab that stays in sight.
struct ControlCorner {
  std::string letter;  ///< "A", "B"
  double x_m = 0.0, y_m = 0.0;
};

/// A point of a loop's centre line, in the middle of a straight run.
struct ControlPoint {
  std::string name;  ///< "2b": the second of loop 2
  std::string loop;
  double along_m = 0.0;  ///< of tube, from the supply port
  double x_m = 0.0, y_m = 0.0;
  double from_a_m = 0.0, from_b_m = 0.0;           ///< straight, as a tape lies from each corner
  double from_first_m = 0.0, from_second_m = 0.0;  ///< square off two walls
};

struct ControlPoints {
  std::string wall;  ///< that both corners lie on: the floor is on one side of them, so that two lengths make a place
  ControlCorner a, b;
  std::string first_wall, second_wall;
  double tolerance_m = 0.0;  ///< within which 19 of 20 places of tube lie, as laid with care (practice)
  std::vector<ControlPoint> point;
};

/// Three points a loop, near a sixth, a half and five sixths of its length, on the straight runs nearest to those;
/// fewer where a loop has fewer straight runs of 1 ft. Absent where loops are not drawn, all of them, or the slab's
/// shape is not known.
std::optional<ControlPoints> control_points(const Design& design, const LoopPlan& plan);

/// How a hole that nobody has asked about yet stands to tube, by its distance from the tube's centre line. Leans to the
/// careful side: the hole goes as deep as tube and is as wide as the widest that is planned.
struct DrillBands {
  double diameter_m = 0.0;         ///< of the widest anchor's hole, or of a usual one (practice) where that is wider
  double tolerance_m = 0.0;        ///< as above
  double do_not_m = 0.0;           ///< nearer than that: do not drill
  double doubt_m = 0.0;            ///< nearer than that: in doubt; farther: likely clear
  double concrete_above_m = 0.0;   ///< from the top of the floor to the top of the tube, as drawn
  double depth_tolerance_m = 0.0;  ///< nineteen of twenty places of tube lie within it, up or down (practice)
};

/// By `clear_distances`, rounded up to what a tape shows (1/4 in, 5 mm). Absent as above.
std::optional<DrillBands> drill_bands(const Design& design, const LoopPlan& plan);

Record record_of(ControlCorner&);
Record record_of(ControlPoint&);
Record record_of(ControlPoints&);
Record record_of(DrillBands&);

}  // namespace slabwright
