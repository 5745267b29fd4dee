// Temperatures that flows carry: balances at every node and over the whole, against a second way of finding them.
#include <algorithm>
#include <cmath>

#include "plants.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double water_J_per_m3K = 4.15e6;

struct Warm {
  HydronicGraph graph;
  std::vector<double> flow;
  std::vector<Outlet> outlets;
  TemperatureOptions options;
};

// A plant at random with its flows: the boiler holds its outlet or heats with a power, loops cool, the rest passes on.
Warm random_warm_plant(Dice& dice) {
  Warm made{random_plant(dice), {}, {}, {18.0, 1e-9, 10.0}};
  const NetworkSolution solved = solve_network(made.graph, {1e-14, 1e-8, 100});
  REQUIRE(solved.stop == Stop::converged);
  made.flow = solved.flow_m3_per_s;
  for (std::size_t k = 0; k < made.flow.size(); ++k) {
    const double capacity = water_J_per_m3K * std::max(std::abs(made.flow[k]), 1e-9);
    const std::string& name = made.graph.name(BranchId{k});
    Outlet outlet;
    if (name == "boiler") outlet = dice.once_in(2) ? leaves_at(50.0) : takes_up(8e3, capacity);
    if (name == "loop") outlet = cools_towards(20.0, dice.between(20.0, 200.0), capacity);
    made.outlets.push_back(outlet);
  }
  return made;
}

struct Sums {
  std::vector<double> inflow, carried;  ///< by node: m3/s, and m3/s times degC
};

Sums brought(const Warm& plant, const std::vector<double>& outlet_degC) {
  Sums sums{std::vector<double>(plant.graph.node_count(), 0.0), std::vector<double>(plant.graph.node_count(), 0.0)};
  for (std::size_t k = 0; k < plant.flow.size(); ++k) {
    const double flow = std::abs(plant.flow[k]);
    if (flow < plant.options.least_flow_m3_per_s) continue;
    const NodeId end = plant.flow[k] > 0.0 ? plant.graph.to({k}) : plant.graph.from({k});
    sums.inflow[end.at] += flow;
    sums.carried[end.at] += flow * outlet_degC[k];
  }
  return sums;
}

double upstream(const Warm& plant, const std::vector<double>& node_degC, std::size_t k) {
  return node_degC[(plant.flow[k] > 0.0 ? plant.graph.from({k}) : plant.graph.to({k})).at];
}

// Water sent round again and again, until nothing changes any more.
std::vector<double> sent_round(const Warm& plant) {
  std::vector<double> node(plant.graph.node_count(), plant.options.still_degC);
  for (int round = 0; round < 2000000; ++round) {
    std::vector<double> outlet(plant.flow.size());
    for (std::size_t k = 0; k < outlet.size(); ++k) {
      outlet[k] = plant.outlets[k].added_degC + plant.outlets[k].kept_ratio * upstream(plant, node, k);
    }
    const Sums sums = brought(plant, outlet);
    double moved = 0.0;
    for (std::size_t i = 0; i < node.size(); ++i) {
      if (sums.inflow[i] == 0.0) continue;
      const double mixed = sums.carried[i] / sums.inflow[i];
      moved = std::max(moved, std::abs(mixed - node[i]));
      node[i] = mixed;
    }
    if (moved <= 1e-12) break;
  }
  return node;
}

}  // namespace

TEST_CASE("at every mixing point what comes in is what goes on, and all heat taken up is given off") {
  int mixing = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    Dice dice(seed);
    const Warm plant = random_warm_plant(dice);
    const CarriedTemperatures found = carried_temperatures(plant.graph, plant.flow, plant.outlets, plant.options);
    CAPTURE(seed, found.undetermined);
    if (found.stop == Stop::no_solution) continue;  // a circuit of its own without boiler or loop
    const Sums sums = brought(plant, found.outlet_degC);
    double apart = 0.0, heat = 0.0, turned = 0.0, dropped = 0.0;
    for (std::size_t i = 0; i < sums.inflow.size(); ++i) {
      if (sums.inflow[i] == 0.0) continue;
      apart = std::max(apart, std::abs(sums.carried[i] / sums.inflow[i] - found.node_degC[i]));
      ++mixing;
    }
    for (std::size_t k = 0; k < plant.flow.size(); ++k) {
      if (std::abs(plant.flow[k]) < plant.options.least_flow_m3_per_s) {
        dropped += std::abs(plant.flow[k]);
        continue;
      }
      const double change = found.outlet_degC[k] - upstream(plant, found.node_degC, k);
      heat += std::abs(plant.flow[k]) * change;
      turned += std::abs(plant.flow[k] * change);
    }
    CHECK(apart <= 1e-9);
    // Water that counts as standing takes along what it carries above its surroundings, some tens of kelvin.
    CHECK(std::abs(heat) <= 1e-9 * turned + 100.0 * dropped);
  }
  CHECK(mixing > 2000);
}

TEST_CASE("one linear system finds what water sent round for long ends at") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    Dice dice(seed);
    const Warm plant = random_warm_plant(dice);
    const CarriedTemperatures found = carried_temperatures(plant.graph, plant.flow, plant.outlets, plant.options);
    if (found.stop == Stop::no_solution) continue;
    const std::vector<double> second = sent_round(plant);
    CAPTURE(seed);
    double apart = 0.0;
    for (std::size_t i = 0; i < second.size(); ++i) apart = std::max(apart, std::abs(second[i] - found.node_degC[i]));
    CHECK(apart <= 1e-7);
  }
}

TEST_CASE("a round that nothing heats or cools has no temperature, and is named") {
  HydronicGraph graph;
  const NodeId a = graph.add_node("left"), b = graph.add_node("right"), c = graph.add_node("end");
  const Liquid water{992.2, 652.7e-6};
  graph.add_branch(a, b, "there", water, {});
  graph.add_branch(b, a, "back", water, {});
  graph.add_branch(b, c, "tail", water, {});
  const std::vector<double> flow{1e-4, 1e-4, 0.0};
  const CarriedTemperatures lost = carried_temperatures(graph, flow, {{}, takes_up(100.0, 400.0), {}});
  CHECK(lost.stop == Stop::no_solution);
  CHECK(lost.undetermined == "left");
  const CarriedTemperatures set = carried_temperatures(graph, flow, {leaves_at(40.0), {}, {}}, {15.0, 1e-9, 10.0});
  CHECK(set.stop == Stop::converged);
  CHECK(set.node_degC[0] == Approx(40.0));
  CHECK(set.node_degC[2] == 15.0);
  CHECK_THROWS(carried_temperatures(graph, flow, {{}, {}}));
  CHECK_THROWS(carried_temperatures(graph, flow, {{}, {0.0, 1.5}, {}}));
}
