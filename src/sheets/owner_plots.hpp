// The plots of the owner's sheet, each where the answer has something to draw.
#pragma once
#include "sheets/phrases.hpp"

namespace slabwright::sheets {

/// Months, cost against setting, heat against the weather, a week of winter, wet floors in spring.
Markup plots_of_the_owner(const Source& source);

}  // namespace slabwright::sheets
