// Temperatures carried by flows. The system is one of averages: every node is a mean of what comes in, so that its
// matrix is diagonally dominant, and regular just when from every node some water can be traced back to where a
// temperature is set. That is found by walking downstream, before any number is divided.
#include "slabwright/hydraulics_temperature.hpp"

#include <Eigen/SparseLU>
#include <algorithm>
#include <cmath>

#include "hydraulics/graph.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

/// A branch in which water moves, in the direction in which it does.
struct Stream {
  std::size_t branch, from, to;
  double flow;
};

class Mixing {
 public:
  Mixing(const HydronicGraph& graph, const std::vector<double>& flow, const std::vector<Outlet>& outlets,
         const TemperatureOptions& options)
      : graph_(graph), outlets_(outlets), options_(options) {
    for (std::size_t k = 0; k < flow.size(); ++k) {
      if (std::abs(flow[k]) < options.least_flow_m3_per_s) continue;
      const Ends ends = graph.inside().branches[k].ends;
      const bool forward = flow[k] > 0.0;
      streams_.push_back({k, forward ? ends.from : ends.to, forward ? ends.to : ends.from, std::abs(flow[k])});
    }
    inflow_.assign(graph.node_count(), 0.0);
    fed_.assign(graph.node_count(), 0.0);
    feed();
    for (const Stream& stream : streams_) inflow_[stream.to] += stream.flow;
    find_set();
  }

  CarriedTemperatures temperatures() const {
    CarriedTemperatures found;
    found.node_degC.assign(graph_.node_count(), options_.still_degC);
    found.outlet_degC.assign(graph_.branch_count(), options_.still_degC);
    solve(found.node_degC);
    for (const Stream& stream : streams_) {
      const Outlet& outlet = outlets_[stream.branch];
      found.outlet_degC[stream.branch] = outlet.added_degC + outlet.kept_ratio * found.node_degC[stream.from];
    }
    for (std::size_t i = 0; i < inflow_.size(); ++i) {
      if (inflow_[i] == 0.0 || set_[i] || found.stop == Stop::no_solution) continue;
      found.stop = Stop::no_solution;
      found.undetermined = graph_.name(NodeId{i});
    }
    return found;
  }

 private:
  // What comes in from outside at a node is what its branches take away beyond what they bring.
  void feed() {
    std::vector<double> lost(graph_.node_count(), 0.0);
    for (const Stream& stream : streams_) {
      lost[stream.from] += stream.flow;
      lost[stream.to] -= stream.flow;
    }
    for (std::size_t i = 0; i < lost.size(); ++i) {
      const Node& node = graph_.inside().nodes[i];
      const bool open = node.held || node.demand_m3_per_s < 0.0;
      if (open && lost[i] >= options_.least_flow_m3_per_s) fed_[i] = lost[i];
    }
    inflow_ = fed_;
  }

  // Nodes whose temperature something sets: from outside, or by a branch that forgets some of its inlet; and all nodes
  // downstream of them.
  void find_set() {
    std::vector<std::vector<std::size_t>> downstream(inflow_.size());
    std::vector<std::size_t> waiting;
    set_.assign(inflow_.size(), false);
    const auto mark = [&](std::size_t node) {
      if (!set_[node]) waiting.push_back(node);
      set_[node] = true;
    };
    for (const Stream& stream : streams_) {
      downstream[stream.from].push_back(stream.to);
      if (outlets_[stream.branch].kept_ratio < 1.0) mark(stream.to);
    }
    for (std::size_t i = 0; i < fed_.size(); ++i) {
      if (fed_[i] > 0.0) mark(i);
    }
    while (!waiting.empty()) {
      const std::size_t node = waiting.back();
      waiting.pop_back();
      for (const std::size_t next : downstream[node]) mark(next);
    }
  }

  void solve(std::vector<double>& node_degC) const {
    const int nodes = static_cast<int>(node_degC.size());
    std::vector<Eigen::Triplet<double, int>> entries;
    Eigen::VectorXd right(nodes);
    for (int i = 0; i < nodes; ++i) {
      const auto at = static_cast<std::size_t>(i);
      entries.emplace_back(i, i, 1.0);
      right[i] = set_[at] ? fed_[at] * options_.fed_degC / inflow_[at] : options_.still_degC;
    }
    for (const Stream& stream : streams_) {
      if (!set_[stream.to]) continue;
      const int from = static_cast<int>(stream.from), to = static_cast<int>(stream.to);
      const Outlet& outlet = outlets_[stream.branch];
      const double share = stream.flow / inflow_[stream.to];
      entries.emplace_back(to, from, -share * outlet.kept_ratio);
      right[to] += share * outlet.added_degC;
    }
    Eigen::SparseMatrix<double, Eigen::ColMajor, int> matrix(nodes, nodes);
    matrix.setFromTriplets(entries.begin(), entries.end());
    Eigen::SparseLU<Eigen::SparseMatrix<double, Eigen::ColMajor, int>> factors(matrix);
    const Eigen::VectorXd found = factors.solve(right);
    for (int i = 0; i < nodes; ++i) node_degC[static_cast<std::size_t>(i)] = found[i];
  }

  const HydronicGraph& graph_;
  const std::vector<Outlet>& outlets_;
  const TemperatureOptions& options_;
  std::vector<Stream> streams_;
  std::vector<double> inflow_, fed_;  ///< by node
  std::vector<bool> set_;
};

}  // namespace

Outlet leaves_at(double outlet_degC) { return {outlet_degC, 0.0}; }

Outlet cools_towards(double surroundings_degC, double conductance_W_per_K, double capacity_W_per_K) {
  expects(conductance_W_per_K >= 0.0 && capacity_W_per_K > 0.0, "cools_towards: a conductance, a capacity flow");
  const double kept = std::exp(-conductance_W_per_K / capacity_W_per_K);
  return {(1.0 - kept) * surroundings_degC, kept};
}

Outlet takes_up(double power_W, double capacity_W_per_K) {
  expects(capacity_W_per_K > 0.0, "takes_up: a capacity flow above zero");
  return {power_W / capacity_W_per_K, 1.0};
}

CarriedTemperatures carried_temperatures(const HydronicGraph& graph, const std::vector<double>& flow,
                                         const std::vector<Outlet>& outlets, const TemperatureOptions& options) {
  expects(flow.size() == graph.branch_count() && outlets.size() == graph.branch_count(),
          "carried_temperatures: a flow and an outlet for each branch");
  const auto sound = [](const Outlet& o) { return o.kept_ratio >= 0.0 && o.kept_ratio <= 1.0; };
  expects(std::all_of(outlets.begin(), outlets.end(), sound), "carried_temperatures: a branch keeps 0 to 1");
  return Mixing(graph, flow, outlets, options).temperatures();
}

}  // namespace slabwright
