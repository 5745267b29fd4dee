#include "building/corners.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/geometry.hpp"
#include "slabwright/tube.hpp"

namespace slabwright::building {
namespace {

/// A tape's reading, as rooms are judged.
constexpr double slack_m = 0.010;

Polygon polygon_of(const std::vector<Place>& outline) {
  Polygon polygon;
  for (const Place& place : outline) polygon.push_back({place.x_m, place.y_m});
  return normalized(polygon);
}

/// Those of a counter-clockwise outline that stand out.
std::vector<Point> outer_corners(const Polygon& outline) {
  std::vector<Point> corners;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point before = outline[(i + outline.size() - 1) % outline.size()], after = outline[(i + 1) % outline.size()];
    if (side_of(before, outline[i], after) == Side::left) corners.push_back(outline[i]);
  }
  return corners;
}

}  // namespace

bool has_outer_corner(const Design& design, std::size_t room) {
  const FloorShape slab = floor_shape(design.slab);
  const Polygon own = polygon_of(design.room[room].outline);
  if (!slab.shape_known || own.size() < 3 || design.room.size() == 1) return true;
  const std::vector<Point> corners = outer_corners(polygon_of(slab.outline));
  return std::any_of(corners.begin(), corners.end(), [&](Point corner) {
    return where_is(corner, own) != Where::outside || distance_to_boundary_m(corner, own) <= slack_m;
  });
}

double corner_tube_in_m(const Design& design) {
  const TubeSize* size = find_tube(design.tube.size.name);
  const double radius_m = size ? size->least_bend_radius_m : 0.0;
  return design.tube.from_walls_m + radius_m * (1.0 - std::sqrt(0.5));
}

DriverWeights corner_weights(const DriverWeights& a, const DriverWeights& b, double middle_tube_m2K_per_W) {
  DriverWeights corner;
  corner.outdoor_share = 1.0 - (1.0 - a.outdoor_share) * (1.0 - b.outdoor_share);
  corner.indoor_share = std::min(a.indoor_share * b.indoor_share, 1.0 - corner.outdoor_share);
  corner.ground_share = std::max(0.0, 1.0 - corner.indoor_share - corner.outdoor_share);
  if (middle_tube_m2K_per_W > 0.0) corner.tube_m2K_per_W = a.tube_m2K_per_W * b.tube_m2K_per_W / middle_tube_m2K_per_W;
  return corner;
}

}  // namespace slabwright::building
