// What each room loses, and what its floor must give.
#include <algorithm>
#include <numeric>

#include "envelope/floors.hpp"
#include "envelope/foam.hpp"
#include "envelope/ground.hpp"
#include "slabwright/envelope.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace envelope;

/// ISO 6946, inside 0.13 and outside 0.04: the films of a bare sheet.
constexpr double least_total_m2K_per_W = 0.17;
/// As installed, where a file says nothing, practice.
constexpr double door_m2K_per_W = 0.88, window_m2K_per_W = 0.35;

double conductance_W_per_K(double area_m2, double total_m2K_per_W) {
  return area_m2 / std::max(total_m2K_per_W, least_total_m2K_per_W);
}

double opening_m2K_per_W(const Design& design, const Opening& opening) {
  if (opening.insulation) return opening.insulation->resistance_m2K_per_W;
  switch (opening.kind) {
    case OpeningKind::big_door: return design.building.door_insulation.resistance_m2K_per_W;
    case OpeningKind::door: return door_m2K_per_W;
    case OpeningKind::window: return window_m2K_per_W;
  }
  return window_m2K_per_W;
}

/// Walls, roof, openings and leaks of a room whose building is described.
void add_parts(RoomLoss& loss, const Design& design, std::size_t row, double outer_wall_m) {
  const Building& building = design.building;
  const double height_m = design.room[row].height_m.value_or(building.height_m);
  double openings_m2 = 0.0;
  for (const Opening& opening : design.opening) {
    if (room_row(design, opening.room) != row) continue;
    const double area_m2 = opening.size.width_m * opening.size.depth_m;
    openings_m2 += area_m2;
    loss.openings_W_per_K += conductance_W_per_K(area_m2, opening_m2K_per_W(design, opening));
  }
  const double wall_m2 = std::max(0.0, outer_wall_m * height_m - openings_m2);
  loss.walls_W_per_K = conductance_W_per_K(wall_m2, building.wall_insulation.resistance_m2K_per_W);
  loss.roof_W_per_K = conductance_W_per_K(loss.floor_m2, building.roof_insulation.resistance_m2K_per_W);
  loss.air_W_per_K =
      infiltration_W_per_K(loss.floor_m2 * height_m, building.air_changes_per_s * hour_s, design.climate.altitude_m);
}

double guess_W_per_m2K(const Design& design) {
  return building_guesses[static_cast<std::size_t>(design.building.quality)].floor_W_per_m2K;
}

/// Down the slab's own way, reached through film and floor; on its worst day, as if the outdoor air of the coldest hour
/// drove it: it adds up with the rest there.
double unheated_floor_W_per_K(const Design& design, const RoomLoss& loss, const GroundPath& ground,
                              double outdoor_degC) {
  const double down_m2K_per_W =
      1.0 / floor_film_down_W_per_m2K + above_tube_m2K_per_W(design) + 1.0 / ground.plane_W_per_m2K;
  const double down_W = loss.floor_m2 / down_m2K_per_W * (loss.indoor_degC - ground.effective_degC);
  const double rise_K = loss.indoor_degC - outdoor_degC;
  return rise_K > 0.0 ? std::max(0.0, down_W / rise_K) : 0.0;
}

double exhaust_W_per_K(const Design& design, const Exhaust& fan) {
  constexpr double plain_density_kg_per_m3 = 1.2;  // air at about 20 degC at the sea
  return air_stream_W_per_K(fan.flow_m3_per_s, plain_density_kg_per_m3 * pressure_share(design.climate.altitude_m));
}

/// Fans and gains of a room.
void add_fans_and_gains(RoomLoss& loss, const Design& design, std::size_t row) {
  double counted_W_per_K = 0.0;
  for (const Exhaust& fan : design.exhaust) {
    if (room_row(design, fan.room) != row) continue;
    loss.exhaust_W_per_K += exhaust_W_per_K(design, fan);
    if (fan.makeup == Makeup::untempered) counted_W_per_K += exhaust_W_per_K(design, fan);
  }
  loss.exhaust_counted_W_per_K = counted_W_per_K;
  for (const Gains& gains : design.gains) {
    if (room_row(design, gains.room) == row) loss.gains_W += gains.power_W;
  }
}

/// `building.heat_loss` as a conductance per floor area that gives it in all rooms together.
double given_W_per_m2K(const std::vector<RoomLoss>& rooms, double heat_loss_W, double outdoor_degC) {
  const double driven_m2K = std::accumulate(rooms.begin(), rooms.end(), 0.0, [&](double sum, const RoomLoss& room) {
    return sum + room.floor_m2 * std::max(0.0, room.indoor_degC - outdoor_degC);
  });
  return driven_m2K > 0.0 ? heat_loss_W / driven_m2K : 0.0;
}

