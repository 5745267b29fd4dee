// What stages ask of a design.
#include <cmath>

#include "design/polygons.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/design.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

FloorShape shape_of(const std::optional<Size>& size, const std::optional<double>& area_m2,
                    const std::vector<Place>& outline) {
  FloorShape shape;
  Polygon polygon;
  if (!outline.empty())
    polygon = polygon_of(outline);
  else if (size)
    polygon = rectangle(size->width_m, size->depth_m);
  if (!polygon.empty()) {
    shape.area_m2 = signed_area_m2(polygon);
    shape.perimeter_m = perimeter_m(polygon);
    shape.shape_known = true;
    for (const Point& corner : polygon) shape.outline.push_back({corner.x_m, corner.y_m});
  } else if (area_m2) {
    shape.area_m2 = *area_m2;
    shape.perimeter_m = 4.0 * std::sqrt(*area_m2);
  }
  return shape;
}

}  // namespace

FloorShape floor_shape(const Slab& slab) { return shape_of(slab.size, slab.area_m2, slab.outline); }

FloorShape floor_shape(const Room& room) { return shape_of(room.size, room.area_m2, room.outline); }

Mixture mixture_of(const FluidEntry& fluid) {
  if (fluid.kind == FluidKind::water) return {};
  if (fluid.glycol.by_mass) return mixture_by_mass(fluid.kind, fluid.glycol.share);
  return {fluid.kind, fluid.glycol.share};
}

double tube_axis_depth_m(const Design& design) {
  const TubeSize* size = find_tube(design.tube.size.name);
  expects(size, "a settled design names a tube of the table");
  const double above_m =
      design.slab.concrete_above_tube_m.value_or(0.5 * (design.slab.thickness_m - size->outside_diameter_m));
  return above_m + 0.5 * size->outside_diameter_m;
}

double indoor_of(const Design& design, const Room& room) {
  return room.indoor_degC.value_or(design.climate.indoor_degC);
}

}  // namespace slabwright
