#include "balance/circuit.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

double sum_of(const std::vector<double>& flow) { return std::accumulate(flow.begin(), flow.end(), 0.0); }

std::vector<double> times(std::vector<double> flow, double share) {
  for (double& f : flow) f *= share;
  return flow;
}

}  // namespace

Circuit::Circuit(const Plant& plant, double water_degC)
    : plant_(plant),
      graph_(with_settings(plant, {}, 1.0).graph),
      water_(liquid(mixture_of(plant.design.fluid), water_degC)) {
  for (std::size_t i = 0; i < graph_.branch_count(); ++i) graph_.set_liquid(BranchId{i}, water_);
}

double Circuit::open_valve_Pa(std::size_t loop, double flow) const {
  for (const PartLoss& p : losses_by_part(graph_, plant_.loop_branch[loop], flow)) {
    if (p.part == Part::balancing_valve) return p.pressure_Pa;
  }
  return 0.0;
}

std::vector<double> Circuit::port_pressures_Pa(const std::vector<double>& flow) const {
  std::vector<double> asks(flow.size(), 0.0);
  std::size_t side = 0;
  for (std::size_t m = 0; m < plant_.design.manifold.size(); ++m) {
    std::vector<std::size_t> loops;
    for (std::size_t i = 0; i < flow.size(); ++i) {
      if (plant_.loops.loop[i].manifold == m) loops.push_back(i);
    }
    double beyond = 0.0;
    for (const std::size_t i : loops) beyond += flow[i];
    double bars_Pa = 0.0;
    for (const std::size_t i : loops) {
      // The first of each side is the mains: with several manifolds each has its own, so it counts towards the loop.
      for (const BranchId way : {plant_.supply_side[side], plant_.return_side[side]}) {
        bars_Pa += branch_loss(graph_, way, beyond).pressure_Pa;
      }
      asks[i] = bars_Pa + branch_loss(graph_, plant_.loop_branch[i], flow[i]).pressure_Pa;
      beyond -= flow[i];
      ++side;
    }
  }
  return asks;
}

double Circuit::pump_Pa(double flow, double speed_share) const {
  for (const Element& e : graph_.elements(plant_.source_branch)) {
    if (const auto* pump = std::get_if<Pump>(&e.shape)) {
      return head_at({pump->curve, speed_share}, flow).head_m * gravity_m_per_s2 * water_.density_kg_per_m3;
    }
  }
  return 0.0;
}

double Circuit::duty_Pa(const std::vector<double>& flow) const {
  const std::vector<double> asks = port_pressures_Pa(flow);
  double source_Pa = 0.0;
  for (const PartLoss& p : losses_by_part(graph_, plant_.source_branch, sum_of(flow))) {
    if (p.part != Part::pump) source_Pa += p.pressure_Pa;
  }
  return source_Pa + *std::max_element(asks.begin(), asks.end());
}

double Circuit::reach_share(const std::vector<double>& flow) const {
  const double total = sum_of(flow);
  const auto over = [&](double share) { return pump_Pa(share * total, 1.0) - duty_Pa(times(flow, share)); };
  // Twenty times the flow is more than any pump in a shop moves; the bracket only has to contain the crossing.
  return root_in_bracket(over, 1e-3, 20.0, {1e-9, 0.0, 200}).x;
}

double Circuit::speed_for(const std::vector<double>& flow) const {
  const double total = sum_of(flow), duty = duty_Pa(flow);
  const auto over = [&](double speed) { return pump_Pa(total, speed) - duty; };
  return root_in_bracket(over, 0.05, 1.0, {1e-9, 0.0, 200}).x;
}

std::vector<BalanceMove> moves(const Plant& open, const Balance& balance, double water_degC) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < balance.port.size(); ++i) {
    if (!balance.port[i].open) order.push_back(i);
  }
  const auto over = [&](std::size_t i) { return balance.port[i].open_m3_per_s / balance.port[i].aim_m3_per_s; };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return over(a) > over(b); });
  ValveTurns turns;
  for (const PortSetting& port : balance.port) turns.push_back(port.open ? port.set_turns : 1e9);
  std::vector<BalanceMove> all;
  for (const std::size_t i : order) {
    turns[i] = balance.port[i].set_turns;
    const NetworkSolution solved = flows_at(with_settings(open, turns, balance.pump_speed_share), water_degC);
    BalanceMove move;
    move.port = balance.port[i].port;
    move.loop = balance.port[i].loop;
    move.to_turns = turns[i];
    move.until_m3_per_s = solved.flow_m3_per_s[open.loop_branch[i].at];
    for (const BranchId branch : open.loop_branch) move.then_m3_per_s.push_back(solved.flow_m3_per_s[branch.at]);
    all.push_back(std::move(move));
  }
  return all;
}

}  // namespace slabwright
