// Air that leaves a workshop and what it takes along.
#pragma once

namespace slabwright {

/// Pressure at an altitude over that at the sea, p/p0 = (1 - 2.25577e-5 z)^5.2559 (standard atmosphere; ASHRAE
/// Fundamentals, psychrometrics). From -500 to 11 000 m.
double pressure_share(double altitude_m);

/// At the sea, exact by definition (standard atmosphere).
inline constexpr double standard_atmosphere_Pa = 101325.0;

/// What stands at an altitude in usual weather.
double air_pressure_Pa(double altitude_m);

/// Dry air, ideal gas with 287.042 J/kgK, at the standard pressure of the altitude.
double air_density_kg_per_m3(double air_degC, double altitude_m = 0.0);

/// Specific heat of dry air.
inline constexpr double air_J_per_kgK = 1006.0;

/// Air changes as a conductance: 0.34 Wh/m3K as EN 12831-1 prints it, times the pressure share of the altitude.
double infiltration_W_per_K(double volume_m3, double changes_per_h, double altitude_m = 0.0);

/// A stream of air as a conductance, rho c flow.
double air_stream_W_per_K(double flow_m3_per_s, double density_kg_per_m3 = 1.2);

/// The same by the form of US manuals, 1.08 Btu/h per cfm and degF at the sea.
double air_stream_cfm_form_W_per_K(double flow_m3_per_s);

/// What an exhaust fan takes when its make-up air comes in cold, W.
double exhaust_heat_W(double flow_m3_per_s, double rise_K);

struct OpenDoor {
  double width_m = 0.0;
  double height_m = 0.0;
};
/// Air through an open door, one way, by buoyancy alone: Cd/3 W H sqrt(g H dT / T), Cd 0.65, T 290 K. A wind adds.
double door_air_m3_per_s(OpenDoor, double rise_K);
/// What that air takes along while the door stands open and the room is still warm, W; density 1.2 kg/m3.
double door_heat_W(OpenDoor, double rise_K);

}  // namespace slabwright
