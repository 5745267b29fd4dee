// Water vapour in air: what it can hold, when it falls out, and how fast a cold or wet floor gains or loses water.
//
// Below the triple point, 0.01 degC, saturation is over ice, as psychrometric tables have it: dew point then means
// frost point. Weather stations state relative humidity over water also in frost; take their dew points instead.
#pragma once

namespace slabwright {

/// Saturation pressures of Hyland and Wexler, ASHRAE Fundamentals chapter 1, equations 5 and 6: over ice from -100 to
/// 0.01 degC, over water from there to 200 degC (below 0 degC the curve over water is that of undercooled drops, here
/// to -50 degC). They differ from IAPWS-95 by up to 0.03 % between 0 and 40 degC.
double saturation_over_ice_Pa(double temperature_degC);
double saturation_over_water_Pa(double temperature_degC);
/// Ice below the triple point, water above it; the two curves meet there to 1e-8.
double saturation_Pa(double temperature_degC);

/// Temperature at which this vapour pressure saturates; the inverse of saturation_Pa to 1e-9 K. Vapour pressure between
/// the saturation pressures at -100 and 200 degC.
double dew_point_degC(double vapour_Pa);

/// Kilograms of vapour to a kilogram of dry air, 0.621945 p / (P - p). Vapour pressure from 0 to below the total one.
double humidity_ratio(double vapour_Pa, double total_Pa);
/// The same the other way round; ratio not negative.
double vapour_of_ratio_Pa(double ratio, double total_Pa);
/// Of air with this relative humidity, 0 to 1.
double humidity_ratio_of(double air_degC, double humidity_share, double total_Pa);

/// Relative humidity of a thin layer of air on a surface, vapour pressure over saturation at its temperature: above 1
/// it sweats, above 0.8 it counts as wet for corrosion (from memory of ISO 9223).
double surface_humidity_share(double vapour_Pa, double surface_degC);

/// Water that settles on a wet or sweating surface, kg/m2s; negative where it dries. Lewis number 1: h / cp times the
/// difference of the humidity ratios of the air and of saturated air at the surface. A dry surface has nothing to give:
/// that is the caller's to know. `convection_W_per_m2K` is the convective part alone; over a floor colder than the air
/// about 1 in still air and 3 with fans (practice).
double settling_kg_per_sm2(double convection_W_per_m2K, double air_ratio, double surface_ratio);

/// Heat of vaporisation at 0 degC; 0.1 % less for each kelvin above.
inline constexpr double vaporisation_J_per_kg = 2.501e6;

}  // namespace slabwright
