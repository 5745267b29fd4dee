#include "networks.hpp"

#include <algorithm>
#include <numeric>

#include "hydraulics/graph.hpp"

namespace slabwright::test {
namespace {

std::vector<Element> loop_elements(const LoopSpec& loop) {
  return {{Part::balancing_valve, KvValve{loop.kv}},      {Part::leader, Bore{3.0, 0.012, 7e-6}},
          {Part::tube, Bore{loop.length_m, 0.012, 7e-6}}, {Part::bend, Fitting{4.8, 0.012}},
          {Part::leader, Bore{3.0, 0.012, 7e-6}},         {Part::return_valve, KvValve{2.0}}};
}

const std::vector<Element> bar_segment{{Part::bar, Bore{0.05, 0.025, 7e-6}}, {Part::bar, Fitting{0.5, 0.025}}};

// An order of 0 .. n-1 at random.
std::vector<std::size_t> shuffled(std::size_t n) {
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  for (std::size_t i = n; i > 1; --i) std::swap(order[i - 1], order[*rc::gen::inRange<std::size_t>(0, i)]);
  return order;
}

bool has_a_direction(const std::vector<Element>& elements) {
  return std::any_of(elements.begin(), elements.end(), [](const Element& element) {
    return std::holds_alternative<Pump>(element.shape) || std::holds_alternative<CheckValve>(element.shape);
  });
}

// As a pump that holds its pressure: level up to a flow, then falling.
PumpTable level_pump() {
  const double head = drawn(1.0, 8.0), flow = drawn(0.5, 3.0) / per_hour;
  return *pump_table({{0.0, head}, {flow, head}, {2.0 * flow, 0.3 * head}}).value;
}

std::vector<Element> random_elements(bool open) {
  std::vector<Element> elements{{Part::tube, Bore{drawn(0.5, 60.0), drawn(0.01, 0.03), 7e-6}}};
  const int kind = *rc::gen::inRange(0, 8);
  if (kind == 0) elements.push_back({Part::pump, Pump{PumpLaw{drawn(1.0, 8.0), drawn(1.0, 4.0) / per_hour, 2.0}}});
  if (kind == 1) elements.push_back({Part::balancing_valve, KvValve{drawn(0.2, 3.0)}});
  if (kind == 2) elements.push_back({Part::bend, Fitting{drawn(0.1, 20.0), 0.012}});
  // Behind a check valve a demand may have no way, so open meshes have none.
  if (kind == 4 && !open) elements.push_back({Part::mains, CheckValve{}});
  if (kind == 5) elements.push_back({Part::pump, Pump{level_pump(), drawn(0.5, 1.0)}});
  if (kind == 3) elements.push_back({Part::boiler, PowerLaw{drawn(1e8, 1e10), 1.75}});
  return elements;
}

}  // namespace

double drawn(double low, double high) {
  return low + (high - low) * static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

Manifold manifold(const ManifoldSpec& spec) {
  Manifold made;
  HydronicGraph& graph = made.graph;
  NodeId supply = graph.add_node("supply 1"), back = graph.add_node("return 1");
  made.pump = graph.add_branch(back, supply, "mains", spec.liquid,
                               {{Part::pump, Pump{spec.pump}}, {Part::mains, Bore{spec.mains_m, 0.022, 7e-6}}});
  for (std::size_t i = 0; i < spec.loops.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    if (i > 0 && spec.port_by_port) {
      const NodeId next = graph.add_node("supply " + number), before = graph.add_node("return " + number);
      graph.add_branch(supply, next, "supply bar " + number, spec.liquid, bar_segment);
      graph.add_branch(before, back, "return bar " + number, spec.liquid, bar_segment);
      supply = next;
      back = before;
    }
    made.loop.push_back(graph.add_branch(supply, back, "loop " + number, spec.liquid, loop_elements(spec.loops[i])));
  }
  return made;
}

ManifoldSpec random_manifold() {
  ManifoldSpec spec;
  spec.loops.resize(*rc::gen::inRange<std::size_t>(2, 10));
  for (LoopSpec& loop : spec.loops) loop = {drawn(15.0, 120.0), drawn(0.1, 2.0)};
  spec.liquid = *rc::gen::inRange(0, 2) == 0 ? warm_water : cold_glycol;
  spec.pump = {drawn(1.0, 9.0), drawn(1.0, 6.0) / per_hour, drawn(1.0, 3.0)};
  spec.mains_m = drawn(1.0, 40.0);
  spec.port_by_port = *rc::gen::inRange(0, 2) == 0;
  return spec;
}

HydronicGraph random_mesh(bool open) {
  HydronicGraph graph;
  const std::size_t nodes = *rc::gen::inRange<std::size_t>(3, 13), more = *rc::gen::inRange<std::size_t>(1, 13);
  for (std::size_t i = 0; i < nodes; ++i) graph.add_node("node " + std::to_string(i));
  for (std::size_t k = 0; k < nodes - 1 + more; ++k) {
    // The first branches reach every node, the others close loops.
    const std::size_t to = k + 1 < nodes ? k + 1 : *rc::gen::inRange<std::size_t>(1, nodes);
    const std::size_t from = *rc::gen::inRange<std::size_t>(0, to);
    graph.add_branch({from}, {to}, "branch " + std::to_string(k), warm_water, random_elements(open));
  }
  if (open) {
    graph.hold_pressure({0}, 0.0);
    graph.hold_pressure({nodes - 1}, drawn(-2e4, 2e4));
    for (std::size_t i = 1; i + 1 < nodes; ++i) graph.set_demand({i}, drawn(-2e-4, 2e-4));
  }
  return graph;
}

Retold retold(const HydronicGraph& graph) {
  Retold told{{}, std::vector<std::size_t>(graph.node_count()), std::vector<std::size_t>(graph.branch_count()), {}};
  told.sign.resize(graph.branch_count());
  for (const std::size_t old : shuffled(graph.node_count())) {
    const NodeId now = told.graph.add_node(graph.name(NodeId{old}));
    const Node& node = graph.inside().nodes[old];
    if (node.held) told.graph.hold_pressure(now, node.held_pressure_Pa);
    told.graph.set_demand(now, node.demand_m3_per_s);
    told.node[old] = now.at;
  }
  for (const std::size_t old : shuffled(graph.branch_count())) {
    const BranchId branch{old};
    NodeId from{told.node[graph.from(branch).at]}, to{told.node[graph.to(branch).at]};
    std::vector<Element> elements = graph.elements(branch);
    const bool turned = !has_a_direction(elements) && *rc::gen::inRange(0, 2) == 0;
    if (turned) {
      std::swap(from, to);
      std::reverse(elements.begin(), elements.end());
    }
    told.sign[old] = turned ? -1.0 : 1.0;
    told.branch[old] =
        told.graph.add_branch(from, to, graph.name(branch), graph.liquid(branch), std::move(elements)).at;
  }
  return told;
}

}  // namespace slabwright::test
