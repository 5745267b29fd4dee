// Parts of size_plant().
#pragma once
#include "slabwright/plant_sizes.hpp"

namespace slabwright {

/// What the boiler asks of the electric service, alone and with all else that runs in the same hour.
ElectricSize electric_size(const Plant& plant, double power_W, std::vector<Diagnostic>& said);

}  // namespace slabwright
