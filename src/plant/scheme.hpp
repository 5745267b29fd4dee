// Private to the plant: what a scheme is put together from.
#pragma once
#include <optional>
#include <vector>

#include "slabwright/plant_scheme.hpp"

namespace slabwright {

/// A branch's elements under words: every element of the graph under one of them, devices without one beside them.
std::vector<SchemeElement> scheme_elements(const Plant& plant, BranchId branch, const PlantSizes* sizes);

/// Tank and fill, on the suction side of the floor's pump.
std::vector<SchemeElement> scheme_devices(const Plant& plant, const PlantSizes* sizes);

/// Of every branch, where the operating point and the meetings tell it.
std::vector<std::optional<double>> scheme_flows(const Plant& plant, const OperatingPoint& point);

}  // namespace slabwright
