// The zone at rest: all of it linear in air, outdoors and tube heat.
#include "building/zone_drivers.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace building {

DriverValues strip_drivers(const Zone& zone, const FloorStrip& strip, const ZoneDrivers& at, double ground_degC,
                           bool door_open) {
  const double room_degC = room_air_degC(zone, strip.room, at.air_degC, at.outdoor_degC);
  DriverValues drivers{room_degC, at.outdoor_degC, ground_degC, at.tube_W_per_m2};
  if (!strip.near_air_share) return drivers;
  const double share = door_open ? 1.0 : *strip.near_air_share;
  drivers.push_back(room_degC + share * (at.outdoor_degC - room_degC));
  return drivers;
}

double up_W(const FloorStrip& strip, const StateValues& state, const DriverValues& drivers) {
  const std::size_t first = strip.states.points;
  double entering_W_per_m = watched_value(strip.states, first + edge_row::indoor, state, drivers);
  if (strip.near_air_share)
    entering_W_per_m += watched_value(strip.states, first + edge_row::near_air_heat, state, drivers);
  return -strip.length_m * entering_W_per_m;
}

}  // namespace building

namespace {

using namespace building;

/// Steady heat upward and plane at the sensor.
struct AtRest {
  double up_W = 0.0;
  double plane_degC = 0.0;
};
AtRest at_rest(const Zone& zone, const ZoneDrivers& at, double ground_degC) {
  AtRest rest;
  for (std::size_t i = 0; i < zone.floor.size(); ++i) {
    const FloorStrip& strip = zone.floor[i];
    const DriverValues drivers = strip_drivers(zone, strip, at, ground_degC);
    const StateValues state = steady_state(strip.states, drivers);
    rest.up_W += up_W(strip, state, drivers);
    if (i == zone.sensor_strip) rest.plane_degC = watched_value(strip.states, plane_point, state, drivers);
  }
  return rest;
}

/// Heat into the air less what it loses, for an air at 0 degC without tube heat; and what a kelvin and 1 W/m2 add.
struct Linear {
  double fixed = 0.0, per_K = 0.0, per_heat = 0.0;
};

Linear surplus_of(const AtRest& fixed, const AtRest& kelvin, const AtRest& heat, const ZoneNeeds& needs,
                  double outdoor_degC) {
  return {fixed.up_W + needs.loss_W_per_K * outdoor_degC + needs.gains_W, kelvin.up_W - needs.loss_W_per_K, heat.up_W};
}

}  // namespace

double tubes_m2(const Zone& zone) {
  double all_m2 = 0.0;
  for (const FloorStrip& strip : zone.floor) all_m2 += strip.length_m * strip.tubes_m;
  return all_m2;
}

double room_air_degC(const Zone& zone, std::size_t room, double air_degC, double outdoor_degC) {
  expects(room < zone.room_rise_share.size(), "zone: a room without its share of the rise");
  return outdoor_degC + zone.room_rise_share[room] * (air_degC - outdoor_degC);
}

ZoneNeeds needs_at_work(const Zone& zone) { return {zone.loss_W_per_K + zone.fans_W_per_K, zone.gains_W}; }
ZoneNeeds needs_without_power(const Zone& zone) { return {zone.loss_W_per_K, 0.0}; }

ZoneDrivers held_by_air(const Zone& zone, const ZoneNeeds& needs, double air_degC, double outdoor_degC) {
  const AtRest idle = at_rest(zone, {air_degC, outdoor_degC, 0.0}, zone.ground_degC);
  const AtRest heat = at_rest(zone, {0.0, 0.0, 1.0}, 0.0);
  const double missing_W = needs.loss_W_per_K * (air_degC - outdoor_degC) - needs.gains_W - idle.up_W;
  return {air_degC, outdoor_degC, heat.up_W > 0.0 ? missing_W / heat.up_W : 0.0};
}

ZoneDrivers held_by_sensor(const Zone& zone, const ZoneNeeds& needs, double sensor_degC, double outdoor_degC) {
  const AtRest fixed = at_rest(zone, {0.0, outdoor_degC, 0.0}, zone.ground_degC);
  const AtRest kelvin = at_rest(zone, {1.0, 0.0, 0.0}, 0.0), heat = at_rest(zone, {0.0, 0.0, 1.0}, 0.0);
  const Linear surplus = surplus_of(fixed, kelvin, heat, needs, outdoor_degC);
  const Linear reading{fixed.plane_degC, kelvin.plane_degC, heat.plane_degC - zone.midway_m2K_per_W};
  // surplus = 0 and reading = sensor, in air and tube heat.
  const double determinant = surplus.per_K * reading.per_heat - surplus.per_heat * reading.per_K;
  const double wanted_K = sensor_degC - reading.fixed;
  return {(-surplus.fixed * reading.per_heat - surplus.per_heat * wanted_K) / determinant, outdoor_degC,
          (surplus.per_K * wanted_K + surplus.fixed * reading.per_K) / determinant};
}

ZoneDrivers unheated(const Zone& zone, const ZoneNeeds& needs, double outdoor_degC) {
  // The tube heat that holds the air is straight in it: where it is none, the air holds itself.
  const double at_zero = held_by_air(zone, needs, 0.0, outdoor_degC).tube_W_per_m2;
  const double per_K = held_by_air(zone, needs, 1.0, outdoor_degC).tube_W_per_m2 - at_zero;
  return {-at_zero / per_K, outdoor_degC, 0.0};
}

ZoneHistory steady_history(const ZoneDrivers& drivers) { return {drivers, drivers}; }

}  // namespace slabwright
