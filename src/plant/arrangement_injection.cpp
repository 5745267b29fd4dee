// Injection mixing: the boiler's water goes round a circuit of its own; a small pump takes as much of it as the floor
// needs through two pipes into the floor's circuit, and as much comes back.
#include "plant/piping.hpp"

namespace slabwright {

SourcePiping pipe_injection(HydronicGraph& graph, const SourcePlan& plan) {
  constexpr double tee_branch_coefficient = 1.0;
  SourcePiping piping;
  piping.back = graph.add_node("floor's return tee");
  const NodeId supply = graph.add_node("floor's supply tee");
  piping.out = graph.add_node("floor supply");
  const NodeId hot = graph.add_node("boiler's supply tee"), cool = graph.add_node("boiler's return tee");
  const auto add = [&](NodeId from, NodeId to, const char* name, std::vector<Element> elements) {
    piping.branch.push_back(graph.add_branch(from, to, name, plan.liquid, std::move(elements)));
    return piping.branch.back();
  };
  piping.boiler =
      add(cool, hot, "boiler and its pump", joined({{Part::pump, *plan.boiler_pump}}, boiler_circuit(plan.design)));
  add(hot, cool, "between the boiler's tees", close_tees(plan.design));
  piping.injection =
      add(hot, supply, "injection pump", joined({{Part::pump, *plan.injection_pump}}, injection_circuit(plan.design)));
  add(piping.back, cool, "back from injection", injection_circuit(plan.design));
  piping.mix = add(piping.back, supply, "between the floor's tees", close_tees(plan.design));
  piping.way = {*piping.mix};
  return with_circulators(graph, plan, piping, supply, {fittings(plan.design, tee_branch_coefficient)});
}

}  // namespace slabwright
