// What a workshop really has: doors that open, cold vehicles with snow on them, people.
#pragma once
#include <array>
#include <vector>

#include "handbook_air.hpp"
#include "units_exact.hpp"

namespace slabwright {

/// What wind alone carries in and out by one open door while the rest of the shop is shut: 0.025 W H v, after Warren
/// 1977, from memory. Wind 0 or more; it turns and gusts, so no direction is asked for.
double wind_flow_m3_per_s(const OpenDoor& door, double wind_m_per_s);
/// Both together: their squares add, after de Gids and Phaff 1982, from memory. Difference of either sign.
double open_door_flow_m3_per_s(const OpenDoor& door, double difference_K, double wind_m_per_s = 0.0);
/// Heat that the exchange takes while the room stays so much warmer than outdoors; it has the difference's sign.
double open_door_W(const OpenDoor& door, double difference_K, double wind_m_per_s = 0.0,
                   double density_kg_per_m3 = 1.2);

/// A room whose door opens: its air is soon gone, and floor and walls give it heat again.
struct DoorRoom {
  double air_J_per_K = 0.0;       ///< above 0
  double surfaces_W_per_K = 0.0;  ///< from floor, walls and contents to the air, 0 or more
  double surfaces_degC = 0.0;     ///< stays so for the minutes that a door is open
  double loss_W_per_K = 0.0;      ///< to outdoors with the door shut, 0 or more
  double heat_W = 0.0;            ///< into the air, before and after
};

/// One opening and the way back. lost = surfaces + heat + air's own - shut loss, to rounding.
struct DoorOpening {
  double lost_J = 0.0;      ///< by the door while it is open; below 0 where it is warmer outdoors
  double surfaces_J = 0.0;  ///< given to the air by the surfaces meanwhile
  double air_J = 0.0;       ///< what the air itself gave
  double shut_J = 0.0;      ///< by the loss that a shut shop has too
  double heat_J = 0.0;      ///< by the heat source
  double coldest_degC = 0.0;
  double left_degC = 0.0;   ///< of the air when the door shuts
  double recovers_s = 0.0;  ///< from shutting until the air is back within 1 K of where it was; infinite: never
};

/// The air well mixed, 1.2 kg/m3. Classical Runge-Kutta in steps of at most a quarter of the quickest time constant: no
/// figure is off by 0.1 per cent. A microsecond for three minutes. `open_s` 0 or more, wind 0 or more.
DoorOpening door_opening(const OpenDoor& door, const DoorRoom& room, double air_degC, double outdoor_degC,
                         double open_s, double wind_m_per_s = 0.0);

/// Heat that one opening takes, for the hours of a year: a table over the difference at its start, in equal steps of
/// its root, and over the wind.
struct DoorUse {
  static constexpr std::size_t differences = 14, winds = 9;
  static constexpr double most_K = 81.0, most_m_per_s = 12.0;
  std::array<std::array<double, winds>, differences> J_per_K{};
};
/// The room is taken as steady before: surfaces as warm as its air, heat as large as its loss. Of `room` the
/// temperatures and the heat are not looked at.
DoorUse door_use(const OpenDoor& door, const DoorRoom& room, double open_s);
/// What one opening takes for each kelvin of difference at its start, either sign: within 1 per cent of door_opening
/// from 5 K up, within 5 at 2 K. Beyond `most_K` and `most_m_per_s` as there.
double opening_J_per_K(const DoorUse& use, double difference_K, double wind_m_per_s = 0.0);
/// So many openings an hour as a conductance to outdoors through that hour.
double door_W_per_K(const DoorUse& use, double openings_per_h, double difference_K, double wind_m_per_s = 0.0);

/// A vehicle as one lump that warms up exponentially, and snow on it that melts as the vehicle warms. Snow arrives as
/// cold as the vehicle, at most at 0 degC; what melts runs off at 0 degC unless it evaporates.
struct ColdVehicle {
  double mass_kg = 0.0;  ///< 0 or more, as all here
  double arrives_degC = 0.0;
  double snow_kg = 0.0;
  double evaporates_share = 0.0;  ///< of the snow, 0 to 1
};
/// Practice: steel with its fluids and rubber; a truck is through in half a day.
inline constexpr double vehicle_J_per_kgK = 600.0, vehicle_time_constant_s = 3.0 * hour_s;
/// Melting of ice, and what a kelvin of it takes. Textbook values, from memory.
inline constexpr double melting_J_per_kg = 334e3, ice_J_per_kgK = 2100.0;

/// Heat taken from the room and water given to its air in each hour after the vehicle came in. The hour in which
/// 99 per cent are through is the last and has the rest, so that the hours' sum is all there is.
struct VehicleHours {
  std::vector<double> heat_W;  ///< of the vehicle, of melting, and of what evaporates too
  std::vector<double> vapour_kg_per_s;
};
/// In a room at or below 0 degC the snow stays what it is. A vehicle warmer than the room gives heat.
VehicleHours vehicle_hours(const ColdVehicle& vehicle, double room_degC);

/// A person at standing work, practice: what warms the air, and the vapour.
inline constexpr double person_W = 115.0, person_vapour_kg_per_s = 0.09 / hour_s;

}  // namespace slabwright
