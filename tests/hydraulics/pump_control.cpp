// Pumps with a control of their own: constant pressure, and pressure that falls with the flow. derived: each circuit
// here is a single resistance, whose flow is the root of a quadratic.
#include <cmath>

#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const PumpLaw strong{8.0, 6.0 / per_hour, 2.0};
const double weight = warm_water.density_kg_per_m3 * 9.80665;

Pump held(double head_m, double flow_m3_per_s, double no_flow_share) {
  return {held_to(strong, {head_m, flow_m3_per_s, no_flow_share})};
}

/// A pump round `branches` equal resistances side by side, some of them shut.
NetworkSolution round(const Pump& pump, int branches, int shut, double resistance) {
  HydronicGraph graph;
  const NodeId a = graph.add_node("in"), b = graph.add_node("out");
  graph.add_branch(a, b, "pump", warm_water, {{Part::pump, pump}});
  for (int i = 0; i < branches; ++i) {
    std::vector<Element> elements{{Part::tube, PowerLaw{resistance, 2.0}}};
    if (i < shut) elements.push_back({Part::balancing_valve, Shut{}});
    graph.add_branch(b, a, "loop", warm_water, std::move(elements));
  }
  return solve_network(graph);
}

}  // namespace

TEST_CASE("a control line rises to its head and stays there") {
  const PumpControl control{4.0, 2e-3, 0.5};
  CHECK(control_line_m(control, -1e-3) == 2.0);
  CHECK(control_line_m(control, 0.0) == 2.0);
  CHECK(control_line_m(control, 1e-3) == 3.0);
  CHECK(control_line_m(control, 2e-3) == 4.0);
  CHECK(control_line_m(control, 9e-3) == 4.0);
}

TEST_CASE("a pump with a control gives the lesser of line and curve, and still turns steeply against back flow") {
  const Pump pump = held(4.0, 2.0 / per_hour, 0.5);
  CHECK(head_at(pump, 0.0).head_m == 2.0);
  CHECK(head_at(pump, 1.0 / per_hour).head_m == Approx(3.0));
  CHECK(head_at(pump, 2.0 / per_hour).head_m == Approx(4.0));
  CHECK(head_at(pump, 5.0 / per_hour).head_m == Approx(head_at(Pump{strong}, 5.0 / per_hour).head_m));
  CHECK(head_at(pump, -1e-5).head_m > 2.0);
  CHECK(head_at(pump, -1e-5).outside);
  CHECK(range_m3_per_s(pump) == range_m3_per_s(Pump{strong}));
  // Affinity takes the line along.
  CHECK(head_at({pump.curve, 0.5}, 1.0 / per_hour).head_m == Approx(0.25 * 4.0));
}

TEST_CASE("constant pressure gives each open loop the same, however many are shut") {
  const double resistance = weight * 3.0 / std::pow(0.5 / per_hour, 2);
  for (const int shut : {0, 1, 2, 3}) {
    const NetworkSolution solved = round(held(3.0, 2.0 / per_hour, 1.0), 4, shut, resistance);
    REQUIRE(solved.stop == Stop::converged);
    CHECK(solved.flow_m3_per_s[4] == Approx(0.5 / per_hour).epsilon(1e-6));
  }
  const NetworkSolution none = round(held(3.0, 2.0 / per_hour, 1.0), 4, 4, resistance);
  REQUIRE(none.stop == Stop::converged);
  CHECK(none.flow_m3_per_s[0] == 0.0);
}

TEST_CASE("proportional pressure settles where line and circuit meet") {
  const double design = 2.0 / per_hour, head_m = 4.0;
  const double resistance = weight * head_m / std::pow(0.25 * design, 2);
  for (const int shut : {0, 1, 2, 3}) {
    const NetworkSolution solved = round(held(head_m, design, 0.5), 4, shut, resistance);
    REQUIRE(solved.stop == Stop::converged);
    // With q = Q / design and n of 4 loops open: (1 + q) / 2 = (4 / n)^2 q^2.
    const double square = std::pow(4.0 / (4.0 - shut), 2);
    const double q = (1.0 + std::sqrt(1.0 + 8.0 * square)) / (4.0 * square);
    CHECK(solved.flow_m3_per_s[0] / design == Approx(q).epsilon(1e-6));
  }
}

TEST_CASE("two pumps side by side with one control settle as one of twice the flow") {
  const double design = 1.0 / per_hour;
  const Pump pump = held(4.0, design, 0.5);
  HydronicGraph graph;
  const NodeId a = graph.add_node("in"), b = graph.add_node("out");
  for (int i = 0; i < 2; ++i) {
    graph.add_branch(a, b, "pump", warm_water,
                     {{Part::pump, pump}, {Part::pump, CheckValve{0.0}}, {Part::pump, Fitting{2.0, 0.025}}});
  }
  // Far above the valves' own loss.
  const double resistance = 2.0 * weight * 4.0 / std::pow(design, 2);
  graph.add_branch(b, a, "loop", warm_water, {{Part::tube, PowerLaw{resistance, 2.0}}});
  const NetworkSolution both = solve_network(graph);
  REQUIRE(both.stop == Stop::converged);
  CHECK(both.flow_m3_per_s[0] == Approx(both.flow_m3_per_s[1]));
  // (1 + q) / 2 = (8 + v) q^2 for the flow q of one, v what the fitting loses at its design flow over the head.
  const double v = fitting_loss(2.0, 0.025, warm_water, design).pressure_Pa / (weight * 4.0);
  CHECK(both.flow_m3_per_s[0] / design ==
        Approx((0.5 + std::sqrt(0.25 + 2.0 * (8.0 + v))) / (2.0 * (8.0 + v))).epsilon(1e-6));
}
