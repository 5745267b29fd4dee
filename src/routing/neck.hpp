// Whether the loops of a region can all get past its necks.
#pragma once
#include "border.hpp"

namespace slabwright::routing {

/// How many loops of the region are shut in: what lies near to its gates is too small for all of them, and not enough
/// can pass side by side to what lies beyond. 0 where none is, as far as this looks.
int loops_shut_in(const Cells& cells, const Region& region, const std::vector<Gate>& gates);

}  // namespace slabwright::routing
