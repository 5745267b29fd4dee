// Expansion tank and fill pressure. ASHRAE HVAC Systems and Equipment, hydronic system design chapter.
#pragma once
#include <optional>

#include "handbook_air.hpp"

namespace slabwright {

/// Absolute pressures at the tank: cold fill, and the most that is allowed hot.
struct TankPressures {
  double fill_Pa = 0.0;
  double most_Pa = 0.0;
  double air_Pa = standard_atmosphere_Pa;  ///< at which a plain closed tank was filled with air
};

/// What the water's growth needs less what the pipe itself grows: V {[(v2/v1) - 1] - 3 alpha dt}.
/// `growth_share` is v2/v1 - 1, see expansion_share. `pipe_per_K` is the pipe's linear expansion; 0 for plastic
/// tube, which is on the careful side.
double expansion_m3(double system_m3, double growth_share, double pipe_per_K, double rise_K);

/// v2/v1 - 1 from the densities of coldest standing and hottest fluid.
double expansion_share(double cold_kg_per_m3, double hot_kg_per_m3);

/// Diaphragm tank: expansion / (1 - P1/P2). Absent unless 0 < fill < most.
std::optional<double> diaphragm_tank_m3(double grown_m3, const TankPressures&);
/// Plain closed tank: expansion / (Pa/P1 - Pa/P2). Absent unless 0 < air <= fill < most.
std::optional<double> closed_tank_m3(double grown_m3, const TankPressures&);
/// Open tank: twice the expansion.
double open_tank_m3(double grown_m3);

/// Linear expansion of pipe, per kelvin: 6.5e-6 and 9.5e-6 per degF, same chapter.
inline constexpr double steel_expansion_per_K = 6.5e-6 * 1.8;
inline constexpr double copper_expansion_per_K = 9.5e-6 * 1.8;

/// Cold fill at the tank, gauge: height of water above it / 2.31 ft per psi + 4 psi at the top (trade manuals).
double fill_gauge_Pa(double height_m);

/// The most to plan for at the tank, gauge: 90 % of the relief valve's setting (trade manuals).
double planned_most_gauge_Pa(double relief_gauge_Pa);

}  // namespace slabwright
