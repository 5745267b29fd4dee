#include "plant/filled.hpp"

#include "plant/piping.hpp"

namespace slabwright {

void fill(HydronicGraph& graph, const Plant& plant, double supply_degC, const std::vector<double>& return_degC) {
  const Mixture mixture = mixture_of(plant.design.fluid);
  double mixed_degC = 0.0;
  for (std::size_t i = 0; i < return_degC.size(); ++i) {
    graph.set_liquid(plant.loop_branch[i], liquid(mixture, 0.5 * (supply_degC + return_degC[i])));
    mixed_degC += return_degC[i] / static_cast<double>(return_degC.size());
  }
  for (const BranchId branch : plant.supply_side) graph.set_liquid(branch, liquid(mixture, supply_degC));
  for (const BranchId branch : plant.return_side) graph.set_liquid(branch, liquid(mixture, mixed_degC));
  // Where the floor's water goes through the boiler the pump stands in the return: it is cooler there and lasts longer.
  for (const BranchId branch : plant.source.branch) graph.set_liquid(branch, liquid(mixture, mixed_degC));
  if (plant.source.mix) graph.set_liquid(plant.source_branch, liquid(mixture, supply_degC));
}

HydronicGraph as_it_runs(const Plant& plant, const OperatingPoint& point) {
  HydronicGraph graph = plant.graph;
  std::vector<double> returns;
  for (const LoopState& loop : point.loop) returns.push_back(loop.return_degC);
  fill(graph, plant, point.supply_degC, returns);
  if (point.source.setting_share) graph = with_setting(std::move(graph), plant.source, *point.source.setting_share);
  return graph;
}

}  // namespace slabwright
