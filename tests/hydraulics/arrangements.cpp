// What the trade pipes up: three-way and injection mixing, separators, rows of check valves.
#include <algorithm>
#include <cmath>

#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const std::vector<Element> main_pipe{{Part::mains, Bore{3.0, 0.028, 7e-6}}};
const std::vector<Element> floor_loops{{Part::tube, PowerLaw{2e10, 1.8}}};

std::vector<Element> pump(double head_m) {
  return {{Part::pump, Pump{PumpLaw{head_m, 3.0 / per_hour, 2.0}}}, {Part::mains, Bore{2.0, 0.028, 7e-6}}};
}

struct Mixed {
  NetworkSolution flows;
  double floor_supply_degC = 0.0, hot_share = 0.0;
};

// A boiler with its own pump holds a wide separator at 70 degC; the floor's pump draws through a three-way valve; the
// floor gives its water back at 37 degC.
Mixed three_way(double hot_share) {
  HydronicGraph graph;
  for (const char* name : {"separator", "separator foot", "mixed", "floor", "floor return"}) graph.add_node(name);
  const ThreeWayPorts ports = ports_at({4.0, 1e-3}, hot_share);
  graph.add_branch({1}, {0}, "boiler", warm_water, pump(4.0));
  graph.add_branch({0}, {1}, "body", warm_water, {{Part::mains, Fitting{0.2, 0.08}}});
  const BranchId hot =
      graph.add_branch({0}, {2}, "hot port", warm_water, {{Part::mixing_valve, KvValve{ports.hot_kv}}});
  graph.add_branch({4}, {2}, "return port", warm_water, {{Part::mixing_valve, KvValve{ports.return_kv}}});
  const BranchId draw = graph.add_branch({2}, {3}, "floor pump", warm_water, pump(5.0));
  graph.add_branch({3}, {4}, "floor", warm_water, floor_loops);
  graph.add_branch({4}, {1}, "back", warm_water, main_pipe);
  Mixed made{solve_network(graph), 0.0, 0.0};
  const std::vector<Outlet> outlets{leaves_at(70.0), {}, {}, {}, {}, leaves_at(37.0), {}};
  made.floor_supply_degC = carried_temperatures(graph, made.flows.flow_m3_per_s, outlets).node_degC[2];
  made.hot_share = made.flows.flow_m3_per_s[hot.at] / made.flows.flow_m3_per_s[draw.at];
  return made;
}

}  // namespace

TEST_CASE("a three-way valve warms the floor from return to boiler as it turns") {
  double before = 0.0;
  for (const double share : {0.0, 0.1, 0.3, 0.5, 0.7, 0.9, 1.0}) {
    const Mixed now = three_way(share);
    REQUIRE(now.flows.stop == Stop::converged);
    CHECK(now.floor_supply_degC > before);
    CHECK(now.hot_share == Approx((now.floor_supply_degC - 37.0) / (70.0 - 37.0)));
    before = now.floor_supply_degC;
  }
  CHECK(three_way(0.0).floor_supply_degC < 37.2);
  CHECK(three_way(1.0).floor_supply_degC > 69.5);
}

// Injection: a small pump pushes boiler water into the floor's circuit through one of two tees; as much comes back
// through the other.
TEST_CASE("injection mixing gives the floor what its pump injects") {
  double before = 37.0;
  for (const double speed : {0.4, 0.6, 0.8, 1.0}) {
    HydronicGraph graph;
    for (const char* name : {"boiler out", "boiler in", "tee in", "tee out", "floor"}) graph.add_node(name);
    graph.add_branch({1}, {0}, "boiler", warm_water, pump(3.0));
    graph.add_branch({0}, {1}, "primary", warm_water, main_pipe);
    const Pump small{PumpLaw{2.0, 0.8 / per_hour, 2.0}, speed};
    const BranchId injection =
        graph.add_branch({0}, {2}, "injection", warm_water, {{Part::pump, small}, {Part::mains, CheckValve{}}});
    graph.add_branch({3}, {1}, "injection return", warm_water, {{Part::mains, KvValve{1.5}}});
    graph.add_branch({3}, {2}, "between the tees", warm_water, {{Part::mains, Bore{0.1, 0.028, 7e-6}}});
    const BranchId floor = graph.add_branch({2}, {4}, "floor pump", warm_water, pump(5.0));
    graph.add_branch({4}, {3}, "floor", warm_water, floor_loops);
    const NetworkSolution solved = solve_network(graph, tight);
    REQUIRE(solved.stop == Stop::converged);
    const std::vector<Outlet> outlets{leaves_at(70.0), {}, {}, {}, {}, {}, leaves_at(37.0)};
    const double supply = carried_temperatures(graph, solved.flow_m3_per_s, outlets).node_degC[2];
    const double injected = solved.flow_m3_per_s[injection.at] / solved.flow_m3_per_s[floor.at];
    CHECK(supply == Approx(37.0 + injected * 33.0));
    CHECK(supply > before);
    before = supply;
  }
}

