// Zone valves shut: the same coupling loop, some loops without flow.
#include "slabwright/plant_zones.hpp"

namespace slabwright {
namespace {

// What a network solver leaves of noise.
constexpr double no_flow_m3_per_s = 1e-8;

}  // namespace

Checked<OperatingPoint> zones_shut(const Plant& plant, const Conditions& conditions, const OperatingPoint& open,
                                   double least_boiler_m3_per_s) {
  const std::vector<std::size_t> shut = loops_shut(plant.design, plant.loops);
  if (shut.empty()) return {};
  OperatingPoint point = operate(with_shut(plant, shut), conditions, open.supply_degC, &open);
  std::vector<Diagnostic> said;
  if (point.stop != Stop::converged)
    said.push_back({Severity::warning,
                    "plant.shut-not-settled",
                    "pump",
                    "with zone valves shut flow and temperature of {} did not settle together; take them as rough.",
                    {point.worst}});
  const SourceState& source = point.source;
  const bool all_shut = shut.size() == plant.loops.loop.size();
  if (all_shut && source.bypass_m3_per_s < no_flow_m3_per_s) {
    const bool late = plant.source.bypass.has_value();
    said.push_back({Severity::warning,
                    "plant.all-shut",
                    "pump.bypass_opening",
                    late ? "with every zone valve shut the pump presses with {} and its bypass stays shut: let it open "
                           "at less."
                         : "with every zone valve shut the pump presses with {} and moves nothing: let the valves stop "
                           "it, or give it a bypass.",
                    {Measured{source.pump.front().pressure_Pa, Dimension::pressure}}});
  } else if (plant.design.boiler.kind == BoilerKind::electric_boiler &&
             source.boiler_m3_per_s < least_boiler_m3_per_s && open.source.boiler_m3_per_s >= least_boiler_m3_per_s) {
    said.push_back(
        {Severity::warning,
         "plant.shut-flow",
         "boiler.least_flow",
         "with zone valves shut the boiler gets {} and wants {}: a bypass that opens in time, or a pump of "
         "its own.",
         {Measured{source.boiler_m3_per_s, Dimension::flow}, Measured{least_boiler_m3_per_s, Dimension::flow}}});
  }
  return {std::move(point), std::move(said)};
}

}  // namespace slabwright
