// Valve settings: what the network does with them, solved again with the turns rounded.
#include <algorithm>
#include <cmath>

#include "plant/plants.hpp"
#include "slabwright/balance.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Balanced {
  Plant plant;
  FlowTarget target;
  Balance balance;
};

Balanced by_heat(const Design& design) {
  const Piped p = piped(design);
  const FlowTarget target = target_flows(p.plant, &p.envelope);
  return {p.plant, target, balance_plant(p.plant, target, target.supply_degC).value.value()};
}

Balanced by_lengths(const std::vector<std::string>& lengths) {
  std::vector<std::pair<std::string, std::string>> keys{{"tube.size", "1/2 in"}};
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    keys.push_back({"loop[" + std::to_string(i + 1) + "].length", lengths[i]});
  }
  const Design design = from_keys(keys).design;
  const Plant plant = pipe_up(design, plan_loops(design).value.value(), nullptr).value.value();
  const FlowTarget target = target_flows(plant, nullptr);
  return {plant, target, balance_plant(plant, target, target.supply_degC).value.value()};
}

}  // namespace

TEST_CASE("reported flows are those of the network with the rounded settings") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Balanced b = by_heat(one.file.design);
    const Plant set = with_settings(b.plant, b.balance.turns, b.balance.pump_speed_share);
    const NetworkSolution solved = flows_at(set, b.target.supply_degC);
    for (std::size_t i = 0; i < b.balance.port.size(); ++i) {
      const PortSetting& port = b.balance.port[i];
      CHECK(port.after_m3_per_s == Approx(solved.flow_m3_per_s[set.loop_branch[i].at]));
      CHECK(std::abs(port.set_turns * 4.0 - std::round(port.set_turns * 4.0)) < 1e-12);
    }
  }
}

TEST_CASE("a port wide open is the last row of the maker's table") {
  Design design = layout("ten-lines").file.design;
  design.valve.points = {{0.05, 0.5}, {0.39, 4.5}};
  const Piped p = piped(design);
  const FlowTarget target = target_flows(p.plant, &p.envelope);
  const ValveTurns last(p.plant.loop_branch.size(), 4.5);
  const NetworkSolution open = flows_at(p.plant, target.supply_degC);
  const NetworkSolution turned = flows_at(with_settings(p.plant, last, 1.0), target.supply_degC);
  for (const BranchId loop : p.plant.loop_branch)
    CHECK(open.flow_m3_per_s[loop.at] == Approx(turned.flow_m3_per_s[loop.at]));
}

TEST_CASE("with exact settings every loop carries its aim, the hardest one open") {
  const Balanced b = by_lengths({"188 ft", "241 ft", "262 ft", "290 ft"});
  Plant set = with_settings(b.plant, {}, b.balance.pump_speed_share);
  for (std::size_t i = 0; i < b.balance.port.size(); ++i) {
    std::vector<Element> elements = set.graph.elements(set.loop_branch[i]);
    for (Element& e : elements) {
      if (e.part == Part::balancing_valve) e.shape = KvValve{b.balance.port[i].exact_kv};
    }
    set.graph.set_elements(set.loop_branch[i], elements);
  }
  const NetworkSolution solved = flows_at(set, b.target.supply_degC);
  for (std::size_t i = 0; i < b.balance.port.size(); ++i) {
    CHECK(solved.flow_m3_per_s[set.loop_branch[i].at] == Approx(b.balance.port[i].aim_m3_per_s).epsilon(1e-4));
  }
  CHECK(b.balance.port[b.balance.hardest].loop == b.plant.loops.loop[3].name);
  CHECK(b.balance.port[b.balance.hardest].open);
}

