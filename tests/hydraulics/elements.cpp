// Every kind of element: its slope, its way in a network, and what the trade builds of them.
#include <algorithm>
#include <cmath>

#include "hydraulics/branch_law.hpp"
#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Pump stepped{*pump_table({{0.0, 6.0}, {2e-4, 5.5}, {4e-4, 4.0}, {6e-4, 1.0}}).value, 0.8};
const std::vector<Shape> every_kind{Bore{40.0, 0.012, 7e-6},
                                    Fitting{4.8, 0.012},
                                    KvValve{1.1},
                                    PowerLaw{1e9, 1.852},
                                    PowerLaw{1e11, 2.0},
                                    Pump{PumpLaw{6.0, 1e-3, 1.7}, 0.9},
                                    stepped,
                                    CheckValve{},
                                    CheckValve{1500.0},
                                    BypassValve{2e4, 1e4, 2.5}};

struct OneBranch {
  HydronicGraph graph;
  BranchId branch;
};

OneBranch one_branch(const Shape& shape) {
  OneBranch made;
  const NodeId from = made.graph.add_node("from"), to = made.graph.add_node("to");
  made.branch = made.graph.add_branch(from, to, "branch", warm_water, {{Part::tube, shape}});
  return made;
}

// A bypass valve between two pressures that are held.
double bypass_flow(double pressure_Pa, const BypassValve& valve) {
  HydronicGraph graph;
  const NodeId supply = graph.add_node("supply"), back = graph.add_node("return");
  graph.hold_pressure(supply, pressure_Pa);
  graph.hold_pressure(back, 0.0);
  graph.add_branch(supply, back, "bypass", warm_water, {{Part::mains, valve}});
  const NetworkSolution solved = solve_network(graph, {1e-14, 1e-9, 60});
  REQUIRE(solved.stop == Stop::converged);
  return solved.flow_m3_per_s[0];
}

}  // namespace

TEST_CASE("the slope of every kind of element is the derivative of its loss") {
  for (std::size_t kind = 0; kind < every_kind.size(); ++kind) {
    const OneBranch made = one_branch(every_kind[kind]);
    BranchLaws laws(made.graph);
    for (const double flow : {-3e-4, -2e-5, 2e-5, 1.1e-4, 3e-4, 5e-4, 2e-3}) {
      CAPTURE(kind, flow);
      const double step = 1e-5 * std::abs(flow);
      const auto loss = [&](double at) { return branch_loss(made.graph, made.branch, at); };
      const double rise = (loss(flow + step).pressure_Pa - loss(flow - step).pressure_Pa) / (2.0 * step);
      const Loss here = loss(flow);
      // The third derivative leaves 1e-10 of the slope, a few of them where a table bends; rounding the rest.
      const double allowed = 1e-8 * std::abs(rise) + 1e-15 * std::abs(here.pressure_Pa) / step;
      CHECK(std::abs(here.slope_Pa_s_per_m3 - rise) <= allowed);
      CHECK(std::abs(laws.loss(0, flow).slope_Pa_s_per_m3 - rise) <= allowed);
      CHECK(here.slope_Pa_s_per_m3 >= 0.0);
    }
  }
}

TEST_CASE("a bypass valve is shut below its opening pressure, then opens in proportion, then is a valve") {
  const BypassValve valve{2e4, 1e4, 2.5};
  const double open_kv_m3_per_s = 2.5 / per_hour, share = warm_water.density_kg_per_m3 / 1000.0;
  const auto flow = [&](double y, double pressure) { return y * open_kv_m3_per_s * std::sqrt(pressure / 1e5 / share); };
  CHECK(bypass_flow(-5e4, valve) == 0.0);
  CHECK(bypass_flow(1.9999e4, valve) == 0.0);
  CHECK(std::abs(bypass_flow(2.1e4, valve) - flow(0.1, 2.1e4)) <= 1e-9);
  CHECK(std::abs(bypass_flow(2.75e4, valve) - flow(0.75, 2.75e4)) <= 1e-9);
  CHECK(std::abs(bypass_flow(3.0e4, valve) - flow(1.0, 3.0e4)) <= 1e-9);
  CHECK(std::abs(bypass_flow(6.0e4, valve) - flow(1.0, 6.0e4)) <= 1e-9);
}

TEST_CASE("a bypass valve takes what shut zones leave over, and holds the pressure down") {
  Manifold made =
      manifold({{{60.0, 1.1}, {80.0, 1.1}, {100.0, 1.1}}, warm_water, {6.0, 3.5 / per_hour, 2.0}, 12.0, false});
  HydronicGraph zoned = made.graph;
  for (const std::size_t shut : {1, 2}) {
    std::vector<Element> elements = zoned.elements(made.loop[shut]);
    elements.push_back({Part::balancing_valve, Shut{}});
    zoned.set_elements(made.loop[shut], elements);
  }
  const auto across = [](const NetworkSolution& solved) { return solved.pressure_Pa[0] - solved.pressure_Pa[1]; };
  const double with_all = across(solve_network(made.graph)), with_one = across(solve_network(zoned));
  const BypassValve valve{with_all + 0.1 * (with_one - with_all), 0.3 * (with_one - with_all), 4.0};
  const BranchId bypass = made.graph.add_branch({0}, {1}, "bypass", warm_water, {{Part::mains, valve}});
  zoned.add_branch({0}, {1}, "bypass", warm_water, {{Part::mains, valve}});
  NetworkSolver solver(made.graph);
  const NetworkSolution all = solver.solve(made.graph), one = solver.solve(zoned, all.flow_m3_per_s);
  CHECK(all.checked == std::vector<BranchId>{bypass});
  CHECK(across(all) == Approx(with_all));
  CHECK(one.stop == Stop::converged);
  CHECK(one.checked.empty());
  CHECK(one.flow_m3_per_s[bypass.at] > 1e-5);
  CHECK(across(one) > valve.opening_Pa);
  CHECK(across(one) < valve.opening_Pa + valve.band_Pa);
}

TEST_CASE("a check valve's spring holds until the pressure behind it is enough") {
  HydronicGraph graph;
  const NodeId high = graph.add_node("high"), low = graph.add_node("low");
  graph.hold_pressure(low, 0.0);
  graph.add_branch(high, low, "check", warm_water, {{Part::mains, CheckValve{1500.0}}, {Part::mains, KvValve{1.0}}});
  NetworkSolver solver(graph);
  graph.hold_pressure(high, 1499.0);
  CHECK(solver.solve(graph).checked.size() == 1);
  graph.hold_pressure(high, 2500.0);
  const NetworkSolution open = solver.solve(graph);
  CHECK(open.checked.empty());
  CHECK(kv_for(open.flow_m3_per_s[0], 1000.0, warm_water) == Approx(1.0));
}
