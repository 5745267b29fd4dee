#include <algorithm>

#include "slabwright/conduction_edge.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

constexpr FieldDriverId indoor{edge_row::indoor}, outdoor{edge_row::outdoor}, ground{edge_row::ground},
    tube_heat{edge_row::tube_heat};

/// Where along x the room ends and the outdoor air begins; no heat passes between.
struct Threshold {
  double face_m, outdoor_m;
};

double board_thickness_m(const EdgeDetail& detail) {
  return detail.edge_board ? detail.edge_board->board.thickness_m : 0.0;
}

Threshold threshold_of(const EdgeDetail& detail) {
  if (const auto* wall = std::get_if<WallEdge>(&detail.kind)) {
    return {detail.half_width_m - wall->width_m, detail.half_width_m + board_thickness_m(detail)};
  }
  const DoorEdge& door = std::get<DoorEdge>(detail.kind);
  const double outer_m = detail.half_width_m - door.nose_m;
  return {outer_m - door.leaf_m, outer_m};
}

double conductivity_W_per_mK(const InsulatingBoard& board) { return board.thickness_m / board.resistance_m2K_per_W; }

void expect_sound(const InsulatingBoard& board) {
  expects(std::min(board.resistance_m2K_per_W, board.thickness_m) > 0.0,
          "edge: a board needs resistance and thickness");
}

void expect_sound(const EdgeDetail& detail) {
  const Threshold threshold = threshold_of(detail);
  expects(std::min({detail.slab_thickness_m, detail.concrete_W_per_mK, detail.soil_W_per_mK}) > 0.0,
          "edge: slab thickness and conductivities must be above 0");
  expects(std::min(detail.indoor_film_m2K_per_W, detail.outdoor_film_W_per_m2K) > 0.0, "edge: films must be above 0");
  expects(threshold.face_m > 0.0 && threshold.face_m < threshold.outdoor_m, "edge: wall or leaf must fit on the slab");
  expects(threshold.outdoor_m <= detail.half_width_m + board_thickness_m(detail),
          "edge: the nose must not be negative");
  expects(detail.tube_depth_m > 0.0 && detail.tube_depth_m <= detail.slab_thickness_m, "edge: tubes lie in the slab");
  expects(detail.last_tube_in_m >= 0.0 && detail.last_tube_in_m < threshold.face_m, "edge: tubes lie in the room");
}

/// Soil must be left below and beyond everything.
void expect_room_in_domain(const EdgeDetail& detail) {
  double deepest_m = detail.slab_thickness_m;
  if (detail.under_slab) deepest_m += detail.under_slab->thickness_m;
  if (detail.edge_board) deepest_m = std::max(deepest_m, detail.edge_board->depth_m);
  expects(deepest_m < detail.domain_depth_m, "edge: the domain must reach below the slab and its boards");
  expects(board_thickness_m(detail) < detail.domain_outside_m, "edge: the domain must reach outside");
}

/// In the order in which they cover each other.
std::vector<MaterialRectangle> materials_of(const EdgeDetail& detail) {
  const double edge_m = detail.half_width_m, under_m = -detail.slab_thickness_m, bottom_m = -detail.domain_depth_m;
  std::vector<MaterialRectangle> materials{{0.0, edge_m + detail.domain_outside_m, bottom_m, 0.0, detail.soil_W_per_mK},
                                           {0.0, edge_m, under_m, 0.0, detail.concrete_W_per_mK}};
  if (detail.under_slab) {
    expect_sound(*detail.under_slab);
    materials.push_back(
        {0.0, edge_m, under_m - detail.under_slab->thickness_m, under_m, conductivity_W_per_mK(*detail.under_slab)});
  }
  if (detail.edge_board) {
    const InsulatingBoard& board = detail.edge_board->board;
    expect_sound(board);
    expects(detail.edge_board->depth_m > 0.0, "edge: an edge board needs a depth");
    materials.push_back(
        {edge_m, edge_m + board.thickness_m, -detail.edge_board->depth_m, 0.0, conductivity_W_per_mK(board)});
  }
  return materials;
}

std::optional<MaterialRectangle> thermal_break_of(const EdgeDetail& detail) {
  const auto* door = std::get_if<DoorEdge>(&detail.kind);
  if (!door || !door->thermal_break) return std::nullopt;
  const ThermalBreak& part = *door->thermal_break;
  expect_sound(part.strip);
  const double inner_m = threshold_of(detail).face_m - part.in_m, outer_m = inner_m + part.strip.thickness_m;
  expects(inner_m > 0.0 && outer_m <= detail.half_width_m, "edge: the thermal break must lie in the slab");
  return MaterialRectangle{inner_m, outer_m, -detail.slab_thickness_m, 0.0, conductivity_W_per_mK(part.strip)};
}

}  // namespace

FieldSection edge_section(const EdgeDetail& detail) {
  expect_sound(detail);
  expect_room_in_domain(detail);
  using Kind = FieldDriver::Kind;
  const Threshold threshold = threshold_of(detail);
  const double far_m = detail.half_width_m + detail.domain_outside_m, bottom_m = -detail.domain_depth_m;
  FieldSection section;
  section.drivers = {{"indoor air", Kind::temperature},
                     {"outdoor air", Kind::temperature},
                     {"deep ground", Kind::temperature},
                     {"tube heat", Kind::heat}};
  section.materials = materials_of(detail);
  if (const auto strip = thermal_break_of(detail)) section.materials.push_back(*strip);
  section.boundaries = {
      {{{0.0, 0.0}, {threshold.face_m, 0.0}}, SurfaceFilm{1.0 / detail.indoor_film_m2K_per_W, indoor}},
      {{{threshold.outdoor_m, 0.0}, {far_m, 0.0}}, SurfaceFilm{detail.outdoor_film_W_per_m2K, outdoor}},
      {{{0.0, bottom_m}, {far_m, bottom_m}}, FixedTemperature{ground, ground}}};
  section.planes = {
      {{{0.0, -detail.tube_depth_m}, {threshold.face_m - detail.last_tube_in_m, -detail.tube_depth_m}}, tube_heat}};
  return section;
}

UnitResponses edge_responses(const EdgeDetail& detail, const std::vector<EdgePoint>& points,
                             const FieldOptions& options) {
  const double face_m = threshold_of(detail).face_m;
  std::vector<FieldPoint> watched;
  for (const EdgePoint& point : points) watched.push_back({face_m - point.in_m, -point.depth_m});
  return unit_responses(edge_section(detail), watched, options);
}

}  // namespace slabwright
