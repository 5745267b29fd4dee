// An input moved a little: by how much, and what is then compared.
#pragma once
#include <string>

#include "slabwright/fields.hpp"

namespace slabwright::test {

/// A tenth more, two kelvin warmer, the next word, the other truth; a worded value by a step of its own. Empty for
/// names, which move nothing by design, and where nothing is given.
std::string nudged(const Key& key, const Slot& slot, System system);

/// '+', '-' or '0': the last where both are the same within `same_share` of the larger.
char sign(double before, double after, double same_share);

/// Whether only the winter reads it, or what else does is tested for itself: the way back to work.
bool is_of_winter(const std::string& path, const Key& key);

}  // namespace slabwright::test
