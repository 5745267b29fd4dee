// The hydronic graph solved again, as the answer leaves it.
#include <algorithm>
#include <cmath>
#include <optional>

#include "plant/filled.hpp"
#include "plant/piping.hpp"
#include "slabwright/handbook_practice.hpp"
#include "support/identities.hpp"

namespace slabwright::test {
namespace {

/// Piped up, balanced and set as the answer says.
std::optional<Plant> plant_of(const Answer& a) {
  for (std::size_t row = 0; row < generic_pumps().size(); ++row) {
    const auto piped = pipe_up(a.file.design, *a.loops, &*a.floor, row);
    if (!piped || (a.sizes && piped.value->pump_name != a.sizes->pump.tried_on)) continue;
    return with_settings(as_balanced(*piped.value, *a.balance), a.balance->turns, a.balance->pump_speed_share);
  }
  return std::nullopt;
}

}  // namespace

std::vector<Identity> identities_of_graph(const Answer& a) {
  std::vector<Identity> found;
  if (!a.point || !a.balance || !a.floor || !a.sizes) return found;
  const auto plant = plant_of(a);
  if (!plant) return {{"the plant of the answer", 0.0, 1.0, 1.0, adds_up_share}};
  const HydronicGraph graph = as_it_runs(*plant, *a.point);
  const NetworkSolution solved = solve_network(graph);
  std::vector<double> in(graph.node_count(), 0.0);
  double largest = 0.0;
  for (std::size_t row = 0; row < graph.branch_count(); ++row) {
    const BranchId branch{row};
    in[graph.from(branch).at] -= solved.flow_m3_per_s[row];
    in[graph.to(branch).at] += solved.flow_m3_per_s[row];
    largest = std::max(largest, std::abs(solved.flow_m3_per_s[row]));
  }
  found.push_back({"the network settles", solved.stop == Stop::converged ? 1.0 : 0.0, 1.0, 1.0, adds_up_share});
  for (std::size_t node = 0; node < in.size(); ++node)
    found.push_back({"water at " + graph.name(NodeId{node}), in[node], 0.0, largest, adds_up_share});
  for (std::size_t i = 0; i < plant->loop_branch.size(); ++i)
    found.push_back({"flow of " + a.loops->loop[i].name, solved.flow_m3_per_s[plant->loop_branch[i].at],
                     a.point->loop[i].flow_m3_per_s, largest, settled_share});
  return found;
}

}  // namespace slabwright::test
