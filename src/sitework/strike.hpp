// The parts of a strike's chance.
#pragma once
#include "slabwright/sitework_drill.hpp"

namespace slabwright::sitework {

/// The share of a normal distribution that lies below `from_mean`; a step where it has no width.
double normal_share(double from_mean, double deviation);

/// Tube farther from a hole than this counts for nothing.
double reach_m(const DrawnTube& tube, const TubeDoubt& doubt, double hole_diameter_m);

/// That a hole lies over tube.
double over_share(const DrawnTube& tube, const TubeDoubt& doubt, const Hole& hole);

/// That a hole goes as deep as the top of tube.
double deep_share(const DrawnTube& tube, const TubeDoubt& doubt, double depth_m);

}  // namespace slabwright::sitework
