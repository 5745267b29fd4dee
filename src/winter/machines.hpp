// What heats in the winter: the boiler by way of the floor's water, and the second source.
#pragma once
#include <optional>
#include <vector>

#include "slabwright/heater.hpp"
#include "slabwright/maths.hpp"
#include "winter/season.hpp"

namespace slabwright::winter {

/// The second source in one hour's weather: at full load in a room of 21.1 degC, and what a colder room adds.
struct SourceHour {
  FullLoad full;
  double capacity_per_K = 0.0, cop_per_K = 0.0;  ///< shares of full load for each kelvin of a colder room
  double layered_share = 0.0;                    ///< of its heat, lost more because it lies under the roof
};

/// Heaters of pan and crankcase switch on below this (practice).
inline constexpr double drain_pan_below_degC = 4.0;

struct Machines {
  std::optional<BoilerStages> boiler;
  double tubes_m2 = 0.0;
  std::vector<TablePoint> water_W_per_m2K;  ///< by supply: tube heat over the difference to the tubes' plane
  double hottest_degC = 0.0;
  double reset_at_degC = 0.0, reset_supply_degC = 0.0;  ///< coldest weather, and the water it wants
  double pump_W = 0.0;
  std::optional<HeatPump> source;
  Defrost defrost = Defrost::in_table;
  double drain_pan_W = 0.0;             ///< while it is cold outdoors and it stands
  double layered_W = 0.0;               ///< lost more while it blows at its most
  std::vector<SourceHour> source_hour;  ///< [hour]
  double least_setting_degC = -100.0;
};

/// What it is run as; absent where it is no heat pump, or nobody knows what it gives.
std::optional<HeatPump> heat_pump_of(const SecondSource& source);
/// In weather of this temperature, with the hour's dew point where ice is paid for by the hour.
SourceHour source_hour(const Machines& machines, double outdoor_degC, double dew_point_degC);
Machines machines_of(const WinterShop& shop, const YearShop& year, const Season& season);

/// The most heat that water may carry into tubes whose plane is so warm, W/m2; none without a boiler.
double most_tube_heat(const Machines& machines, double supply_degC, double plane_degC);
/// The hottest water, or with a reset the water that this weather wants.
double supply_degC(const Machines& machines, bool reset, double outdoor_degC, double room_degC);
/// In a room of this temperature; the curve's own range is kept to.
FullLoad in_room(const SourceHour& hour, double room_degC);

}  // namespace slabwright::winter
