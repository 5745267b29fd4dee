// An edge under a floor that gives heat.
#pragma once
#include "slabwright/envelope.hpp"

namespace slabwright::building {

/// The same edge with the floor film of so much heat going up, any covering included.
EdgeDetail with_heat_going_up(EdgeDetail detail, const Design& design, double up_W_per_m2);

}  // namespace slabwright::building
