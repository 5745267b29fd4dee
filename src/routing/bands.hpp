// Where tube lies closer along walls.
#pragma once
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// A band along a wall. Rows of cells run on beyond its ends, so tube is as close there as in it.
struct BandStrip {
  Point at;      ///< on the wall
  Point inward;  ///< into the floor, at right angles to the wall; of length 1
  double depth_m = 0.0;
  double spacing_m = 0.0;
};

/// A strip for each side of a band that lies on a wall; for a band on none, one for each direction it is thin in.
std::vector<BandStrip> strips_of(const LayoutTask& task);

/// How near tube lines may lie to each other here: the spacing of the closest strip.
double spacing_here_m(const LayoutTask& task, const std::vector<BandStrip>& strips, Point place);

/// The closest spacing of the floor.
double least_spacing_m(const LayoutTask& task);

/// How near tube is asked to lie here: the spacing of the closest band.
double spacing_asked_m(const LayoutTask& task, Point place);

}  // namespace slabwright::routing
