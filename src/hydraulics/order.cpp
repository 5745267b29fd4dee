// How far nodes lie from one another, along the branches' own directions.
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/breadth_first_search.hpp>
#include <boost/pending/queue.hpp>

#include "hydraulics/graph.hpp"

namespace slabwright {
namespace {

using DirectedWays = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS>;

DirectedWays directed_ways(const HydronicGraph& graph, const std::vector<BranchId>& closed, Walk walk) {
  std::vector<bool> shut(graph.branch_count(), false);
  for (const BranchId branch : closed) shut[branch.at] = true;
  DirectedWays ways(graph.node_count());
  for (std::size_t i = 0; i < graph.branch_count(); ++i) {
    if (shut[i]) continue;
    const std::size_t from = graph.from({i}).at, to = graph.to({i}).at;
    if (walk == Walk::along)
      add_edge(from, to, ways);
    else
      add_edge(to, from, ways);
  }
  return ways;
}

struct CountSteps : boost::default_bfs_visitor {
  explicit CountSteps(std::vector<std::optional<std::size_t>>& s) : steps(s) {}
  void tree_edge(const DirectedWays::edge_descriptor& edge, const DirectedWays& ways) const {
    steps[target(edge, ways)] = *steps[source(edge, ways)] + 1;
  }
  std::vector<std::optional<std::size_t>>& steps;
};

}  // namespace

std::vector<std::optional<std::size_t>> steps_from(const HydronicGraph& graph, const std::vector<NodeId>& from,
                                                   const std::vector<BranchId>& closed, Walk walk) {
  const DirectedWays ways = directed_ways(graph, closed, walk);
  std::vector<std::optional<std::size_t>> steps(graph.node_count());
  std::vector<std::size_t> starts;
  for (const NodeId node : from) {
    if (!steps[node.at]) starts.push_back(node.at);
    steps[node.at] = 0;
  }
  std::vector<boost::default_color_type> colours(graph.node_count(), boost::white_color);
  boost::queue<std::size_t> waiting;
  breadth_first_visit(ways, starts.begin(), starts.end(), waiting, CountSteps(steps), colours.data());
  return steps;
}

}  // namespace slabwright
