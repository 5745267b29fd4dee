// A field section as a row of numbers, for remembering what was solved.
#pragma once
#include <vector>

#include "slabwright/conduction.hpp"

namespace slabwright::envelope {

/// All numbers of a section, its watched points and options: two that differ anywhere have different keys. Names of
/// drivers do not count. A member added to any of them stops this from compiling until it is added here too.
std::vector<double> key_of(const FieldSection& section, const std::vector<FieldPoint>& watched,
                           const FieldOptions& options);

}  // namespace slabwright::envelope
