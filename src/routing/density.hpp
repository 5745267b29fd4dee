// How much tube lies on the densest square of an apron.
#pragma once
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// Metres of tube on a square metre, of the densest square two spacings wide in any apron's box. Far from manifolds it
/// is one over the spacing.
double densest_apron(const LayoutTask& task, const TubeLayout& layout);

}  // namespace slabwright::routing
