// Boiler stages against what floor and water take: runs that are too short, and the water that would lengthen them.
#include <algorithm>
#include <cmath>

#include "plant/piping.hpp"
#include "plant/sizes.hpp"
#include "slabwright/handbook_cycling.hpp"
#include "slabwright/handbook_practice.hpp"

namespace slabwright {
namespace {

void say_short(const BoilerSize& boiler, const BoilerCycle& cycle, std::vector<Diagnostic>& said) {
  // Whoever has yet to buy one is told what to look for; whoever has one, what to mend.
  const Severity severity = boiler.from_file ? Severity::warning : Severity::note;
  said.push_back(
      {severity,
       "plant.short-runs",
       "boiler.stages",
       "in mild weather a boiler stage of {} runs for {} at a time, where {} would be good for it: smaller stages, a "
       "wider differential, or a buffer tank of {}.",
       {show_as(cycle.stage_W, Dimension::power, "kW", 1), show_as(*cycle.on_s, Dimension::time, "min", 1),
        show_as(cycle.least_on_s, Dimension::time, "min", 0), Measured{cycle.buffer_m3, Dimension::volume}}});
}

/// What swings with a heater, and all its heat over one kelvin is of so much water.
struct Swing {
  SwingingHeater heater;
  double content_m3 = 0.0;
  double water_J_per_m3K = 0.0;
};
/// Where something mixes to a temperature the boiler's own water swings alone; the floor gets what is let through.
Swing swing_of(const Plant& plant, const OperatingPoint& point, double heater_W, double taken_W) {
  const Boiler& entry = plant.design.boiler;
  const FluidProperties fluid = properties_of(mixture_of(plant.design.fluid), point.supply_degC);
  const bool mixes = has_setting(plant.source);
  const double slab_W_per_K = mixes ? 0.0 : water_to_slab_W_per_K(plant, point);
  return {{heater_W, taken_W, entry.differential_K, slab_W_per_K},
          mixes ? heater_content_m3(entry.kind) : plant_content_m3(plant),
          fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK};
}

std::optional<double> if_ends(double s) { return std::isfinite(s) ? std::optional<double>(s) : std::nullopt; }

}  // namespace

int boiler_stages(const Boiler& boiler, double power_W) {
  if (boiler.kind == BoilerKind::tank_heater) return 1;
  if (boiler.stages_number) return static_cast<int>(*boiler.stages_number);
  return std::max(1, static_cast<int>(std::ceil(power_W / boiler_stage_W.value - 1e-9)));
}

Checked<BoilerCycle> boiler_cycle(const Plant& plant, const OperatingPoint& point, const BoilerSize& boiler) {
  const Boiler& entry = plant.design.boiler;
  BoilerCycle cycle;
  cycle.stages_number = boiler_stages(entry, boiler.power_W);
  cycle.stage_W = boiler.power_W / cycle.stages_number;
  cycle.taken_W = mild_load_share.value * boiler.floor_W;
  cycle.least_on_s = entry.least_on_s;
  if (boiler.kind == BoilerKind::none || cycle.stage_W <= cycle.taken_W || cycle.taken_W <= 0.0) return {cycle, {}};
  const Swing swing = swing_of(plant, point, cycle.stage_W, cycle.taken_W);
  cycle.on_s = if_ends(on_s(swing.heater, swing.content_m3 * swing.water_J_per_m3K));
  cycle.off_s = if_ends(off_s(swing.heater, swing.content_m3 * swing.water_J_per_m3K));
  cycle.short_runs = cycle.on_s && *cycle.on_s < entry.least_on_s;
  std::vector<Diagnostic> said;
  if (cycle.short_runs) {
    cycle.buffer_m3 = buffer_m3(swing.heater, entry.least_on_s, swing.water_J_per_m3K) - swing.content_m3;
    say_short(boiler, cycle, said);
  }
  return {cycle, std::move(said)};
}

double water_to_add_m3(const Plant& plant, const OperatingPoint& point, double heater_W, double taken_W) {
  if (taken_W <= 0.0 || heater_W <= taken_W) return 0.0;
  const Swing swing = swing_of(plant, point, heater_W, taken_W);
  const double on = on_s(swing.heater, swing.content_m3 * swing.water_J_per_m3K);
  if (on >= plant.design.boiler.least_on_s) return 0.0;
  return buffer_m3(swing.heater, plant.design.boiler.least_on_s, swing.water_J_per_m3K) - swing.content_m3;
}

}  // namespace slabwright
