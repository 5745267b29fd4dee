// Mirror images, and floors that are their own: left is right.
#pragma once
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

inline Point mirrored(Point p) { return {-p.x_m, p.y_m}; }
Polygon mirrored(const Polygon& polygon);
Path mirrored(Path path);

/// Whether what is seen from the manifold is its own mirror image, to a tenth of a millimetre.
bool is_symmetric(const LayoutTask& seen);

/// The left half of a symmetric task, tube to keep this far off the axis.
LayoutTask left_half(const LayoutTask& seen, double axis_clearance_m);

}  // namespace slabwright::routing
