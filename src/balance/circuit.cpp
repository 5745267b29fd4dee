#include "balance/circuit.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

double sum_of(const std::vector<double>& flow) { return std::accumulate(flow.begin(), flow.end(), 0.0); }

std::vector<double> times(std::vector<double> flow, double share) {
  for (double& f : flow) f *= share;
  return flow;
}

/// Some branches of a graph as a graph of their own, and where its nodes went.
struct Cut {
  HydronicGraph graph;
  std::map<std::size_t, NodeId> node;
};
Cut cut_out(const HydronicGraph& whole, const std::vector<BranchId>& branches) {
  Cut cut;
  const auto node = [&](NodeId of_whole) {
    const auto known = cut.node.find(of_whole.at);
    if (known != cut.node.end()) return known->second;
    return cut.node[of_whole.at] = cut.graph.add_node(whole.name(of_whole));
  };
  for (const BranchId b : branches) {
    const NodeId from = node(whole.from(b)), to = node(whole.to(b));
    cut.graph.add_branch(from, to, whole.name(b), whole.liquid(b), whole.elements(b));
  }
  return cut;
}

}  // namespace

Circuit::Circuit(const Plant& plant, double water_degC)
    : plant_(plant),
      graph_(with_settings(plant, {}, 1.0).graph),
      water_(liquid(mixture_of(plant.design.fluid), water_degC)) {
  for (std::size_t i = 0; i < graph_.branch_count(); ++i) graph_.set_liquid(BranchId{i}, water_);
  Cut cut = cut_out(graph_, plant.source.branch);
  source_ = std::move(cut.graph);
  out_ = cut.node.at(plant.source.out.at);
  back_ = cut.node.at(plant.source.back.at);
}

double Circuit::open_valve_Pa(std::size_t loop, double flow) const {
  for (const PartLoss& p : losses_by_part(graph_, plant_.loop_branch[loop], flow)) {
    if (p.part == Part::balancing_valve) return p.pressure_Pa;
  }
  return 0.0;
}

std::vector<double> Circuit::port_pressures_Pa(const std::vector<double>& flow) const {
  std::vector<double> beyond(graph_.branch_count(), 0.0), loss_Pa(graph_.branch_count(), 0.0);
  for (std::size_t i = 0; i < flow.size(); ++i) {
    for (const BranchId way : plant_.way[i]) beyond[way.at] += flow[i];
  }
  for (const std::vector<BranchId>* side : {&plant_.supply_side, &plant_.return_side}) {
    for (const BranchId way : *side) loss_Pa[way.at] = branch_loss(graph_, way, beyond[way.at]).pressure_Pa;
  }
  std::vector<double> asks(flow.size(), 0.0);
  for (std::size_t i = 0; i < flow.size(); ++i) {
    for (const BranchId way : plant_.way[i]) asks[i] += loss_Pa[way.at];
    asks[i] += branch_loss(graph_, plant_.loop_branch[i], flow[i]).pressure_Pa;
  }
  return asks;
}

double Circuit::worst_Pa(const std::vector<double>& flow) const {
  const std::vector<double> asks = port_pressures_Pa(flow);
  return *std::max_element(asks.begin(), asks.end());
}

NetworkSolution Circuit::source_alone(double flow, std::optional<double> speed_share) const {
  HydronicGraph source = source_;
  for (std::size_t k = 0; k < plant_.source.branch.size(); ++k) {
    const BranchId of_plant = plant_.source.branch[k];
    const auto& pumps = plant_.source.pump;
    std::vector<Element> elements = source.elements({k});
    if (std::find(pumps.begin(), pumps.end(), of_plant) != pumps.end()) {
      const auto is_pump = [](const Element& e) { return std::holds_alternative<Pump>(e.shape); };
      if (!speed_share) elements.erase(std::remove_if(elements.begin(), elements.end(), is_pump), elements.end());
      for (Element& e : elements) {
        if (auto* pump = std::get_if<Pump>(&e.shape)) pump->speed_share = *speed_share;
      }
    }
    if (!speed_share && plant_.source.bypass == of_plant) elements = {{Part::mains, Shut{}}};
    source.set_elements({k}, std::move(elements));
  }
  source.set_demand(out_, flow);
  source.set_demand(back_, -flow);
  return solve_network(source);
}

double Circuit::left_Pa(double flow, std::optional<double> speed_share) const {
  const NetworkSolution solved = source_alone(flow, speed_share);
  return solved.pressure_Pa[out_.at] - solved.pressure_Pa[back_.at];
}

double Circuit::bypassed_m3_per_s(double pressure_Pa) const {
  if (!plant_.source.bypass) return 0.0;
  return bypass_flow_m3_per_s(std::get<BypassValve>(graph_.elements(*plant_.source.bypass).front().shape), water_,
                              pressure_Pa);
}

double Circuit::duty_Pa(const std::vector<double>& flow) const {
  const double worst = worst_Pa(flow);
  return worst - left_Pa(sum_of(flow) + bypassed_m3_per_s(worst), std::nullopt);
}

double Circuit::reach_share(const std::vector<double>& flow) const {
  const double total = sum_of(flow);
  const auto over = [&](double share) { return left_Pa(share * total, 1.0) - worst_Pa(times(flow, share)); };
  // Twenty times the flow is more than any pump in a shop moves; the bracket only has to contain the crossing. Where it
  // does not, the nearer end is the answer: a pump that moves less is said to be too weak, and more is no matter.
  return root_in_bracket(over, 1e-3, 20.0, {1e-9, 0.0, 200}).x;
}

double Circuit::speed_for(const std::vector<double>& flow) const {
  const double total = sum_of(flow), worst = worst_Pa(flow);
  const auto over = [&](double speed) { return left_Pa(total, speed) - worst; };
  // A pump that is too strong at its lowest speed keeps that speed; flows that follow are out of their bands, and said.
  return root_in_bracket(over, 0.05, 1.0, {1e-9, 0.0, 200}).x;
}

TurnedInOrder turned_in_order(const Plant& open, const Balance& balance, double water_degC) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < balance.port.size(); ++i) {
    if (!balance.port[i].open) order.push_back(i);
  }
  const auto over = [&](std::size_t i) { return balance.port[i].open_m3_per_s / balance.port[i].aim_m3_per_s; };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return over(a) > over(b); });
  ValveTurns turns;
  for (const PortSetting& port : balance.port) turns.push_back(port.open ? port.set_turns : 1e9);
  TurnedInOrder all;
  for (const std::size_t i : order) {
    turns[i] = balance.port[i].set_turns;
    const NetworkSolution solved = flows_at(with_settings(open, turns, balance.pump_speed_share), water_degC);
    if (solved.stop != Stop::converged) {
      all.stop = solved.stop;
      all.worst_name = solved.worst_name;
    }
    BalanceMove move;
    move.port = balance.port[i].port;
    move.loop = balance.port[i].loop;
    move.to_turns = turns[i];
    move.until_m3_per_s = solved.flow_m3_per_s[open.loop_branch[i].at];
    for (const BranchId branch : open.loop_branch) move.then_m3_per_s.push_back(solved.flow_m3_per_s[branch.at]);
    all.move.push_back(std::move(move));
  }
  return all;
}

}  // namespace slabwright
