// Two circuits, each with its pump, that share a piece so short and wide that neither pump feels the other.
#include "plant/piping.hpp"

namespace slabwright {
namespace {

// Practice: a separator's or a buffer's body is three pipe diameters wide; water enters and leaves it.
constexpr double body_diameters = 3.0, body_coefficient = 1.5;
constexpr double tee_branch_coefficient = 1.0;

std::vector<Element> shared(const Design& design) {
  if (design.boiler.piping == BoilerPiping::tees) return close_tees(design);
  return {{Part::mains, Fitting{body_coefficient, body_diameters * design.mains.inside_diameter_m}}};
}

}  // namespace

SourcePiping pipe_decoupled(HydronicGraph& graph, const SourcePlan& plan) {
  SourcePiping piping;
  piping.back = graph.add_node("return tee");
  const NodeId supply = graph.add_node("supply tee");
  piping.out = graph.add_node("floor supply");
  piping.boiler = graph.add_branch(piping.back, supply, "boiler and its pump", plan.liquid,
                                   joined({{Part::pump, *plan.boiler_pump}}, boiler_circuit(plan.design)));
  piping.mix = graph.add_branch(piping.back, supply, "between the tees", plan.liquid, shared(plan.design));
  piping.branch = {piping.boiler, *piping.mix};
  piping.way = {*piping.mix};
  return with_circulators(graph, plan, piping, supply, {fittings(plan.design, tee_branch_coefficient)});
}

}  // namespace slabwright
