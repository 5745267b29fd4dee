// What is said about how boiler and floor are joined.
#pragma once
#include <vector>

#include "slabwright/plant.hpp"

namespace slabwright {

void judge_source(const Plant& plant, const OperatingPoint& point, std::vector<Diagnostic>& said);

}  // namespace slabwright