// A long row of circulators in parallel, each with its check valve, each weaker than the one before: most are held.
TEST_CASE("a hundred check valves find their places together") {
  HydronicGraph graph;
  const NodeId back = graph.add_node("return"), supply = graph.add_node("supply");
  graph.add_branch(supply, back, "floor", warm_water, floor_loops);
  for (int i = 0; i < 100; ++i) {
    std::vector<Element> elements = pump(8.0 - 0.07 * i);
    elements.push_back({Part::pump, CheckValve{}});
    graph.add_branch(back, supply, "circulator", warm_water, elements);
  }
  const NetworkSolution solved = solve_network(graph);
  CHECK(solved.stop == Stop::converged);
  CHECK(solved.checked.size() > 50);
  CHECK(solved.checked.size() < 100);
  CHECK(solved.rounds < 200);
  // The weakest are held, and nobody stronger than a held one is.
  CHECK(solved.checked.back() == BranchId{100});
  CHECK(solved.checked.front().at == 101 - solved.checked.size());
}

TEST_CASE("water that is taken out finds its way past a bypass that the pumps cannot open") {
  // A valve that opens at 70 kPa, thought open, would push back harder than pumps that lift 59 kPa: it stands wrong,
  // not they.
  for (const int pumps : {1, 2, 3}) {
    HydronicGraph graph;
    const NodeId back = graph.add_node("return"), supply = graph.add_node("supply");
    for (int i = 0; i < pumps; ++i) {
      std::vector<Element> elements = pump(6.0);
      elements.push_back({Part::pump, CheckValve{}});
      graph.add_branch(back, supply, "circulator", warm_water, elements);
    }
    const BranchId bypass = graph.add_branch(supply, back, "bypass", warm_water, {{Part::mains, BypassValve{7e4}}});
    graph.set_demand(supply, 2e-4);
    graph.set_demand(back, -2e-4);
    const NetworkSolution solved = solve_network(graph);
    CHECK(solved.stop == Stop::converged);
    CHECK(solved.checked == std::vector<BranchId>{bypass});
    for (int i = 0; i < pumps; ++i) CHECK(solved.flow_m3_per_s[static_cast<std::size_t>(i)] == Approx(2e-4 / pumps));
  }
}

TEST_CASE("between check valves that face each other the water stands, whatever pushes outside") {
  HydronicGraph graph;
  for (const char* name : {"supply", "between", "return"}) graph.add_node(name);
  graph.add_branch({2}, {0}, "pump", warm_water, pump(4.0));
  graph.add_branch({0}, {2}, "floor", warm_water, floor_loops);
  graph.add_branch({1}, {0}, "one", warm_water, {{Part::mains, CheckValve{}}, {Part::mains, KvValve{1.0}}});
  graph.add_branch({1}, {2}, "other", warm_water, {{Part::mains, CheckValve{}}, {Part::mains, KvValve{1.0}}});
  const NetworkSolution solved = solve_network(graph);
  CHECK(solved.stop == Stop::converged);
  CHECK(std::abs(solved.flow_m3_per_s[2]) <= 1e-9);
  CHECK(std::abs(solved.flow_m3_per_s[3]) <= 1e-9);
  CHECK(solved.flow_m3_per_s[1] > 1e-5);
}

TEST_CASE("a small pump in series with a large one is driven beyond its curve and turned into a resistance") {
  HydronicGraph graph;
  const NodeId back = graph.add_node("return"), between = graph.add_node("between"), supply = graph.add_node("supply");
  const Pump small{PumpLaw{1.0, 0.2 / per_hour, 2.0}};
  const BranchId driven = graph.add_branch(back, between, "small", warm_water, {{Part::pump, small}});
  graph.add_branch(between, supply, "large", warm_water, pump(7.0));
  graph.add_branch(supply, back, "floor", warm_water, floor_loops);
  const NetworkSolution solved = solve_network(graph);
  CHECK(solved.stop == Stop::converged);
  CHECK(solved.outside_curve == std::vector<BranchId>{driven});
  CHECK(solved.pressure_Pa[between.at] < solved.pressure_Pa[back.at]);
}
