// Which node is put out of the way when: the part of the linear algebra that knows only how the network is joined.
#pragma once
#include <vector>

#include "hydraulics/graph.hpp"

namespace slabwright {

/// A node with two neighbours at most. Without it, its two links are one link between the neighbours: two resistances
/// in series. What already joined the neighbours is in parallel with it.
struct Step {
  int one = 0, other = 0;  ///< rows of the neighbours; the row after the last where there is none
  int between = 0;         ///< slot of the link between them
};

/// A link that no step takes away. Its rows are counted from the first of the core, the lower one first.
struct CoreLink {
  int low = 0, high = 0;
};

/// Nodes in the order in which they go are `row`s. Branches between the same two nodes share a link, and a link has a
/// slot: step i owns 2 i (to `one`) and 2 i + 1 (to `other`), the core's links come after, then one slot for nothing.
struct Elimination {
  std::vector<int> row;   ///< by node
  std::vector<int> slot;  ///< by branch
  std::vector<Step> steps;
  std::vector<CoreLink> core;
};

/// Takes away nodes with two neighbours or fewer while there are any. Ladders of manifold ports, rows of manifolds,
/// trees of mains come apart wholly; of rings and reverse returns a core is left, in which every node has three
/// neighbours or more. Its rows stand in an order of minimum degree.
Elimination eliminate(std::size_t nodes, const std::vector<Ends>& branches);

}  // namespace slabwright
