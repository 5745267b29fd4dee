// What mixes in the source, at flows and return temperatures that are known.
#pragma once
#include <vector>

#include "plant/piping.hpp"

namespace slabwright {

struct SourceFlows {
  const HydronicGraph& graph;
  const NetworkSolution& network;
  const std::vector<double>& return_degC;  ///< by loop
  double supply_degC = 0.0;                ///< wanted where the mains leave
};

/// The boiler's temperature by the balances of all meetings: its own where something mixes, else what the supply takes.
SourceState source_state(const Plant& plant, const SourceFlows& at);

/// The setting that would have mixed the supply wanted, were the split of flows in proportion to what was turned.
double next_setting(const Plant& plant, const SourceFlows& at, double setting_share);

/// A setting that a stem or a pump can have.
double settled(const Plant& plant, double setting_share);

}  // namespace slabwright
