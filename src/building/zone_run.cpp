// The zone in time, step by step.
#include <cmath>

#include "building/zone_drivers.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace building;

/// Over which tube heat is averaged where the plane is held for the sensor's sake: long beside the sensor's own lag, so
/// that the one does not chase the other.
constexpr double mean_over_s = 6.0 * hour_s;

/// The state that years of a cosine between the two have brought about, in the coldest month.
StateValues begun(const FloorStrip& strip, const DriverValues& mean, const DriverValues& coldest) {
  PeriodicDrivers drivers{common_year_s, mean, coldest, DriverValues(mean.size(), 0.0)};
  for (std::size_t i = 0; i < mean.size(); ++i) drivers.cosine[i] -= mean[i];
  return swinging_state(strip.states, drivers, 0.0);
}

DriverValues without_tube_heat(DriverValues drivers) {
  drivers[edge_row::tube_heat] = 0.0;
  return drivers;
}

void add(StateValues& state, const StateValues& per_unit, double units) {
  for (std::size_t k = 0; k < state.size(); ++k) state[k] += units * per_unit[k];
}

}  // namespace

ZoneRun::ZoneRun(const Zone& zone, const ZoneHistory& history, double step_s)
    : zone_(&zone),
      step_s_(step_s),
      now_(history.coldest_month),
      sensed_W_per_m2_(now_.tube_W_per_m2),
      mean_W_per_m2_(now_.tube_W_per_m2) {
  expects(zone.capacity_J_per_K > 0.0, "zone: air and contents must store heat");
  expects(step_s > 0.0, "zone: time runs forward");
  for (const FloorStrip& of : zone.floor) {
    Strip strip;
    strip.of = &of;
    strip.step = states_step(of.states, step_s);
    const DriverValues mean = strip_drivers(zone, of, history.mean, zone.ground_degC);
    const DriverValues coldest = strip_drivers(zone, of, history.coldest_month, zone.ground_degC);
    strip.state = begun(of, mean, coldest);
    strip.shut = begun(of, without_tube_heat(mean), without_tube_heat(coldest));
    const StateValues rest(strip.state.size(), 0.0);
    const DriverValues none(mean.size(), 0.0), heat = strip_drivers(zone, of, {0.0, 0.0, 1.0}, 0.0);
    for (const bool open : {false, true})
      strip.per_K[open] =
          after_step(of.states, strip.step, rest, none, strip_drivers(zone, of, {1.0, 0.0, 0.0}, 0.0, open));
    strip.per_heat = after_step(of.states, strip.step, rest, heat, heat);
    strips_.push_back(std::move(strip));
  }
}

ZoneRun::Ends ZoneRun::ends_of(const ZoneStep& step) const {
  Ends ends;
  const ZoneDrivers start{now_.air_degC, now_.outdoor_degC, 0.0}, end{0.0, step.outdoor_degC, 0.0};
  for (std::size_t i = 0; i < strips_.size(); ++i) {
    const Strip& strip = strips_[i];
    const FloorStrip& of = *strip.of;
    const DriverValues at_start = strip_drivers(*zone_, of, start, zone_->ground_degC, step.door_open);
    const DriverValues at_end = strip_drivers(*zone_, of, end, zone_->ground_degC, step.door_open);
    const DriverValues kelvin = strip_drivers(*zone_, of, {1.0, 0.0, 0.0}, 0.0, step.door_open);
    const DriverValues heat = strip_drivers(*zone_, of, {0.0, 0.0, 1.0}, 0.0);
    const StateValues& per_K = strip.per_K[step.door_open];
    StateValues state = after_step(of.states, strip.step, strip.state, at_start, at_end);
    ends.start_up_W += building::up_W(of, strip.state, at_start);
    ends.start_up_m2 += building::up_W(of, StateValues(state.size(), 0.0), heat);
    ends.up_W += building::up_W(of, state, at_end);
    ends.up_W_per_K += building::up_W(of, per_K, kelvin);
    ends.up_m2 += building::up_W(of, strip.per_heat, heat);
    if (i == zone_->sensor_strip) {
      ends.plane_degC = watched_value(of.states, plane_point, state, at_end);
      ends.plane_per_K = watched_value(of.states, plane_point, per_K, kelvin);
      ends.plane_m2K_per_W = watched_value(of.states, plane_point, strip.per_heat, heat);
    }
    ends.state.push_back(std::move(state));
  }
  return ends;
}

