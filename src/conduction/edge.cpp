#include <algorithm>
#include <cmath>

#include "conduction/edge_outline.hpp"
#include "conduction/grid.hpp"
#include "slabwright/conduction_edge.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace conduction;

constexpr FieldDriverId indoor{edge_row::indoor}, outdoor{edge_row::outdoor}, ground{edge_row::ground},
    tube_heat{edge_row::tube_heat}, near_air{edge_row::near_air};

Threshold threshold_of(const EdgeDetail& detail) {
  if (const auto* wall = std::get_if<WallEdge>(&detail.kind)) {
    return {detail.half_width_m - wall->width_m, detail.half_width_m + wall->covered_m};
  }
  const DoorEdge& door = std::get<DoorEdge>(detail.kind);
  const double outer_m = detail.half_width_m - door.nose_m;
  return {outer_m - door.leaf_m, outer_m};
}

double beyond_leaf_m(const EdgeDetail& detail) {
  if (const auto* wall = std::get_if<WallEdge>(&detail.kind)) return wall->covered_m;
  return std::get<DoorEdge>(detail.kind).nose_m;
}

void expect_sound(const EdgePart& part) {
  expects(part.in_from_m < part.in_to_m && part.depth_from_m < part.depth_to_m, "edge: a part needs a size");
  expects(part.depth_from_m >= 0.0, "edge: a part must not stand above the floor");
  expects(part.conductivity_W_per_mK > 0.0, "edge: conductivities must be above 0");
}

void expect_sound(const EdgeDetail& detail) {
  const Threshold threshold = threshold_of(detail);
  expects(std::min({detail.slab_thickness_m, detail.concrete_W_per_mK, detail.soil_W_per_mK}) > 0.0,
          "edge: slab thickness and conductivities must be above 0");
  expects(std::min(detail.indoor_film_m2K_per_W, detail.outdoor_film_W_per_m2K) > 0.0, "edge: films must be above 0");
  expects(threshold.face_m > 0.0 && threshold.face_m < threshold.outdoor_m, "edge: wall or leaf must fit on the slab");
  expects(beyond_leaf_m(detail) >= 0.0, "edge: nose and cover must not be negative");
  expects(detail.tube_depth_m > 0.0 && detail.tube_depth_m <= detail.slab_thickness_m, "edge: tubes lie in the slab");
  expects(detail.last_tube_in_m >= 0.0 && detail.last_tube_in_m < threshold.face_m, "edge: tubes lie in the room");
  expects(detail.near_air_m >= 0.0, "edge: near air reaches into the room");
  expects(detail.grade_depth_m >= 0.0, "edge: the ground outside must not lie above the floor");
  expects(
      std::max(detail.slab_thickness_m, detail.grade_depth_m) < detail.domain_depth_m && detail.domain_outside_m > 0,
      "edge: the domain must reach below and beyond the slab");
  for (const EdgePart& part : detail.parts) expect_sound(part);
}

/// In the order in which they cover each other.
std::vector<MaterialRectangle> materials_of(const EdgeDetail& detail) {
  const double edge_m = detail.half_width_m, far_m = edge_m + detail.domain_outside_m;
  const double bottom_m = -detail.domain_depth_m, face_m = threshold_of(detail).face_m;
  std::vector<MaterialRectangle> materials{
      {0.0, edge_m, bottom_m, 0.0, detail.soil_W_per_mK, soil_J_per_m3K},
      {edge_m, far_m, bottom_m, -detail.grade_depth_m, detail.soil_W_per_mK, soil_J_per_m3K},
      {0.0, edge_m, -detail.slab_thickness_m, 0.0, detail.concrete_W_per_mK, concrete_J_per_m3K}};
  for (const EdgePart& part : detail.parts) {
    const double x0_m = std::max(0.0, face_m - part.in_to_m), x1_m = std::min(far_m, face_m - part.in_from_m);
    const double y0_m = std::max(bottom_m, -part.depth_to_m), y1_m = -part.depth_from_m;
    if (x1_m - x0_m < same_line_m || y1_m - y0_m < same_line_m) continue;
    materials.push_back({x0_m, x1_m, y0_m, y1_m, part.conductivity_W_per_mK, part.heat_capacity_J_per_m3K});
  }
  return materials;
}

/// All but what the tubes do.
FieldSection without_tubes(const EdgeDetail& detail) {
  expect_sound(detail);
  using Kind = FieldDriver::Kind;
  const double far_m = detail.half_width_m + detail.domain_outside_m, bottom_m = -detail.domain_depth_m;
  FieldSection section;
  section.drivers = {
      {"indoor air", Kind::temperature}, {"outdoor air", Kind::temperature}, {"deep ground", Kind::temperature}};
  section.materials = materials_of(detail);
  const ExposedFaces faces = exposed_faces(section.materials, threshold_of(detail));
  for (const FieldSegment& face : faces.indoor) {
    section.boundaries.push_back({face, SurfaceFilm{1.0 / detail.indoor_film_m2K_per_W, indoor}});
  }
  for (const FieldSegment& face : faces.outdoor) {
    section.boundaries.push_back({face, SurfaceFilm{detail.outdoor_film_W_per_m2K, outdoor}});
  }
  section.boundaries.push_back({{{0.0, bottom_m}, {far_m, bottom_m}}, FixedTemperature{ground, ground}});
  return section;
}

