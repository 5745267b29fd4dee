// What heat pumps do when nobody has their table: curves of units measured by others, and what ice on a coil takes.
#pragma once
#include <vector>

#include "slabwright/heater.hpp"

namespace slabwright {

/// Of a rated value.
struct HeatPumpShares {
  double capacity_share = 0.0;
  double cop_share = 0.0;
};

/// Single-speed air to air, without frost, over its rating at 8.3 degC (47 degF) outdoors and 21.1 degC (70 degF)
/// inside. Fitted to outdoors of -23 to 24 degC and a room of 16 to 27 degC (span from memory); a colder room is
/// outside of it. NREL/TP-5500-56354.
HeatPumpShares single_speed_heat_pump(double indoor_degC, double outdoor_degC);

/// A cold-climate unit, rows without frost for its capacity at 47 degF: a judgement within what certification asks
/// for, not published.
std::vector<HeatPumpRow> cold_climate_rows(double rated_W);

/// Air to water by the lift from outdoor air to water, 15 to 90 K, where it turns; a fit over many units on the test
/// bench (Scientific Data 6:189, 2019). In houses take `real_life_share` of it, as the same source does.
double air_to_water_cop(double lift_K);
inline constexpr double real_life_share = 0.85;
/// Water for a floor that the same source takes, 30 - T/2.
double air_to_water_floor_degC(double outdoor_degC);

/// The most that any machine can: sink over lift in kelvin. Sink warmer than source, source above -273.15 degC.
double carnot_cop(double sink_degC, double source_degC);
/// Of Carnot's, beyond which a stated COP is not to be believed (judgement).
inline constexpr double believable_carnot_share = 0.6;

/// Temperature of an outdoor coil by the building-simulation reference of the US DOE: 0.82 T - 8.589.
double frosting_coil_degC(double outdoor_degC);

/// What stays of capacity and of power (not of COP) while a coil gathers `ice_share`, kg of water per kg of air that
/// the air holds above saturation at the coil; at least 1e-6 is taken. Same reference. The heat that a reversed
/// cycle takes from the room comes on top, and the sources do not agree on it.
struct DefrostShares {
  double capacity_share = 0.0;
  double power_share = 0.0;
  double time_share = 0.0;  ///< spent defrosting
};
DefrostShares defrost_by_clock(double ice_share);
DefrostShares defrost_on_demand(double ice_share);

}  // namespace slabwright
