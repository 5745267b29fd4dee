// Floor that must have loops of its own.
#pragma once
#include <optional>

#include "cuts.hpp"

namespace slabwright::routing {

/// As cut_floor(), with floor of its own (LayoutTask::own_floor) for itself: as many gates side by side as it has loops
/// lead to it through a corridor one cell wide for each, and the rest of the floor is shared out among the other gates.
/// Passages between what is shared out apart are closed in `cells`, so that no cell is traded over them later. Absent
/// where no gates lead to such floor and leave some for the rest. Where the task has no such floor, or nothing but, it
/// is cut_floor().
std::optional<Parts> cut_floor_apart(const LayoutTask& task, Cells& cells, const std::vector<Gate>& gates,
                                     const std::vector<double>& leaders_m, const CutOptions& options, Work& work);

}  // namespace slabwright::routing
