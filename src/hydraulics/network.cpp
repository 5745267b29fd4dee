// From a graph to flows and pressures: where pressures count from, which check valves hold, and the report.
#include <algorithm>
#include <boost/pending/disjoint_sets.hpp>
#include <cmath>
#include <numeric>
#include <optional>

#include "hydraulics/branch_law.hpp"
#include "hydraulics/graph.hpp"
#include "hydraulics/newton.hpp"
#include "hydraulics/node_equations.hpp"
#include "hydraulics/one_way.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/hydraulics_network.hpp"

namespace slabwright {
namespace {

std::vector<Ends> ends_of(const HydronicGraph& graph) {
  std::vector<Ends> ends;
  ends.reserve(graph.branch_count());
  for (const Branch& branch : graph.inside().branches) ends.push_back(branch.ends);
  return ends;
}

bool joins_the_same(const std::vector<Ends>& ends, const HydronicGraph& graph) {
  const std::vector<Branch>& branches = graph.inside().branches;
  return std::equal(ends.begin(), ends.end(), branches.begin(), branches.end(),
                    [](Ends a, const Branch& branch) { return a == branch.ends; });
}

// For each node the first node of its connected part. The package's disjoint sets are what its own incremental
// components stand on, and need no second graph.
std::vector<std::size_t> first_nodes(const Task& task) {
  const std::size_t nodes = task.nodes.size();
  std::vector<std::size_t> rank(nodes, 0), parent(nodes);
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  boost::disjoint_sets<std::size_t*, std::size_t*> sets(rank.data(), parent.data());
  for (std::size_t k = 0; k < task.ends.size(); ++k) {
    if (task.open[k]) sets.union_set(task.ends[k].from, task.ends[k].to);
  }
  std::vector<std::size_t> first_of_set(nodes, nodes), first(nodes);
  for (std::size_t i = 0; i < nodes; ++i) {
    std::size_t& lowest = first_of_set[sets.find_set(i)];
    if (lowest == nodes) lowest = i;
    first[i] = lowest;
  }
  return first;
}

std::vector<NodeGiven> given(const HydronicGraph& graph) {
  std::vector<NodeGiven> nodes;
  nodes.reserve(graph.node_count());
  for (const Node& node : graph.inside().nodes) {
    nodes.push_back({node.held, node.held_pressure_Pa, node.demand_m3_per_s});
  }
  return nodes;
}

Task task_of(const HydronicGraph& graph, const std::vector<Ends>& ends, BranchLaws& laws) {
  Task task{ends, laws, std::vector<bool>(laws.size()), {}};
  for (std::size_t k = 0; k < laws.size(); ++k) task.open[k] = !laws.shut(k);
  task.nodes = given(graph);
  return task;
}

// A part with no pressure given counts from its first node. Water cannot be taken out of such a part on balance: what
// is asked of it all the same comes back.
std::optional<Worst> give_datums(Task& task, double imbalance_m3_per_s) {
  const std::vector<std::size_t> first = first_nodes(task);
  std::vector<bool> has_pressure(first.size(), false);
  std::vector<double> wanted(first.size(), 0.0);
  for (std::size_t i = 0; i < first.size(); ++i) {
    if (task.nodes[i].held) has_pressure[first[i]] = true;
    wanted[first[i]] += task.nodes[i].demand_m3_per_s;
  }
  std::optional<Worst> unserved;
  for (std::size_t i = 0; i < first.size(); ++i) {
    if (first[i] != i || has_pressure[i]) continue;
    task.nodes[i].held = true;
    task.nodes[i].held_pressure_Pa = 0.0;
    const double amount = std::abs(wanted[i]);
    if (amount > imbalance_m3_per_s && (!unserved || amount > unserved->amount)) unserved = Worst{amount, i};
  }
  return unserved;
}

std::vector<double> start(const Task& task, const std::vector<double>& warm) {
  std::vector<double> flow = warm.empty() ? std::vector<double>(task.open.size(), 0.0) : warm;
  for (std::size_t k = 0; k < flow.size(); ++k) {
    if (!task.open[k]) flow[k] = 0.0;
  }
  return flow;
}

NetworkSolution report(const HydronicGraph& graph, const Task& task, Flows found, const NetworkOptions& options) {
  NetworkSolution solution;
  solution.stop = found.stop;
  solution.rounds = found.rounds;
  solution.worst_imbalance_m3_per_s = found.imbalance_m3_per_s.amount;
  solution.worst_head_Pa = found.head_Pa.amount;
  const bool head_is_worse =
      found.head_Pa.amount / options.head_Pa > found.imbalance_m3_per_s.amount / options.imbalance_m3_per_s;
  if (head_is_worse)
    solution.worst_name = graph.name(BranchId{found.head_Pa.at});
  else if (graph.node_count() > 0)
    solution.worst_name = graph.name(NodeId{found.imbalance_m3_per_s.at});
  for (std::size_t k = 0; k < task.open.size(); ++k) {
    if (task.laws.one_way(k) && !task.laws.shut(k) && !task.open[k]) solution.checked.push_back({k});
    if (task.open[k] && task.laws.pump_outside_curve(k, found.flow_m3_per_s[k])) solution.outside_curve.push_back({k});
  }
  solution.flow_m3_per_s = std::move(found.flow_m3_per_s);
  solution.pressure_Pa = std::move(found.pressure_Pa);
  return solution;
}

}  // namespace

struct NetworkSolver::Inside {
  Inside(std::size_t nodes, std::vector<Ends> e) : ends(std::move(e)), equations(nodes, ends) {}
  std::vector<Ends> ends;
  NodeEquations equations;
};

NetworkSolver::NetworkSolver(const HydronicGraph& graph) {
  expects(graph.node_count() > 0, "NetworkSolver: a graph without nodes");
  inside_ = std::make_unique<Inside>(graph.node_count(), ends_of(graph));
}
NetworkSolver::NetworkSolver(NetworkSolver&&) noexcept = default;
NetworkSolver& NetworkSolver::operator=(NetworkSolver&&) noexcept = default;
NetworkSolver::~NetworkSolver() = default;

NetworkSolution NetworkSolver::solve(const HydronicGraph& graph, const std::vector<double>& warm,
                                     const NetworkOptions& options) {
  expects(warm.empty() || warm.size() == graph.branch_count(), "NetworkSolver: a warm flow for each branch");
  expects(joins_the_same(inside_->ends, graph), "NetworkSolver: made for another layout");
  BranchLaws laws(graph);
  Task task = task_of(graph, inside_->ends, laws);
  Turns turns(task);
  Flows found;
  found.flow_m3_per_s = start(task, warm);
  found.pressure_Pa.assign(graph.node_count(), 0.0);
  int rounds = 0;
  // Each one-way branch settles in a turn or two; more turns than this would be a circle.
  for (std::size_t turns_left = 4 * laws.size() + 1; turns_left > 0; --turns_left) {
    task.nodes = given(graph);
    if (const auto unserved = give_datums(task, options.imbalance_m3_per_s)) {
      found.stop = Stop::no_solution;
      found.imbalance_m3_per_s = *unserved;
      break;
    }
    found = find_flows(inside_->equations, task, start(task, found.flow_m3_per_s), options);
    rounds += found.rounds;
    if (found.stop != Stop::converged) break;
    const std::vector<std::size_t> wrong = standing_wrong(task, found, options);
    if (wrong.empty()) break;
    turns.turn(task, wrong);
    found.stop = Stop::rounds_spent;
  }
  found.rounds = rounds;
  return report(graph, task, std::move(found), options);
}

NetworkSolution solve_network(const HydronicGraph& graph, const NetworkOptions& options) {
  return NetworkSolver(graph).solve(graph, {}, options);
}

}  // namespace slabwright
