// The plant's pressures at flows that are wished for, before any network is solved.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/balance.hpp"

namespace slabwright {

class Circuit {
 public:
  Circuit(const Plant& plant, double water_degC);

  /// What each loop asks for where the mains leave the source: its own branch with the valve open, and the mains and
  /// bars on its way, which carry the flow of all loops further out.
  std::vector<double> port_pressures_Pa(const std::vector<double>& flow) const;
  double worst_Pa(const std::vector<double>& flow) const;  ///< of the loop that asks for most
  double open_valve_Pa(std::size_t loop, double flow) const;
  /// What a bypass lets pass at a pressure between supply and return.
  double bypassed_m3_per_s(double pressure_Pa) const;
  /// What the circulators give together for these flows: the hardest loop's whole round.
  double duty_Pa(const std::vector<double>& flow) const;
  /// How many times these flows the pump carries at full speed, every loop in balance with the hardest.
  double reach_share(const std::vector<double>& flow) const;
  /// The speed at which it carries just these flows.
  double speed_for(const std::vector<double>& flow) const;
  const Liquid& water() const { return water_; }
  /// The source by itself when so much is drawn from it; with no circulators running where no speed is given.
  NetworkSolution source_alone(double flow, std::optional<double> speed_share) const;

 private:
  /// What is left for mains and loops when so much is drawn from the source; below zero with no circulators running.
  double left_Pa(double flow, std::optional<double> speed_share) const;

  const Plant& plant_;
  HydronicGraph graph_;
  HydronicGraph source_;  ///< alone
  NodeId out_, back_;
  Liquid water_;
};

/// Ports turned one after the other, and the worst place of the last solve that did not converge, where one did not.
struct TurnedInOrder {
  std::vector<BalanceMove> move;
  Stop stop = Stop::converged;
  std::string worst_name;
};
/// The one furthest over its aim first, with what the meters then read. `open` is the plant with all ports open at the
/// speed of the balance.
TurnedInOrder turned_in_order(const Plant& open, const Balance& balance, double water_degC);

}  // namespace slabwright
