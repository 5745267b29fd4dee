// The shop as it cools: its edges, its air and what stands in it.
#include <algorithm>

#include "building/edge_heat.hpp"
#include "slabwright/building_time.hpp"
#include "slabwright/handbook_air.hpp"

namespace slabwright {
namespace {

/// Air is densest when it is cold; 5 per cent of it is nothing here.
constexpr double typical_air_degC = 5.0;

FloorStrip strip_of(const EdgeStretch& edge, std::size_t row, const Design& design, EdgeFields& fields,
                    FloorHeat heat) {
  const EdgeDetail detail = heat == FloorHeat::down ? edge.detail : building::with_heat_going_up(edge.detail, design);
  FloorStrip strip;
  strip.edge = row;
  strip.room = edge.room;
  strip.states = fields.states(detail, {{edge.tube_in_m, detail.tube_depth_m}});
  strip.length_m = edge.length_m;
  strip.width_m = detail.half_width_m;
  strip.above_tube_m2K_per_W = detail.indoor_film_m2K_per_W + detail.tube_depth_m / detail.concrete_W_per_mK;
  strip.near_air_share = edge.kind == EdgeKind::big_door ? design.frost_hold.door_air_share : 0.0;
  return strip;
}

double air_J_per_K(const Design& design, std::size_t room, double floor_m2) {
  const double height_m = design.room[room].height_m.value_or(design.building.height_m);
  const double density = air_density_kg_per_m3(typical_air_degC, design.climate.altitude_m);
  return floor_m2 * height_m * density * air_J_per_kgK;
}

}  // namespace

std::optional<CoolingBuilding> cooling_building(const Design& design, const Envelope& envelope, EdgeFields& fields,
                                                FloorHeat heat) {
  CoolingBuilding building;
  double floor_m2 = 0.0, covered_m2 = 0.0;
  for (std::size_t row = 0; row < envelope.room.size(); ++row) {
    const RoomLoss& room = envelope.room[row];
    if (!room.heated_floor) continue;
    floor_m2 += room.floor_m2;
    building.loss_W_per_K += room.total_W_per_K - room.exhaust_counted_W_per_K;
    building.capacity_J_per_K += room.floor_m2 * contents_J_per_m2K + air_J_per_K(design, row, room.floor_m2);
  }
  for (std::size_t row = 0; row < envelope.edge.size(); ++row) {
    const EdgeStretch& edge = envelope.edge[row];
    if (!envelope.room[edge.room].heated_floor) continue;
    building.floor.push_back(strip_of(edge, row, design, fields, heat));
    covered_m2 += edge.length_m * edge.detail.half_width_m;
  }
  if (covered_m2 <= 0.0) return std::nullopt;
  for (FloorStrip& strip : building.floor) strip.length_m *= floor_m2 / covered_m2;
  return building;
}

}  // namespace slabwright
