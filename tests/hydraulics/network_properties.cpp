// What holds in every network, whatever it is made of.
#include <algorithm>
#include <cmath>

#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

HydronicGraph any_graph() {
  const int kind = *rc::gen::inRange(0, 3);
  return kind == 0 ? manifold(random_manifold()).graph : random_mesh(kind == 1);
}

// Water lost at each node that is not held from outside.
std::vector<double> lost(const HydronicGraph& graph, const std::vector<double>& flow) {
  std::vector<double> sum(graph.node_count(), 0.0);
  for (std::size_t k = 0; k < flow.size(); ++k) {
    sum[graph.from({k}).at] -= flow[k];
    sum[graph.to({k}).at] += flow[k];
  }
  return sum;
}

bool passes(const std::vector<Leg>& trip, const std::vector<BranchId>& branches) {
  return std::any_of(trip.begin(), trip.end(), [&](const Leg& leg) {
    return std::find(branches.begin(), branches.end(), leg.branch) != branches.end();
  });
}

double head_around(const HydronicGraph& graph, const std::vector<Leg>& trip, const std::vector<double>& flow) {
  double head = 0.0;
  for (const Leg& leg : trip) {
    head += (leg.forward ? 1.0 : -1.0) * branch_loss(graph, leg.branch, flow[leg.branch.at]).pressure_Pa;
  }
  return head;
}

}  // namespace

TEST_CASE("in a closed circuit no node gains or loses water") {
  CHECK(rc::check("balance", [] {
    const HydronicGraph graph = *rc::gen::inRange(0, 2) == 0 ? manifold(random_manifold()).graph : random_mesh(false);
    const NetworkSolution solved = solve_network(graph);
    RC_ASSERT(solved.stop == Stop::converged);
    for (const double amount : lost(graph, solved.flow_m3_per_s)) RC_ASSERT(std::abs(amount) <= 1e-9);
  }));
}

TEST_CASE("around every independent loop the heads add up to zero") {
  CHECK(rc::check("heads", [] {
    const HydronicGraph graph = any_graph();
    const NetworkSolution solved = solve_network(graph);
    RC_ASSERT(solved.stop == Stop::converged);
    for (const std::vector<Leg>& trip : independent_loops(graph)) {
      if (passes(trip, solved.checked)) continue;
      const double legs = static_cast<double>(trip.size());
      RC_ASSERT(std::abs(head_around(graph, trip, solved.flow_m3_per_s)) <= 1e-3 * legs + 1e-9);
    }
  }));
}

TEST_CASE("independent loops close, and there are as many as branches left over by a tree") {
  CHECK(rc::check("round trips", [] {
    const HydronicGraph graph = any_graph();
    const std::vector<std::vector<Leg>> loops = independent_loops(graph);
    RC_ASSERT(loops.size() == graph.branch_count() + 1 - graph.node_count());
    for (const std::vector<Leg>& trip : loops) {
      const auto start = [&](const Leg& leg) { return leg.forward ? graph.from(leg.branch) : graph.to(leg.branch); };
      const auto end = [&](const Leg& leg) { return leg.forward ? graph.to(leg.branch) : graph.from(leg.branch); };
      for (std::size_t i = 0; i < trip.size(); ++i) RC_ASSERT(end(trip[i]) == start(trip[(i + 1) % trip.size()]));
    }
  }));
}

TEST_CASE("a check valve lets no water back, and holds only where the pressure is against it") {
  CHECK(rc::check("check valves", [] {
    const HydronicGraph graph = random_mesh(false);
    const NetworkSolution solved = solve_network(graph, tight);
    RC_ASSERT(solved.stop == Stop::converged);
    for (std::size_t k = 0; k < graph.branch_count(); ++k) {
      if (!std::holds_alternative<CheckValve>(graph.elements({k}).back().shape)) continue;
      RC_ASSERT(solved.flow_m3_per_s[k] >= -1e-12);
    }
    for (const BranchId held : solved.checked) {
      RC_ASSERT(solved.flow_m3_per_s[held.at] == 0.0);
      RC_ASSERT(solved.pressure_Pa[graph.from(held).at] - solved.pressure_Pa[graph.to(held).at] <= tight.head_Pa);
    }
  }));
}

