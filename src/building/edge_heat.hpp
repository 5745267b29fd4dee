// An edge under a floor that gives heat.
#pragma once
#include "slabwright/envelope.hpp"

namespace slabwright::building {

/// What a floor gives in hard frost, middle of the range; the film of heat going up moves with its tenth power only.
constexpr double typical_up_W_per_m2 = 50.0;

/// The same edge with the floor film of that heat going up, any covering included.
EdgeDetail with_heat_going_up(EdgeDetail detail, const Design& design);

}  // namespace slabwright::building
