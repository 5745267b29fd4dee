// Tube weighed by the heat that the floor above it loses.
#pragma once
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// The highest ratio of the areas that hold the place; 1 outside all of them.
double loss_ratio_at(const LayoutTask& task, Point place);

/// Length of a path, each stretch times the ratio where it lies; looked at every quarter of a spacing.
double heat_m(const LayoutTask& task, const Path& path);

}  // namespace slabwright::routing
