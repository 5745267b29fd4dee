// One solve on given lines, for those who compare several.
#pragma once
#include <vector>

#include "conduction/grid.hpp"

namespace slabwright::conduction {

/// The contracts of unit_responses, all but those that show on the grid.
void expect_sound(const FieldSection& section, const FieldOptions& options);

UnitResponses responses_on(const FieldSection& section, Lines lines, const std::vector<FieldPoint>& watched);

/// [row][column]: from one to the other, signs and all.
std::vector<std::vector<double>> changes(const std::vector<std::vector<double>>& from,
                                         const std::vector<std::vector<double>>& to);

}  // namespace slabwright::conduction
