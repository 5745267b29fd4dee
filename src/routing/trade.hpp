// Cells traded between neighbours until their loops are about as long as each other.
#pragma once
#include "cuts.hpp"

namespace slabwright::routing {

/// Moves single cells from longer to shorter neighbours while any two differ by more than `tolerance_m`. `extra_m` is
/// what each loop has besides its cells. A part stays connected and keeps its gate. Cells are
/// not traded over joints where the rest is balanced to within a few times the tolerance.
void trade_cells(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& extra_m,
                 double tolerance_m, std::vector<int>& owner);

}  // namespace slabwright::routing
