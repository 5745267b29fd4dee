// Foam as it lies in the ground.
#pragma once
#include <optional>
#include <vector>

#include "slabwright/conduction_edge.hpp"
#include "slabwright/design.hpp"

namespace slabwright::envelope {

/// Foam that is less than it was: water raises its conductivity, weight takes of its thickness.
struct Spoiled {
  double wet_share = 0.0, crushed_share = 0.0;
};
Spoiled spoiled(const FloorInsulation& insulation);
Spoiled spoiled(const Edge& edge);

/// A board as thick as one of XPS (R-5 to the inch) of this resistance was when it was dry and whole. Empty where next
/// to nothing is left.
std::optional<InsulatingBoard> board_of(const Insulation& insulation, const Spoiled& by);
std::optional<InsulatingBoard> board_of(const std::optional<Insulation>& insulation, const Spoiled& by);

/// Under the whole slab, from the top down.
std::vector<InsulatingBoard> boards_under(const Design& design);
double foam_under_m2K_per_W(const Design& design);
double foam_under_m(const Design& design);

}  // namespace slabwright::envelope
