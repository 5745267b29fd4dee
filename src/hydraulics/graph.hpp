// The graph package's graph behind HydronicGraph.
#pragma once
#include <boost/graph/adjacency_list.hpp>
#include <string>
#include <vector>

#include "slabwright/hydraulics_graph.hpp"

namespace slabwright {

struct Node {
  std::string name;
  double demand_m3_per_s = 0.0;
  bool held = false;
  double held_pressure_Pa = 0.0;
};

struct Branch {
  std::size_t at = 0;  ///< its own row number
  std::string name;
  Liquid liquid;
  std::vector<Element> elements;
};

using Joined = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, Node, Branch>;

/// The graph package keeps branches in a list; `branches` finds them by number. An undirected edge still remembers
/// which end was named first, and that is the direction in which flow counts as positive.
struct HydronicGraph::Inside {
  Joined graph;
  std::vector<Joined::edge_descriptor> branches;

  const Node& node(std::size_t at) const { return graph[at]; }
  const Branch& branch(std::size_t at) const { return graph[branches[at]]; }
  std::size_t from(std::size_t at) const { return source(branches[at], graph); }
  std::size_t to(std::size_t at) const { return target(branches[at], graph); }
};

}  // namespace slabwright
