// A three-way valve before the floor's pump mixes water from the boiler with water that comes back.
#include "plant/piping.hpp"

namespace slabwright {

SourcePiping pipe_mixing_valve(HydronicGraph& graph, const SourcePlan& plan) {
  constexpr double elbow_coefficient = 1.0;
  SourcePiping piping;
  piping.mixing = ThreeWayValve{};
  const ThreeWayPorts ports = ports_at(*piping.mixing, plan.setting_share);
  piping.back = graph.add_node("heater inlet");
  const NodeId mixed = graph.add_node("mixing valve");
  piping.out = graph.add_node("floor supply");
  piping.boiler = graph.add_branch(piping.back, mixed, "boiler and hot port", plan.liquid,
                                   joined(heater(plan.design), {{Part::mixing_valve, KvValve{ports.hot_kv}}}));
  piping.mix = graph.add_branch(piping.back, mixed, "return port", plan.liquid,
                                {{Part::mixing_valve, KvValve{ports.return_kv}}});
  piping.branch = {piping.boiler, *piping.mix};
  piping.way = {*piping.mix};
  return with_circulators(graph, plan, piping, mixed, {fittings(plan.design, elbow_coefficient)});
}

}  // namespace slabwright
