// A year in the order it is run, from 1 July on, so that the winter lies in its middle; the same for every way.
#pragma once
#include <array>
#include <string>
#include <vector>

#include "slabwright/building_loads.hpp"
#include "slabwright/winter.hpp"

namespace slabwright::winter {

inline constexpr std::size_t hours_of_year = 8760;
inline constexpr double an_hour_s = 3600.0, day_s = 86400.0, year_long_s = hours_of_year * an_hour_s;
/// 1 July, 0 h.
inline constexpr std::size_t first_hour = 181 * 24;
/// When the year's wave is coldest: the middle of January.
inline constexpr double coldest_hour = 15.0 * 24.0;
inline constexpr double since_coldest_s = (static_cast<double>(first_hour) - coldest_hour) * an_hour_s;
/// No shop's air is hotter, nor any floor (practice): what is said to be has heat in it that nobody has.
inline constexpr double hottest_air_degC = 60.0;

struct SeasonHour {
  double outdoor_degC = 0.0;    ///< at its end
  double dew_point_degC = 0.0;  ///< outdoors
  double wind_m_per_s = 0.0;
  double vapour_kg_per_s = 0.0;    ///< of vehicles, people and washing
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

/// What a vehicle takes from a room at working temperature; from a colder one less.
struct SeasonVehicle {
  std::size_t room = 0;
  double room_degC = 0.0;
  std::vector<double> heat_W, arrived_degC;  ///< [hour]
};

/// [hour] from 1 July on.
struct Season {
  std::vector<SeasonHour> hour;
  std::vector<ShopDrivers> drivers;  ///< all but what doors and vehicles take
  std::vector<SeasonDoor> door;
  std::vector<SeasonVehicle> vehicle;
  std::array<bool, 12> heated{};  ///< months that count as winter
  std::string weather;
  bool sun = false;
  double wash_stated_kg = 0.0;  ///< of the year
  double wash_dries_kg = 0.0;   ///< what can leave with air and dryer
};
/// 8760 hours: without 29 February.
WeatherYear common_year(WeatherYear year);
Season season_of(const WinterShop& shop, const YearShop& year);

/// Outdoor air through the shop in an hour.
struct SeasonAir {
  double exchange_kg_per_s = 0.0;  ///< dry air by leaks, doors and fans, each way
  double outdoor_ratio = 0.0;      ///< kg of vapour to a kg of dry air
};
/// [hour], the shop's air of each hour given: it drives what passes an open door.
std::vector<SeasonAir> season_air(const Season& season, const WinterShop& shop, const YearShop& year,
                                  const std::vector<double>& air_degC);
/// Washing dries through the hours of work and takes its heat from the room, no more than full air of working
/// temperature, or of a hotter day outdoors, and the dryer carry away: what dries beyond that settles on cold faces and
/// gives its heat back there. Doors and fans must be in the season.
void add_washing(Season& season, const WinterShop& shop, const YearShop& year);

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
