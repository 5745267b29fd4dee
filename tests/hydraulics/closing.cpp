// Every node passes on what it gets, to the last digits of its flows.
#include <algorithm>
#include <cmath>

#include "networks.hpp"
#include "plants.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

// A few roundings of the largest flow: what a sum of some dozen terms leaves.
constexpr double digits_share = 1e-14;
constexpr double least_largest_m3_per_s = 1e-6;  // where nothing but a trickle flows

/// The most that a node which takes nothing gains or loses, of the largest flow.
double worst_share(const HydronicGraph& graph, const NetworkSolution& solved) {
  std::vector<double> in(graph.node_count(), 0.0);
  double largest = 0.0, worst = 0.0;
  for (std::size_t k = 0; k < graph.branch_count(); ++k) {
    in[graph.from({k}).at] -= solved.flow_m3_per_s[k];
    in[graph.to({k}).at] += solved.flow_m3_per_s[k];
    largest = std::max(largest, std::abs(solved.flow_m3_per_s[k]));
  }
  for (const double left : in) worst = std::max(worst, std::abs(left));
  return worst / std::max(largest, least_largest_m3_per_s);
}

template <class Draw>
double worst_of_many(const Draw& draw) {
  double worst = 0.0;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    Dice dice(seed);
    const HydronicGraph graph = draw(dice);
    const NetworkSolution solved = solve_network(graph);
    REQUIRE(solved.stop == Stop::converged);
    worst = std::max(worst, worst_share(graph, solved));
  }
  return worst;
}

}  // namespace

TEST_CASE("plants and tangles at random close at every node") {
  CHECK(worst_of_many([](Dice& dice) { return random_plant(dice); }) <= digits_share);
  CHECK(worst_of_many([](Dice& dice) { return random_tangle(dice); }) <= digits_share);
}

// A separator or a wide header: its ends differ by less than the pressures there are rounded to.
TEST_CASE("a wide pipe under a high pressure closes at its ends") {
  HydronicGraph graph;
  const NodeId back = graph.add_node("return"), supply = graph.add_node("supply"), end = graph.add_node("end");
  graph.hold_pressure(back, 3e6);
  graph.add_branch(back, supply, "pump", cold_glycol,
                   {{Part::pump, Pump{PumpLaw{1.0, 3.0 / per_hour, 2.0}}}, {Part::mains, Bore{5.0, 0.022, 7e-6}}});
  graph.add_branch(supply, end, "header", cold_glycol, {{Part::mains, Bore{0.1, 0.4, 7e-6}}});
  for (const double length_m : {60.0, 90.0, 110.0})
    graph.add_branch(end, back, "loop", cold_glycol, {{Part::tube, Bore{length_m, 0.012, 7e-6}}});
  const NetworkSolution solved = solve_network(graph);
  REQUIRE(solved.stop == Stop::converged);
  CHECK(worst_share(graph, solved) <= digits_share);
  CHECK(solved.worst_head_Pa <= NetworkOptions{}.head_Pa);
}
