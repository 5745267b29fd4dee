// The plant's pressures at flows that are wished for, before any network is solved.
#pragma once
#include <vector>

#include "slabwright/balance.hpp"

namespace slabwright {

class Circuit {
 public:
  Circuit(const Plant& plant, double water_degC);

  /// What each loop asks for between the first ports of its manifold: its own branch with the valve open, and the bars
  /// on the way to it, which carry the flow of all loops further out.
  std::vector<double> port_pressures_Pa(const std::vector<double>& flow) const;
  double open_valve_Pa(std::size_t loop, double flow) const;
  /// The hardest loop's whole round at these flows.
  double duty_Pa(const std::vector<double>& flow) const;
  /// How many times these flows the pump carries at full speed, every loop in balance with the hardest.
  double reach_share(const std::vector<double>& flow) const;
  /// The speed at which it carries just these flows.
  double speed_for(const std::vector<double>& flow) const;
  const Liquid& water() const { return water_; }

 private:
  double pump_Pa(double flow, double speed_share) const;

  const Plant& plant_;
  HydronicGraph graph_;
  Liquid water_;
};

/// Ports turned one after the other, the one furthest over its aim first, with what the meters then read. `open` is the
/// plant with all ports open at the speed of the balance.
std::vector<BalanceMove> moves(const Plant& open, const Balance& balance, double water_degC);

}  // namespace slabwright
