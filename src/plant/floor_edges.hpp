// The section's lower side, where it lies: along the floor's edges, and evenly under the rest.
#pragma once
#include "plant/floor_solve.hpp"

namespace slabwright::plant {

/// Of cells that have the whole lower side evenly. With the plate at one temperature the heat stays as it is.
void share_out_lower_side(FloorPlanCells& cells, const Section& section, const std::vector<LaidEdge>& edges);

}  // namespace slabwright::plant
