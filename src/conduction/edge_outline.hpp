// Which faces of an edge's material meet the air.
#pragma once
#include <vector>

#include "slabwright/conduction.hpp"

namespace slabwright::conduction {

/// Where along x the room ends and the outdoor air begins; what lies between is under wall or leaf.
struct Threshold {
  double face_m, outdoor_m;
};

struct ExposedFaces {
  std::vector<FieldSegment> indoor, outdoor;
};

/// The outline of the rectangles together, but for its outermost lines left, right and below, where the domain is cut,
/// and for faces under wall or leaf, which stand at the uppermost line. Faces in one line that touch are one.
ExposedFaces exposed_faces(const std::vector<MaterialRectangle>& materials, const Threshold& threshold);

}  // namespace slabwright::conduction
