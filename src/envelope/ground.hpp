// What lies between a floor's faces and its tube plane.
#pragma once
#include "slabwright/design.hpp"

namespace slabwright::envelope {

/// A floor whose edge is all inside the building has no perimeter to a formula; a metre of it leaves next to no loss.
constexpr double least_perimeter_m = 1.0;

/// Concrete from the tube plane down.
double below_tube_m2K_per_W(const Design& design);
/// Covering, topping and concrete from the floor's face down to the tube plane.
double above_tube_m2K_per_W(const Design& design);

}  // namespace slabwright::envelope
