// A manifold that stands away from walls: a slit joins it to one, so that its floor has no hole.
#pragma once
#include "zone_cut.hpp"

namespace slabwright::routing {

/// Whether it stands farther from every wall than tube is laid from.
bool stands_free(const LayoutTask& task, const PortRow& manifold);

/// The zone with a slit a hair wide from a bar behind the ports of so many loops to the nearest wall, behind rather
/// than beside the manifold. No tube crosses it; tube on either side keeps about half a spacing.
Zone with_slit(const Zone& zone, const LayoutTask& task, const PortRow& manifold, int loops);

}  // namespace slabwright::routing
