// The floor of one manifold laid.
#pragma once
#include <string>

#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// A task with one manifold.
struct ZoneTask {
  LayoutTask task;
  std::vector<char> is_border;  ///< of the outline's edges: no wall stands there; empty where all are walls
  std::string name;             ///< of the manifold: what is said about it
  bool mirrored = false;        ///< x is -x of what was given: of places that are said
};

struct LoopsWish {
  int loops = 0;         ///< at least so many; 0: the least that the limit allows
  bool exactly = false;  ///< and no more
};

/// Laid as well as several ways of doing it allow. Beside it only what no check of the layout tells.
Checked<TubeLayout> lay_zone(const ZoneTask& zone, const LoopsWish& wish, const Progress& progress = {});

/// The clearance that cells must keep so that bends, and bulbs too, keep the one asked for.
double clearance_with_bends_m(const LayoutTask& task, double clearance_m, bool bulbs);

/// In bends: what must not be is dear, what is only worse than it might be is weighed.
double layout_price(const LayoutCheck& check);

}  // namespace slabwright::routing
