// Sun and sky on the outside of a building: what falls on its faces, and what that is worth as warmer outdoor air.
#pragma once
#include <vector>

#include "climate_sun.hpp"

namespace slabwright {

/// What falls on each face by hours, W/m2: direct, from the sky and from the ground together.
struct BuildingSun {
  std::vector<double> north_W_per_m2, east_W_per_m2, south_W_per_m2, west_W_per_m2;
  std::vector<double> wall_W_per_m2;  ///< mean of the four: a wall whose facing nobody has said
  std::vector<double> roof_W_per_m2;  ///< flat or low
};
/// Every series empty where the year has no radiation.
BuildingSun building_sun(const WeatherYear& year, const GroundReflection& ground = {});

/// An opaque face: how much of the sun it takes up, and how it gives heat to the air and to the sky. All practice: a
/// middling grey, weathered; the film that goes with U-values; radiation at about 10 degC.
struct OuterFace {
  double takes_up_share = 0.6;
  double emits_share = 0.9;
  double sees_sky_share = 1.0;  ///< 1 for a roof, 0.5 for a wall
  double film_W_per_m2K = 25.0;
  double radiation_W_per_m2K = 5.0;  ///< of black faces
};
inline constexpr OuterFace roof_face{};
inline constexpr OuterFace wall_face{0.6, 0.9, 0.5, 25.0, 5.0};

/// What the outdoor air would have to be warmer (below 0: colder) for the same heat to go through the face: sol-air
/// less air, (a I - F e h_r (T_air - T_sky)) / h_o, in K. `sun_W_per_m2` 0 or more, film above 0.
double sol_air_excess_K(const OuterFace& face, double sun_W_per_m2, double air_degC, double sky_degC);

/// The same by the hours of a year. A year without radiation has no sun, one without sky_degC no sky; one with neither
/// gives zeros.
struct SolAir {
  std::vector<double> wall_K, roof_K;
};
SolAir sol_air_of(const WeatherYear& year, const BuildingSun& sun, const OuterFace& wall = wall_face,
                  const OuterFace& roof = roof_face);

}  // namespace slabwright
