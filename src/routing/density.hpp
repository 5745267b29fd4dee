// How much tube lies on the densest square of an apron.
#pragma once
#include <vector>

#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// Squares are so many spacings wide.
constexpr double density_square = 2.0;

/// Metres of tube on a square metre, of the densest square in each apron's box; 0 where there is no apron. Far from
/// manifolds it is one over the spacing.
std::vector<double> densest_squares(double spacing_m, const std::vector<Polygon>& apron, const std::vector<Path>& tube);

/// The densest of all aprons.
double densest_apron(const LayoutTask& task, const TubeLayout& layout);

}  // namespace slabwright::routing
