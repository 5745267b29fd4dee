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
const Source pumps{"Pumps of H = 9 - Q^2", "a square law r = 1 around", Oracle::derived};
const Source reverse{"Reverse return of square laws", "three loops r = 9, mains r = 1", Oracle::derived};
const Source held_back{"A weak pump behind a check valve", "H = 1 - Q^2 beside H = 9 - Q^2, r = 2", Oracle::derived};
const Source tees{"Closely spaced tees", "primary 4 through, secondary 2 of its own pump", Oracle::derived};
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
  CHECK_PUBLISHED(parallel, "flow through r = 1", "6.000000000", found.flow_m3_per_s[0]);
  CHECK_PUBLISHED(parallel, "flow through r = 4", "3.000000000", found.flow_m3_per_s[1]);
  CHECK_PUBLISHED(parallel, "flow through r = 9", "2.000000000", found.flow_m3_per_s[2]);
  CHECK_PUBLISHED(parallel, "head over all", "36.000000000", found.pressure_Pa[a.at] - found.pressure_Pa[b.at]);
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
  CHECK_PUBLISHED(bridge, "flow 1-2", "6.666666667", found.flow_m3_per_s[0]);
  CHECK_PUBLISHED(bridge, "flow 1-3", "3.333333333", found.flow_m3_per_s[1]);
  CHECK_PUBLISHED(bridge, "flow 2-3", "3.333333333", found.flow_m3_per_s[2]);
  CHECK_PUBLISHED(bridge, "flow 2-4", "3.333333333", found.flow_m3_per_s[3]);
  CHECK_PUBLISHED(bridge, "flow 3-4", "6.666666667", found.flow_m3_per_s[4]);
  const auto head = [&](NodeId from, NodeId to) { return found.pressure_Pa[from.at] - found.pressure_Pa[to.at]; };
  CHECK_PUBLISHED(bridge, "head 1-2", "44.444444444", head(one, two));
  CHECK_PUBLISHED(bridge, "head 2-3", "11.111111111", head(two, three));
  CHECK_PUBLISHED(bridge, "head 1-4", "100.000000000", head(one, four));
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

namespace {

// Heads in Pa: a pump of this liquid gives 9 at rest and nothing at a flow of 3.
constexpr Liquid one_Pa_per_m{1.0 / 9.80665, 1e-3};
Element pump(double no_flow_head) { return {Part::pump, Pump{PumpLaw{no_flow_head, std::sqrt(no_flow_head), 2.0}}}; }

NetworkSolution closed(const HydronicGraph& graph) {
  NetworkSolution found = solve_network(graph, {1e-12, 1e-11, 60});
  REQUIRE(found.stop == Stop::converged);
  return found;
}

}  // namespace

TEST_CASE("pumps in series and in parallel") {
  HydronicGraph series, parallel_pumps;
  for (HydronicGraph* graph : {&series, &parallel_pumps}) {
    const NodeId back = graph->add_node("return"), supply = graph->add_node("supply");
    graph->add_branch(supply, back, "circuit", one_Pa_per_m, square(1.0));
    graph->add_branch(back, supply, "pump", one_Pa_per_m, {pump(9.0)});
  }
  series.set_elements({1}, {pump(9.0), pump(9.0)});
  parallel_pumps.add_branch({0}, {1}, "pump", one_Pa_per_m, {pump(9.0)});
  // One: 9 - Q^2 = Q^2. In series: 18 - 2 Q^2 = Q^2. In parallel: 9 - (Q/2)^2 = Q^2.
  CHECK_PUBLISHED(pumps, "two in series, flow", "2.449489743", closed(series).flow_m3_per_s[0]);
  const NetworkSolution found = closed(parallel_pumps);
  CHECK_PUBLISHED(pumps, "two in parallel, flow", "2.683281573", found.flow_m3_per_s[0]);
  CHECK_PUBLISHED(pumps, "two in parallel, flow of one", "1.341640786", found.flow_m3_per_s[1]);
}

TEST_CASE("a weak pump behind a check valve") {
  HydronicGraph graph;
  const NodeId back = graph.add_node("return"), supply = graph.add_node("supply");
  graph.add_branch(supply, back, "circuit", one_Pa_per_m, square(2.0));
  graph.add_branch(back, supply, "strong", one_Pa_per_m, {pump(9.0)});
  graph.add_branch(back, supply, "weak", one_Pa_per_m, {pump(1.0), {Part::pump, CheckValve{}}});
  const NetworkSolution found = closed(graph);
  CHECK_PUBLISHED(held_back, "flow of the strong pump", "1.732050808", found.flow_m3_per_s[1]);
  CHECK_PUBLISHED(held_back, "flow of the weak pump", "0.000000000", found.flow_m3_per_s[2]);
}

// Supply s1 - s2 - s3, return r1 - r2 - r3 and away from r3: the outer loops are alike, and with a, b, a through them
// the heads over s1 s2 r2 and s1 r1 r2 give r (a^2 - b^2) = a^2 - (a + b)^2 turned: 9 a^2 + a^2 = (a + b)^2 + 9 b^2.
TEST_CASE("reverse return") {
  HydronicGraph graph;
  for (const char* name : {"s1", "s2", "s3", "r1", "r2", "r3"}) graph.add_node(name);
  for (std::size_t i = 0; i < 3; ++i) graph.add_branch({i}, {i + 3}, "loop", filling, square(9.0));
  for (const std::size_t i : {0, 1, 3, 4}) graph.add_branch({i}, {i + 1}, "main", filling, square(1.0));
  const NetworkSolution found = solved(graph, {{0}, {5}, 3.0});
  // b = t a with 10 = (1 + t)^2 + 9 t^2: t = (sqrt(91) - 1) / 10; 2 a + b = 3.
  CHECK_PUBLISHED(reverse, "flow of the first loop", "1.051178665", found.flow_m3_per_s[0]);
  CHECK_PUBLISHED(reverse, "flow of the middle loop", "0.897642670", found.flow_m3_per_s[1]);
  CHECK_PUBLISHED(reverse, "flow of the last loop", "1.051178665", found.flow_m3_per_s[2]);
}

// Between tees that lose nothing the two circuits do not feel each other.
TEST_CASE("closely spaced tees") {
  HydronicGraph graph;
  for (const char* name : {"boiler", "tee", "next tee", "floor"}) graph.add_node(name);
  graph.add_branch({0}, {1}, "primary", one_Pa_per_m, {{Part::pump, Pump{PumpLaw{32.0, std::sqrt(32.0), 2.0}}}});
  graph.add_branch({1}, {2}, "between the tees", one_Pa_per_m, {});
  graph.add_branch({2}, {0}, "primary return", one_Pa_per_m, square(1.0));
  graph.add_branch({1}, {3}, "secondary", one_Pa_per_m, {{Part::pump, Pump{PumpLaw{8.0, std::sqrt(8.0), 2.0}}}});
  graph.add_branch({3}, {2}, "secondary return", one_Pa_per_m, square(1.0));
  const NetworkSolution found = closed(graph);
  CHECK_PUBLISHED(tees, "primary flow", "4.000000000", found.flow_m3_per_s[0]);
  CHECK_PUBLISHED(tees, "secondary flow", "2.000000000", found.flow_m3_per_s[3]);
  CHECK_PUBLISHED(tees, "flow between the tees", "2.000000000", found.flow_m3_per_s[1]);
}
