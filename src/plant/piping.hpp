// Private to the plant: what it is piped up from. A file for each way of joining boiler and floor.
#pragma once
#include <optional>
#include <vector>

#include "slabwright/plant.hpp"

namespace slabwright {

/// All that a source is piped up from.
struct SourcePlan {
  const Design& design;
  Liquid liquid;
  Pump floor_pump;
  std::optional<Pump> boiler_pump, injection_pump;
  std::optional<Pump> second_pump = {};  ///< of the floor's circulators, where it is another kind
  double setting_share = 0.5;            ///< of the stem's way to all hot
};

// Each adds its nodes and branches to the graph and says which they are.
SourcePiping pipe_direct(HydronicGraph& graph, const SourcePlan& plan);
/// Closely spaced tees, a separator, a buffer tank: two circuits that share a short wide piece.
SourcePiping pipe_decoupled(HydronicGraph& graph, const SourcePlan& plan);
SourcePiping pipe_mixing_valve(HydronicGraph& graph, const SourcePlan& plan);
SourcePiping pipe_injection(HydronicGraph& graph, const SourcePlan& plan);

// --- Parts they share ---

std::vector<Element> heater(const Design& design);
/// Fittings of the mains' bore.
Element fittings(const Design& design, double loss_coefficient);
/// Two tees as close as they go, straight through.
std::vector<Element> close_tees(const Design& design);
std::vector<Element> joined(std::vector<Element> first, const std::vector<Element>& second);
/// The floor's circulators from one node to another with `more` in series, and their branches in `piping`.
SourcePiping with_circulators(HydronicGraph& graph, const SourcePlan& plan, SourcePiping piping, NodeId from,
                              std::vector<Element> more);

/// What the source is to carry at design.
struct SourceDuty {
  double floor_m3_per_s = 0.0;
  double boiler_m3_per_s = 0.0;  ///< in a circuit of its own
  double hot_share = 0.5;        ///< of boiler water in the supply
};
SourceDuty source_duty(const Design& design, const LoopPlan& loops, const FloorPlan* floor);

/// Elements of the boiler's own circuit and of the injecting branch, without pumps.
std::vector<Element> boiler_circuit(const Design& design);
std::vector<Element> injection_circuit(const Design& design);
/// The smallest generic pump that gives so much against these elements, slowed to it.
Pump pump_for(double flow_m3_per_s, const std::vector<Element>& elements, const Liquid& liquid);
/// The stem's place at which so much of the supply comes from the boiler.
double stem_for(const Design& design, double hot_share, const Liquid& liquid);

/// The same graph with the source's stem or injecting pump at another setting; as it is where there is neither.
HydronicGraph with_setting(HydronicGraph graph, const SourcePiping& source, double setting_share);
bool has_setting(const SourcePiping& source);

std::vector<Element> loop_elements(const Design& design, const Loop& loop);
/// Mains, bars and loops from the source and back; fills `loop_branch`, `supply_side`, `return_side`, `way`.
Plant with_mains(Plant plant, const Liquid& liquid);

/// Loop flows that carry their heat at the working drop; absent where no heat is known.
std::optional<FlowTarget> target_by_heat(const Design& design, const LoopPlan& loops, const FloorPlan& floor);

}  // namespace slabwright
