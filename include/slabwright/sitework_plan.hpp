// What a plan of the floor tells in numbers: what a tape reads along its walls, how wide doors are, what sleeves and
// loops are numbered by. Metres; x to the right, y up.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/routing.hpp"

namespace slabwright {

/// Where on the plan a dimension stands: beyond the floor's lowest, leftmost, highest, rightmost wall; along a wall
/// that slants.
enum class PlanSide { below, left, above, right, slanting };

/// Between two places of the floor's rim that a tape is held to: corners, door jambs, manifolds, ends of joints.
struct PlanDimension {
  PlanSide side = PlanSide::below;
  bool whole = false;  ///< across all of the floor
  double from_x_m = 0.0, from_y_m = 0.0;
  double to_x_m = 0.0, to_y_m = 0.0;
  double length_m = 0.0;  ///< along the side
};

struct PlanDoor {
  std::string name;
  std::size_t opening = 0;  ///< row in Design::opening
  double width_m = 0.0;
};

/// Where tube passes a joint.
struct NumberedSleeve {
  int number = 0;         ///< from 1, along one joint after the other
  std::size_t joint = 0;  ///< row in Design::joint
  std::string loop;
  double x_m = 0.0, y_m = 0.0;
};

/// What a loop goes by on the plan: short, and no other's.
struct PlanLoop {
  std::string loop;
  std::string number;
};

struct PlanFigures {
  double width_m = 0.0, height_m = 0.0;  ///< of the floor, along x and along y
  double tube_depth_m = 0.0;             ///< from the top of the floor to the tube's axis
  std::vector<PlanDimension> dimension;
  std::vector<PlanDoor> door;
  std::vector<NumberedSleeve> sleeve;
  std::vector<PlanLoop> loop;  ///< a row for each loop
};

/// Absent where loops are not drawn, or the slab's shape is not known.
std::optional<PlanFigures> plan_figures(const Design& design, const LoopPlan& plan);

Record record_of(PlanDimension&);
Record record_of(PlanDoor&);
Record record_of(NumberedSleeve&);
Record record_of(PlanLoop&);
Record record_of(PlanFigures&);

}  // namespace slabwright
