// Nodes closed: what rounding has left over at each is led on to where pressures count from.
#pragma once
#include <vector>

#include "hydraulics/newton.hpp"

namespace slabwright {

/// What leaves each node beyond what comes in, its demand counted as leaving. m3/s, by node; of no use at held ones.
std::vector<double> lost_at_nodes(const Task& task);

/// For each branch the change of flow after which every node that is not held passes on just what it gets.
///
/// Flows follow from differences of pressures. Along a branch that hardly resists the difference is far below the
/// pressures themselves, which are known to some sixteen digits: what is cut off there is a trickle that no node
/// accounts for. The trickles run off along a tree over each part, made of the branches that resist least, for those
/// are where they come from and where they move a head by least.
std::vector<double> closing_changes(const Task& task);

}  // namespace slabwright
