// What stands behind HydronicGraph.
#pragma once
#include <cstdint>
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

/// The nodes that a branch joins. Short numbers: what a large network costs is the memory it passes through.
struct Ends {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  friend bool operator==(Ends a, Ends b) { return a.from == b.from && a.to == b.to; }
};

struct Branch {
  Ends ends;
  std::string name;
  Liquid liquid;
  std::vector<Element> elements;
};

/// Two plain lists. The graph package's own graphs are made from them where its algorithms are asked (topology.cpp): a
/// graph that carried names and elements through the package would cost twice the time that its solution does.
struct HydronicGraph::Inside {
  std::vector<Node> nodes;
  std::vector<Branch> branches;
};

/// Whether the element lets nothing pass.
bool is_shut(const Element& element);

}  // namespace slabwright
