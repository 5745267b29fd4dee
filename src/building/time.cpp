// Air and floor cool down together.
#include <algorithm>
#include <cmath>

#include "slabwright/building_time.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

bool has_near_air(const FloorStrip& strip) { return strip.states.direct.front().size() > edge_row::near_air; }

/// What the whole strip gives the air over it.
double up_W(const FloorStrip& strip, const StateValues& state, const DriverValues& drivers) {
  const std::size_t heat = strip.states.points;
  double in_W_per_m = watched_value(strip.states, heat + edge_row::indoor, state, drivers);
  if (has_near_air(strip)) in_W_per_m += watched_value(strip.states, heat + edge_row::near_air_heat, state, drivers);
  return -strip.length_m * in_W_per_m;
}

double share_of(const PowerCut& cut, std::size_t room) {
  expects(room < cut.room_rise_share.size(), "cool_down: a room without its share of the rise");
  return cut.room_rise_share[room];
}

/// The near air stands part of the way from the room's to the outdoor air.
DriverValues drivers_under(const FloorStrip& strip, double air_degC, const PowerCut& cut, double tube_W_per_m2) {
  DriverValues drivers{air_degC, cut.outdoor_degC, cut.ground_degC, tube_W_per_m2};
  if (has_near_air(strip)) drivers.push_back(air_degC + strip.near_air_share * (cut.outdoor_degC - air_degC));
  return drivers;
}

DriverValues drivers_of(const FloorStrip& strip, const PowerCut& cut, double zone_degC, double tube_W_per_m2) {
  return drivers_under(strip, room_air_degC(cut, strip.room, zone_degC), cut, tube_W_per_m2);
}

/// A strip on its way through time.
struct Cooling {
  const FloorStrip* strip = nullptr;
  StateValues state;
  StateValues per_K;        ///< what a kelvin of the zone's air at the end of a step makes of the state there
  double up_W_per_K = 0.0;  ///< and of the heat upward
};

Cooling started(const FloorStrip& strip, const PowerCut& cut, double step_s) {
  Cooling cooling{&strip, steady_state(strip.states, drivers_of(strip, cut, cut.air_degC, cut.tube_W_per_m2)), {}, 0.0};
  const DriverValues none = drivers_under(strip, 0.0, {}, 0.0);
  const DriverValues kelvin = drivers_under(strip, share_of(cut, strip.room), {}, 0.0);
  const StateValues rest(strip.states.decay_per_s.size(), 0.0);
  cooling.per_K = after_straight(strip.states, rest, none, kelvin, step_s);
  cooling.up_W_per_K = up_W(strip, cooling.per_K, kelvin);
  return cooling;
}

/// Heat into the air with the zone at this temperature, as the strips' states stand.
double all_up_W(const std::vector<Cooling>& floor, const PowerCut& cut, double zone_degC, double tube_W_per_m2) {
  double sum_W = 0.0;
  for (const Cooling& at : floor)
    sum_W += up_W(*at.strip, at.state, drivers_of(*at.strip, cut, zone_degC, tube_W_per_m2));
  return sum_W;
}

CoolingRow row_of(const std::vector<Cooling>& floor, const PowerCut& cut, double time_s, double air_degC,
                  double tube_W_per_m2) {
  CoolingRow row{time_s, air_degC, 0.0, {}, air_degC};
  double floor_m2 = 0.0, plane_m2K = 0.0;
  for (const Cooling& at : floor) {
    const FloorStrip& strip = *at.strip;
    const DriverValues drivers = drivers_of(strip, cut, air_degC, tube_W_per_m2);
    const double strip_m2 = strip.length_m * strip.width_m, strip_W = up_W(strip, at.state, drivers);
    row.up_W += strip_W;
    row.tube_degC.push_back(watched_value(strip.states, 0, at.state, drivers));
    floor_m2 += strip_m2;
    plane_m2K += strip_m2 * drivers[edge_row::indoor] + strip_W * strip.above_tube_m2K_per_W;
  }
  if (floor_m2 > 0.0) row.water_degC = plane_m2K / floor_m2;
  return row;
}

