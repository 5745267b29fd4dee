// The edges of a slab as the file describes them.
#include <algorithm>
#include <optional>

#include "envelope/floors.hpp"
#include "envelope/foam.hpp"
#include "envelope/ground.hpp"
#include "slabwright/envelope.hpp"
#include "slabwright/handbook_floor_film.hpp"

namespace slabwright {
namespace {

using namespace envelope;

/// The middle of a floor that is wider still has no part in its edge.
constexpr double most_half_width_m = 15.0;
/// Keeps a strip under the leaf from reaching into the room by a last digit.
constexpr double rounding_m = 1e-9;
/// Floor that is left beyond the nearest tube, so that there is a middle at all.
constexpr double least_floor_beyond_tube_m = 1.0;
/// Air that leaks in under a door or falls off its cold leaf lies on the first metre of floor before it has mixed with
/// the room's: practice.
constexpr double air_near_door_m = 1.0;

/// ISO 6946 Annex A: convection 4 + 4 v outdoors and radiation beside it, taken as 5 so that the wind of 4 m/s gives
/// the standard's own 1 / 0.04; its black body at 0 to 10 degC has 4.6 to 5.1.
double outdoor_film_W_per_m2K(double wind_m_per_s) {
  constexpr double radiation_W_per_m2K = 5.0;
  return 4.0 + 4.0 * wind_m_per_s + radiation_W_per_m2K;
}

/// What walls and doors of one slab have in common.
EdgeDetail detail_of(const Design& design, double tube_in_m) {
  const WholeFloor floor = whole_floor(design);
  EdgeDetail detail;
  const double half_width_m = floor.exposed_m > 0.0 ? floor.area_m2 / floor.exposed_m : most_half_width_m;
  detail.half_width_m = std::clamp(half_width_m, tube_in_m + least_floor_beyond_tube_m,
                                   std::max(most_half_width_m, tube_in_m + least_floor_beyond_tube_m));
  detail.slab_thickness_m = floor_thickness_m(design.slab);
  detail.concrete_W_per_mK = design.slab.conductivity_W_per_mK;
  detail.soil_W_per_mK = design.ground.conductivity_W_per_mK;
  detail.indoor_film_m2K_per_W = 1.0 / floor_film_down_W_per_m2K + design.slab.covering.resistance_m2K_per_W;
  detail.outdoor_film_W_per_m2K = outdoor_film_W_per_m2K(design.climate.wind_m_per_s);
  detail.tube_depth_m = tube_axis_depth_m(design);
  // A tube warms the floor half a spacing to either side.
  detail.last_tube_in_m = std::max(0.0, tube_in_m - design.tube.spacing_m / 2.0);
  return detail;
}

/// Under, and what carries the edge: alike at walls and doors.
EdgeBuild build_of(const Design& design) {
  const Edge& edge = design.edge;
  EdgeBuild build;
  for (const InsulatingBoard& board : boards_under(design)) build.under.push_back({board, {}});
  if (const auto rim = board_of(edge.flat_insulation, spoiled(edge)); rim && edge.flat_width_m) {
    build.under.push_back({*rim, *edge.flat_width_m});
  }
  if (edge.thickened_depth_m && edge.thickened_width_m && *edge.thickened_depth_m > design.slab.thickness_m) {
    build.thickened = ThickenedEdge{*edge.thickened_width_m, *edge.thickened_depth_m};
  }
  if (edge.stem_wall_m && edge.footing_depth_m) {
    build.stem_wall = StemWall{*edge.stem_wall_m, *edge.footing_depth_m, {}};
    if (edge.footing_width_m && edge.footing_thickness_m) {
      build.stem_wall->footing =
          Footing{*edge.footing_width_m, std::min(*edge.footing_thickness_m, *edge.footing_depth_m)};
    }
  }
  if (const auto inside = board_of(edge.inside_insulation, spoiled(edge)); inside && edge.inside_depth_m) {
    build.inside = EdgeBoard{*inside, *edge.inside_depth_m};
  }
  return build;
}

/// The user's own rectangles cover all else.
void add_parts(EdgeDetail& detail, const Design& design, std::string_view where) {
  for (const EdgePartEntry& part : design.edge_part) {
    if ((part.where.empty() ? std::string_view("walls") : part.where) != where) continue;
    const auto material = edge_material(part);
    if (!material || part.in_from_m >= part.in_to_m || part.depth_from_m >= part.depth_to_m) continue;
    detail.parts.push_back({part.in_from_m, part.in_to_m, part.depth_from_m, part.depth_to_m,
                            material->conductivity_W_per_mK, material->heat_capacity_J_per_m3K});
  }
}

EdgeStretch wall_stretch(const Design& design, std::size_t room, double length_m) {
  const Edge& edge = design.edge;
  EdgeStretch stretch;
  stretch.name = design.room.size() > 1 ? "outer wall of the " + design.room[room].name : "outer wall";
  stretch.room = room;
  stretch.length_m = length_m;
  stretch.tube_in_m = design.tube.from_walls_m;
  EdgeDetail bare = detail_of(design, stretch.tube_in_m);
  bare.kind = WallEdge{edge.stem_wall_m.value_or(WallEdge{}.width_m), 0.0};
  bare.grade_depth_m = edge.floor_above_grade_m.value_or(0.0);
  EdgeBuild build = build_of(design);
  // Tubes begin where the board beside the stem wall ends.
  if (build.inside) bare.last_tube_in_m = std::max(bare.last_tube_in_m, build.inside->board.thickness_m);
  if (const auto board = board_of(edge.insulation, spoiled(edge))) build.outside = EdgeBoard{*board, edge.depth_m};
  if (const auto wing = board_of(edge.wing_insulation, spoiled(edge)); wing && edge.wing_width_m && edge.wing_depth_m) {
    build.wing = WingBoard{*wing, *edge.wing_width_m, *edge.wing_depth_m};
  }
  stretch.detail = with_build(std::move(bare), build);
  add_parts(stretch.detail, design, "walls");
  return stretch;
}

EdgeStretch door_stretch(const Design& design, const Opening& opening) {
  const Edge& edge = design.edge;
  EdgeStretch stretch;
  stretch.name = opening.name.empty() ? "big door" : opening.name;
  stretch.kind = EdgeKind::big_door;
  stretch.room = room_row(design, opening.room);
  stretch.length_m = opening.size.width_m;
  stretch.tube_in_m = opening.tube_distance_m.value_or(design.tube.from_doors_m);
  EdgeDetail bare = detail_of(design, stretch.tube_in_m);
  EdgeBuild build = build_of(design);
  const DoorEdge door;
  if (const auto strip = board_of(opening.strip.value_or(edge.door_strip), spoiled(edge))) {
    const double under_leaf_m = door.leaf_m + door.nose_m - rounding_m;
    build.thermal_break = ThermalBreak{*strip, std::max(0.0, strip->thickness_m - under_leaf_m)};
  }
  if (build.inside && build.inside->depth_m <= bare.slab_thickness_m) build.inside.reset();
  if (edge.apron_thickness_m && edge.apron_length_m) {
    build.apron = Apron{*edge.apron_thickness_m, *edge.apron_length_m, board_of(edge.apron_gap, spoiled(edge))};
  }
  bare.kind = door;
  bare.near_air_m = air_near_door_m;
  stretch.detail = with_build(std::move(bare), build);
  add_parts(stretch.detail, design, stretch.name);
  return stretch;
}

}  // namespace

std::vector<EdgeStretch> edges_of(const Design& design) {
  std::vector<EdgeStretch> edges;
  const std::vector<double> walls_m = outer_walls_m(design);
  for (std::size_t room = 0; room < design.room.size(); ++room) {
    const double length_m = walls_m[room] - door_widths_m(design, room);
    if (length_m > 0.0) edges.push_back(wall_stretch(design, room, length_m));
  }
  for (const Opening& opening : design.opening) {
    if (opening.kind == OpeningKind::big_door) edges.push_back(door_stretch(design, opening));
  }
  return edges;
}

}  // namespace slabwright
