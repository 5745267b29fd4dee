// Numbers that are exact by definition: international yard and pound (1959), standard gravity, and pi.
#pragma once

namespace slabwright {

inline constexpr double pi = 3.14159265358979323846;
inline constexpr double foot_m = 0.3048, inch_m = 0.0254, mile_m = 5280.0 * foot_m;
inline constexpr double pound_kg = 0.45359237, gravity_m_per_s2 = 9.80665;
inline constexpr double psi_Pa = pound_kg * gravity_m_per_s2 / (inch_m * inch_m);

}  // namespace slabwright
