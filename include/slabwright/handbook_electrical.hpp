// Current of an electric boiler and the size of what feeds it. Indicative: a licensed electrician and the local
// edition of the code decide (ambient and terminal derating, voltage drop, service, other continuous loads).
#pragma once
#include <optional>
#include <span>

namespace slabwright {

enum class Phases { one = 1, three = 3 };

/// I = P/V, or P/(sqrt 3 V) with V between two phases. Voltage must be positive.
double electric_current_A(double power_W, double voltage_V, Phases);

/// What a resistance made for `rated_V` gives at another voltage; 240 V elements on 208 V give 75 %.
double element_power_W(double rated_W, double rated_V, double actual_V);

/// NEC 240.6(A): standard ampere ratings of fuses and breakers, 15 to 6000 A (from memory beyond those that worked
/// examples name).
std::span<const double> standard_devices_A();

/// What feeds a continuous load under the NEC; for `codes = "north america"` only.
struct NorthAmericanSupply {
  double demand_share = 0.0;       ///< 125 % of the load (210.19(A)(1), 210.20(A), 424.4(B))
  double demand_A = 0.0;           ///< which is this current
  std::optional<double> device_A;  ///< next standard device; absent above 6000 A
  bool next_size_up = true;        ///< 240.4(B) lets the conductor fall short of the device only up to 800 A
};
NorthAmericanSupply north_american_supply(double current_A);

/// Where the code wants elements divided: at most 48 A each behind 60 A, unless the vessel bears the ASME stamp,
/// then 120 A behind 150 A (422.11(F), 2008; for boilers 424.72 by analogy, from memory).
int north_american_circuits(double current_A, bool stamped_vessel);

}  // namespace slabwright
