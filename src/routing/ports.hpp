// Where the ports of a manifold are.
#pragma once
#include <cstddef>
#include <vector>

#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// Middles of the pairs of ports that so many loops take beside those that are taken, from left to right, in pitches
/// from the middle of the row. Pairs stand side by side, as many as there are loops and the row centred on its place;
/// where the pairs that are taken say so, up to four more, which stay free.
std::vector<double> free_pairs(const PortRow& row, int loops);

/// A place of the row this many metres to the right of its middle.
Point on_row(const PortRow& row, double right_m);
/// How far to the right of the row's middle the ends of a loop lie, half of either.
double pair_of_m(const PortRow& row, Point supply, Point back);

/// Where the ends of a loop ought to be. Loops whose ends are not drawn are left out.
struct WantedEnds {
  std::size_t loop = 0;
  Point supply, back;
  double slack_m = 0.0;  ///< of what is drawn by hand
};
std::vector<WantedEnds> wanted_ends(const LayoutTask& task, const TubeLayout& layout);

}  // namespace slabwright::routing
