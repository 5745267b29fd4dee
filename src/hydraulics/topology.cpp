// What can be known of a hydronic graph from the way it is joined alone.
#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/biconnected_components.hpp>
#include <boost/graph/breadth_first_search.hpp>
#include <boost/graph/connected_components.hpp>
#include <boost/pending/queue.hpp>

#include "hydraulics/graph.hpp"

namespace slabwright {
namespace {

// Nodes and numbered open branches, nothing else: what the package's algorithms walk.
using Ways = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property,
                                   boost::property<boost::edge_index_t, std::size_t>>;

Ways open_ways(const HydronicGraph& graph) {
  Ways ways(graph.node_count());
  for (std::size_t i = 0; i < graph.branch_count(); ++i) {
    const BranchId branch{i};
    if (!is_shut(graph, branch)) add_edge(graph.from(branch).at, graph.to(branch).at, i, ways);
  }
  return ways;
}

// The same with the world outside as one more node, joined to every node that gives or takes water. Each branch has a
// midpoint, since the package's biconnected components do not see the second of two branches between the same nodes.
// The first half of a branch carries its number.
Ways ways_and_outside(const HydronicGraph& graph) {
  const std::size_t outside = graph.node_count();
  Ways ways(graph.node_count() + 1);
  std::size_t number = graph.branch_count();
  for (std::size_t i = 0; i < graph.branch_count(); ++i) {
    const BranchId branch{i};
    if (is_shut(graph, branch)) continue;
    const std::size_t midpoint = add_vertex(ways);
    add_edge(graph.from(branch).at, midpoint, i, ways);
    add_edge(midpoint, graph.to(branch).at, number++, ways);
  }
  for (std::size_t i = 0; i < graph.node_count(); ++i) {
    const Node& node = graph.inside().nodes[i];
    if (node.held || node.demand_m3_per_s != 0.0) add_edge(i, outside, number++, ways);
  }
  return ways;
}

// A tree over each connected part: for every node but the roots, the node before it and the branch between.
struct Trees {
  std::vector<std::size_t> before, branch, depth;
  std::vector<bool> has_branch;
};

struct Grow : boost::default_bfs_visitor {
  explicit Grow(Trees& t) : trees(t) {}
  void tree_edge(const Ways::edge_descriptor& edge, const Ways& ways) const {
    const std::size_t from = source(edge, ways), to = target(edge, ways), at = get(boost::edge_index, ways, edge);
    trees.before[to] = from;
    trees.branch[to] = at;
    trees.depth[to] = trees.depth[from] + 1;
    trees.has_branch[at] = true;
  }
  Trees& trees;
};

// Breadth first, so that the round trips are short.
Trees grow(const Ways& ways, std::size_t branches) {
  const std::vector<std::size_t> zeros(num_vertices(ways), 0);
  Trees trees{zeros, zeros, zeros, std::vector<bool>(branches, false)};
  std::vector<boost::default_color_type> colours(num_vertices(ways), boost::white_color);
  for (std::size_t root = 0; root < colours.size(); ++root) {
    if (colours[root] != boost::white_color) continue;
    boost::queue<std::size_t> waiting;
    breadth_first_visit(ways, root, waiting, Grow(trees), colours.data());
  }
  return trees;
}

Leg leg_from(const HydronicGraph& graph, std::size_t branch, std::size_t start) {
  return {{branch}, graph.from({branch}).at == start};
}

// Along the branch, then back through the tree: up from its end to where the two ways meet, down to its start.
std::vector<Leg> round_trip(const HydronicGraph& graph, const Trees& trees, BranchId branch) {
  std::vector<Leg> up{{branch, true}}, down;
  std::size_t end = graph.to(branch).at, start = graph.from(branch).at;
  while (end != start) {
    if (trees.depth[end] >= trees.depth[start]) {
      up.push_back(leg_from(graph, trees.branch[end], end));
      end = trees.before[end];
    } else {
      down.push_back(leg_from(graph, trees.branch[start], trees.before[start]));
      start = trees.before[start];
    }
  }
  up.insert(up.end(), down.rbegin(), down.rend());
  return up;
}

}  // namespace

std::vector<std::size_t> connected_parts(const HydronicGraph& graph) {
  std::vector<std::size_t> part(graph.node_count());
  if (!part.empty()) connected_components(open_ways(graph), part.data());
  return part;
}

std::vector<BranchId> branches_without_flow(const HydronicGraph& graph) {
  const Ways ways = ways_and_outside(graph);
  // Two edges lie in one biconnected component when a round trip passes both; a bridge has a component to itself.
  std::vector<std::size_t> component(2 * graph.branch_count() + graph.node_count(), 0);
  const auto by_branch = boost::make_iterator_property_map(component.begin(), get(boost::edge_index, ways));
  const std::size_t components = biconnected_components(ways, by_branch);
  std::vector<std::size_t> members(components, 0);
  const auto [first, last] = edges(ways);
  std::for_each(first, last, [&](const auto& edge) { ++members[get(by_branch, edge)]; });

  std::vector<BranchId> still;
  for (std::size_t i = 0; i < graph.branch_count(); ++i) {
    if (is_shut(graph, {i}) || members[component[i]] == 1) still.push_back({i});
  }
  return still;
}

std::vector<std::vector<Leg>> independent_loops(const HydronicGraph& graph) {
  const Trees trees = grow(open_ways(graph), graph.branch_count());
  std::vector<std::vector<Leg>> loops;
  for (std::size_t i = 0; i < graph.branch_count(); ++i) {
    if (!is_shut(graph, {i}) && !trees.has_branch[i]) loops.push_back(round_trip(graph, trees, {i}));
  }
  return loops;
}

}  // namespace slabwright
