// A shop by its number: what it is, and its design file.
#pragma once
#include <cstdint>
#include <string>

#include "random/design_text.hpp"
#include "slabwright/units.hpp"

namespace slabwright::test {

struct DrawnDesign {
  std::uint64_t number = 0;
  System system = System::us;
  bool nearly_broken = false;  ///< a key or two were broken, or stand at a limit or beyond
  DesignText text;
};

/// The same for the same number, on every machine. Four in ten have a floor that can be drawn; the others say only as
/// much of it as people do.
DrawnDesign drawn_design(std::uint64_t number);

}  // namespace slabwright::test
