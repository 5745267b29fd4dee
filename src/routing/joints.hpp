// Where tube meets joints.
#pragma once
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// Tube that lies along a joint keeps this far off it, metres (practice: 2 in): saws wander.
constexpr double off_joint_m = 0.0508;

/// All places where a path passes over joints, in order along it. A path that touches a joint and turns back does not
/// pass.
std::vector<JointCrossing> crossings_of(const Path& path, const std::vector<JointLine>& joints);

/// Whether a straight tube line lies along a joint (less than about 20 degrees off it) and too near to it.
bool lies_along(const JointLine& joint, Point a, Point b);

}  // namespace slabwright::routing
