// Direct: the floor's pump draws the floor's water through the boiler.
#include "plant/piping.hpp"

namespace slabwright {

SourcePiping pipe_direct(HydronicGraph& graph, const SourcePlan& plan) {
  SourcePiping piping;
  piping.back = graph.add_node("heater inlet");
  piping.out = graph.add_node("heater outlet");
  piping = with_circulators(graph, plan, piping, piping.back, heater(plan.design));
  piping.boiler = piping.way.front();
  return piping;
}

}  // namespace slabwright
