// What a tape reads round a floor.
#pragma once
#include <vector>

#include "slabwright/sitework_plan.hpp"

namespace slabwright::sitework {

struct RimPart {
  Point from, to;
};

/// A manifold and which way it faces into the floor.
struct RimManifold {
  Point place, facing;
};

/// A floor's rim and what stands at it.
struct Rim {
  Polygon outline;
  std::vector<RimPart> door, joint;
  std::vector<RimManifold> manifold;
};

/// On each side of the floor from one corner, jamb, manifold or joint's end to the next; below and at the left the
/// whole; along slanting walls from jamb to jamb. Places nearer than 20 mm to each other are one.
std::vector<PlanDimension> dimensions_of(const Rim& rim);

}  // namespace slabwright::sitework
