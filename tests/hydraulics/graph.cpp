// The graph itself: what it keeps, what it refuses, and what follows from the way it is joined.
#include <limits>

#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const std::vector<Element> tube{{Part::tube, Bore{10.0, 0.012, 7e-6}}};
const std::vector<Element> shut{{Part::tube, Bore{10.0, 0.012, 7e-6}}, {Part::balancing_valve, Shut{}}};

// a - b - c - a, a tail c - d, and e by itself.
HydronicGraph triangle_with_tail() {
  HydronicGraph graph;
  for (const char* name : {"a", "b", "c", "d", "e"}) graph.add_node(name);
  graph.add_branch({0}, {1}, "ab", warm_water, tube);
  graph.add_branch({1}, {2}, "bc", warm_water, tube);
  graph.add_branch({2}, {0}, "ca", warm_water, tube);
  graph.add_branch({2}, {3}, "cd", warm_water, tube);
  return graph;
}

}  // namespace

TEST_CASE("a graph keeps what it was given, and so does its copy") {
  HydronicGraph graph = triangle_with_tail();
  const HydronicGraph copy = graph;
  graph.set_elements({1}, shut);
  graph.set_liquid({0}, cold_glycol);
  CHECK(copy.node_count() == 5);
  CHECK(copy.branch_count() == 4);
  CHECK(copy.name(BranchId{3}) == "cd");
  CHECK(copy.name(NodeId{4}) == "e");
  CHECK(copy.from({2}) == NodeId{2});
  CHECK(copy.to({2}) == NodeId{0});
  CHECK_FALSE(is_shut(copy, {1}));
  CHECK(is_shut(graph, {1}));
  CHECK(copy.liquid({0}).density_kg_per_m3 == warm_water.density_kg_per_m3);
  CHECK(graph.liquid({0}).density_kg_per_m3 == cold_glycol.density_kg_per_m3);
  graph = copy;
  CHECK_FALSE(is_shut(graph, {1}));
}

TEST_CASE("a valve at zero is as shut as a shut one") {
  HydronicGraph graph = triangle_with_tail();
  graph.set_elements({0}, {{Part::balancing_valve, KvValve{0.0}}});
  CHECK(is_shut(graph, {0}));
}

TEST_CASE("connected parts are counted over open branches") {
  HydronicGraph graph = triangle_with_tail();
  CHECK(connected_parts(graph) == std::vector<std::size_t>{0, 0, 0, 0, 1});
  graph.set_elements({3}, shut);
  CHECK(connected_parts(graph) == std::vector<std::size_t>{0, 0, 0, 1, 2});
}

TEST_CASE("water stands where there is no way back") {
  HydronicGraph graph = triangle_with_tail();
  CHECK(branches_without_flow(graph) == std::vector<BranchId>{{3}});
  graph.set_elements({1}, shut);
  CHECK(branches_without_flow(graph) == std::vector<BranchId>{{0}, {1}, {2}, {3}});
}

TEST_CASE("the outside is a way back") {
  HydronicGraph graph = triangle_with_tail();
  graph.hold_pressure({0}, 0.0);
  CHECK(branches_without_flow(graph) == std::vector<BranchId>{{3}});
  graph.set_demand({3}, 1e-5);
  CHECK(branches_without_flow(graph).empty());
}

TEST_CASE("branches said to be without flow have none") {
  CHECK(rc::check("still", [] {
    const HydronicGraph graph = random_mesh(*rc::gen::inRange(0, 2) == 0);
    const NetworkSolution solved = solve_network(graph, tight);
    for (const BranchId branch : branches_without_flow(graph)) {
      RC_ASSERT(std::abs(solved.flow_m3_per_s[branch.at]) <= flow_digits_m3_per_s);
    }
  }));
}

TEST_CASE("a closed triangle has one round trip, a shut one none") {
  HydronicGraph graph = triangle_with_tail();
  CHECK(independent_loops(graph).size() == 1);
  CHECK(independent_loops(graph).front().size() == 3);
  graph.set_elements({1}, shut);
  CHECK(independent_loops(graph).empty());
}

TEST_CASE("an empty graph has nothing") {
  CHECK(connected_parts({}).empty());
  CHECK(branches_without_flow({}).empty());
  CHECK(independent_loops({}).empty());
}

TEST_CASE("what makes no sense in a graph is a bug") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  HydronicGraph graph;
  const NodeId a = graph.add_node("a"), b = graph.add_node("b");
  CHECK_THROWS(graph.add_branch(a, a, "round", warm_water, tube));
  CHECK_THROWS(graph.add_branch(a, {2}, "nowhere", warm_water, tube));
  CHECK_THROWS(graph.add_branch(a, b, "dry", {0.0, 1e-3}, tube));
  const std::vector<Shape> senseless{Bore{nan, 0.012, 0.0},
                                     Bore{1.0, 0.0, 0.0},
                                     Bore{1.0, 0.012, -1e-6},
                                     Fitting{-1.0, 0.012},
                                     Fitting{1.0, nan},
                                     KvValve{-1.0},
                                     KvValve{nan},
                                     PowerLaw{nan, 2.0},
                                     PowerLaw{1.0, 0.5},
                                     Pump{PumpLaw{nan, 1e-3, 2.0}},
                                     Pump{PumpLaw{6.0, 0.0, 2.0}},
                                     Pump{PumpLaw{6.0, 1e-3, 0.5}},
                                     Pump{PumpLaw{6.0, 1e-3, 2.0}, 0.0}};
  for (const Shape& shape : senseless) CHECK_THROWS(graph.add_branch(a, b, "odd", warm_water, {{Part::tube, shape}}));
  CHECK(graph.branch_count() == 0);
  const BranchId branch = graph.add_branch(a, b, "sound", warm_water, tube);
  CHECK_THROWS(graph.set_elements(branch, {{Part::tube, KvValve{nan}}}));
  CHECK_THROWS(graph.set_liquid(branch, {nan, 1e-3}));
  CHECK_THROWS(graph.hold_pressure(a, nan));
  CHECK_THROWS(graph.set_demand(a, nan));
}
