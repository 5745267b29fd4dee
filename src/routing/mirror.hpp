// A task and its mirror image are laid alike: one of the two is chosen to be laid, whichever was given.
#pragma once
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// The mirror image of what is seen from the manifold: left is right.
LayoutTask image_of(const LayoutTask& seen);
TubeLayout image_of(TubeLayout layout);
inline Point image_of(Point p) { return {-p.x_m, p.y_m}; }
Path image_of(Path path);

/// Whether the mirror image is the one to lay: a choice that does not depend on which of the two is given, nor on the
/// order of anything in it.
bool better_mirrored(const LayoutTask& seen);

/// Whether it is its own mirror image, to a tenth of a millimetre.
bool is_symmetric(const LayoutTask& seen);

/// The same task, its outline and areas from their first corners on: first from the left, then from below.
LayoutTask in_order(LayoutTask seen);

/// The left half of a symmetric task, tube to keep this far off the axis.
LayoutTask left_half(const LayoutTask& seen, double axis_clearance_m);

}  // namespace slabwright::routing