/// Trapezoidal: half of what flows at the start and half of what flows at the end.
double ZoneRun::end_air_degC(const ZoneStep& step, const Ends& ends, double tube_W_per_m2) const {
  if (step.air_degC) return *step.air_degC;
  const double loss_W_per_K = step.needs.loss_W_per_K;
  const double start_W =
      ends.start_up_W + ends.start_up_m2 * tube_W_per_m2 - loss_W_per_K * (now_.air_degC - now_.outdoor_degC);
  const double free_W = ends.up_W + ends.up_m2 * tube_W_per_m2 + loss_W_per_K * step.outdoor_degC;
  const double stored_W_per_K = zone_->capacity_J_per_K / step_s_;
  return (stored_W_per_K * now_.air_degC + 0.5 * (start_W + free_W) + step.needs.gains_W + step.source_W) /
         (stored_W_per_K + 0.5 * (loss_W_per_K - ends.up_W_per_K));
}

double ZoneRun::tube_heat_for_sensor(const ZoneStep& step, double sensor_degC) const {
  const Ends ends = ends_of(step);
  const double idle_degC = end_air_degC(step, ends, 0.0), air_K = end_air_degC(step, ends, 1.0) - idle_degC;
  const double plane_degC = sensor_degC + zone_->midway_m2K_per_W * mean_W_per_m2_;
  return (plane_degC - ends.plane_degC - ends.plane_per_K * idle_degC) /
         (ends.plane_m2K_per_W + ends.plane_per_K * air_K);
}

void ZoneRun::step(const ZoneStep& step) {
  Ends ends = ends_of(step);
  const double air_degC = end_air_degC(step, ends, step.tube_W_per_m2);
  for (std::size_t i = 0; i < strips_.size(); ++i) {
    Strip& strip = strips_[i];
    const FloorStrip& of = *strip.of;
    const ZoneDrivers start{now_.air_degC, now_.outdoor_degC, 0.0}, end{air_degC, step.outdoor_degC, 0.0};
    strip.shut = after_step(of.states, strip.step, strip.shut,
                            strip_drivers(*zone_, of, start, zone_->ground_degC, step.door_open),
                            strip_drivers(*zone_, of, end, zone_->ground_degC, step.door_open));
    strip.state = std::move(ends.state[i]);
    add(strip.state, strip.per_K[step.door_open], air_degC);
    add(strip.state, strip.per_heat, step.tube_W_per_m2);
  }
  now_ = {air_degC, step.outdoor_degC, step.tube_W_per_m2};
  door_open_ = step.door_open;
  sensed_W_per_m2_ += -std::expm1(-step_s_ / zone_->midway_lag_s) * (step.tube_W_per_m2 - sensed_W_per_m2_);
  mean_W_per_m2_ += -std::expm1(-step_s_ / mean_over_s) * (step.tube_W_per_m2 - mean_W_per_m2_);
  time_s_ += step_s_;
}

double ZoneRun::sensor_degC() const {
  const Strip& strip = strips_[zone_->sensor_strip];
  const DriverValues drivers = strip_drivers(*zone_, *strip.of, now_, zone_->ground_degC, door_open_);
  return watched_value(strip.of->states, plane_point, strip.state, drivers) -
         zone_->midway_m2K_per_W * sensed_W_per_m2_;
}

ZoneRow ZoneRun::row() const {
  ZoneRow row;
  row.time_s = time_s_;
  row.at = now_;
  double floor_m2 = 0.0, plane_m2K = 0.0;
  std::vector<DriverValues> drivers;
  for (const Strip& strip : strips_) {
    const FloorStrip& of = *strip.of;
    drivers.push_back(strip_drivers(*zone_, of, now_, zone_->ground_degC, door_open_));
    const double strip_m2 = of.length_m * of.width_m, strip_W = building::up_W(of, strip.state, drivers.back());
    row.up_W += strip_W;
    floor_m2 += strip_m2;
    plane_m2K += strip_m2 * drivers.back()[edge_row::indoor] + strip_W * zone_->plane_m2K_per_W;
  }
  row.water_degC = floor_m2 > 0.0 ? plane_m2K / floor_m2 : now_.air_degC;
  row.sensor_degC = strips_.empty() ? now_.air_degC : sensor_degC();
  for (const ZonePlace& place : zone_->place) {
    const double room_degC = room_air_degC(*zone_, place.room, now_.air_degC, now_.outdoor_degC);
    if (!place.strip) {
      const Drivers air{room_degC, now_.outdoor_degC, zone_->ground_degC, now_.tube_W_per_m2};
      row.place_degC.push_back(temperature_at(place.weights, air));
      row.shut_degC.push_back(row.place_degC.back());
      continue;
    }
    const Strip& strip = strips_[*place.strip];
    const DriverValues& driven = drivers[*place.strip];
    const double warm_degC = watched_value(strip.of->states, place.point, strip.state, driven);
    const double shut_degC = watched_value(strip.of->states, place.point, strip.shut, without_tube_heat(driven));
    const double cold_K = room_degC - shut_degC;
    row.shut_degC.push_back(room_degC - (cold_K > 0.0 ? place.cold_share : 1.0) * cold_K);
    row.place_degC.push_back(row.shut_degC.back() + place.heat_share * (warm_degC - shut_degC));
  }
  return row;
}

}  // namespace slabwright
