// Building a hydronic graph.
#include "hydraulics/graph.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

bool above_zero(double x) { return std::isfinite(x) && x > 0.0; }
bool not_below_zero(double x) { return std::isfinite(x) && x >= 0.0; }

bool sound(const Bore& bore) {
  return above_zero(bore.length_m) && above_zero(bore.inside_diameter_m) && not_below_zero(bore.roughness_m);
}
bool sound(const Fitting& fitting) {
  return not_below_zero(fitting.loss_coefficient) && above_zero(fitting.inside_diameter_m);
}
bool sound(const KvValve& valve) { return not_below_zero(valve.kv); }
bool sound(const PowerLaw& law) {
  return not_below_zero(law.resistance) && std::isfinite(law.exponent) && law.exponent >= 1.0;
}
bool sound(const PumpLaw& law) {
  return above_zero(law.no_flow_head_m) && above_zero(law.no_head_flow_m3_per_s) && std::isfinite(law.exponent) &&
         law.exponent >= 1.0;
}
bool sound(const PumpTable&) { return true; }  // pump_table() has seen to it
bool sound(const ControlledCurve& curve);      // of whatever it holds
bool sound(const PumpCurve& curve) {
  return std::visit([](const auto& any) { return sound(any); }, curve);
}
bool sound(const ControlledCurve& curve) { return curve.held && sound(curve.held->full); }
bool sound(const Pump& pump) { return above_zero(pump.speed_share) && sound(pump.curve); }
bool sound(const CheckValve& valve) { return not_below_zero(valve.opening_Pa); }
bool sound(const BypassValve& valve) {
  return above_zero(valve.opening_Pa) && above_zero(valve.band_Pa) && above_zero(valve.open_kv);
}
bool sound(const Shut&) { return true; }

bool sound(const Element& element) {
  return std::visit([](const auto& shape) { return sound(shape); }, element.shape);
}

void expect_sound(const std::vector<Element>& elements) {
  for (const Element& element : elements) expects(sound(element), "hydronic graph: an element of no sense");
}

void expect_sound(const Liquid& liquid) {
  expects(above_zero(liquid.density_kg_per_m3) && above_zero(liquid.viscosity_Pa_s),
          "hydronic graph: a liquid without properties");
}

}  // namespace

HydronicGraph::HydronicGraph() : inside_(std::make_unique<Inside>()) {}
HydronicGraph::HydronicGraph(HydronicGraph&&) noexcept = default;
HydronicGraph& HydronicGraph::operator=(HydronicGraph&&) noexcept = default;
HydronicGraph::~HydronicGraph() = default;

HydronicGraph::HydronicGraph(const HydronicGraph& other) : inside_(std::make_unique<Inside>(*other.inside_)) {}
HydronicGraph& HydronicGraph::operator=(const HydronicGraph& other) { return *this = HydronicGraph(other); }

NodeId HydronicGraph::add_node(std::string name) {
  inside_->nodes.push_back({std::move(name), 0.0, false, 0.0});
  return {node_count() - 1};
}

BranchId HydronicGraph::add_branch(NodeId from, NodeId to, std::string name, const Liquid& liquid,
                                   std::vector<Element> elements) {
  expects(from.at < node_count() && to.at < node_count() && from != to, "hydronic graph: a branch joins two nodes");
  expect_sound(liquid);
  expect_sound(elements);
  const Ends ends{static_cast<std::uint32_t>(from.at), static_cast<std::uint32_t>(to.at)};
  inside_->branches.push_back({ends, std::move(name), liquid, std::move(elements)});
  return {branch_count() - 1};
}

void HydronicGraph::hold_pressure(NodeId node, double pressure_Pa) {
  expects(std::isfinite(pressure_Pa), "hydronic graph: a pressure that is a number");
  Node& held = inside_->nodes[node.at];
  held.held = true;
  held.held_pressure_Pa = pressure_Pa;
}

void HydronicGraph::set_demand(NodeId node, double demand_m3_per_s) {
  expects(std::isfinite(demand_m3_per_s), "hydronic graph: a demand that is a number");
  inside_->nodes[node.at].demand_m3_per_s = demand_m3_per_s;
}

void HydronicGraph::set_liquid(BranchId branch, const Liquid& liquid) {
  expect_sound(liquid);
  inside_->branches[branch.at].liquid = liquid;
}

void HydronicGraph::set_elements(BranchId branch, std::vector<Element> elements) {
  expect_sound(elements);
  inside_->branches[branch.at].elements = std::move(elements);
}

std::size_t HydronicGraph::node_count() const { return inside_->nodes.size(); }
std::size_t HydronicGraph::branch_count() const { return inside_->branches.size(); }
const std::string& HydronicGraph::name(NodeId node) const { return inside_->nodes[node.at].name; }
const std::string& HydronicGraph::name(BranchId branch) const { return inside_->branches[branch.at].name; }
NodeId HydronicGraph::from(BranchId branch) const { return {inside_->branches[branch.at].ends.from}; }
NodeId HydronicGraph::to(BranchId branch) const { return {inside_->branches[branch.at].ends.to}; }
const Liquid& HydronicGraph::liquid(BranchId branch) const { return inside_->branches[branch.at].liquid; }
const std::vector<Element>& HydronicGraph::elements(BranchId branch) const {
  return inside_->branches[branch.at].elements;
}

bool is_shut(const Element& element) {
  const KvValve* valve = std::get_if<KvValve>(&element.shape);
  return std::holds_alternative<Shut>(element.shape) || (valve && valve->kv == 0.0);
}

bool is_shut(const HydronicGraph& graph, BranchId branch) {
  const std::vector<Element>& elements = graph.elements(branch);
  return std::any_of(elements.begin(), elements.end(), [](const Element& element) { return is_shut(element); });
}

}  // namespace slabwright
