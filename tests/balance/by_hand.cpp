// The sequence by hand on random manifolds: what an installer gets who follows it turn by turn.
#include <algorithm>
#include <cmath>
#include <random>

#include "plant/plants.hpp"
#include "slabwright/balance.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Manifold12 {
  Plant plant;
  FlowTarget target;
  Checked<Balance> balance;
};

/// Two to twelve loops of 120 to 300 ft, a valve of some make.
Manifold12 drawn(std::mt19937& engine) {
  const auto between = [&](int least, int most) {
    return least + static_cast<int>(engine() % static_cast<unsigned>(most - least + 1));
  };
  std::vector<std::pair<std::string, std::string>> keys{{"tube.size", "1/2 in"}, {"manifold[1].ports", "12"}};
  const int loops = between(2, 12);
  for (int i = 1; i <= loops; ++i)
    keys.push_back({"loop[" + std::to_string(i) + "].length", std::to_string(between(120, 300)) + " ft"});
  keys.push_back({"valve.coefficient", "Kv " + std::to_string(0.1 * between(6, 15))});
  keys.push_back({"valve.turns", std::to_string(between(3, 6))});
  keys.push_back({"valve.shape", between(0, 1) == 0 ? "linear" : "equal percentage"});
  const Design design = from_keys(keys).design;
  const Plant plant = pipe_up(design, plan_loops(design).value.value(), nullptr).value.value();
  const FlowTarget target = target_flows(plant, nullptr);
  return {plant, target, balance_plant(plant, target, target.supply_degC)};
}

std::vector<double> flows(const Plant& plant, double water_degC) {
  const NetworkSolution solved = flows_at(plant, water_degC);
  std::vector<double> all;
  for (const BranchId branch : plant.loop_branch) all.push_back(solved.flow_m3_per_s[branch.at]);
  return all;
}

bool said_of(const Checked<Balance>& balance, const std::string& loop) {
  return std::any_of(balance.said.begin(), balance.said.end(),
                     [&](const Diagnostic& d) { return d.code == "balance.out-of-band" && d.about == loop; });
}

}  // namespace

TEST_CASE("once round in quarter turns brings every loop into its band, or says which not and why", "[by-hand]") {
  std::mt19937 engine(20261126);
  int ports = 0, outside = 0;
  for (int k = 0; k < 60; ++k) {
    const Manifold12 m = drawn(engine);
    REQUIRE(m.balance);
    const Balance& balance = *m.balance.value;
    CHECK(balance.move.size() <= balance.port.size());
    ValveTurns turns(balance.port.size(), 1e9);
    for (const BalanceMove& move : balance.move) {
      const auto port = std::find_if(balance.port.begin(), balance.port.end(),
                                     [&](const PortSetting& p) { return p.port == move.port; });
      turns[static_cast<std::size_t>(port - balance.port.begin())] = move.to_turns;
      const auto now = flows(with_settings(m.plant, turns, balance.pump_speed_share), m.target.supply_degC);
      for (std::size_t i = 0; i < now.size(); ++i) CHECK(now[i] == Approx(move.then_m3_per_s[i]).epsilon(1e-6));
    }
    const auto after = flows(with_settings(m.plant, turns, balance.pump_speed_share), m.target.supply_degC);
    for (std::size_t i = 0; i < after.size(); ++i) {
      const PortSetting& port = balance.port[i];
      const bool in = after[i] >= port.least_m3_per_s && after[i] <= port.most_m3_per_s;
      INFO("manifold " << k << " port " << i + 1 << " gets " << after[i] / port.aim_m3_per_s << " of its aim");
      CHECK((in || said_of(m.balance, port.loop)));
      ++ports;
      outside += in ? 0 : 1;
    }
  }
  INFO(outside << " of " << ports << " ports outside");
  CHECK(outside * 50 <= ports);
}

TEST_CASE("unrounded settings bring every loop to its aim within 0.1 %", "[by-hand]") {
  std::mt19937 engine(4711);
  for (int k = 0; k < 60; ++k) {
    const Manifold12 m = drawn(engine);
    const Balance& balance = m.balance.value.value();
    Plant set = with_settings(m.plant, {}, balance.pump_speed_share);
    for (std::size_t i = 0; i < balance.port.size(); ++i) {
      std::vector<Element> elements = set.graph.elements(set.loop_branch[i]);
      for (Element& e : elements) {
        if (e.part == Part::balancing_valve) e.shape = KvValve{balance.port[i].exact_kv};
      }
      set.graph.set_elements(set.loop_branch[i], elements);
    }
    const auto after = flows(set, m.target.supply_degC);
    for (std::size_t i = 0; i < after.size(); ++i)
      CHECK(after[i] == Approx(balance.port[i].aim_m3_per_s).epsilon(1e-3));
  }
}

TEST_CASE("at the lowest speed every loop can still be set to its target, and a hair slower not") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Piped p = piped(one.file.design);
    const FlowTarget target = target_flows(p.plant, &p.envelope);
    const Balance balance = balance_plant(p.plant, target, target.supply_degC).value.value();
    CHECK(balance.least_speed_share <= 1.0);
    CHECK(balance.speed_saves_share >= 0.0);
    CHECK(balance.speed_saves_share < 1.0);
    if (balance.pump_reach_share < 1.0 || target.from_pump) continue;
    // The pump curve at that speed and the target's total is just the hardest loop's whole round.
    for (const Element& e : p.plant.graph.elements(p.plant.source_branch)) {
      if (const auto* pump = std::get_if<Pump>(&e.shape)) {
        const double head_m = head_at({pump->curve, balance.least_speed_share}, target.total_m3_per_s).head_m;
        const double density = liquid(mixture_of(one.file.design.fluid), target.supply_degC).density_kg_per_m3;
        CHECK(head_m * 9.80665 * density == Approx(balance.duty_Pa).epsilon(1e-6));
      }
    }
  }
}
