#include <algorithm>
#include <array>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_electrical.hpp"

namespace slabwright {
namespace {

constexpr std::array<double, 37> devices_A{15,  20,  25,   30,   35,   40,   45,   50,   60,   70,   80,  90,  100,
                                           110, 125, 150,  175,  200,  225,  250,  300,  350,  400,  450, 500, 600,
                                           700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000};
constexpr double continuous_share = 1.25;
constexpr double next_size_up_A = 800.0;
/// 46.875 A must not miss 50 A, nor 125 A its own device, by the last bit of a division.
constexpr double last_bit = 1e-9;

}  // namespace

double electric_current_A(double power_W, double voltage_V, Phases phases) {
  expects(voltage_V > 0.0, "no voltage");
  return power_W / (phases == Phases::three ? std::sqrt(3.0) * voltage_V : voltage_V);
}

double element_power_W(double rated_W, double rated_V, double actual_V) {
  expects(rated_V > 0.0, "no rated voltage");
  const double ratio = actual_V / rated_V;
  return rated_W * ratio * ratio;
}

std::span<const double> standard_devices_A() { return devices_A; }

NorthAmericanSupply north_american_supply(double current_A) {
  expects(current_A >= 0.0, "a current below zero");
  NorthAmericanSupply supply;
  supply.demand_share = continuous_share;
  supply.demand_A = continuous_share * current_A;
  const auto device = std::lower_bound(devices_A.begin(), devices_A.end(), supply.demand_A * (1.0 - last_bit));
  if (device != devices_A.end()) supply.device_A = *device;
  supply.next_size_up = supply.device_A && *supply.device_A <= next_size_up_A;
  return supply;
}

int north_american_circuits(double current_A, bool stamped_vessel) {
  expects(current_A >= 0.0, "a current below zero");
  const double most_A = stamped_vessel ? 120.0 : 48.0;
  return std::max(1, static_cast<int>(std::ceil(current_A / most_A * (1.0 - last_bit))));
}

}  // namespace slabwright
