// Networks whose flows follow from algebra alone.
#include <cmath>

#include "slabwright/hydraulics.hpp"
#include "support/published.hpp"

using namespace slabwright;
using slabwright::test::Oracle;
using slabwright::test::Source;

namespace {

const Source parallel{"Three square laws in parallel", "r = 1, 4, 9, 11 through all", Oracle::derived};
const Source bridge{"Bridge of square laws", "r = 1, 5, 1, 5, 1, 10 through all", Oracle::derived};
const Source laminar{"Laminar tubes in parallel", "Hagen-Poiseuille, head 0.5 m, g 9.80665", Oracle::derived};

// These networks count in plain numbers, where a millipascal is much.
constexpr NetworkOptions plain_numbers{1e-9, 1e-9, 60};
constexpr Liquid filling{1000.0, 1e-3};

std::vector<Element> square(double resistance) { return {{Part::tube, PowerLaw{resistance, 2.0}}}; }

struct Demand {
  NodeId in, out;
  double amount;
};

NetworkSolution solved(HydronicGraph& graph, const Demand& demand) {
  graph.hold_pressure(demand.in, 0.0);
  graph.set_demand(demand.out, demand.amount);
  NetworkSolution found = solve_network(graph, plain_numbers);
  REQUIRE(found.stop == Stop::converged);
  return found;
}

}  // namespace

TEST_CASE("three square laws in parallel") {
  HydronicGraph graph;
  const NodeId a = graph.add_node("a"), b = graph.add_node("b");
  for (const double r : {1.0, 4.0, 9.0}) graph.add_branch(a, b, "branch", filling, square(r));
  const NetworkSolution found = solved(graph, {a, b, 11.0});
  CHECK_PUBLISHED(parallel, "flow through r = 1", "6.000000", found.flow_m3_per_s[0]);
  CHECK_PUBLISHED(parallel, "flow through r = 4", "3.000000", found.flow_m3_per_s[1]);
  CHECK_PUBLISHED(parallel, "flow through r = 9", "2.000000", found.flow_m3_per_s[2]);
  CHECK_PUBLISHED(parallel, "head over all", "36.000000", found.pressure_Pa[a.at] - found.pressure_Pa[b.at]);
}

TEST_CASE("a bridge of square laws") {
  HydronicGraph graph;
  const NodeId one = graph.add_node("1"), two = graph.add_node("2"), three = graph.add_node("3"),
               four = graph.add_node("4");
  graph.add_branch(one, two, "12", filling, square(1.0));
  graph.add_branch(one, three, "13", filling, square(5.0));
  graph.add_branch(two, three, "23", filling, square(1.0));
  graph.add_branch(two, four, "24", filling, square(5.0));
  graph.add_branch(three, four, "34", filling, square(1.0));
  const NetworkSolution found = solved(graph, {one, four, 10.0});
  CHECK_PUBLISHED(bridge, "flow 1-2", "6.6666667", found.flow_m3_per_s[0]);
  CHECK_PUBLISHED(bridge, "flow 1-3", "3.3333333", found.flow_m3_per_s[1]);
  CHECK_PUBLISHED(bridge, "flow 2-3", "3.3333333", found.flow_m3_per_s[2]);
  CHECK_PUBLISHED(bridge, "flow 2-4", "3.3333333", found.flow_m3_per_s[3]);
  CHECK_PUBLISHED(bridge, "flow 3-4", "6.6666667", found.flow_m3_per_s[4]);
  const auto head = [&](NodeId from, NodeId to) { return found.pressure_Pa[from.at] - found.pressure_Pa[to.at]; };
  CHECK_PUBLISHED(bridge, "head 1-2", "44.4444", head(one, two));
  CHECK_PUBLISHED(bridge, "head 2-3", "11.1111", head(two, three));
  CHECK_PUBLISHED(bridge, "head 1-4", "100.0000", head(one, four));
}

TEST_CASE("laminar tubes in parallel") {
  const double density = 1036.24, head_Pa = 0.5 * 9.80665 * density;
  const Liquid glycol{density, density * 4.410175248977e-6};
  HydronicGraph graph;
  const NodeId a = graph.add_node("a"), b = graph.add_node("b");
  graph.hold_pressure(a, head_Pa);
  graph.hold_pressure(b, 0.0);
  for (const double length : {61.0, 76.0, 91.0}) {
    graph.add_branch(a, b, "loop", glycol, {{Part::tube, Bore{length, 0.012319, 7e-6}}});
  }
  const NetworkSolution found = solve_network(graph);
  REQUIRE(found.stop == Stop::converged);
  CHECK_PUBLISHED(laminar, "flow, 61 m, m3/s", "1.03025972e-5", found.flow_m3_per_s[0]);
  CHECK_PUBLISHED(laminar, "flow, 76 m, m3/s", "8.26918987e-6", found.flow_m3_per_s[1]);
  CHECK_PUBLISHED(laminar, "flow, 91 m, m3/s", "6.90613660e-6", found.flow_m3_per_s[2]);
}
