// What a caller owes a function. A broken contract is a bug of ours, never a fault of the user's file.
#pragma once
#include <stdexcept>

namespace slabwright {

/// Throws std::logic_error with `what` when `holds` is false.
inline void expects(bool holds, const char* what) {
  if (!holds) throw std::logic_error(what);
}

}  // namespace slabwright
