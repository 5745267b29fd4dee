// A second solver, written the other way round: unknown are the flows around loops, not the pressures of nodes.
#pragma once
#include <vector>

#include "slabwright/hydraulics.hpp"

namespace slabwright::test {

/// Flows by branch of a closed network with no more than 12 one-way branches. The loops come from a spanning tree of
/// the graph package, the heads around them are brought to zero by Newton with a dense matrix, the friction is
/// tube_loss() each time anew; and of all ways in which the one-way branches could stand, each is tried until one
/// agrees with its flows and pressures. Empty where none does.
std::vector<double> flows_by_loops(const HydronicGraph& graph);

}  // namespace slabwright::test