TEST_CASE("no port is turned where open ports are good enough") {
  const Balanced alike = by_lengths({"250 ft", "252 ft", "250 ft"});
  CHECK(alike.balance.open_is_enough);
  CHECK(alike.balance.move.empty());
  for (const PortSetting& port : alike.balance.port) {
    CHECK(port.open);
    CHECK(port.within);
    CHECK(port.after_m3_per_s == Approx(port.open_m3_per_s));
  }
  const Balanced apart = by_lengths({"150 ft", "290 ft", "290 ft"});
  CHECK_FALSE(apart.balance.open_is_enough);
  CHECK_FALSE(apart.balance.move.empty());
}

TEST_CASE("the shorter the loop the further its port is shut") {
  const Balanced b = by_lengths({"188 ft", "241 ft", "262 ft", "290 ft"});
  for (std::size_t i = 1; i < b.balance.port.size(); ++i) {
    CHECK(b.balance.port[i].exact_turns > b.balance.port[i - 1].exact_turns);
  }
}

TEST_CASE("the order in which loops are written changes no loop's setting") {
  const Balanced b = by_lengths({"188 ft", "241 ft", "262 ft", "290 ft"});
  const Balanced turned = by_lengths({"290 ft", "262 ft", "241 ft", "188 ft"});
  for (std::size_t i = 0; i < 4; ++i) {
    // Only the place on the bars differs, a few pascals of some kilopascals.
    CHECK(turned.balance.port[3 - i].exact_kv == Approx(b.balance.port[i].exact_kv).epsilon(0.02));
    CHECK(turned.balance.port[3 - i].aim_m3_per_s == Approx(b.balance.port[i].aim_m3_per_s).epsilon(0.02));
  }
}

TEST_CASE("the last move leaves what is reported after") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Balanced b = by_heat(one.file.design);
    if (b.balance.move.empty()) continue;
    for (std::size_t i = 0; i < b.balance.port.size(); ++i) {
      CHECK(b.balance.move.back().then_m3_per_s[i] == Approx(b.balance.port[i].after_m3_per_s).epsilon(1e-6));
    }
  }
}

TEST_CASE("good enough costs at most three percent of a loop's heat") {
  const Balanced b = by_heat(layout("frame-shop").file.design);
  for (const PortSetting& port : b.balance.port) {
    CHECK(port.least_m3_per_s < port.aim_m3_per_s);
    CHECK(port.most_m3_per_s > port.aim_m3_per_s);
    // Half the flow costs far more than 3 %; a few percent cost next to nothing.
    CHECK(port.least_m3_per_s > 0.5 * port.aim_m3_per_s);
    CHECK(port.least_m3_per_s < 0.97 * port.aim_m3_per_s);
  }
}

TEST_CASE("a pump that is too weak is said") {
  DesignFile file = layout("ten-lines").file;
  file = with_key(file, "pump.flow", "12 gpm").value();
  const Piped p = piped(file.design);
  const FlowTarget target = target_flows(p.plant, &p.envelope);
  const auto balance = balance_plant(p.plant, target, target.supply_degC);
  REQUIRE(balance);
  CHECK(balance.value->pump_reach_share < 1.0);
  CHECK(std::any_of(balance.said.begin(), balance.said.end(),
                    [](const Diagnostic& d) { return d.code == "balance.pump-too-weak"; }));
}

// Water drawn from a closed circuit comes from nowhere: no flows fulfil that.
TEST_CASE("flows that do not settle are said, and where") {
  const Balanced b = by_lengths({"188 ft", "241 ft", "262 ft"});
  Plant leaking = b.plant;
  leaking.graph.set_demand(leaking.graph.from(leaking.loop_branch[0]), 1e-4);
  const auto again = balance_plant(leaking, b.target, b.target.supply_degC);
  const auto said = std::count_if(again.said.begin(), again.said.end(),
                                  [](const Diagnostic& d) { return d.code == "balance.not-settled"; });
  CHECK(said == 3);  // with every port open, with the ports set, and on the way there
  CHECK(operate(leaking, {}, 40.0).stop == Stop::no_solution);
  // Named by the node that its pressures count from.
  CHECK(operate(leaking, {}, 40.0).worst == leaking.graph.name(NodeId{0}));
}
