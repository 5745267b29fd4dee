#pragma once
#include "slabwright/heater.hpp"

namespace slabwright {

bool is_part_load(const PartLoad& law);

}  // namespace slabwright
