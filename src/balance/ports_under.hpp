// The manifold's network under one cause: what the ports then carry.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/balance_readings.hpp"

namespace slabwright {

/// What the ports of a plant carry, and through whose tube.
struct PortsUnder {
  std::vector<double> flow_m3_per_s;
  std::vector<std::size_t> tube;      ///< loop whose tube hangs on each port
  std::vector<double> length_share;   ///< of that tube, over drawn
  std::vector<double> reading_share;  ///< what its meter shows, over flow
};

/// Solves the plant's network again and again, each time from the last flows.
class ReadNetwork {
 public:
  /// Water by branch from `point` where it has loops, else the same everywhere.
  ReadNetwork(const Plant& plant, const OperatingPoint& point, double water_degC);

  const std::vector<double>& healthy_m3_per_s() const { return healthy_; }
  /// The worst place of the first solve that left more than others may; empty where none did.
  const std::string& unsettled_at() const { return unsettled_at_; }
  PortsUnder healthy() const;

  std::vector<double> with_lengths(const std::vector<double>& length_share);
  std::vector<double> with_length(std::size_t loop, double length_share);
  /// The loop carries this share of its healthy flow, whatever that takes: its branch is a demand at its ports, so the
  /// rest is solved at once.
  std::vector<double> cut(std::size_t loop, double flow_share);
  std::vector<double> swapped(std::size_t loop, std::size_t other);
  /// The valve in series that cuts it so; flow_share below 1. None where nothing is left.
  std::optional<double> cutting_kv(std::size_t loop, double flow_share);

 private:
  std::vector<double> solve();

  HydronicGraph graph_;
  std::vector<BranchId> branch_;
  NetworkSolver solver_;
  std::vector<double> warm_;
  std::vector<double> pressure_Pa_;
  std::vector<double> healthy_;
  std::string unsettled_at_;
};

/// The elements of a loop's branch with its tube a share of its length.
std::vector<Element> lengthened(std::vector<Element> elements, double length_share);

/// A plant's loop made longer or shorter, where it is drawn and where it is solved.
void lengthen(Plant& plant, std::size_t loop, double length_share);

/// One port's valves with another loop's tube.
std::vector<Element> with_tube_of(const std::vector<Element>& port, const std::vector<Element>& other);

}  // namespace slabwright
