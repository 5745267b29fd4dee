// How soon standing water in a pipe freezes. ASHRAE Fundamentals 2009, insulation chapter, eq. 1.
// Heat of pipe and insulation is left out, and so is supercooling: both times are on the careful side.
#pragma once
#include <optional>

namespace slabwright {

/// A pipe, its insulation and the film of air on what is outermost.
struct StandingPipe {
  double inside_diameter_m = 0.0;
  double outside_diameter_m = 0.0;            ///< above the inside one
  std::optional<double> wall_W_per_mK = {};   ///< absent: the wall resists nothing, as metal
  double insulation_m = 0.0;                  ///< thickness; 0 for a bare pipe
  double insulation_W_per_mK = 0.0;           ///< counts where there is insulation
  std::optional<double> film_W_per_m2K = {};  ///< absent: no film, as the source has it under insulation
};

/// Water as the source takes it: 62.4 lb/ft3, 1 Btu/(lb degF); fusion 143.5 Btu/lb is from memory.
struct FreezingWater {
  double kg_per_m3 = 62.4 * 0.45359237 / 0.028316846592;
  double J_per_kgK = 4186.8;
  double fusion_J_per_kg = 143.5 * 2326.0;
  double freezes_degC = 0.0;
};

/// From the water to the air, for a metre of pipe, mK/W. Broken contract (std::logic_error): diameters that make no
/// pipe; insulation, wall or film that conducts nothing; a pipe that nothing keeps from the air.
double standing_pipe_mK_per_W(const StandingPipe&);

/// Until the water is at its freezing point, s: rho c A R ln((start - air) / (freezing - air)). 0 where it starts no
/// warmer; absent where the air is no colder than the freezing point.
std::optional<double> time_to_freezing_s(const StandingPipe&, double start_degC, double air_degC,
                                         const FreezingWater& = {});

/// From there until all of it is ice, s: rho h A R / (freezing - air). The ice's own resistance is left out. Absent
/// where the air is no colder than the freezing point. The same balance carried on (not printed by the source).
std::optional<double> time_to_ice_s(const StandingPipe&, double air_degC, const FreezingWater& = {});

}  // namespace slabwright
