// Newton's method on a network whose open branches and held nodes are settled.
#pragma once
#include <vector>

#include "hydraulics/branch_law.hpp"
#include "hydraulics/node_equations.hpp"
#include "slabwright/hydraulics_network.hpp"

namespace slabwright {

struct Task {
  const std::vector<Ends>& ends;
  const std::vector<Node>& nodes;
  BranchLaws& laws;
  std::vector<bool> open;  ///< by branch
  std::vector<bool> held;  ///< by node; at zero where the graph holds none
};

struct Worst {
  double amount = 0.0;
  std::size_t at = 0;
};

struct Ended {
  Stop stop = Stop::rounds_spent;
  int rounds = 0;
  Worst imbalance_m3_per_s;  ///< over the nodes that are not held
  Worst head_Pa;             ///< over the open branches
};

/// Each open branch obeys p_from - p_to = loss(Q), each node that is not held passes on what it gets. Begins with the
/// flows in the laws' motions, and leaves the flows found there, and the pressures in the equations.
Ended find_flows(NodeEquations& equations, const Task& task, const NetworkOptions& options);

}  // namespace slabwright
