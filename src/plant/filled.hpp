// Water of an operating point's temperatures in the graph.
#pragma once
#include <vector>

#include "slabwright/plant.hpp"

namespace slabwright {

/// The graph filled with water of these temperatures, a return for each loop.
void fill(HydronicGraph& graph, const Plant& plant, double supply_degC, const std::vector<double>& return_degC);

/// The graph as it stands at an operating point: its water, and the source's setting where it has one.
HydronicGraph as_it_runs(const Plant& plant, const OperatingPoint& point);

}  // namespace slabwright
