// What all ways of one winter share, and how one of them is tried in it.
#pragma once
#include "winter/tally.hpp"

namespace slabwright::winter {

/// 8 January, 0 h, in the order of the season: where the design's snap with its lead is laid in.
inline constexpr std::size_t snap_from = (hours_of_year - first_hour) + 7 * 24;

struct Scene {
  const WinterShop& shop;
  YearShop year;
  Season season;
  Machines machines, in_snap;  ///< in the season's weather, and with the design's snap laid in
  double work_degC = 0.0;
  Dials hold;        ///< the lowest that keeps frost out, by either of the floor's sensors
  ShopState before;  ///< of the past way for years, on 1 July
};

/// Absent as year_shop().
std::optional<Scene> scene_of(const WinterShop& shop, EdgeFields& fields);
/// The design's own ways; the usual ones where it has none but the past one.
std::vector<WayEntry> ways_of(const Scene& scene);
/// Before anybody says how it was: as warm as at work, the year round.
ZoneHistory past_guess(const Scene& scene);

/// Settings of a way that are sought where the design leaves them open.
struct Settings {
  WayEntry way;
  int floor_lead_h = 0, source_lead_h = 0;
  double hold_more_K = 0.0;  ///< frost hold over the lowest
};

WayCase case_of(const Scene& scene, const Settings& settings);
/// Those that a result was found with.
Settings settings_of(const Scene& scene, const WayResult& result);
/// The same way with machines in other weather, which must outlive it.
WayCase with_machines(const WayCase& way, const Machines& machines);

/// Years of this way: the state that a year begins and ends in.
ShopState for_years(const Scene& scene, const WayCase& way, const ShopState& start);

struct Tried {
  Settings settings;
  WayYear year;
  WayResult result;  ///< energy, money, comfort
};
/// A year, the watched places left out.
Tried tried(const Scene& scene, const Settings& settings);
/// The start and the charge that cost least among those under which it is warm; else the warmest.
Tried tuned(const Scene& scene, const WayEntry& way, double hold_more_K);

/// The coldest of each place over the year from this start, the snap laid in.
std::vector<ColdestPlace> coldest_from(const Scene& scene, const WayCase& way, const ShopState& start);

/// Machines in other weather, from an hour of the season on. Dew points are the air's own: the most ice.
Machines in_weather(Machines machines, std::size_t from, const std::vector<double>& outdoor_degC);

/// Whether all places that decide keep to their limits; the snap laid in, this way for years.
bool keeps_frost_out(const Scene& scene, const WayCase& way);

/// The same hours with what the floor and the vapour made of them.
Sweating sweating_of(const Scene& scene, const WayYear& year);

/// What the stage tries beside the ways themselves.
/// A winter with a snap: its outdoor air in the order of the season, and the machines in it.
struct HardWinter {
  std::vector<double> outdoor_degC;
  Machines machines;
};
/// Ten of them; empty where the normals have no room for their snaps.
std::vector<HardWinter> hard_winters(const Scene& scene);
TenWinters ten_winters(const Scene& scene, const Settings& settings, const std::vector<HardWinter>& winters);
/// A row of settings for each way.
void add_bands(std::vector<WayResult>& ways, const Scene& scene, const std::vector<Settings>& settings);
void add_holds(Winter& winter, const Scene& scene);
/// The best of the ways that hold frost; null where none does.
const WayResult* way_with_hold(const Winter& winter);
/// What sheets draw: ways and their order must be known.
void add_series(Winter& winter, const Scene& scene);

/// Settings that are tried with each other: frost holds over the lowest, settings of the second source over its own,
/// and hours that it starts before work.
struct SearchGrid {
  std::vector<double> hold_K, source_K;
  std::vector<int> lead_h;
};
/// 96, and 420 for who can wait.
SearchGrid usual_grid();
SearchGrid wide_grid();
void add_search(Winter& winter, const Scene& scene, const SearchGrid& grid, const Progress& progress);

}  // namespace slabwright::winter
