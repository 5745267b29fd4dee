// Numbers that are exact by definition: international yard and pound (1959), US gallon of 231 in3, Btu of the
// International Table, standard gravity, the hour, the kelvin's distance from the degree Celsius, and pi.
#pragma once

namespace slabwright {

inline constexpr double pi = 3.14159265358979323846;
inline constexpr double foot_m = 0.3048, inch_m = 0.0254, mile_m = 5280.0 * foot_m;
inline constexpr double gallon_m3 = 231.0 * inch_m * inch_m * inch_m;
inline constexpr double minute_s = 60.0, hour_s = 60.0 * minute_s, day_s = 24.0 * hour_s;
inline constexpr double zero_degC_K = 273.15;  ///< 0 degC, K
inline constexpr double btu_J = 1055.05585262;
inline constexpr double pound_kg = 0.45359237, gravity_m_per_s2 = 9.80665;
/// What gauges and pump sheets call a metre of water: 1000 kg/m3 at standard gravity.
inline constexpr double metre_of_water_Pa = 1000.0 * gravity_m_per_s2;
inline constexpr double psi_Pa = pound_kg * gravity_m_per_s2 / (inch_m * inch_m);

}  // namespace slabwright
