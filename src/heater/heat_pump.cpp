// An air-source heat pump: its table, what stops it, and an hour of it.
#include <algorithm>
#include <cmath>

#include "heater/part_load.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/heater.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {
namespace {

using Points = std::vector<TablePoint>;

template <class Of>
Points points_of(const HeatPump& pump, Of of) {
  Points points;
  for (const HeatPumpRow& row : pump.row) points.push_back({row.outdoor_degC, of(row)});
  return points;
}

bool is_beyond(const HeatPump& pump, double outdoor_degC) {
  return outdoor_degC < pump.row.front().outdoor_degC || outdoor_degC > pump.row.back().outdoor_degC;
}

// At or beyond the ends by the rule of that end; never below 0.
double in_table(const HeatPump& pump, const Points& points, double outdoor_degC) {
  const TableValue within = linear_in_table(points, outdoor_degC);
  if (!within.clamped) return within.value;
  const bool cold = outdoor_degC < points.front().at;
  if ((cold ? pump.colder : pump.warmer) == BeyondRows::hold) return within.value;
  const TablePoint& end = cold ? points.front() : points.back();
  return std::max(0.0, end.value + linear_in_table(points, end.at).slope * (outdoor_degC - end.at));
}

double capacity_W(const HeatPump& pump, double outdoor_degC) {
  return in_table(pump, points_of(pump, [](const HeatPumpRow& row) { return row.capacity_W; }), outdoor_degC);
}

// A power carried on to nothing has no COP; the end row's stands then.
double cop_by_power(const HeatPump& pump, double outdoor_degC, double capacity) {
  const Points powers = points_of(pump, [](const HeatPumpRow& row) { return row.capacity_W / row.cop; });
  const double power = in_table(pump, powers, outdoor_degC);
  if (power > 0.0) return capacity / power;
  return outdoor_degC < pump.row.front().outdoor_degC ? pump.row.front().cop : pump.row.back().cop;
}

double cop_at(const HeatPump& pump, double outdoor_degC, double capacity) {
  if (capacity == 0.0) return 0.0;
  if (pump.between == StraightBetweenRows::power) return cop_by_power(pump, outdoor_degC, capacity);
  return in_table(pump, points_of(pump, [](const HeatPumpRow& row) { return row.cop; }), outdoor_degC);
}

bool outdoors_allow(const HeatPump& pump, double outdoor_degC, bool before) {
  return !pump.cut_out || outdoor_degC >= (before ? pump.cut_out->out_degC : pump.cut_out->in_degC);
}

HeatPumpRun run_of(const HeatPump& pump, const HeatPumpConditions& now, const HeatPumpState& before,
                   const HeatPumpHour& hour) {
  if (!hour.after.outdoors_allow)
    return now.outdoor_degC < pump.cut_out->out_degC ? HeatPumpRun::below_cut_out : HeatPumpRun::before_cut_in;
  if (now.demand_W == 0.0) return HeatPumpRun::no_demand;
  if (!before.running && pump.least_indoor_start_degC && now.indoor_degC < *pump.least_indoor_start_degC)
    return HeatPumpRun::indoors_too_cold;
  if (hour.full_load.capacity_W == 0.0) return HeatPumpRun::no_capacity;
  return hour.full_load.cop < pump.least_cop ? HeatPumpRun::cop_below_least : HeatPumpRun::ran;
}

bool is_row(const HeatPumpRow& row) {
  return std::isfinite(row.capacity_W) && row.capacity_W > 0.0 && std::isfinite(row.cop) && row.cop > 0.0;
}

bool is_share(double share) { return share > 0.0 && share <= 1.0; }

bool is_frost(const FrostBand& band) {
  return band.coldest_degC <= band.warmest_degC && is_share(band.capacity_share) && is_share(band.cop_share);
}

}  // namespace

bool is_heat_pump(const HeatPump& pump) {
  return is_table(points_of(pump, [](const HeatPumpRow& row) { return row.capacity_W; })) &&
         std::all_of(pump.row.begin(), pump.row.end(), is_row) && is_part_load(pump.part_load) &&
         (!pump.frost || is_frost(*pump.frost)) && (!pump.cut_out || pump.cut_out->in_degC >= pump.cut_out->out_degC) &&
         pump.least_cop >= 0.0 && pump.idle_W >= 0.0;
}

FullLoad full_load(const HeatPump& pump, double outdoor_degC) {
  expects(is_heat_pump(pump) && std::isfinite(outdoor_degC), "no heat pump, or no outdoor temperature");
  FullLoad full{capacity_W(pump, outdoor_degC), 0.0, is_beyond(pump, outdoor_degC)};
  full.cop = cop_at(pump, outdoor_degC, full.capacity_W);
  const auto& frost = pump.frost;
  if (frost && outdoor_degC >= frost->coldest_degC && outdoor_degC <= frost->warmest_degC) {
    full.capacity_W *= frost->capacity_share;
    full.cop *= frost->cop_share;
  }
  return full;
}

HeatPumpHour heat_pump_hour(const HeatPump& pump, const HeatPumpConditions& now, const HeatPumpState& before) {
  expects(std::isfinite(now.indoor_degC) && std::isfinite(now.demand_W) && now.demand_W >= 0.0,
          "conditions of no hour");
  return heat_pump_hour(pump, full_load(pump, now.outdoor_degC), now, before);
}

HeatPumpHour heat_pump_hour(const HeatPump& pump, const FullLoad& full, const HeatPumpConditions& now,
                            const HeatPumpState& before) {
  HeatPumpHour hour;
  hour.full_load = full;
  hour.after.outdoors_allow = outdoors_allow(pump, now.outdoor_degC, before.outdoors_allow);
  hour.run = run_of(pump, now, before, hour);
  hour.after.running = hour.run == HeatPumpRun::ran;
  hour.electric_W = pump.idle_W;
  if (!hour.after.running) return hour;
  hour.load_share = std::min(1.0, now.demand_W / hour.full_load.capacity_W);
  hour.heat_W = std::min(now.demand_W, hour.full_load.capacity_W);
  const double kept = part_load_share(pump.part_load, hour.load_share);
  const double standing_share = std::max(0.0, 1.0 - hour.load_share / kept);
  hour.electric_W = hour.heat_W / (hour.full_load.cop * kept) + standing_share * pump.idle_W;
  return hour;
}

}  // namespace slabwright
