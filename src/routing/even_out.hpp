// Borders moved where cuts have shut loops in.
#pragma once
#include <random>

#include "cuts.hpp"

namespace slabwright::routing {

/// Moves the borders between parts until loops are about as long as each other and borders short and straight.
/// `extra_m` is what each loop has besides its cells. Where a part is too narrow to give a cell away it moves over into
/// the next one, so that a loop shut in between others finds its way out. A part stays connected and keeps its gate.
void even_out(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& extra_m,
              std::mt19937_64& random, std::vector<int>& owner);

}  // namespace slabwright::routing
