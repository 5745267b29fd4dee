#include <algorithm>
#include <array>

#include "slabwright/contract.hpp"
#include "slabwright/heater_curves.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double to_degF(double degC) { return 1.8 * degC + 32.0; }
constexpr double from_degF(double degF) { return (degF - 32.0) / 1.8; }

// 1, Ti, Ti^2, To, To^2, Ti To, in degF.
using Curve = std::array<double, 6>;
constexpr Curve capacity_curve{.566333415, -.000744164, -.0000103, .009414634, .0000506, -.00000675};
constexpr Curve power_per_heat_curve{.718398423, .003498178, .000142202, -.005724331, .00014085, -.000215321};

double on_curve(const Curve& c, double in_degF, double out_degF) {
  return c[0] + c[1] * in_degF + c[2] * in_degF * in_degF + c[3] * out_degF + c[4] * out_degF * out_degF +
         c[5] * in_degF * out_degF;
}

double some_ice(double ice_share) { return std::max(1e-6, ice_share); }

}  // namespace

HeatPumpShares single_speed_heat_pump(double indoor_degC, double outdoor_degC) {
  const double in = to_degF(indoor_degC), out = to_degF(outdoor_degC);
  return {on_curve(capacity_curve, in, out), 1.0 / on_curve(power_per_heat_curve, in, out)};
}

std::vector<HeatPumpRow> cold_climate_rows(double rated_W) {
  expects(rated_W > 0.0, "a heat pump without heat");
  return {{from_degF(-5.0), 0.60 * rated_W, 1.7},
          {from_degF(5.0), 0.70 * rated_W, 2.0},
          {from_degF(17.0), 0.85 * rated_W, 2.5},
          {from_degF(47.0), rated_W, 3.4}};
}

double air_to_water_cop(double lift_K) {
  expects(lift_K >= 15.0 && lift_K <= 90.0, "a lift outside the fit's: at 90 K it turns up again");
  return 6.08 - 0.09 * lift_K + 0.0005 * lift_K * lift_K;
}

double air_to_water_floor_degC(double outdoor_degC) { return 30.0 - 0.5 * outdoor_degC; }

double carnot_cop(double sink_degC, double source_degC) {
  expects(sink_degC > source_degC && source_degC > -zero_degC_K, "no lift");
  return (sink_degC + zero_degC_K) / (sink_degC - source_degC);
}

double frosting_coil_degC(double outdoor_degC) { return 0.82 * outdoor_degC - 8.589; }

DefrostShares defrost_by_clock(double ice_share) {
  const double ice = some_ice(ice_share);
  return {0.909 - 107.33 * ice, 0.90 - 36.45 * ice, 0.058333};
}

DefrostShares defrost_on_demand(double ice_share) {
  const double time = 1.0 / (1.0 + 0.01446 / some_ice(ice_share));
  return {0.875 * (1.0 - time), 0.954 * (1.0 - time), time};
}

}  // namespace slabwright
