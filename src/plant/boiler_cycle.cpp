// Boiler stages against what floor and water take: runs that are too short, and the water that would lengthen them.
#include "slabwright/handbook_cycling.hpp"
#include "slabwright/plant_sizes.hpp"

namespace slabwright {
namespace {

void say_short(const Plant& plant, const BoilerCycle& cycle, std::vector<Diagnostic>& said) {
  said.push_back({Severity::warning,
                  "plant.short-runs",
                  "boiler.stages",
                  "the boiler's smallest stage of {} is more than the floor takes, and the water there is lets it run "
                  "for {} at a time; it should run for {}: smaller stages, or a buffer tank of {} or more.",
                  {show_as(cycle.stage_W, Dimension::power, "kW", 1), show_as(*cycle.on_s, Dimension::time, "min", 1),
                   show_as(plant.design.boiler.least_on_s, Dimension::time, "min", 0),
                   Measured{cycle.buffer_m3, Dimension::volume}}});
}

}  // namespace

Checked<BoilerCycle> boiler_cycle(const Plant& plant, const OperatingPoint& point, const BoilerSize& boiler) {
  const Boiler& entry = plant.design.boiler;
  BoilerCycle cycle;
  cycle.stages_number = boiler.kind == BoilerKind::tank_heater ? 1 : entry.stages;
  cycle.stage_W = boiler.power_W / cycle.stages_number;
  cycle.taken_W = boiler.floor_W;
  if (boiler.kind == BoilerKind::none || cycle.stage_W <= cycle.taken_W || cycle.taken_W <= 0.0) return {cycle, {}};
  const FluidProperties fluid = properties_of(mixture_of(plant.design.fluid), point.supply_degC);
  const double water_J_per_m3K = fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK;
  const double content_m3 = plant_content_m3(plant);
  const Cycling surplus{cycle.stage_W, cycle.taken_W, entry.differential_K};
  cycle.on_s = on_s(surplus, content_m3 * water_J_per_m3K);
  cycle.off_s = off_s(surplus, content_m3 * water_J_per_m3K);
  cycle.short_runs = *cycle.on_s < entry.least_on_s;
  std::vector<Diagnostic> said;
  if (cycle.short_runs) {
    cycle.buffer_m3 = buffer_m3(surplus, entry.least_on_s, water_J_per_m3K) - content_m3;
    say_short(plant, cycle, said);
  }
  return {cycle, std::move(said)};
}

}  // namespace slabwright
