// The winter hour by hour, for each way of running it: what it costs, whether it is warm, whether anything comes near
// freezing, and what happens while the second source stands.
#pragma once
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/building_snap.hpp"
#include "slabwright/building_year.hpp"
#include "slabwright/climate.hpp"
#include "slabwright/handbook_price.hpp"
#include "slabwright/plant_curve.hpp"
#include "slabwright/progress.hpp"
#include "slabwright/winter_bill.hpp"
#include "slabwright/winter_series.hpp"

namespace slabwright {

/// A place over the winter, this way for years, the design's cold snap laid into January.
struct PlaceInWinter {
  std::string name;
  bool decides = true;
  double coldest_degC = 0.0;
  double limit_degC = 0.0;
  double freezes_degC = 0.0;
  int month = 1;  ///< when it was coldest
  int day = 1;
  /// The same with the soil that the past way has left, and in the first winter of a new building.
  double as_before_degC = 0.0, new_building_degC = 0.0;
};

/// Which of the three a way fails by; a way that fails any never ranks above one that fails none.
struct WayFails {
  bool comfort = false, frost_hold = false, boiler = false;
  bool any() const { return comfort || frost_hold || boiler; }
};

/// Electric energy by what takes it, heat, and what the meter shows of them.
struct WayMonth {
  double boiler_J = 0.0, source_J = 0.0, pump_J = 0.0;
  double use_J = 0.0;  ///< the three together
  double floor_heat_J = 0.0, source_heat_J = 0.0;
  double peak_W = 0.0;
  std::optional<double> money;  ///< absent without a price
};

/// At work in heated months; operative temperatures of the main room.
struct Comfort {
  double worked_s = 0.0;
  double below_s = 0.0, below_Ks = 0.0;        ///< below working temperature
  double cold_s = 0.0, cold_below_degC = 0.0;  ///< more than `cold_K` below, which is below this
  double above_s = 0.0;                        ///< more than `warm_K` above
  int mornings = 0, failed_mornings = 0;       ///< the first hour of work more than `cold_K` below
  double lowest_degC = 0.0;
  double air_swing_K = 0.0, slab_swing_K = 0.0;  ///< mean over the days of highest less lowest
};
/// Practice: what standing work in a jacket bears, how much of the winter's work and of its mornings may be colder, and
/// for how long in a winter a boiler may be too small.
inline constexpr double cold_K = 2.0, warm_K = 2.0, most_cold_share = 0.05, most_short_s = day_s;

struct SourceWinter {
  double ran_s = 0.0;
  double locked_s = 0.0, longest_locked_s = 0.0;  ///< it was wanted and too cold outdoors
  double cold_start_s = 0.0;                      ///< it was wanted and the room too cold for it to start
  double short_s = 0.0;  ///< at work, locked out, and the boiler at its size left the room more than `cold_K` too cold
};

/// Vapour over the floor of the main room, by months: s in which the dew point lies above the floor's face, and in
/// which the air on it is damper than 80 % (iron rusts, from memory of ISO 9223).
struct Sweating {
  bool inside_known = false;  ///< vapour inside was worked out; else these are the outdoor dew points
  std::array<double, 12> wet_s{}, damp_s{};
};

/// The same way through ten winters with cold snaps that a typical year hides.
struct TenWinters {
  int winters = 0;      ///< 0: not run
  int below_limit = 0;  ///< in which a place that decides fell below its limit
  double coldest_outdoor_degC = 0.0;
  std::string place;  ///< that came nearest to its limit
  double place_degC = 0.0;
  int most_failed_mornings = 0;
  double most_locked_s = 0.0, longest_locked_s = 0.0;
};

/// A way of running and what came of it. Energy and money are of the first winter, after years of the past way; what
/// comes near freezing is of this way for years.
struct WayResult {
  WayEntry way;
  double hold_degC = 0.0;  ///< frost hold by the wall thermostat, raised where the lowest is too low for this way
  int floor_lead_h = 0, source_lead_h = 0;  ///< how early it starts before work
  WayFails fails;
  std::array<WayMonth, 12> month{};
  double use_J = 0.0;  ///< electric, of heat
  std::optional<double> money;
  std::optional<double> carbon_kg;
  double peak_W = 0.0;
  int worst_month = 1;  ///< that costs most, or uses most
  Comfort comfort;
  SourceWinter source;
  double boiler_short_s = 0.0;       ///< the boiler at its most could not hold what the floor had been set to for a day
  std::vector<PlaceInWinter> place;  ///< least to spare first, those that decide before the others
  ShopHeat heat;
  double use_low_J = 0.0, use_high_J = 0.0;  ///< band of what nobody knows: weather, leaks, walls, gains, machines
  std::optional<double> low_money, high_money;
  TenWinters ten;
  Sweating sweating;
  double dries_kg = 0.0;      ///< of washing water, through the year
  double cold_floor_J = 0.0;  ///< that the floor takes out of the air in a day of work, mean of the season
  std::vector<double> outdoor_degC, air_degC, floor_degC, slab_degC, use_hour_J;  ///< [hour of the year]
};

/// A frost hold and what it comes to, in the way that leans on it most.
struct HoldCost {
  double air_degC = 0.0;
  double use_J = 0.0;
  std::optional<double> money;
  WayFails fails;
  Sweating sweating;
};

/// One way with other settings.
struct TriedWay {
  double hold_degC = 0.0;  ///< by the wall thermostat
  int lead_h = 0;          ///< how early the second source starts
  double source_degC = 0.0;
  double use_J = 0.0;
  std::optional<double> money;
  WayFails fails;
};
/// All settings tried, and how flat it is around the best of them: what else passes within `flat_share` of it.
struct Search {
  std::string way;
  std::vector<TriedWay> tried;
  std::size_t best = 0;
  double hold_low_degC = 0.0, hold_high_degC = 0.0;
  int lead_low_h = 0, lead_high_h = 0;
};
inline constexpr double flat_share = 0.02;

/// One opening of a door on a day of the coldest month, the room at working temperature.
struct DoorInWinter {
  std::string name;
  double open_s = 0.0;
  double lost_J = 0.0;
  double coldest_degC = 0.0;         ///< of the air
  std::optional<double> recovers_s;  ///< until the air is within 1 K again; absent: it is not
};

/// What a winter is run with.
struct WinterShop {
  const Design& design;
  const Envelope& envelope;
  const FloorPlan& floor;
  const WatchedPlaces& watched;
  const Snap& snap;
  const WaterCurve& water;
  std::optional<double> boiler_W;                       ///< absent: nothing warms the water
  double pump_W = 0.0;                                  ///< from the wall, while it runs
  std::optional<double> hold_air_degC, hold_slab_degC;  ///< dials of the frost hold
  const WeatherYear* weather = nullptr;
  std::optional<double> reset_supply_degC{};  ///< water wanted in the coldest weather
};

/// A year in all ways of the design, or in the usual ones. Absent where no room has a tube in its floor, without
/// `climate.outdoor`. Said: what makes each way fail is in its result; that nothing costs anything without a price;
/// bills that are too short, contradict themselves or cannot be of this shop ("bill.few-months", "bill.summer",
/// "bill.months-disagree", "bill.too-low", "bill.too-high").
struct Winter {
  std::string weather;         ///< "made up from mean and swing", or the file's station
  bool sun = false;            ///< whether it is counted
  std::vector<WayResult> way;  ///< best first
  std::string hold_way;        ///< which way `hold` and `search` are of; empty where none holds frost
  std::vector<HoldCost> hold;  ///< by rising frost hold
  double use_J_per_K = 0.0;    ///< that a kelvin of frost hold costs
  std::optional<double> money_per_K;
  std::optional<double> dry_hold_degC;  ///< the lowest of `hold` under which the floor is dry in spring
  std::optional<Search> search;
  std::vector<DoorInWinter> door;  ///< that are opened at work
  std::vector<PayBack> pay_back;
  std::optional<BillFit> fit;
  std::optional<WinterSeries> series;  ///< where it was wished for
};
struct WinterWishes {
  bool extras = true;       ///< frost holds, search, ten winters, bands
  bool raises_hold = true;  ///< for a way in which the lowest frost hold is too low
  bool wide = false;        ///< the search tries some 400 settings
  bool series = false;      ///< what sheets draw beside
  Progress progress = {};
};
Checked<Winter> winter_of(const WinterShop& shop, EdgeFields& fields, const WinterWishes& wishes = {});

/// The floor at these settings all winter, without and with the second source; without `insulation`.
std::vector<OwnerCost> owner_costs(const WinterShop& shop, EdgeFields& fields, const std::vector<double>& setting_degC,
                                   int source_lead_h);

}  // namespace slabwright
