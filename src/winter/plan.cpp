#include "winter/plan.hpp"

#include <algorithm>

#include "slabwright/units_exact.hpp"

namespace slabwright::winter {
namespace {

/// More than this between one work and the next, and there is a day off in it.
constexpr int a_night_h = 24;

/// What keeps frost out, by the sensors that the way has: what is held at work has a wall thermostat.
Dials frost_hold(const WayEntry& way, const PlanInputs& inputs) {
  const WaySensor sensor = way.floor == WayFloor::work ? WaySensor::air : way.sensor;
  Dials dials;
  if (sensor != WaySensor::slab) dials.floor_air_degC = inputs.hold.floor_air_degC;
  if (sensor != WaySensor::air) dials.floor_slab_degC = inputs.hold.floor_slab_degC;
  return dials;
}

/// Where the floor is held while there is work, by air and by slab.
Dials floor_at_work(const WayEntry& way, const PlanInputs& inputs) {
  Dials dials;
  switch (way.floor) {
    case WayFloor::off: break;
    case WayFloor::work: dials.floor_air_degC = inputs.work_degC; break;
    case WayFloor::frost_hold: return frost_hold(way, inputs);
    case WayFloor::setpoint:
      if (way.sensor != WaySensor::slab) dials.floor_air_degC = way.setpoint_degC.value_or(inputs.work_degC);
      if (way.sensor != WaySensor::air) dials.floor_slab_degC = way.setpoint_degC.value_or(inputs.work_degC);
      break;
  }
  return dials;
}

Dials floor_in(const WayEntry& way, const PlanInputs& inputs, const SeasonHour& hour) {
  Dials dials = floor_at_work(way, inputs);
  const bool long_enough = way.rest_when == WayRest::nights_and_days_off || hour.gap > a_night_h;
  const bool rests = way.rest_degC && !hour.worked && long_enough && hour.until_work > inputs.floor_lead_h;
  if (rests && dials.floor_air_degC > not_set_degC) dials.floor_air_degC = *way.rest_degC;
  if (rests && dials.floor_slab_degC > not_set_degC) dials.floor_slab_degC = *way.rest_degC;
  if (!way.charge) return dials;
  // Charged, it coasts: outside these hours only what keeps it from freezing holds it.
  dials = frost_hold(way, inputs);
  if (in_span(*way.charge, hour.clock)) dials.floor_slab_degC = way.charge_to_degC.value_or(inputs.work_degC);
  return dials;
}

double source_in(const WayEntry& way, const PlanInputs& inputs, const SeasonHour& hour) {
  if (way.second_source == WaySource::off) return not_set_degC;
  const double work_degC = way.source_degC.value_or(inputs.work_degC);
  const bool on = hour.worked || hour.until_work <= inputs.source_lead_h;
  if (on) return std::max(work_degC, inputs.least_source_degC);
  if (way.second_source == WaySource::in_working_hours) return not_set_degC;
  return std::max(way.source_rest_degC.value_or(work_degC), inputs.least_source_degC);
}

}  // namespace

std::vector<Dials> plan_of(const WayEntry& way, const Season& season, const PlanInputs& inputs) {
  std::vector<Dials> plan;
  plan.reserve(season.hour.size());
  for (const SeasonHour& hour : season.hour) {
    Dials dials;
    if (in_season(season, hour.month)) {
      dials = floor_in(way, inputs, hour);
      dials.source_degC = source_in(way, inputs, hour);
    } else if (way.floor != WayFloor::off) {
      // Nobody works to a temperature in summer, and what keeps frost out stays on.
      dials = frost_hold(way, inputs);
    }
    plan.push_back(dials);
  }
  return plan;
}

bool floor_starts_early(const WayEntry& way) {
  return way.early_start && way.rest_degC && !way.charge && way.floor != WayFloor::off;
}

bool source_starts_early(const WayEntry& way) {
  return way.early_start && (way.second_source == WaySource::in_working_hours ||
                             (way.second_source == WaySource::always && way.source_rest_degC));
}

std::vector<WayEntry> usual_ways(bool has_source, std::optional<double> hold_degC) {
  WayEntry work;
  work.name = "floor at work all winter";
  work.floor = WayFloor::work;
  work.last_winter = true;
  WayEntry rests = work;
  rests.name = "weekends off: floor at work, frost hold on days off";
  rests.rest_when = WayRest::days_off;
  rests.last_winter = false;
  rests.rest_degC = hold_degC;
  WayEntry charged = rests;
  charged.name = "floor charged at night";
  charged.rest_degC.reset();
  charged.rest_when = WayRest::nights_and_days_off;
  charged.charge = ClockSpan{22.0 * hour_s, 6.0 * hour_s};
  WayEntry hold;
  hold.name = "frost hold, nothing else";
  if (!has_source) return {work, rests, charged, hold};
  hold.name = "frost hold, second source in working hours";
  hold.second_source = WaySource::in_working_hours;
  WayEntry first = hold;
  first.name = "second source first, the floor below it";
  first.second_source = WaySource::always;
  return {work, rests, charged, hold, first};
}

}  // namespace slabwright::winter
