// The parts of the owner's sheet.
#pragma once
#include "sheets/phrases.hpp"

namespace slabwright::sheets {

// owner_frost.cpp: the lowest settings, power cuts, and what would lower either those or the cost.
Markup keeps_section(const Source& source);
Markup lowers_section(const Source& source);

// owner_winter.cpp: every way of running; settings, foam and second source; the worst month; what lowers it.
Markup costs_sections(const Source& source);

}  // namespace slabwright::sheets
