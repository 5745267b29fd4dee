// The words of a design file as libFuzzer reads them, from the one description.
#pragma once
#include <string>

namespace slabwright::fuzz {

/// tests/fuzz/design.dict: sections, keys, choices, examples and units, each once.
std::string dictionary();

}  // namespace slabwright::fuzz