void add_shell(std::vector<RoomLoss>& rooms, const Design& design, double outdoor_degC) {
  const std::vector<double> walls_m = outer_walls_m(design);
  const Building& building = design.building;
  const double by_area_W_per_m2K =
      building.heat_loss_W ? given_W_per_m2K(rooms, *building.heat_loss_W, outdoor_degC) : guess_W_per_m2K(design);
  for (std::size_t row = 0; row < rooms.size(); ++row) {
    if (building.described && !building.heat_loss_W)
      add_parts(rooms[row], design, row, walls_m[row]);
    else
      rooms[row].by_area_W_per_K = by_area_W_per_m2K * rooms[row].floor_m2;
  }
}

std::vector<RoomLoss> rooms_of(const Design& design, const GroundPath& ground, double outdoor_degC) {
  const std::vector<double> floors_m2 = room_floors_m2(design);
  std::vector<RoomLoss> rooms;
  for (std::size_t row = 0; row < design.room.size(); ++row) {
    RoomLoss loss;
    loss.name = design.room[row].name;
    loss.floor_m2 = floors_m2[row];
    loss.indoor_degC = indoor_of(design, design.room[row]);
    loss.heated_floor = design.room[row].heated_floor;
    if (!loss.heated_floor) loss.unheated_floor_W_per_K = unheated_floor_W_per_K(design, loss, ground, outdoor_degC);
    add_fans_and_gains(loss, design, row);
    rooms.push_back(std::move(loss));
  }
  add_shell(rooms, design, outdoor_degC);
  for (RoomLoss& loss : rooms) {
    loss.total_W_per_K = loss.walls_W_per_K + loss.roof_W_per_K + loss.openings_W_per_K + loss.air_W_per_K +
                         loss.by_area_W_per_K + loss.unheated_floor_W_per_K + loss.exhaust_counted_W_per_K;
    loss.loss_W = loss.total_W_per_K * (loss.indoor_degC - outdoor_degC);
    if (loss.heated_floor) loss.wanted_W = std::max(0.0, loss.loss_W - loss.gains_W);
  }
  return rooms;
}

Diagnostic about_fan(const Design& design, std::size_t row, double outdoor_degC) {
  const Exhaust& fan = design.exhaust[row];
  const Room& room = design.room[room_row(design, fan.room)];
  const double rise_K = std::max(0.0, indoor_of(design, room) - outdoor_degC);
  const bool untempered = fan.makeup == Makeup::untempered;
  const Measured heat{exhaust_W_per_K(design, fan) * rise_K, Dimension::power};
  const std::string head = "the exhaust fan of the {} takes {} with it at {} outside; the floor cannot follow this; ";
  const std::string mend = "temper the make-up air, or recirculate through a filter where codes allow";
  return {untempered ? Severity::warning : Severity::note,
          untempered ? "envelope.exhaust-untempered" : "envelope.exhaust",
          "exhaust[" + std::to_string(row + 1) + "]",
          head + (untempered ? mend : "neither floor nor boiler is sized for it: " + mend),
          {room.name, heat, Measured{outdoor_degC, Dimension::degree}}};
}

Diagnostic about_unheated(const RoomLoss& loss, std::size_t row) {
  return {Severity::note,
          "envelope.unheated-room",
          "room[" + std::to_string(row + 1) + "]",
          "no tube lies in the {}: the {} that it loses must come from something else",
          {loss.name, Measured{loss.loss_W, Dimension::power}}};
}

}  // namespace

Checked<Envelope> envelope_of(const Design& design, EdgeFields& fields) {
  if (!design.climate.outdoor_degC) {
    return {std::nullopt,
            {{Severity::note,
              "envelope.no-outdoor",
              "climate.outdoor",
              "the heat loss needs the coldest weather to plan for: give climate.outdoor",
              {}}}};
  }
  if (design.room.empty() || whole_floor(design).area_m2 <= 0.0) {
    return {std::nullopt,
            {{Severity::note,
              "envelope.no-floor",
              "slab",
              "the heat loss needs a floor: give slab.size, slab.area or an outline",
              {}}}};
  }
  const double outdoor_degC = *design.climate.outdoor_degC;
  Checked<Envelope> checked;
  Envelope& envelope = checked.value.emplace();
  envelope.edge = edges_of(design);
  envelope.ground = ground_of(design, envelope.edge, fields);
  envelope.room = rooms_of(design, envelope.ground, outdoor_degC);
  envelope.outdoor_degC = outdoor_degC;
  for (std::size_t row = 0; row < envelope.room.size(); ++row) {
    const RoomLoss& room = envelope.room[row];
    envelope.total_W_per_K += room.total_W_per_K;
    envelope.loss_W += room.loss_W;
    envelope.exhaust_W += room.exhaust_W_per_K * std::max(0.0, room.indoor_degC - outdoor_degC);
    if (!room.heated_floor) checked.said.push_back(about_unheated(room, row));
  }
  for (std::size_t row = 0; row < design.exhaust.size(); ++row) {
    checked.said.push_back(about_fan(design, row, outdoor_degC));
  }
  return checked;
}

Checked<Envelope> envelope_of(const Design& design) {
  EdgeFields fields;
  return envelope_of(design, fields);
}

}  // namespace slabwright
