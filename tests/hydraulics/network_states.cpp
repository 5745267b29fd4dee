// Networks in the states that an installation can be in: no pump, shut valves, check valves, cut off parts.
#include <algorithm>
#include <cmath>

#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const ManifoldSpec three_loops{
    {{60.0, 1.1}, {80.0, 1.1}, {100.0, 1.1}}, warm_water, {6.0, 3.5 / per_hour, 2.0}, 12.0, true};

double most(const std::vector<double>& values) {
  double worst = 0.0;
  for (const double value : values) worst = std::max(worst, std::abs(value));
  return worst;
}

void shut(HydronicGraph& graph, BranchId branch) {
  std::vector<Element> elements = graph.elements(branch);
  elements.push_back({Part::balancing_valve, Shut{}});
  graph.set_elements(branch, std::move(elements));
}

std::vector<Element> pump(double head_m) {
  return {{Part::pump, Pump{PumpLaw{head_m, 3.0 / per_hour, 2.0}}}, {Part::mains, Bore{5.0, 0.022, 7e-6}}};
}

}  // namespace

TEST_CASE("without a pump the water stands") {
  Manifold made = manifold(three_loops);
  made.graph.set_elements(made.pump, {{Part::mains, Bore{12.0, 0.022, 7e-6}}});
  const NetworkSolution solved = solve_network(made.graph);
  CHECK(solved.stop == Stop::converged);
  CHECK(most(solved.flow_m3_per_s) == 0.0);
  CHECK(most(solved.pressure_Pa) == 0.0);
}

TEST_CASE("with every loop shut the pump stands at its head and nothing flows") {
  Manifold made = manifold(three_loops);
  for (const BranchId loop : made.loop) shut(made.graph, loop);
  const NetworkSolution solved = solve_network(made.graph);
  CHECK(solved.stop == Stop::converged);
  CHECK(most(solved.flow_m3_per_s) <= 1e-12);
  const double rise =
      solved.pressure_Pa[made.graph.to(made.pump).at] - solved.pressure_Pa[made.graph.from(made.pump).at];
  CHECK(rise == Approx(6.0 * 9.80665 * warm_water.density_kg_per_m3));
}

TEST_CASE("a shut loop leaves its water to the others") {
  Manifold made = manifold(three_loops);
  NetworkSolver solver(made.graph);
  const NetworkSolution open = solver.solve(made.graph);
  shut(made.graph, made.loop[1]);
  const NetworkSolution one_shut = solver.solve(made.graph, open.flow_m3_per_s);
  CHECK(one_shut.stop == Stop::converged);
  CHECK(one_shut.flow_m3_per_s[made.loop[1].at] == 0.0);
  CHECK(one_shut.flow_m3_per_s[made.loop[0].at] > open.flow_m3_per_s[made.loop[0].at]);
  CHECK(one_shut.flow_m3_per_s[made.loop[2].at] > open.flow_m3_per_s[made.loop[2].at]);
}

TEST_CASE("parts that do not touch are solved side by side, each from its own datum") {
  HydronicGraph graph;
  for (int part = 0; part < 2; ++part) {
    const NodeId supply = graph.add_node("supply"), back = graph.add_node("return");
    graph.add_branch(back, supply, "pump", warm_water, pump(4.0));
    graph.add_branch(supply, back, "loop", warm_water, {{Part::tube, Bore{80.0, 0.012, 7e-6}}});
  }
  graph.add_node("alone");
  const NetworkSolution solved = solve_network(graph);
  CHECK(solved.stop == Stop::converged);
  CHECK(solved.flow_m3_per_s[0] > 0.0);
  CHECK(solved.flow_m3_per_s[0] == Approx(solved.flow_m3_per_s[2]).epsilon(1e-9));
  CHECK(solved.pressure_Pa[0] == 0.0);
  CHECK(solved.pressure_Pa[2] == 0.0);
  CHECK(solved.pressure_Pa[4] == 0.0);
}

TEST_CASE("a held pressure moves all pressures and no flow") {
  Manifold made = manifold(three_loops);
  const NetworkSolution before = solve_network(made.graph, tight);
  made.graph.hold_pressure(made.graph.from(made.pump), 1.2e5);
  const NetworkSolution after = solve_network(made.graph, tight);
  for (std::size_t k = 0; k < made.graph.branch_count(); ++k) {
    CHECK(std::abs(after.flow_m3_per_s[k] - before.flow_m3_per_s[k]) <= flow_digits_m3_per_s);
  }
  CHECK(after.pressure_Pa[made.graph.from(made.pump).at] == 1.2e5);
}

