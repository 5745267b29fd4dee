// A year in the order it is run, from 1 July on, so that the winter lies in its middle; the same for every way.
#pragma once
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/building_loads.hpp"
#include "slabwright/units_exact.hpp"
#include "slabwright/winter.hpp"

namespace slabwright::winter {

inline constexpr std::size_t hours_of_year = 8760;
inline constexpr double year_long_s = hours_of_year * hour_s;
/// 1 July, 0 h.
inline constexpr std::size_t first_hour = 181 * 24;
/// When the year's wave is coldest: the middle of January.
inline constexpr double coldest_hour = 15.0 * 24.0;
inline constexpr double since_coldest_s = (static_cast<double>(first_hour) - coldest_hour) * hour_s;
/// No shop's air is hotter, nor any floor (practice): what is said to be has heat in it that nobody has.
inline constexpr double hottest_air_degC = 60.0;
/// Colder than any weather: vapour is not asked for below it.
inline constexpr double coldest_air_degC = -90.0;

struct SeasonHour {
  double outdoor_degC = 0.0;    ///< at its end
  double dew_point_degC = 0.0;  ///< outdoors
  double wind_m_per_s = 0.0;
  double vapour_kg_per_s = 0.0;    ///< of vehicles and people
  double tempered_kg_per_s = 0.0;  ///< of outdoor air that comes in warmed: it takes no heat, and vapour
  int month = 1;                   ///< 1 to 12
  int weekday = 0;                 ///< Monday 0; 1 January is one
  int clock = 0;                   ///< 0 to 23, the hour that begins then
  int until_work = 0;              ///< hours until work begins; 0 while there is work
  int gap = 0;                     ///< hours from the end of work to the next; 0 while there is work
  bool worked = false;
  bool work_day = false;
};

struct SeasonDoor {
  std::size_t room = 0;  ///< row of YearShop::room
  DoorUse use;
  double per_hour = 0.0;  ///< openings in an hour of work
};

/// Water of washing, as it comes on the floor through the hours of work; what is still wet when the next begins runs
/// off.
struct SeasonWashing {
  double kg_per_s = 0.0, dryer_kg_per_s = 0.0, leaks_kg_per_s = 0.0;
  double pressure_Pa = 0.0;
  std::vector<double> outdoor_ratio;  ///< [hour], kg of vapour to a kg of dry air
};

/// [hour] from 1 July on.
struct Season {
  std::vector<SeasonHour> hour;
  std::vector<ShopDrivers> drivers;  ///< all but what doors take
  std::vector<SeasonDoor> door;
  std::array<bool, 12> heated{};  ///< months that count as winter
  std::string weather;
  bool sun = false;
  std::optional<SeasonWashing> washing;
};
/// 8760 hours: without 29 February.
WeatherYear common_year(WeatherYear year);
Season season_of(const WinterShop& shop, const YearShop& year);

/// Dry air that passes by leaks, each way; and by what stands open in an hour, fans and doors, given their ways.
double leaks_kg_per_s(const WinterShop& shop, const YearShop& year);
double open_kg_per_s(const SeasonHour& hour, const std::vector<double>& more_W_per_K);
/// kg of vapour to a kg of dry air outdoors, whose dew point files may have a little above it; and [hour] of the
/// season.
double ratio_outdoors(double outdoor_degC, double dew_point_degC, double pressure_Pa);
std::vector<double> ratios_outdoors(const Season& season, double pressure_Pa);

void add_washing(Season& season, const WinterShop& shop, const YearShop& year);

struct AirThrough {
  double exchange_kg_per_s = 0.0, outdoor_ratio = 0.0, indoor_degC = 0.0;
};
/// What dries through an hour, no faster than full air of the room and the dryer carry it away, and the heat that it
/// takes, with what a kelvin more of air would add where air is what limits it. What a dryer takes out gives its heat
/// back as it condenses, and so does what settles on cold faces.
struct Drying {
  double dries_kg_per_s = 0.0, heat_W = 0.0, heat_W_per_K = 0.0;
};
Drying drying(const SeasonWashing& washing, const AirThrough& air, double wet_kg);

/// Heat of machines, people and the like, to the air and to the faces round it.
void add_heat(ShopDrivers& drivers, std::size_t room, double heat_W);
/// A room as an open door finds it, all of one temperature.
DoorRoom door_room(const ShopRoom& room);
/// Row of the shop's room for one of the design by its name: the largest for one without an edge of its own, none for
/// one without tube, whose heat is not the floor's.
std::optional<std::size_t> shop_room(const WinterShop& shop, const YearShop& year, const std::string& name);
bool is_opened(const Opening& opening);
/// What a door adds to a room's way to outdoors in an hour, the room so much warmer; nothing while nobody works.
double opened_W_per_K(const SeasonDoor& door, const SeasonHour& hour, double rise_K);

/// Whether an hour of the clock lies in a span of the day, if only for a part.
bool in_span(const ClockSpan& span, int clock);
inline bool in_season(const Season& season, int month) { return season.heated[static_cast<std::size_t>(month - 1)]; }
/// Hour of the year of an hour of the season.
inline std::size_t of_year(std::size_t hour) { return (hour + first_hour) % hours_of_year; }

}  // namespace slabwright::winter