struct Asked {
  HydronicGraph graph;
  bool served = false;  ///< a way leads from where water comes in to where it is taken out, one-way branches and all
};

/// Check valves, bypasses and pumps between a few nodes, weak and strong and either way round, and water taken out.
Asked random_demand() {
  Asked asked;
  const int nodes = *rc::gen::inRange(2, 6), branches = *rc::gen::inRange(nodes, nodes + 5);
  for (int i = 0; i < nodes; ++i) asked.graph.add_node("node");
  std::vector<std::pair<std::size_t, std::size_t>> ways;
  for (int k = 0; k < branches; ++k) {
    const auto from = static_cast<std::size_t>(k < nodes - 1 ? k : *rc::gen::inRange(0, nodes));
    const auto away = static_cast<std::size_t>(k < nodes - 1 ? 1 : *rc::gen::inRange(1, nodes));
    std::size_t a = from, b = (from + away) % static_cast<std::size_t>(nodes);
    if (*rc::gen::inRange(0, 2) == 0) std::swap(a, b);
    std::vector<Element> elements{{Part::mains, KvValve{drawn(1.0, 8.0)}}};
    const int kind = *rc::gen::inRange(0, 4);
    if (kind == 1 || kind == 3) elements.push_back({Part::mains, CheckValve{drawn(0.0, 3e4)}});
    if (kind == 2) elements.push_back({Part::mains, BypassValve{drawn(1e3, 6e4)}});
    if (kind == 3) elements.push_back({Part::pump, Pump{PumpLaw{drawn(0.1, 9.0), drawn(1.0, 5.0) / per_hour, 2.0}}});
    asked.graph.add_branch({a}, {b}, "branch", warm_water, elements);
    ways.emplace_back(a, b);
    if (kind == 0) ways.emplace_back(b, a);
  }
  std::vector<bool> reached(static_cast<std::size_t>(nodes), false);
  reached[0] = true;
  for (int round = 0; round < nodes; ++round)
    for (const auto& [a, b] : ways) reached[b] = reached[b] || reached[a];
  asked.served = reached.back();
  const double taken = drawn(1e-5, 1e-3);
  asked.graph.set_demand({reached.size() - 1}, taken);
  asked.graph.set_demand({0}, -taken);
  return asked;
}

TEST_CASE("what is taken out is served wherever a way leads there, whatever valves and pumps stand beside it") {
  CHECK(rc::check("demands", [] {
    const Asked asked = random_demand();
    const NetworkSolution solved = solve_network(asked.graph);
    RC_ASSERT((solved.stop == Stop::converged) == asked.served);
    if (!asked.served) return;
    for (std::size_t k = 0; k < asked.graph.branch_count(); ++k) {
      const std::vector<Element>& elements = asked.graph.elements({k});
      if (elements.size() > 1) RC_ASSERT(solved.flow_m3_per_s[k] >= -1e-8);
    }
    for (const BranchId held : solved.checked) {
      const double push = solved.pressure_Pa[asked.graph.from(held).at] - solved.pressure_Pa[asked.graph.to(held).at];
      RC_ASSERT(push <= branch_loss(asked.graph, held, 0.0).pressure_Pa + NetworkOptions{}.head_Pa);
    }
  }));
}

TEST_CASE("what is said of the residuals is true") {
  CHECK(rc::check("residuals", [] {
    const HydronicGraph graph = random_mesh(false);
    const NetworkSolution solved = solve_network(graph, {1e-9, 1e-3, *rc::gen::inRange(1, 8)});
    RC_PRE(solved.checked.empty());
    double worst = 0.0;
    for (std::size_t k = 0; k < graph.branch_count(); ++k) {
      const double ends = solved.pressure_Pa[graph.from({k}).at] - solved.pressure_Pa[graph.to({k}).at];
      worst = std::max(worst, std::abs(ends - branch_loss(graph, {k}, solved.flow_m3_per_s[k]).pressure_Pa));
    }
    RC_ASSERT(std::abs(worst - solved.worst_head_Pa) <= 1e-12 * worst + 1e-9);
    RC_ASSERT((solved.stop == Stop::converged) == (worst <= 1e-3 && solved.worst_imbalance_m3_per_s <= 1e-9));
  }));
}