TEST_CASE("a check valve stops the pump it faces") {
  Manifold made = manifold(three_loops);
  std::vector<Element> elements = made.graph.elements(made.loop[0]);
  elements.push_back({Part::return_valve, CheckValve{}});
  made.graph.set_elements(made.loop[0], elements);
  CHECK(solve_network(made.graph).checked.empty());

  HydronicGraph faced;
  const NodeId supply = faced.add_node("supply"), back = faced.add_node("return");
  faced.add_branch(back, supply, "pump", warm_water, pump(4.0));
  const BranchId valve =
      faced.add_branch(back, supply, "check", warm_water, {{Part::tube, CheckValve{}}, {Part::tube, KvValve{1.0}}});
  const NetworkSolution solved = solve_network(faced);
  CHECK(solved.stop == Stop::converged);
  CHECK(solved.checked == std::vector<BranchId>{valve});
  CHECK(most(solved.flow_m3_per_s) <= 1e-12);
}

TEST_CASE("a weak pump beside a strong one is held by its check valve, and runs again when it is alone") {
  HydronicGraph graph;
  const NodeId supply = graph.add_node("supply"), back = graph.add_node("return");
  std::vector<Element> weak = pump(1.0), strong = pump(6.0);
  weak.push_back({Part::pump, CheckValve{}});
  const BranchId first = graph.add_branch(back, supply, "weak", warm_water, weak);
  const BranchId second = graph.add_branch(back, supply, "strong", warm_water, strong);
  graph.add_branch(supply, back, "loop", warm_water, {{Part::tube, Bore{80.0, 0.012, 7e-6}}});
  NetworkSolver solver(graph);
  const NetworkSolution both = solver.solve(graph);
  CHECK(both.stop == Stop::converged);
  CHECK(both.checked == std::vector<BranchId>{first});
  CHECK(both.flow_m3_per_s[first.at] == 0.0);
  shut(graph, second);
  const NetworkSolution alone = solver.solve(graph, both.flow_m3_per_s);
  CHECK(alone.checked.empty());
  CHECK(alone.flow_m3_per_s[first.at] > 1e-5);
}

TEST_CASE("a pump beyond its curve is named") {
  ManifoldSpec spec = three_loops;
  spec.pump = {8.0, 0.3 / per_hour, 2.0};
  CHECK(solve_network(manifold(spec).graph).outside_curve.empty());
  HydronicGraph graph;
  const NodeId supply = graph.add_node("supply"), back = graph.add_node("return");
  const BranchId weak = graph.add_branch(back, supply, "weak", warm_water, pump(1.0));
  graph.add_branch(back, supply, "strong", warm_water, pump(6.0));
  CHECK(solve_network(graph).outside_curve.front() == weak);
}

TEST_CASE("a demand that no held pressure can serve is no solution, and is named") {
  HydronicGraph graph;
  const NodeId source = graph.add_node("source"), tap = graph.add_node("tap");
  graph.hold_pressure(source, 3e5);
  graph.set_demand(tap, 2e-4);
  const BranchId branch = graph.add_branch(source, tap, "run", warm_water, {{Part::tube, Bore{20.0, 0.012, 7e-6}}});
  const NetworkSolution served = solve_network(graph);
  CHECK(served.stop == Stop::converged);
  CHECK(served.flow_m3_per_s[branch.at] == Approx(2e-4));
  shut(graph, branch);
  const NetworkSolution cut_off = solve_network(graph);
  CHECK(cut_off.stop == Stop::no_solution);
  CHECK(cut_off.worst_imbalance_m3_per_s == Approx(2e-4));
  CHECK(cut_off.worst_name == "tap");
}

TEST_CASE("rounds spent are said, with what is worst") {
  const Manifold made = manifold(three_loops);
  const NetworkSolution solved = solve_network(made.graph, {1e-9, 1e-3, 1});
  CHECK(solved.stop == Stop::rounds_spent);
  CHECK(solved.rounds == 1);
  CHECK(solved.worst_head_Pa > 1e-3);
  CHECK_FALSE(solved.worst_name.empty());
}

TEST_CASE("branches that lose nothing pass their water on") {
  Manifold made = manifold(three_loops);
  const NetworkSolution before = solve_network(made.graph, tight);
  HydronicGraph longer = made.graph;
  const NodeId end = longer.add_node("end of a wide pipe");
  longer.add_branch(longer.to(made.pump), end, "wide", warm_water, {});
  longer.add_branch(end, longer.from(made.pump), "loop 4", warm_water, longer.elements(made.loop[0]));
  const NetworkSolution after = solve_network(longer, tight);
  CHECK(after.stop == Stop::converged);
  const std::size_t wide = longer.branch_count() - 2;
  CHECK(after.flow_m3_per_s[wide] == Approx(after.flow_m3_per_s[wide + 1]));
  CHECK(after.flow_m3_per_s[wide] < before.flow_m3_per_s[made.loop[0].at]);
}

TEST_CASE("a solver serves its own layout only") {
  Manifold made = manifold(three_loops);
  NetworkSolver solver(made.graph);
  CHECK_THROWS(solver.solve(made.graph, {0.0}));
  made.graph.add_branch({0}, {1}, "one more", warm_water, {});
  CHECK_THROWS(solver.solve(made.graph));
  CHECK_THROWS(solve_network({}));
}
