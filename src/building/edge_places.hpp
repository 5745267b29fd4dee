// The places of one edge of a heated room.
#pragma once
#include "slabwright/building.hpp"

namespace slabwright::building {

/// At a wall: the nearest tube, the tube at the corners where the room has any, slab corner and soil. At a big door:
/// the nearest tube, the floor line and one step in from it.
std::vector<WatchedPlace> edge_places(const Design& design, const Envelope& envelope, std::size_t row,
                                      EdgeFields& fields);

}  // namespace slabwright::building
