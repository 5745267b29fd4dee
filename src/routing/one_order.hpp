// One floor can be written in many ways: from another corner on, its no-tube areas in another order, in a mirror. All
// are laid as one of them, so that all get the same lengths.
#pragma once
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

struct InOrder {
  LayoutTask task;
  bool mirrored = false;  ///< x of the task is -x of what was given
};

/// Asks for a floor, and a first manifold that faces somewhere.
InOrder in_one_order(const LayoutTask& task);

/// A layout of the mirrored task as one of the task.
TubeLayout mirrored(TubeLayout layout);

}  // namespace slabwright::routing
