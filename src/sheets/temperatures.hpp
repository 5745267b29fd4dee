// From an answer's floor field to the values that its sheet is drawn from.
#pragma once
#include "slabwright/answer.hpp"
#include "slabwright/drawing_warmth.hpp"

namespace slabwright {

/// Means over squares a spacing wide, on a raster that is fine enough for paper.
DrawnWarmth warmth_of(const FloorField& field);

/// The warmest and the coldest place. Asks for a field.
std::vector<DrawnSpot> spots_of(const Answer& answer);

/// The plan with the notes of this sheet. Asks for a field.
DrawnFloor warm_floor(DrawnFloor floor, const Answer& answer);

/// "The bay door": big doors that nobody knows where they are.
std::vector<KeyedText> doors_without_place(const Design& design);

}  // namespace slabwright
