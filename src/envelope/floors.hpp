// How floor and outer wall are shared among the rooms.
#pragma once
#include <vector>

#include "slabwright/design.hpp"

namespace slabwright::envelope {

/// The floor as a whole.
struct WholeFloor {
  double area_m2 = 0.0;
  double exposed_m = 0.0;  ///< edge that faces outdoors
};
WholeFloor whole_floor(const Design& design);

/// Length of each room's walls that face outdoors; rooms without one share what the others leave, by floor area.
std::vector<double> outer_walls_m(const Design& design);

/// Widths of the big doors of a room.
double door_widths_m(const Design& design, std::size_t room);

}  // namespace slabwright::envelope
