// What mixes in separators, three-way valves and along pipes.
#include "slabwright/handbook_mixing.hpp"
#include "slabwright/hydraulics.hpp"
#include "support/published.hpp"

using namespace slabwright;
using slabwright::test::Oracle;
using slabwright::test::Source;

namespace {

const Source separator{"Hydraulic separator", "balance of volume flows and heat", Oracle::derived};
const Source mixing{"Three-way mixing", "45 from 70 and 37 degC, 1.2 m3/h", Oracle::derived};
const Source plug{"Pipe of 100 m, 75 mm, 3 kg/s, 90 degC in, 20 degC around", "plug flow", Oracle::derived};

constexpr double per_hour = 3600.0;
constexpr Liquid water{992.2, 652.7e-6};

// A separator is two nodes and the way between them; flows are given, as the two pumps would have it.
struct Separated {
  double floor_supply_degC, boiler_return_degC;
};
Separated separated(double primary_m3_per_h, double secondary_m3_per_h, double boiler_degC, double floor_degC) {
  HydronicGraph graph;
  const NodeId top = graph.add_node("top"), bottom = graph.add_node("bottom");
  graph.add_branch(bottom, top, "boiler", water, {});
  graph.add_branch(top, bottom, "floor", water, {});
  graph.add_branch(top, bottom, "body", water, {});
  const double primary = primary_m3_per_h / per_hour, secondary = secondary_m3_per_h / per_hour;
  const CarriedTemperatures found = carried_temperatures(graph, {primary, secondary, primary - secondary},
                                                         {leaves_at(boiler_degC), leaves_at(floor_degC), {}});
  return {found.node_degC[top.at], found.node_degC[bottom.at]};
}

}  // namespace

TEST_CASE("separator") {
  CHECK_PUBLISHED(separator, "floor supply, degC: 0.6 m3/h at 55, 1.2 back at 35", "45.0",
                  separated(0.6, 1.2, 55.0, 35.0).floor_supply_degC);
  CHECK_PUBLISHED(separator, "boiler return, degC: 1.5 m3/h at 55, 1.2 back at 35", "39.0",
                  separated(1.5, 1.2, 55.0, 35.0).boiler_return_degC);
}

TEST_CASE("three-way mixing") {
  const double share = mixing_share(45.0, 37.0, 70.0).value();
  CHECK_PUBLISHED(mixing, "share of hot water", "0.2424242", share);
  CHECK_PUBLISHED(mixing, "hot water, m3/h", "0.2909091", 1.2 * share);
}

TEST_CASE("a pipe that cools") {
  HydronicGraph graph;
  const NodeId in = graph.add_node("in"), out = graph.add_node("out");
  graph.hold_pressure(in, 1e5);
  graph.add_branch(in, out, "pipe", water, {});
  const Outlet pipe = cools_towards(20.0, 100.0 * 3.14159265358979 * 0.075 * 100.0, 3.0 * 4197.0);
  const CarriedTemperatures found = carried_temperatures(graph, {3e-3}, {pipe}, {20.0, 1e-9, 90.0});
  CHECK_PUBLISHED(plug, "temperature at the end, K", "351.2033", found.node_degC[out.at] + 273.15);
}
