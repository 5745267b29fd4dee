// Open pipes between held pressures, of an open pipe-network library whose reference columns an equation-based
// simulation gave; and the same solved once more with exact Colebrook friction.
#include <numbers>

#include "slabwright/hydraulics.hpp"
#include "support/published.hpp"

using namespace slabwright;
using slabwright::test::Oracle;
using slabwright::test::Source;
using slabwright::test::Within;

namespace {

const Source open{"Open pipe-network library (BSD-3), reference columns", "", Oracle::published};
const Source exact{"Colebrook-White by fluids 1.0.22", "open pipes, water at 20 degC", Oracle::reference_code};
constexpr Within their_test{0.0, 0.01, "what the library's own tests allow"};

constexpr Liquid water{998.207, 998.207 * 1.0034e-6};

Source at(const char* place) { return {open.title, place, open.oracle}; }

std::vector<Element> pipe(double length_m, double bore_m) { return {{Part::mains, Bore{length_m, bore_m, 1e-4}}}; }

double pressure_drop(double length_m, double mass_flow_kg_per_s) {
  HydronicGraph graph;
  const NodeId source = graph.add_node("source"), sink = graph.add_node("sink");
  graph.hold_pressure(source, 0.0);
  graph.set_demand(sink, mass_flow_kg_per_s / water.density_kg_per_m3);
  graph.add_branch(source, sink, "pipe", water, pipe(length_m, 0.075));
  const NetworkSolution solved = solve_network(graph);
  REQUIRE(solved.stop == Stop::converged);
  return -solved.pressure_Pa[sink.at];
}

}  // namespace

TEST_CASE("pipe_1: 2 km of 75 mm") {
  const double drop = pressure_drop(2000.0, 1.3821);
  CHECK_PUBLISHED(at("pipe_1"), "pressure drop, Pa", "36330.48", drop, their_test);
  CHECK_PUBLISHED(exact, "pipe_1, pressure drop, Pa", "36344.80", drop);
}

TEST_CASE("pipe_2: 10 km of 75 mm") {
  const double drop = pressure_drop(10000.0, 1.325);
  CHECK_PUBLISHED(at("pipe_2"), "pressure drop, Pa", "168163.08", drop, their_test);
  CHECK_PUBLISHED(exact, "pipe_2, pressure drop, Pa", "168229.35", drop);
}

TEST_CASE("two_pipes: a sink between two feeds") {
  HydronicGraph graph;
  const NodeId left = graph.add_node("left"), middle = graph.add_node("middle"), right = graph.add_node("right");
  graph.hold_pressure(left, 5e5);
  graph.hold_pressure(right, 5e5);
  graph.set_demand(middle, 13.89 / water.density_kg_per_m3);
  graph.add_branch(left, middle, "2 km", water, pipe(2000.0, 0.1));
  graph.add_branch(right, middle, "1 km", water, pipe(1000.0, 0.1));
  const NetworkSolution solved = solve_network(graph);
  REQUIRE(solved.stop == Stop::converged);
  const double area = 0.25 * std::numbers::pi * 0.1 * 0.1;
  const double far = solved.flow_m3_per_s[0] / area, near = solved.flow_m3_per_s[1] / area;
  CHECK_PUBLISHED(at("two_pipes"), "velocity in 2 km, m/s", "0.725662", far, their_test);
  CHECK_PUBLISHED(at("two_pipes"), "velocity in 1 km, m/s", "1.045751", near, their_test);
  CHECK_PUBLISHED(at("two_pipes"), "pressure at the sink, bar", "3.794220", solved.pressure_Pa[middle.at] / 1e5,
                  their_test);
  CHECK_PUBLISHED(exact, "two_pipes, velocity in 2 km, m/s", "0.725794", far);
  CHECK_PUBLISHED(exact, "two_pipes, velocity in 1 km, m/s", "1.045912", near);
}
