// The whole answer as a tree, before it is text.
#pragma once
#include <nlohmann/json.hpp>

#include "slabwright/report.hpp"

namespace slabwright::report {

nlohmann::ordered_json tree_of(const Answer& answer);

}  // namespace slabwright::report
