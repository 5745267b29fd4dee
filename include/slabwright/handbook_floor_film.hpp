// Heat between the floor's surface and the room, by direction.
#pragma once

namespace slabwright {

/// A cold floor under warm air, heat going down: total coefficient of EN 1264-5, from memory.
inline constexpr double floor_film_down_W_per_m2K = 6.5;

/// What the surface gives to the room at one difference of temperature.
struct FloorFilm {
  double heat_W_per_m2 = 0.0;          ///< positive upward
  double slope_W_per_m2K = 0.0;        ///< d heat / d rise
  double coefficient_W_per_m2K = 0.0;  ///< heat / rise; 6 at no difference
};

/// Total (convective and radiative) exchange of a floor `rise_K` warmer than the room.
/// Upward 8.92 dT^1.1 (EN 1264-2 basic characteristic), downward 6.5 W/m2K (cold floor under warm air, EN 1264-5,
/// from memory), 6 W/m2K at no difference. Within 0.1 K of it two cubics with matching values and slopes join the
/// three, so that the heat has one continuous, positive slope everywhere and Newton never meets a kink.
FloorFilm floor_film(double rise_K);

/// The rise that gives this heat; the exact inverse, either direction.
double floor_film_rise_K(double heat_W_per_m2);

/// What of the total coefficient is radiation: 5.5 W/m2K, read in secondary sources only.
inline constexpr double floor_radiative_W_per_m2K = 5.5;

/// Floor, air and the mean of the unheated surfaces that it sees.
struct RadiantRoom {
  double floor_degC = 0.0;
  double air_degC = 0.0;
  double surfaces_degC = 0.0;
};

/// ASHRAE panel equations (HVAC Systems and Equipment, panel chapter), from memory and in the SI constants: for the
/// spread between methods, never as an oracle.
double ashrae_panel_radiation_W_per_m2(const RadiantRoom&);
/// Natural convection of a heated floor, short form 2.13 |dT|^0.31 dT.
double ashrae_panel_convection_W_per_m2(const RadiantRoom&);
/// With the room's size: 2.42 |dT|^0.31 dT / De^0.08, De = 4 area / perimeter in metres.
double ashrae_panel_convection_W_per_m2(const RadiantRoom&, double equivalent_diameter_m);

}  // namespace slabwright
