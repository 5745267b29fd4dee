// Sentences on a sheet whose parts tell keys of the answer.
#pragma once
#include <string>
#include <vector>

#include "slabwright/drawing.hpp"

namespace slabwright {

/// Parts of a sentence, one after the other, each with its keys.
using KeyedWords = std::vector<KeyedText>;

/// One text with the keys of all parts, in order.
KeyedText joined(const KeyedWords& parts);

/// Lines no longer than this, broken at spaces; each with the keys of what stands on it. A part with a key is broken
/// only where it alone is longer than a line, and its lines then carry its keys each.
std::vector<KeyedText> wrapped(const KeyedWords& parts, double size_m, double width_m);

}  // namespace slabwright
