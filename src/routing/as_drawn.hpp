// Loops as somebody drew them: their tube, their apron, and the floor they leave to others.
#pragma once
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

/// Corners rounded as elsewhere.
Path path_of(const LayoutTask& task, const GivenLoop& drawn);

/// The drawn loops and nothing else, by manifold and from left to right.
TubeLayout as_drawn(const LayoutTask& task);

/// As lay_tube(), of a task with drawn loops.
Checked<TubeLayout> lay_with_drawn(const LayoutTask& task, const Progress& progress);

/// What of a loop leads from its supply port to the apron's limit and back from there: of tube that comes into the
/// apron on its way nothing counts.
struct LeaderParts {
  double out_m = 0.0, back_m = 0.0;
};
LeaderParts leader_parts(const Path& path, const Polygon& apron);

}  // namespace slabwright::routing
