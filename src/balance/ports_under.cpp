#include "balance/ports_under.hpp"

#include <cmath>
#include <numeric>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

HydronicGraph filled(const Plant& plant, const OperatingPoint& point, double water_degC) {
  HydronicGraph graph = plant.graph;
  const Mixture mixture = mixture_of(plant.design.fluid);
  const bool known = point.loop.size() == plant.loop_branch.size();
  const Liquid cool = liquid(mixture, known ? point.return_degC : water_degC);
  const Liquid warm = liquid(mixture, known ? point.supply_degC : water_degC);
  for (std::size_t i = 0; i < plant.loop_branch.size(); ++i) {
    const double mean_degC = known ? 0.5 * (point.supply_degC + point.loop[i].return_degC) : water_degC;
    graph.set_liquid(plant.loop_branch[i], liquid(mixture, mean_degC));
  }
  for (const BranchId branch : plant.supply_side) graph.set_liquid(branch, warm);
  for (const BranchId branch : plant.return_side) graph.set_liquid(branch, cool);
  for (const BranchId branch : plant.source.branch) graph.set_liquid(branch, cool);
  if (plant.source.mix) graph.set_liquid(plant.source_branch, warm);
  return graph;
}

bool is_valve(const Element& element) {
  return element.part == Part::balancing_valve || element.part == Part::return_valve;
}

/// A fit divides differences of flows by steps of a ten-thousandth: what a solve leaves would be seen there. One round
/// more leaves rounding.
constexpr NetworkOptions to_the_last_round{1e-13, 1e-6, 60};

}  // namespace

std::vector<Element> lengthened(std::vector<Element> elements, double length_share) {
  for (Element& element : elements) {
    if (auto* bore = std::get_if<Bore>(&element.shape)) bore->length_m *= length_share;
  }
  return elements;
}

void lengthen(Plant& plant, std::size_t loop, double length_share) {
  const BranchId branch = plant.loop_branch[loop];
  plant.graph.set_elements(branch, lengthened(plant.graph.elements(branch), length_share));
  plant.loops.loop[loop].length_m *= length_share;
  for (Stretch& stretch : plant.loops.loop[loop].along) {
    stretch.start_m *= length_share;
    stretch.length_m *= length_share;
  }
}

std::vector<Element> with_tube_of(const std::vector<Element>& port, const std::vector<Element>& other) {
  std::vector<Element> both;
  for (const Element& e : port) {
    if (is_valve(e)) both.push_back(e);
  }
  for (const Element& e : other) {
    if (!is_valve(e)) both.push_back(e);
  }
  return both;
}

ReadNetwork::ReadNetwork(const Plant& plant, const OperatingPoint& point, double water_degC)
    : graph_(filled(plant, point, water_degC)), branch_(plant.loop_branch), solver_(graph_) {
  healthy_ = solve();
}

PortsUnder ReadNetwork::healthy() const {
  const std::size_t ports = healthy_.size();
  PortsUnder all{healthy_, std::vector<std::size_t>(ports), std::vector<double>(ports, 1.0),
                 std::vector<double>(ports, 1.0)};
  std::iota(all.tube.begin(), all.tube.end(), std::size_t{0});
  return all;
}

std::vector<double> ReadNetwork::solve() {
  const NetworkOptions enough;
  NetworkSolution solved = solver_.solve(graph_, warm_, to_the_last_round);
  // Where the last digits are not reached, what is left may be as much as others may leave.
  const bool settled = solved.worst_imbalance_m3_per_s <= enough.imbalance_m3_per_s &&
                       solved.worst_head_Pa <= enough.head_Pa && solved.stop != Stop::not_finite;
  if (!settled && unsettled_at_.empty()) unsettled_at_ = solved.worst_name;
  std::vector<double> flow;
  for (const BranchId branch : branch_) flow.push_back(solved.flow_m3_per_s[branch.at]);
  pressure_Pa_ = std::move(solved.pressure_Pa);
  if (warm_.empty()) warm_ = std::move(solved.flow_m3_per_s);
  return flow;
}

std::vector<double> ReadNetwork::with_lengths(const std::vector<double>& length_share) {
  expects(length_share.size() == branch_.size(), "a length for each loop");
  std::vector<std::vector<Element>> drawn;
  for (std::size_t i = 0; i < branch_.size(); ++i) {
    drawn.push_back(graph_.elements(branch_[i]));
    graph_.set_elements(branch_[i], lengthened(drawn[i], length_share[i]));
  }
  std::vector<double> flow = solve();
  for (std::size_t i = 0; i < branch_.size(); ++i) graph_.set_elements(branch_[i], std::move(drawn[i]));
  return flow;
}

std::vector<double> ReadNetwork::with_length(std::size_t loop, double length_share) {
  std::vector<Element> drawn = graph_.elements(branch_[loop]);
  graph_.set_elements(branch_[loop], lengthened(drawn, length_share));
  std::vector<double> flow = solve();
  graph_.set_elements(branch_[loop], std::move(drawn));
  return flow;
}

std::vector<double> ReadNetwork::cut(std::size_t loop, double flow_share) {
  const NodeId from = graph_.from(branch_[loop]), to = graph_.to(branch_[loop]);
  const double left = flow_share * healthy_[loop];
  std::vector<Element> open = graph_.elements(branch_[loop]);
  graph_.set_elements(branch_[loop], {{Part::balancing_valve, Shut{}}});
  graph_.set_demand(from, left);
  graph_.set_demand(to, -left);
  std::vector<double> flow = solve();
  graph_.set_elements(branch_[loop], std::move(open));
  graph_.set_demand(from, 0.0);
  graph_.set_demand(to, 0.0);
  flow[loop] = left;
  return flow;
}

std::vector<double> ReadNetwork::swapped(std::size_t loop, std::size_t other) {
  std::vector<Element> a = graph_.elements(branch_[loop]), b = graph_.elements(branch_[other]);
  graph_.set_elements(branch_[loop], with_tube_of(a, b));
  graph_.set_elements(branch_[other], with_tube_of(b, a));
  std::vector<double> flow = solve();
  graph_.set_elements(branch_[loop], std::move(a));
  graph_.set_elements(branch_[other], std::move(b));
  return flow;
}

std::optional<double> ReadNetwork::cutting_kv(std::size_t loop, double flow_share) {
  const double left = cut(loop, flow_share)[loop];
  if (left <= 0.0) return std::nullopt;
  const double over_Pa = pressure_Pa_[graph_.from(branch_[loop]).at] - pressure_Pa_[graph_.to(branch_[loop]).at] -
                         branch_loss(graph_, branch_[loop], left).pressure_Pa;
  return kv_for(left, std::max(over_Pa, 1e-6), graph_.liquid(branch_[loop]));
}

}  // namespace slabwright