/// One step without tube heat: the strips as if the zone ended at 0 degC, then what its true end adds.
double stepped_air_degC(std::vector<Cooling>& floor, const CoolingBuilding& building, const PowerCut& cut,
                        double air_degC, double step_s) {
  const double start_W = all_up_W(floor, cut, air_degC, 0.0) - building.loss_W_per_K * (air_degC - cut.outdoor_degC);
  double per_K = 0.0;
  for (Cooling& at : floor) {
    at.state = after_straight(at.strip->states, at.state, drivers_of(*at.strip, cut, air_degC, 0.0),
                              drivers_of(*at.strip, cut, 0.0, 0.0), step_s);
    per_K += at.up_W_per_K;
  }
  const double free_W = all_up_W(floor, cut, 0.0, 0.0) + building.loss_W_per_K * cut.outdoor_degC;
  const double stored_W_per_K = building.capacity_J_per_K / step_s;
  const double end_degC =
      (stored_W_per_K * air_degC + 0.5 * (start_W + free_W)) / (stored_W_per_K + 0.5 * (building.loss_W_per_K - per_K));
  for (Cooling& at : floor)
    for (std::size_t k = 0; k < at.state.size(); ++k) at.state[k] += at.per_K[k] * end_degC;
  return end_degC;
}

/// Water that the pump moves.
bool moves(const WatchedPlace& place) { return place.kind == PlaceKind::tube || place.kind == PlaceKind::room_air; }

/// The place's own temperature in a row.
double temperature_in(const CoolingRow& row, const WatchedPlace& place, std::optional<std::size_t> strip,
                      const PowerCut& cut) {
  const double air_degC = room_air_degC(cut, place.room, row.air_degC);
  // A tube that still is warmer than the air is no warmer at a corner.
  if (strip)
    return row.tube_degC[*strip] - (place.corner_share - 1.0) * std::max(0.0, air_degC - row.tube_degC[*strip]);
  return temperature_at(place.idle, {air_degC, cut.outdoor_degC, cut.ground_degC, 0.0});
}

std::optional<std::size_t> strip_at(const CoolingBuilding& building, std::size_t edge) {
  for (std::size_t strip = 0; strip < building.floor.size(); ++strip)
    if (building.floor[strip].edge == edge) return strip;
  return std::nullopt;
}

}  // namespace

double room_air_degC(const PowerCut& cut, std::size_t room, double zone_degC) {
  return cut.outdoor_degC + share_of(cut, room) * (zone_degC - cut.outdoor_degC);
}

double tube_heat_that_gives(const CoolingBuilding& building, const PowerCut& cut, double wanted_W) {
  double idle_W = 0.0, per_tube_W = 0.0;
  for (const FloorStrip& strip : building.floor) {
    const DriverValues idle = drivers_of(strip, cut, cut.air_degC, 0.0), unit = drivers_under(strip, 0.0, {}, 1.0);
    idle_W += up_W(strip, steady_state(strip.states, idle), idle);
    per_tube_W += up_W(strip, steady_state(strip.states, unit), unit);
  }
  return per_tube_W > 0.0 ? std::max(0.0, (wanted_W - idle_W) / per_tube_W) : 0.0;
}

std::vector<CoolingRow> cool_down(const CoolingBuilding& building, const PowerCut& cut, const CoolingOptions& options) {
  expects(building.capacity_J_per_K > 0.0, "cool_down: air and contents must store heat");
  expects(options.step_s > 0.0 && options.longest_s >= 0.0, "cool_down: time runs forward");
  std::vector<Cooling> floor;
  for (const FloorStrip& strip : building.floor) floor.push_back(started(strip, cut, options.step_s));
  const auto steps = static_cast<std::size_t>(std::ceil(options.longest_s / options.step_s - 1e-9));
  std::vector<CoolingRow> rows{row_of(floor, cut, 0.0, cut.air_degC, cut.tube_W_per_m2)};
  for (std::size_t step = 1; step <= steps; ++step) {
    const double air_degC = stepped_air_degC(floor, building, cut, rows.back().air_degC, options.step_s);
    rows.push_back(row_of(floor, cut, static_cast<double>(step) * options.step_s, air_degC, 0.0));
  }
  return rows;
}

std::optional<double> freezes_after_s(const WatchedPlace& place, const CoolingBuilding& building, const PowerCut& cut,
                                      const std::vector<CoolingRow>& rows, PumpInCut pump) {
  const auto strip = place.edge ? strip_at(building, *place.edge) : std::nullopt;
  if (place.edge && !strip) return std::nullopt;
  const bool moved = pump == PumpInCut::runs && moves(place);
  double before_K = 0.0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double degC = moved ? rows[i].water_degC : temperature_in(rows[i], place, strip, cut);
    const double above_K = degC - place.freezes_degC;
    if (above_K <= 0.0 && i == 0) return 0.0;
    if (above_K <= 0.0)
      return rows[i - 1].time_s + (rows[i].time_s - rows[i - 1].time_s) * before_K / (before_K - above_K);
    before_K = above_K;
  }
  return std::nullopt;
}

}  // namespace slabwright
