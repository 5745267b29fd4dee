// An electric boiler whose stages come on one after the other.
#include <algorithm>
#include <cmath>
#include <limits>

#include "slabwright/contract.hpp"
#include "slabwright/heater.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

// The stages that stay on, and the heat of them.
void fill_standing(BoilerHour& hour, const BoilerStages& boiler, double demand_W) {
  for (const double stage_W : boiler.stage_W) {
    const double with_next_W = hour.heat_W + stage_W * boiler.heat_share;
    if (with_next_W > demand_W) return;
    hour.heat_W = with_next_W;
    ++hour.standing_stages;
  }
}

void fill_cycling(BoilerHour& hour, const BoilerStages& boiler, double demand_W) {
  const double stage_W = boiler.stage_W[hour.standing_stages] * boiler.heat_share;
  hour.on_share = (demand_W - hour.heat_W) / stage_W;
  hour.cycles_per_s = thermostat_cycling(hour.on_share, boiler.most_cycles_per_s).cycles_per_s;
  if (boiler.least_on_s > 0.0) hour.cycles_per_s = std::min(hour.cycles_per_s, hour.on_share / boiler.least_on_s);
  hour.heat_W = demand_W;
  hour.run = BoilerRun::cycling;
}

BoilerRun run_of_standing(const BoilerHour& hour, const BoilerStages& boiler, double demand_W) {
  return hour.standing_stages == boiler.stage_W.size() && hour.heat_W < demand_W ? BoilerRun::short_of
                                                                                 : BoilerRun::steady;
}

double drawn_W(const BoilerStages& boiler, std::size_t stages) {
  double sum = boiler.standby_W;
  for (std::size_t i = 0; i < stages; ++i) sum += boiler.stage_W[i];
  return sum;
}

}  // namespace

Cycling thermostat_cycling(double load_share, double most_cycles_per_s) {
  expects(load_share >= 0.0 && load_share <= 1.0, "a load share not from 0 to 1");
  expects(most_cycles_per_s > 0.0, "a thermostat that never switches");
  const double off_share = 1.0 - load_share, quarter_s = 0.25 / most_cycles_per_s;
  const double never = std::numeric_limits<double>::infinity();
  return {4.0 * most_cycles_per_s * load_share * off_share, off_share > 0.0 ? quarter_s / off_share : never,
          load_share > 0.0 ? quarter_s / load_share : never};
}

bool is_boiler(const BoilerStages& boiler) {
  const auto is_power = [](double W) { return std::isfinite(W) && W > 0.0; };
  return !boiler.stage_W.empty() && std::all_of(boiler.stage_W.begin(), boiler.stage_W.end(), is_power) &&
         boiler.heat_share > 0.0 && boiler.heat_share <= 1.0 && boiler.most_cycles_per_s > 0.0 &&
         boiler.least_on_s >= 0.0 && boiler.least_on_s <= hour_s && boiler.standby_W >= 0.0;
}

double most_heat_W(const BoilerStages& boiler) {
  return (drawn_W(boiler, boiler.stage_W.size()) - boiler.standby_W) * boiler.heat_share;
}

BoilerHour boiler_hour(const BoilerStages& boiler, double demand_W) {
  expects(is_boiler(boiler), "no boiler");
  expects(std::isfinite(demand_W) && demand_W >= 0.0, "a demand below zero");
  BoilerHour hour;
  hour.electric_W = hour.highest_W = boiler.standby_W;
  if (demand_W == 0.0) return hour;
  hour.run = BoilerRun::below_least;
  if (demand_W < boiler.stage_W[0] * boiler.heat_share * boiler.least_on_s / hour_s) return hour;
  fill_standing(hour, boiler, demand_W);
  hour.run = run_of_standing(hour, boiler, demand_W);
  if (hour.run == BoilerRun::steady && hour.heat_W < demand_W) fill_cycling(hour, boiler, demand_W);
  hour.electric_W += hour.heat_W / boiler.heat_share;
  hour.highest_W = drawn_W(boiler, hour.standing_stages + (hour.on_share > 0.0 ? 1 : 0));
  return hour;
}

}  // namespace slabwright
