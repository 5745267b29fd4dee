// Cold vehicles and the snow on them.
#include <algorithm>
#include <cmath>

#include "slabwright/building_loads.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {

VehicleHours vehicle_hours(const ColdVehicle& vehicle, double room_degC) {
  expects(vehicle.mass_kg >= 0.0 && vehicle.snow_kg >= 0.0, "masses are not negative");
  expects(vehicle.evaporates_share >= 0.0 && vehicle.evaporates_share <= 1.0, "of the snow a share evaporates");
  constexpr double step_s = hour_s, through_share = 0.99;
  const bool melts = room_degC > 0.0;
  const double snow_J_per_kg = ice_J_per_kgK * std::max(0.0, -vehicle.arrives_degC) + melting_J_per_kg;
  const double vapour_kg = melts ? vehicle.snow_kg * vehicle.evaporates_share : 0.0;
  const double heat_J = vehicle.mass_kg * vehicle_J_per_kgK * (room_degC - vehicle.arrives_degC) +
                        (melts ? vehicle.snow_kg * snow_J_per_kg : 0.0) + vapour_kg * vaporisation_J_per_kg;
  const double stays_share = std::exp(-step_s / vehicle_time_constant_s);
  VehicleHours out;
  for (double left = 1.0; left > 0.0;) {
    const double next = left * stays_share, after = next <= 1.0 - through_share ? 0.0 : next;
    out.heat_W.push_back(heat_J * (left - after) / step_s);
    out.vapour_kg_per_s.push_back(vapour_kg * (left - after) / step_s);
    left = after;
  }
  return out;
}

}  // namespace slabwright
