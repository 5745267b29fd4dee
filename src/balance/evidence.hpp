// How likely readings are under what the ports carry, whatever the pump's speed and the floor's heat.
#pragma once
#include <vector>

#include "balance/loop_returns.hpp"
#include "balance/ports_under.hpp"

namespace slabwright {

struct Fit {
  double log_likelihood = 0.0;
  double squares = 0.0;       ///< of what is left over, each over the error of its reading
  double common_share = 1.0;  ///< all flows over the model's, as fits best
};

/// Two unknowns that all readings have in common, the logarithms of the flows' and of the drops' common factor, are
/// fitted by weighted least squares and integrated out as normal (Laplace). Readings err normally, flows and times in
/// proportion to what is true.
class Evidence {
 public:
  /// `returns` may be null. It must outlive this, as must `readings`.
  Evidence(const Readings& readings, std::vector<double> volume_m3, const LoopReturns* returns, double usual_m3_per_s);

  Fit fit(const PortsUnder& ports) const;
  int count() const { return count_; }  ///< of readings that count

  /// What would be read at a port, without error.
  double front_s(const PortsUnder& ports, std::size_t port) const;
  double return_degC(const PortsUnder& ports, std::size_t port) const;
  /// Standard error of a meter at this flow.
  double meter_error_m3_per_s(double flow_m3_per_s) const;
  const Readings& readings() const { return readings_; }
  bool knows_returns() const { return returns_ != nullptr; }
  double supply_degC() const { return returns_->supply_degC(); }

 private:
  struct Common {
    double flow = 0.0, heat = 0.0;  ///< logarithms
  };
  struct Sums;
  Sums at(const PortsUnder& ports, Common common) const;
  void add_flow(const PortsUnder& ports, std::size_t port, double flow, Sums& sums) const;
  void add_front(const PortsUnder& ports, std::size_t port, double flow, Sums& sums) const;
  void add_return(const PortsUnder& ports, std::size_t port, double flow, double heat_share, Sums& sums) const;

  const Readings& readings_;
  std::vector<double> volume_m3_;
  const LoopReturns* returns_;
  double usual_m3_per_s_;
  int count_ = 0;
};

}  // namespace slabwright
