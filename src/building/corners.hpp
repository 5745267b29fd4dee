// Where two outer edges of the floor meet in plan.
#pragma once
#include "slabwright/building.hpp"

namespace slabwright::building {

/// Whether an outer corner of the slab lies in this room. Re-entrant corners are warmer than the edges that meet there
/// and count for nothing. A floor of which only the area is known has four corners; a room that does not say where it
/// lies may have one: the careful side.
bool has_outer_corner(const Design& design, std::size_t room);

/// Of the tube nearest to a corner, from either wall: its legs stand `from_walls` off, and a bend of its least radius
/// between them has its middle r (1 - 1 / sqrt 2) further in.
double corner_tube_in_m(const Design& design);

/// Weights of a point that lies alike in two edges' sections: what keeps the cold of each edge out keeps a part of the
/// other's. Indoor air: the product. Outdoor air: all but the product of what the two leave. Ground: the rest, at least
/// 0 (the indoor share gives way, by rounding alone). Tube heat fades toward each edge as it does in that edge's
/// section, so that its shares of the middle's multiply. An estimate: against fields in three dimensions the indoor
/// share is 0.03 low with foam, 0.035 on bare ground, never high.
DriverWeights corner_weights(const DriverWeights& a, const DriverWeights& b, double middle_tube_m2K_per_W);

}  // namespace slabwright::building
