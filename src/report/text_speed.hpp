// What the balance says of the pump's speed.
#pragma once
#include "report/text.hpp"

namespace slabwright::report {

/// The lowest speed of the pump that will do, where that spares something.
void add_least_speed(Page& page, const Reader& reader);

}  // namespace slabwright::report
