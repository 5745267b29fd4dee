// Outlines of the design as polygons.
#pragma once
#include <vector>

#include "slabwright/design_words.hpp"
#include "slabwright/geometry.hpp"

namespace slabwright {

/// Counter-clockwise, open, without repeated corners.
inline Polygon polygon_of(const std::vector<Place>& outline) {
  Polygon polygon;
  for (const Place& place : outline) polygon.push_back({place.x_m, place.y_m});
  return normalized(polygon);
}

}  // namespace slabwright
