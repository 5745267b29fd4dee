#include "loop_method.hpp"

#include <Eigen/Dense>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/kruskal_min_spanning_tree.hpp>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <set>

namespace slabwright::test {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;
using Weighed = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property,
                                      boost::property<boost::edge_weight_t, std::size_t>>;

constexpr double head_digits_Pa = 1e-8, flow_digits_m3_per_s = 1e-12, push_digits_Pa = 1e-6;
constexpr int most_rounds = 200;

bool lets_one_way(const HydronicGraph& graph, BranchId branch) {
  for (const Element& element : graph.elements(branch)) {
    if (std::holds_alternative<CheckValve>(element.shape) || std::holds_alternative<BypassValve>(element.shape)) {
      return true;
    }
  }
  return false;
}

// A tree over the open branches, by node: the way to each node from the root of its part.
struct Tree {
  std::vector<std::size_t> branches, chords;
  std::vector<std::map<std::size_t, double>> way;  ///< branch and the sense in which the way takes it
  std::vector<std::size_t> root;
};

Tree spanning_tree(const HydronicGraph& graph, const std::vector<std::size_t>& open) {
  Weighed ways(graph.node_count());
  for (const std::size_t k : open) add_edge(graph.from({k}).at, graph.to({k}).at, k, ways);
  std::vector<Weighed::edge_descriptor> chosen;
  kruskal_minimum_spanning_tree(ways, std::back_inserter(chosen));
  std::set<std::size_t> in_tree;
  for (const auto& edge : chosen) in_tree.insert(get(boost::edge_weight, ways, edge));
  Tree tree{{in_tree.begin(), in_tree.end()}, {}, {}, {}};
  for (const std::size_t k : open) {
    if (!in_tree.count(k)) tree.chords.push_back(k);
  }
  tree.way.resize(graph.node_count());
  const std::size_t nowhere = graph.node_count();
  tree.root.assign(graph.node_count(), nowhere);
  for (std::size_t start = 0; start < nowhere; ++start) {
    if (tree.root[start] != nowhere) continue;
    tree.root[start] = start;
    for (bool grown = true; grown;) {
      grown = false;
      for (const std::size_t k : tree.branches) {
        const std::size_t from = graph.from({k}).at, to = graph.to({k}).at;
        const bool forward = tree.root[from] == start && tree.root[to] == nowhere;
        const bool backward = tree.root[to] == start && tree.root[from] == nowhere;
        if (!forward && !backward) continue;
        const std::size_t near = forward ? from : to, far = forward ? to : from;
        tree.way[far] = tree.way[near];
        tree.way[far][k] = forward ? 1.0 : -1.0;
        tree.root[far] = start;
        grown = true;
      }
    }
  }
  return tree;
}

// Row by loop, column by branch: a chord, back from its end to the root, and from the root to its start.
MatrixXd loops_of(const HydronicGraph& graph, const Tree& tree) {
  MatrixXd loops =
      MatrixXd::Zero(static_cast<Eigen::Index>(tree.chords.size()), static_cast<Eigen::Index>(graph.branch_count()));
  for (std::size_t i = 0; i < tree.chords.size(); ++i) {
    auto row = loops.row(static_cast<Eigen::Index>(i));
    const std::size_t chord = tree.chords[i];
    row(static_cast<Eigen::Index>(chord)) = 1.0;
    for (const auto& [k, sense] : tree.way[graph.from({chord}).at]) row(static_cast<Eigen::Index>(k)) += sense;
    for (const auto& [k, sense] : tree.way[graph.to({chord}).at]) row(static_cast<Eigen::Index>(k)) -= sense;
  }
  return loops;
}

struct Heads {
  VectorXd loss, slope;
};

Heads heads_at(const HydronicGraph& graph, const std::vector<std::size_t>& open, const VectorXd& flow) {
  Heads heads{VectorXd::Zero(flow.size()), VectorXd::Zero(flow.size())};
  for (const std::size_t k : open) {
    const auto at = static_cast<Eigen::Index>(k);
    const Loss loss = branch_loss(graph, {k}, flow(at));
    heads.loss(at) = loss.pressure_Pa;
    heads.slope(at) = std::max(loss.slope_Pa_s_per_m3, 1.0);
  }
  return heads;
}

std::optional<VectorXd> settle(const HydronicGraph& graph, const std::vector<std::size_t>& open, const Tree& tree) {
  const MatrixXd loops = loops_of(graph, tree);
  VectorXd around = VectorXd::Constant(loops.rows(), 1e-5);
  if (loops.rows() == 0) return VectorXd::Zero(static_cast<Eigen::Index>(graph.branch_count()));
  for (int round = 0; round < most_rounds; ++round) {
    const Heads now = heads_at(graph, open, loops.transpose() * around);
    const VectorXd left = loops * now.loss;
    if (left.cwiseAbs().maxCoeff() <= head_digits_Pa) return loops.transpose() * around;
    const VectorXd step = -(loops * now.slope.asDiagonal() * loops.transpose()).ldlt().solve(left);
    // Halved until the heads stop pushing back harder than they pulled.
    double share = 1.0;
    for (; share > 1e-12; share *= 0.5) {
      const Heads then = heads_at(graph, open, loops.transpose() * (around + share * step));
      if (std::abs((loops * then.loss).dot(step)) <= std::abs(left.dot(step))) break;
    }
    around += share * step;
    if ((share * step).cwiseAbs().maxCoeff() <= 1e-16) return loops.transpose() * around;
  }
  return {};
}

/// The pressure of one part of the network may stand no further above another's than this.
struct Bound {
  std::size_t part, other;
  double above_Pa;
};

// Parts that shut valves cut off float: their valves hold if some level of each part holds them all. The bounds are
// those of shortest ways, and no levels keep them just when a round of them can be lowered for ever (Bellman and Ford).
bool some_level_keeps(const std::vector<Bound>& bounds, std::size_t parts) {
  std::vector<double> level(parts, 0.0);
  for (std::size_t round = 0; round <= parts; ++round) {
    bool moved = false;
    for (const Bound& bound : bounds) {
      if (level[bound.part] <= level[bound.other] + bound.above_Pa + push_digits_Pa) continue;
      level[bound.part] = level[bound.other] + bound.above_Pa;
      moved = true;
    }
    if (!moved) return true;
  }
  return false;
}

bool stands_right(const HydronicGraph& graph, const std::vector<std::size_t>& one_way,
                  const std::vector<std::size_t>& open, const Tree& tree, const VectorXd& flow) {
  const Heads heads = heads_at(graph, open, flow);
  const auto pressure = [&](NodeId node) {
    double sum = 0.0;
    for (const auto& [k, sense] : tree.way[node.at]) sum -= sense * heads.loss(static_cast<Eigen::Index>(k));
    return sum;
  };
  std::vector<Bound> bounds;
  for (const std::size_t k : one_way) {
    const bool is_open = std::find(open.begin(), open.end(), k) != open.end();
    if (is_open && flow(static_cast<Eigen::Index>(k)) < -flow_digits_m3_per_s) return false;
    if (is_open) continue;
    const NodeId from = graph.from({k}), to = graph.to({k});
    const double above = branch_loss(graph, {k}, 0.0).pressure_Pa - pressure(from) + pressure(to);
    bounds.push_back({tree.root[from.at], tree.root[to.at], above});
  }
  return some_level_keeps(bounds, graph.node_count());
}

}  // namespace

std::vector<double> flows_by_loops(const HydronicGraph& graph) {
  std::vector<std::size_t> always, one_way;
  for (std::size_t k = 0; k < graph.branch_count(); ++k) {
    if (is_shut(graph, {k})) continue;
    (lets_one_way(graph, {k}) ? one_way : always).push_back(k);
  }
  for (std::size_t standing = 0; standing < (std::size_t{1} << one_way.size()); ++standing) {
    std::vector<std::size_t> open = always;
    for (std::size_t i = 0; i < one_way.size(); ++i) {
      if (standing & (std::size_t{1} << i)) open.push_back(one_way[i]);
    }
    const Tree tree = spanning_tree(graph, open);
    const std::optional<VectorXd> flow = settle(graph, open, tree);
    if (flow && stands_right(graph, one_way, open, tree, *flow)) return {flow->data(), flow->data() + flow->size()};
  }
  return {};
}

}  // namespace slabwright::test
