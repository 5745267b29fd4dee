#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double dry_air_J_per_kgK = 287.042;
constexpr double plain_density_kg_per_m3 = 1.2;
constexpr double cfm_m3_per_s = foot_m * foot_m * foot_m / 60.0;
constexpr double btu_per_h_degF_W_per_K = btu_J / hour_s * 1.8;

}  // namespace

double pressure_share(double altitude_m) {
  expects(altitude_m >= -500.0 && altitude_m <= 11000.0, "an altitude outside the standard atmosphere's formula");
  return std::pow(1.0 - 2.25577e-5 * altitude_m, 5.2559);
}

double air_pressure_Pa(double altitude_m) { return standard_atmosphere_Pa * pressure_share(altitude_m); }

double air_density_kg_per_m3(double air_degC, double altitude_m) {
  return air_pressure_Pa(altitude_m) / (dry_air_J_per_kgK * (air_degC + zero_degC_K));
}

double infiltration_W_per_K(double volume_m3, double changes_per_h, double altitude_m) {
  return 0.34 * volume_m3 * changes_per_h * pressure_share(altitude_m);
}

double air_stream_W_per_K(double flow_m3_per_s, double density_kg_per_m3) {
  return density_kg_per_m3 * air_J_per_kgK * flow_m3_per_s;
}

double air_stream_cfm_form_W_per_K(double flow_m3_per_s) {
  return 1.08 * flow_m3_per_s / cfm_m3_per_s * btu_per_h_degF_W_per_K;
}

double exhaust_heat_W(double flow_m3_per_s, double rise_K) { return air_stream_W_per_K(flow_m3_per_s) * rise_K; }

double door_air_m3_per_s(OpenDoor door, double rise_K) {
  constexpr double discharge = 0.65, mean_K = 290.0;
  const double speed = std::sqrt(gravity_m_per_s2 * door.height_m * std::abs(rise_K) / mean_K);
  return discharge / 3.0 * door.width_m * door.height_m * speed;
}

double door_heat_W(OpenDoor door, double rise_K) {
  return air_stream_W_per_K(door_air_m3_per_s(door, rise_K), plain_density_kg_per_m3) * rise_K;
}

}  // namespace slabwright
