// Whether what a drawing says is what its keys say in the answer's JSON.
#pragma once
#include <string>
#include <vector>

#include "slabwright/drawing.hpp"

namespace slabwright::test {

/// What is wrong with the texts of a drawing: a digit without a key, a key that the JSON has not, a text that is not
/// the value at its key within half of its last printed digit. Empty where all is well. `keys` counts those that were
/// found right, scale marks left out.
struct KeyFaults {
  std::vector<std::string> fault;
  int keys = 0;
};
KeyFaults key_faults(const Picture& picture, const std::string& json);

}  // namespace slabwright::test
