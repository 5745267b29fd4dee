// Edges on coarse cells, remembered between cases: for tests of logic and signs.
#pragma once
#include "slabwright/envelope.hpp"

namespace slabwright::test {

inline EdgeFields& coarse_fields() {
  static EdgeFields fields({.first_cell_m = 0.02, .growth = 1.4});
  return fields;
}

}  // namespace slabwright::test
