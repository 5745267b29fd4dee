// What stages ask of a design.
#include <algorithm>
#include <cmath>

#include "design/polygons.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/design.hpp"
#include "slabwright/handbook_materials.hpp"
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

std::vector<double> room_floors_m2(const Design& design) {
  std::vector<double> floor_m2;
  double left_m2 = floor_shape(design.slab).area_m2;
  std::size_t unknown = 0;
  for (const Room& room : design.room) {
    floor_m2.push_back(floor_shape(room).area_m2);
    left_m2 -= floor_m2.back();
    if (floor_m2.back() <= 0.0) ++unknown;
  }
  for (double& area_m2 : floor_m2) {
    if (area_m2 <= 0.0) area_m2 = std::max(0.0, left_m2) / static_cast<double>(unknown);
  }
  return floor_m2;
}

Mixture mixture_of(const FluidEntry& fluid) {
  if (fluid.kind == FluidKind::water) return {};
  if (fluid.glycol.by_mass) return mixture_by_mass(fluid.kind, fluid.glycol.share);
  return {fluid.kind, fluid.glycol.share};
}

double floor_thickness_m(const Slab& slab) { return slab.thickness_m + slab.topping_m.value_or(0.0); }

double tube_axis_depth_m(const Design& design) {
  const TubeSize* size = find_tube(design.tube.size.name);
  expects(size, "a settled design names a tube of the table");
  const Slab& slab = design.slab;
  const double radius_m = 0.5 * size->outside_diameter_m;
  if (slab.topping_above_tube_m) return *slab.topping_above_tube_m + radius_m;
  const double above_m = slab.concrete_above_tube_m.value_or(0.5 * slab.thickness_m - radius_m);
  return slab.topping_m.value_or(0.0) + above_m + radius_m;
}

std::optional<EdgeMaterial> edge_material(const EdgePartEntry& part) {
  constexpr double foam_W_per_mK = 0.1, foam_J_per_m3K = 30.0 * 1450.0, soil_J_per_m3K = 2.0e6;
  if (part.conductivity_W_per_mK) {
    const double conductivity = *part.conductivity_W_per_mK;
    return EdgeMaterial{conductivity, conductivity < foam_W_per_mK ? foam_J_per_m3K : soil_J_per_m3K};
  }
  for (const Material& concrete : concretes()) {
    if (concrete.name == part.material)
      return EdgeMaterial{concrete.conductivity_W_per_mK, concrete.density_kg_per_m3 * concrete.heat_J_per_kgK};
  }
  if (const Soil* soil = find_soil(part.material)) {
    return EdgeMaterial{soil->conductivity_W_per_mK, soil->volumetric_J_per_m3K};
  }
  if (const Material* foam = find_insulation(part.material)) {
    return EdgeMaterial{foam->conductivity_W_per_mK, foam->density_kg_per_m3 * foam->heat_J_per_kgK};
  }
  return std::nullopt;
}

double indoor_of(const Design& design, const Room& room) {
  return room.indoor_degC.value_or(design.climate.indoor_degC);
}

}  // namespace slabwright
