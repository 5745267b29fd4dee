// Lengths as a tape measure has them, and chances.
#pragma once
#include <string>

#include "slabwright/units.hpp"

namespace slabwright::report {

/// To a quarter of an inch or 5 mm: "12 ft 4 1/4 in", "7 1/2 in", "-1/4 in"; "3.755 m", "190 mm".
std::string tape(double si, System system);

/// A size as a rule or a drill bit has it, 0 or more: to a sixteenth of an inch or a tenth of a millimetre, "3/4 in",
/// "2 5/8 in", "16 mm".
std::string rule(double si, System system);

/// "38 %", "2.4 %", "under 0.1 %".
std::string chance(double share);

}  // namespace slabwright::report
