// What drives the strips of a zone.
#pragma once
#include "slabwright/building_zone.hpp"

namespace slabwright::building {

/// In the order of edge_row; ground at 0 where only differences are meant.
DriverValues strip_drivers(const Zone& zone, const FloorStrip& strip, const ZoneDrivers& at, double ground_degC,
                           bool door_open = false);

/// What the whole strip gives the air over it.
double up_W(const FloorStrip& strip, const StateValues& state, const DriverValues& drivers);

/// The tubes' plane in the middle of the floor.
constexpr std::size_t plane_point = 0;

}  // namespace slabwright::building
