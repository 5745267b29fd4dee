#include <algorithm>
#include <optional>

#include "envelope/field_key.hpp"
#include "envelope/floors.hpp"
#include "slabwright/envelope.hpp"
#include "slabwright/handbook_materials.hpp"

namespace slabwright {
namespace {

using namespace envelope;

/// A cold floor under warm air, heat going down: total coefficient of EN 1264-5.
constexpr double film_down_W_per_m2K = 6.5;
/// Less resistance than this is no board: it would be thinner than a sheet of paper.
constexpr double least_board_m2K_per_W = 0.01;
/// The middle of a floor that is wider still has no part in its edge.
constexpr double most_half_width_m = 15.0;
/// Keeps a strip from standing out of the slab by a last digit; to a field the two lines are one.
constexpr double rounding_m = 1e-9;
/// Floor that is left beyond the nearest tube, so that there is a middle at all.
constexpr double least_floor_beyond_tube_m = 1.0;

std::optional<InsulatingBoard> board_of(const Insulation& insulation) {
  const double resistance = insulation.resistance_m2K_per_W;
  if (resistance < least_board_m2K_per_W) return std::nullopt;
  return InsulatingBoard{resistance, resistance * find_insulation("XPS")->conductivity_W_per_mK};
}

/// What walls and doors of one slab are built of alike.
EdgeBuild build_of(const Design& design) {
  EdgeBuild build;
  if (const auto board = board_of(design.insulation.under)) build.under.push_back({*board, {}});
  return build;
}

/// What walls and doors of one slab have in common.
EdgeDetail detail_of(const Design& design, double tube_in_m) {
  const WholeFloor floor = whole_floor(design);
  EdgeDetail detail;
  const double half_width_m = floor.exposed_m > 0.0 ? floor.area_m2 / floor.exposed_m : most_half_width_m;
  detail.half_width_m = std::clamp(half_width_m, tube_in_m + least_floor_beyond_tube_m,
                                   std::max(most_half_width_m, tube_in_m + least_floor_beyond_tube_m));
  detail.slab_thickness_m = design.slab.thickness_m;
  detail.concrete_W_per_mK = design.slab.conductivity_W_per_mK;
  detail.soil_W_per_mK = design.ground.conductivity_W_per_mK;
  detail.indoor_film_m2K_per_W = 1.0 / film_down_W_per_m2K + design.slab.covering.resistance_m2K_per_W;
  detail.tube_depth_m = tube_axis_depth_m(design);
  // A tube warms the floor half a spacing to either side.
  detail.last_tube_in_m = std::max(0.0, tube_in_m - design.tube.spacing_m / 2.0);
  return detail;
}

EdgeStretch wall_stretch(const Design& design, std::size_t room, double length_m) {
  EdgeStretch stretch;
  stretch.name = design.room.size() > 1 ? "outer wall of the " + design.room[room].name : "outer wall";
  stretch.room = room;
  stretch.length_m = length_m;
  stretch.tube_in_m = design.tube.from_walls_m;
  EdgeDetail bare = detail_of(design, stretch.tube_in_m);
  bare.kind = WallEdge{};
  EdgeBuild build = build_of(design);
  if (const auto board = board_of(design.edge.insulation)) build.outside = EdgeBoard{*board, design.edge.depth_m};
  stretch.detail = with_build(std::move(bare), build);
  return stretch;
}

EdgeStretch door_stretch(const Design& design, const Opening& opening) {
  EdgeStretch stretch;
  stretch.name = opening.name.empty() ? "big door" : opening.name;
  stretch.kind = EdgeKind::big_door;
  stretch.room = room_row(design, opening.room);
  stretch.length_m = opening.size.width_m;
  stretch.tube_in_m = opening.tube_distance_m.value_or(design.tube.from_doors_m);
  EdgeDetail bare = detail_of(design, stretch.tube_in_m);
  EdgeBuild build = build_of(design);
  const DoorEdge door;
  if (const auto strip = board_of(opening.strip.value_or(design.edge.door_strip))) {
    const double under_leaf_m = door.leaf_m + door.nose_m - rounding_m;
    build.thermal_break = ThermalBreak{*strip, std::max(0.0, strip->thickness_m - under_leaf_m)};
  }
  bare.kind = door;
  stretch.detail = with_build(std::move(bare), build);
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

const UnitResponses& EdgeFields::solve(const FieldSection& section, const std::vector<FieldPoint>& watched,
                                       const FieldOptions& options) {
  std::vector<double> key = key_of(section, watched, options);
  const auto found = solved_.find(key);
  if (found != solved_.end()) return found->second;
  UnitResponses responses = by_driver(section, unit_responses(section, watched, options));
  return solved_.emplace(std::move(key), std::move(responses)).first->second;
}

UnitResponses EdgeFields::responses(const EdgeDetail& detail, const std::vector<EdgePoint>& points) {
  std::vector<FieldPoint> watched;
  for (const EdgePoint& point : points) watched.push_back(point_of(detail, point));
  return solve(edge_section(detail), watched, options_);
}

}  // namespace slabwright
