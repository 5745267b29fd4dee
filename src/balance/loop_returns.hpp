// How warm a loop's water comes back at another flow and another length than the operating point's.
#pragma once
#include <vector>

#include "slabwright/balance.hpp"

namespace slabwright {

/// Each loop as a heat exchanger: its water falls exponentially towards the temperature at which floor and ground take
/// no more. The conductance is read off operate() at some speeds of the pump, so that the film of a slow loop is in it.
class LoopReturns {
 public:
  /// The plant has a floor, and the conditions a temperature for each room.
  LoopReturns(const Plant& plant, const Conditions& conditions, double supply_degC);

  /// Supply less return. flow >= 0; at none the water is as cold as it gets.
  double drop_K(std::size_t loop, double flow_m3_per_s, double length_share) const;
  double supply_degC() const { return supply_degC_; }
  const OperatingPoint& point() const { return point_; }

 private:
  double supply_degC_;
  OperatingPoint point_;              ///< at the plant's own speed
  std::vector<double> most_drop_K_;   ///< down to rest
  std::vector<MonotoneTable> table_;  ///< flow to conductance over heat capacity, m3/s
};

}  // namespace slabwright
