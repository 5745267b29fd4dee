// Paper as sold, lying.
#pragma once
#include <span>

#include "slabwright/units.hpp"

namespace slabwright::drawn {

struct Paper {
  double width_m = 0.0, height_m = 0.0;
  const char* name = "";
};

/// Smallest first; the first is an office printer's.
std::span<const Paper> papers(System);

}  // namespace slabwright::drawn
