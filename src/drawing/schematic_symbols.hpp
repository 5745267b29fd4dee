// Symbols of a piping schematic.
#pragma once
#include <vector>

#include "schematic_layout.hpp"

namespace slabwright::schematic {

/// At a place of a pipe, water running along `flow` (of length 1); `small` beside loops. Dashed where by others.
std::vector<SheetShape> symbol_at(const DrawnElement& element, Point at, Point flow, bool small);

/// An arrow head that lies on a pipe.
SheetShape arrow_at(Point at, Point flow);

}  // namespace slabwright::schematic
