// What every use of readings begins with: whether they can be used, and what they are held against.
#pragma once
#include <optional>
#include <vector>

#include "balance/loop_returns.hpp"
#include "balance/ports_under.hpp"
#include "slabwright/balance_readings.hpp"

namespace slabwright {

/// Root mean square of leftovers beyond which nothing is explained.
inline constexpr double unexplained_number = 2.0;

/// What readings are held against.
struct HeldAgainst {
  /// Absent without a supply temperature, a floor or its rooms' temperatures.
  std::optional<LoopReturns> returns;
  ReadNetwork network;
  double usual_m3_per_s = 0.0;  ///< mean of the healthy ports, above zero
};
/// Absent, with the reasons said alone, where readings cannot be used or the plant moves no water. Said beside it:
/// return temperatures that were read and are left out.
std::optional<HeldAgainst> held_against(const Plant& plant, const Readings& readings, const Conditions& conditions,
                                        std::vector<Diagnostic>& said);

/// Water in each loop.
std::vector<double> volumes(const Plant& plant);

/// The plant with every port wide open, whatever it was read with.
Plant reopened(const Plant& plant);

Diagnostic no_water_moves();

/// Where a solve of the network did not settle, what was found from it is rough.
void say_unsettled_network(const ReadNetwork& network, std::vector<Diagnostic>& said);

}  // namespace slabwright
