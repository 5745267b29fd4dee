// Verdicts on pumps, bypass and mixing between boiler and floor.
#include "plant/judge_source.hpp"

namespace slabwright {
namespace {

Measured flow(double m3_per_s) { return {m3_per_s, Dimension::flow}; }
using measured::degree;

/// The boiler's own circuit: what it must make so that the floor gets its supply.
void judge_own_circuit(const Plant& plant, const OperatingPoint& point, std::vector<Diagnostic>& said) {
  const SourceState& source = point.source;
  const double hottest_degC = plant.design.boiler.hottest_degC;
  if (plant.design.boiler.kind == BoilerKind::none || point.supply_degC > hottest_degC) return;
  if (!source.reached && plant.source.injection) {
    said.push_back({Severity::failure,
                    "plant.injection-short",
                    "boiler.piping",
                    "the injecting pump cannot bring the floor to {} with boiler water of {}: hotter boiler water, or "
                    "more flow in the boiler's circuit.",
                    {degree(point.supply_degC), degree(hottest_degC)}});
  } else if (!source.reached) {
    said.push_back({Severity::failure,
                    "plant.no-boiler-water",
                    "boiler.piping",
                    "none of the boiler's water reaches the floor: its pump moves {}.",
                    {flow(source.boiler_m3_per_s)}});
  } else if (source.boiler_degC > hottest_degC) {
    said.push_back(
        {Severity::failure,
         "plant.boiler-too-cool",
         "boiler.flow",
         "the floor moves {} and the boiler's circuit {}: the boiler would have to make {} and stops at {}. More flow "
         "in its circuit.",
         {flow(point.flow_m3_per_s), flow(source.boiler_m3_per_s), degree(source.boiler_degC), degree(hottest_degC)}});
  }
}

}  // namespace

void judge_source(const Plant& plant, const OperatingPoint& point, std::vector<Diagnostic>& said) {
  judge_own_circuit(plant, point, said);
  // A valve that passes a hundredth is open for no use; less than that is its first drop.
  constexpr double wasteful_share = 0.01;
  if (point.source.bypass_m3_per_s > wasteful_share * point.flow_m3_per_s) {
    said.push_back({Severity::warning,
                    "plant.bypass-open",
                    "pump.bypass_opening",
                    "with all loops open the bypass already passes {}, which the pump moves for nothing: let it open "
                    "at more, or the pump run slower.",
                    {flow(point.source.bypass_m3_per_s)}});
  }
  for (const PumpState& pump : point.source.pump) {
    if (pump.stands) {
      said.push_back({Severity::failure,
                      "plant.pump-stands",
                      "pump",
                      "{} moves nothing: what stands beside it presses harder than it can.",
                      {pump.name}});
    } else if (pump.outside) {
      said.push_back({Severity::warning,
                      "plant.pump-outside",
                      "pump",
                      "{} runs at {}, beyond its curve as given: its figures are a guess.",
                      {pump.name, flow(pump.flow_m3_per_s)}});
    }
  }
}

}  // namespace slabwright