TEST_CASE("order and direction in which a network is told change nothing") {
  CHECK(rc::check("retold", [] {
    const HydronicGraph graph = any_graph();
    const Retold again = retold(graph);
    const NetworkSolution one = solve_network(graph, tight), other = solve_network(again.graph, tight);
    RC_ASSERT(one.stop == Stop::converged);
    RC_ASSERT(other.stop == Stop::converged);
    for (std::size_t k = 0; k < graph.branch_count(); ++k) {
      const double flow = again.sign[k] * other.flow_m3_per_s[again.branch[k]];
      RC_ASSERT(std::abs(flow - one.flow_m3_per_s[k]) <= flow_digits_m3_per_s);
      // Between check valves that hold, a range of pressures is as good as any.
      if (!one.checked.empty()) continue;
      const double drop = one.pressure_Pa[graph.from({k}).at] - one.pressure_Pa[graph.to({k}).at];
      const double told =
          other.pressure_Pa[again.node[graph.from({k}).at]] - other.pressure_Pa[again.node[graph.to({k}).at]];
      RC_ASSERT(std::abs(drop - told) <= 1e-4);
    }
  }));
}

TEST_CASE("solving twice gives the same bytes") {
  CHECK(rc::check("deterministic", [] {
    const HydronicGraph graph = any_graph();
    const NetworkSolution one = solve_network(graph), other = solve_network(HydronicGraph(graph));
    RC_ASSERT(one.flow_m3_per_s == other.flow_m3_per_s);
    RC_ASSERT(one.pressure_Pa == other.pressure_Pa);
  }));
}

TEST_CASE("a warm start ends where a cold one does") {
  CHECK(rc::check("warm", [] {
    const HydronicGraph graph = any_graph();
    std::vector<double> anywhere(graph.branch_count());
    for (double& flow : anywhere) flow = drawn(-1e-3, 1e-3);
    NetworkSolver solver(graph);
    const NetworkSolution cold = solver.solve(graph, {}, tight), warm = solver.solve(graph, anywhere, tight);
    RC_ASSERT(cold.stop == Stop::converged);
    RC_ASSERT(warm.stop == Stop::converged);
    for (std::size_t k = 0; k < graph.branch_count(); ++k) {
      RC_ASSERT(std::abs(cold.flow_m3_per_s[k] - warm.flow_m3_per_s[k]) <= flow_digits_m3_per_s);
    }
    // A warm start brings flows only: check valves are found out anew.
    RC_ASSERT(!cold.checked.empty() || solver.solve(graph, cold.flow_m3_per_s).rounds == 1);
  }));
}

TEST_CASE("a stronger pump sends no loop less") {
  CHECK(rc::check("more head", [] {
    ManifoldSpec spec = random_manifold();
    const Manifold before = manifold(spec);
    spec.pump.no_flow_head_m *= drawn(1.0, 2.0);
    const Manifold after = manifold(spec);
    const NetworkSolution weak = solve_network(before.graph, tight), strong = solve_network(after.graph, tight);
    for (const BranchId loop : before.loop) {
      RC_ASSERT(strong.flow_m3_per_s[loop.at] >= weak.flow_m3_per_s[loop.at] - flow_digits_m3_per_s);
    }
  }));
}

TEST_CASE("a longer loop gets no more, and the others no less") {
  CHECK(rc::check("longer", [] {
    ManifoldSpec spec = random_manifold();
    const Manifold before = manifold(spec);
    const std::size_t which = *rc::gen::inRange<std::size_t>(0, spec.loops.size());
    spec.loops[which].length_m *= drawn(1.0, 2.0);
    const Manifold after = manifold(spec);
    const NetworkSolution once = solve_network(before.graph, tight), then = solve_network(after.graph, tight);
    for (std::size_t i = 0; i < spec.loops.size(); ++i) {
      const double more = then.flow_m3_per_s[before.loop[i].at] - once.flow_m3_per_s[before.loop[i].at];
      RC_ASSERT((i == which ? -more : more) >= -flow_digits_m3_per_s);
    }
  }));
}