FieldSegment tube_plane(const EdgeDetail& detail) {
  const double last_m = threshold_of(detail).face_m - detail.last_tube_in_m;
  return {{0.0, -detail.tube_depth_m}, {last_m, -detail.tube_depth_m}};
}

std::size_t driver_of(const BoundaryStretch& stretch) {
  const auto* film = std::get_if<SurfaceFilm>(&stretch.condition);
  return film ? film->driver.at : std::get<FixedTemperature>(stretch.condition).at_from.at;
}

std::size_t heat_row_of(const BoundaryStretch& stretch) {
  const std::size_t driver = driver_of(stretch);
  return driver == edge_row::near_air ? edge_row::near_air_heat : driver;
}

/// Of the faces that meet the room, those nearer to the edge than the near air reaches.
void add_near_air(FieldSection& section, const EdgeDetail& detail) {
  section.drivers.push_back({"near air", FieldDriver::Kind::temperature});
  const double from_m = threshold_of(detail).face_m - detail.near_air_m;
  std::vector<BoundaryStretch> near;
  for (BoundaryStretch& stretch : section.boundaries) {
    auto* film = std::get_if<SurfaceFilm>(&stretch.condition);
    FieldSegment& where = stretch.where;
    if (!film || film->driver != indoor || where.to.x_m - from_m < same_line_m) continue;
    if (from_m - where.from.x_m < same_line_m) {
      film->driver = near_air;
      continue;
    }
    near.push_back({{{from_m, where.from.y_m}, where.to}, SurfaceFilm{film->coefficient_W_per_m2K, near_air}});
    where.to.x_m = from_m;
  }
  section.boundaries.insert(section.boundaries.end(), near.begin(), near.end());
}

}  // namespace

std::vector<std::vector<double>> heat_by_driver(const FieldSection& section,
                                                const std::vector<std::vector<double>>& by_boundary) {
  if (by_boundary.empty()) return {};
  const bool has_near_air = section.drivers.size() > edge_row::near_air;
  const std::size_t heat_rows = has_near_air ? edge_row::near_air_heat + 1 : edge_row::ground + 1;
  std::vector<std::vector<double>> rows(heat_rows, std::vector<double>(by_boundary.front().size(), 0.0));
  for (std::size_t boundary = 0; boundary < by_boundary.size(); ++boundary) {
    std::vector<double>& row = rows[heat_row_of(section.boundaries[boundary])];
    for (std::size_t driver = 0; driver < row.size(); ++driver) row[driver] += by_boundary[boundary][driver];
  }
  return rows;
}

FieldSection edge_section(const EdgeDetail& detail) {
  FieldSection section = without_tubes(detail);
  section.drivers.push_back({"tube heat", FieldDriver::Kind::heat});
  section.planes = {{tube_plane(detail), tube_heat}};
  if (detail.near_air_m > 0.0) add_near_air(section, detail);
  return section;
}

FieldSection held_edge_section(const EdgeDetail& detail) { return held_edge_section(detail, {}); }

FieldSection held_edge_section(const EdgeDetail& detail, const std::vector<double>& cut_in_m) {
  FieldSection section = without_tubes(detail);
  const FieldSegment plane = tube_plane(detail);
  const double face_m = threshold_of(detail).face_m;
  double outer_m = plane.to.x_m;
  const auto add = [&](double inner_m) {
    expects(inner_m < outer_m, "edge: the tube plane is cut where it lies, from the edge in");
    section.boundaries.push_back(
        {{{inner_m, plane.from.y_m}, {outer_m, plane.to.y_m}}, FixedTemperature{indoor, indoor}});
    outer_m = inner_m;
  };
  for (const double in_m : cut_in_m) add(face_m - in_m);
  add(plane.from.x_m);
  return section;
}

UnitResponses by_driver(const FieldSection& section, UnitResponses responses) {
  responses.heat_in = heat_by_driver(section, responses.heat_in);
  responses.heat_in_errors = heat_by_driver(section, responses.heat_in_errors);
  return responses;
}

FewStates by_driver(const FieldSection& section, FewStates states) {
  const auto first = static_cast<std::ptrdiff_t>(states.points);
  for (auto* rows : {&states.output, &states.direct, &states.step_errors}) {
    const auto heat = heat_by_driver(section, {rows->begin() + first, rows->end()});
    rows->resize(states.points);
    rows->insert(rows->end(), heat.begin(), heat.end());
  }
  return states;
}

FieldPoint point_of(const EdgeDetail& detail, EdgePoint point) {
  return {threshold_of(detail).face_m - point.in_m, -point.depth_m};
}

UnitResponses edge_responses(const EdgeDetail& detail, const std::vector<EdgePoint>& points,
                             const FieldOptions& options) {
  std::vector<FieldPoint> watched;
  for (const EdgePoint& point : points) watched.push_back(point_of(detail, point));
  const FieldSection section = edge_section(detail);
  return by_driver(section, unit_responses(section, watched, options));
}

}  // namespace slabwright
