// What becomes of the rest when zone valves shut.
#pragma once
#include "slabwright/plant.hpp"

namespace slabwright {

/// The plant with the loops that the design has shut, at the supply temperature of `open`, the same plant with all
/// open. Absent where none is shut. Said: a pump that presses against shut valves, a boiler that gets less flow than it
/// wants (`least_boiler_m3_per_s`).
Checked<OperatingPoint> zones_shut(const Plant& plant, const Conditions& conditions, const OperatingPoint& open,
                                   double least_boiler_m3_per_s);

}  // namespace slabwright
