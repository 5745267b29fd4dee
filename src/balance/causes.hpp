// Every cause at every loop, weighed against the readings.
#pragma once
#include <vector>

#include "balance/evidence.hpp"

namespace slabwright {

/// The ports under a suspect of its size.
PortsUnder ports_under(ReadNetwork& network, const Suspect& suspect);

/// All of them, in the order of cause_ranges() and of the loops; probabilities add up to 1. `manifold` of each loop.
std::vector<Suspect> weigh_causes(ReadNetwork& network, const Evidence& evidence,
                                  const std::vector<std::size_t>& manifold);

}  // namespace slabwright
