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

// Control lines settle by a half or more with each reading, and every other one looks ahead: a dozen do.
constexpr int most_readings = 60;

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
std::vector<std::uint32_t> first_nodes(const Task& task) {
  const std::size_t nodes = task.nodes.size();
  std::vector<std::uint32_t> rank(nodes, 0), parent(nodes);
  std::iota(parent.begin(), parent.end(), 0U);
  boost::disjoint_sets<std::uint32_t*, std::uint32_t*> sets(rank.data(), parent.data());
  for (std::size_t k = 0; k < task.ends.size(); ++k) {
    if (task.open[k]) sets.union_set(task.ends[k].from, task.ends[k].to);
  }
  const auto none = static_cast<std::uint32_t>(nodes);
  std::vector<std::uint32_t> first_of_set(nodes, none);
  for (std::uint32_t i = 0; i < none; ++i) {
    std::uint32_t& lowest = first_of_set[sets.find_set(i)];
    if (lowest == none) lowest = i;
    rank[i] = lowest;  // the ranks have done their work
  }
  return rank;
}

Task task_of(const HydronicGraph& graph, const std::vector<Ends>& ends, BranchLaws& laws) {
  Task task{ends, graph.inside().nodes, laws, std::vector<bool>(laws.size()), {}};
  for (std::size_t k = 0; k < laws.size(); ++k) task.open[k] = !laws.shut(k);
  return task;
}

// What open branches join: by the first node of each part, whether it has a pressure and what is taken out of it.
struct Parts {
  std::vector<std::uint32_t> first;  ///< by node
  std::vector<bool> has_pressure;
  std::vector<double> wanted;
};

Parts parts_of(const Task& task) {
  Parts parts{first_nodes(task), {}, {}};
  parts.has_pressure.assign(parts.first.size(), false);
  parts.wanted.assign(parts.first.size(), 0.0);
  for (std::size_t i = 0; i < parts.first.size(); ++i) {
    if (task.nodes[i].held) parts.has_pressure[parts.first[i]] = true;
    parts.wanted[parts.first[i]] += task.nodes[i].demand_m3_per_s;
  }
  return parts;
}

// A part with no pressure given counts from its first node. Water cannot be taken out of such a part on balance: what
// is asked of it all the same comes back.
std::optional<Worst> give_datums(Task& task, const Parts& parts, double imbalance_m3_per_s) {
  task.held.resize(parts.first.size());
  std::optional<Worst> unserved;
  for (std::size_t i = 0; i < parts.first.size(); ++i) {
    task.held[i] = task.nodes[i].held;
    if (parts.first[i] != i || parts.has_pressure[i]) continue;
    task.held[i] = true;
    const double amount = std::abs(parts.wanted[i]);
    if (amount > imbalance_m3_per_s && (!unserved || amount > unserved->amount)) unserved = Worst{amount, i};
  }
  return unserved;
}

// Valves that turned one after the other may have cut a demand off: those that lead into a part that lacks water, or
// out of one that has too much, open again. False where there is none.
bool open_towards_demand(Task& task, const Parts& parts) {
  bool any = false;
  for (std::size_t k = 0; k < task.laws.size(); ++k) {
    if (task.open[k] || task.laws.shut(k)) continue;
    const std::size_t from = parts.first[task.ends[k].from], to = parts.first[task.ends[k].to];
    const bool lacks = !parts.has_pressure[to] && parts.wanted[to] > 0.0;
    const bool overflows = !parts.has_pressure[from] && parts.wanted[from] < 0.0;
    if (from == to || (!lacks && !overflows)) continue;
    task.open[k] = any = true;
    task.laws.move_to(k, 0.0);
  }
  return any;
}

void begin_with(BranchLaws& laws, const std::vector<double>& warm_flow) {
  for (std::size_t k = 0; k < warm_flow.size(); ++k) {
    if (!laws.shut(k)) laws.move_to(k, warm_flow[k]);
  }
}

std::string worst_of(const HydronicGraph& graph, const Ended& ended, const NetworkOptions& options) {
  const bool head_is_worse =
      ended.head_Pa.amount / options.head_Pa > ended.imbalance_m3_per_s.amount / options.imbalance_m3_per_s;
  return head_is_worse ? graph.name(BranchId{ended.head_Pa.at}) : graph.name(NodeId{ended.imbalance_m3_per_s.at});
}

NetworkSolution report(const HydronicGraph& graph, const Task& task, const NodeEquations& equations, const Ended& ended,
                       const NetworkOptions& options) {
  NetworkSolution solution;
  solution.stop = ended.stop;
  solution.rounds = ended.rounds;
  solution.worst_imbalance_m3_per_s = ended.imbalance_m3_per_s.amount;
  solution.worst_head_Pa = ended.head_Pa.amount;
  solution.worst_name = worst_of(graph, ended, options);
  solution.flow_m3_per_s.reserve(task.laws.size());
  for (std::size_t k = 0; k < task.laws.size(); ++k) {
    const double flow = task.open[k] ? task.laws.motion(k).flow : 0.0;
    solution.flow_m3_per_s.push_back(flow);
    if (task.laws.one_way(k) && !task.laws.shut(k) && !task.open[k]) solution.checked.push_back({k});
    if (task.open[k] && task.laws.pump_outside_curve(k, flow)) solution.outside_curve.push_back({k});
  }
  solution.pressure_Pa.reserve(task.nodes.size());
  for (std::size_t i = 0; i < task.nodes.size(); ++i) solution.pressure_Pa.push_back(equations.pressure(i));
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
  begin_with(laws, warm);
  Task task = task_of(graph, inside_->ends, laws);
  Turns turns(task);
  Ended ended;
  int rounds = 0;
  int readings_left = most_readings;
  // Each one-way branch settles in a turn or two; more turns than this would be a circle.
  const std::size_t most_turns = 4 * laws.size() + 1;
  for (std::size_t turns_left = most_turns; turns_left > 0 && readings_left > 0;) {
    const Parts parts = parts_of(task);
    if (const auto unserved = give_datums(task, parts, options.imbalance_m3_per_s)) {
      ended = {};
      ended.imbalance_m3_per_s = *unserved;
      if (!open_towards_demand(task, parts)) {
        ended.stop = Stop::no_solution;
        break;
      }
      --turns_left;
      continue;
    }
    ended = find_flows(inside_->equations, task, options);
    rounds += ended.rounds;
    if (ended.stop == Stop::not_finite) break;
    const std::vector<std::size_t> wrong = standing_wrong(task, inside_->equations, options, ended.stop);
    if (!wrong.empty()) {
      turns.turn(task, wrong);
      --turns_left;
    } else {
      if (ended.stop != Stop::converged || laws.read_lines() <= options.head_Pa) break;
      --readings_left;
      turns_left = most_turns;
    }
    ended.stop = Stop::rounds_spent;
  }
  ended.rounds = rounds;
  return report(graph, task, inside_->equations, ended, options);
}

NetworkSolution solve_network(const HydronicGraph& graph, const NetworkOptions& options) {
  return NetworkSolver(graph).solve(graph, {}, options);
}

}  // namespace slabwright
