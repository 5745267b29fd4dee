// A drawing for programs that draw: DXF, in the floor's own measures.
#pragma once
#include <string>

#include "slabwright/drawing.hpp"
#include "slabwright/units.hpp"

namespace slabwright {

/// How a floor lies on paper, so that its lengths come out true again.
struct DxfFloor {
  Point zero;                 ///< of the floor, on paper
  double scale_ratio = 1.0;   ///< paper over floor, > 0
  System units = System::us;  ///< inches, or millimetres
};

/// The drawing as DXF of release 12, plain ASCII: the floor's zero at zero, lengths in inches or millimetres of the
/// floor. A layer for each of the drawing's by the same name; straight lines as LINE, paths as POLYLINE with arcs as
/// bulges, closed ones closed, rings as closed POLYLINE, discs as CIRCLE, text as TEXT about its box with the height of
/// a capital. Only lines: tints and patterns are left out, and so is all that only covers because it has the paper's
/// own colour. A ring is cut where its layer's clip cuts it. The same drawing gives the same bytes.
std::string dxf_of(const Picture& drawing, const DxfFloor& floor);

}  // namespace slabwright
