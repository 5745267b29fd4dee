// The whole answer as a tree, before it is text.
#pragma once
#include <nlohmann/json.hpp>

#include "slabwright/report.hpp"

namespace slabwright::report {

/// As many as any figure means.
inline constexpr int usual_digits = 6;

nlohmann::ordered_json tree_of(const Answer& answer, int digits = usual_digits);

}  // namespace slabwright::report
