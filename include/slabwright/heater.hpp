// What an electric boiler in stages and an air-source heat pump give and draw in an hour. All powers are means over the
// hour, unless said otherwise; an energy is a power times 3600 s.
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "units_exact.hpp"

namespace slabwright {

/// How a thermostat switches something that is too large for its load.
struct Cycling {
  double cycles_per_s = 0.0;
  double on_s = 0.0;   ///< infinite where it stays on
  double off_s = 0.0;  ///< infinite where it stays off
};
/// 4 N x (1 - x) cycles, most of them, N, at half load (form of the thermostat standards, from memory).
/// Broken contract (std::logic_error): a share not from 0 to 1; most not above 0.
Cycling thermostat_cycling(double load_share, double most_cycles_per_s);

/// Elements that are switched on one after the other.
struct BoilerStages {
  std::vector<double> stage_W;              ///< electric, in switching order, each above 0
  double heat_share = 1.0;                  ///< of the power that the water gets: above 0, up to 1
  double most_cycles_per_s = 3.0 / hour_s;  ///< of a stage at half its load, above 0; from memory
  double least_on_s = 120.0;                ///< contactors want 1 to 2 minutes (from memory); 0 to 3600
  double standby_W = 0.0;                   ///< controls, drawn all the time
};
bool is_boiler(const BoilerStages& boiler);
/// With all stages on.
double most_heat_W(const BoilerStages& boiler);

enum class BoilerRun {
  no_demand,    ///< asked for nothing
  below_least,  ///< asked for less than its first stage gives in `least_on_s`: it does not fire in this hour
  cycling,      ///< one stage comes and goes
  steady,       ///< what was asked for is what some of its stages give
  short_of      ///< all stages on, and not enough
};

struct BoilerHour {
  double heat_W = 0.0;
  double electric_W = 0.0;
  double highest_W = 0.0;  ///< drawn while its last stage is on: what a meter of quarters of an hour sees
  std::size_t standing_stages = 0;
  double on_share = 0.0;  ///< of the stage after those
  double cycles_per_s = 0.0;
  BoilerRun run = BoilerRun::no_demand;
};
/// Broken contract: not is_boiler(); a demand below 0 or not finite.
BoilerHour boiler_hour(const BoilerStages& boiler, double demand_W);

/// What running for a part of the time costs.
enum class PartLoadLaw {
  none,
  straight,   ///< 1 - c (1 - x): AHRI 210/240, and EN 14825 for air to air; c 0.25 where nobody has measured
  hyperbola,  ///< x / (c x + 1 - c): EN 14825 for air to water; c 0.9 where nobody has measured
  starting    ///< each start takes a time constant, so many starts an hour (ASHRAE Trans. 102(1) 1996, from memory)
};
struct PartLoad {
  PartLoadLaw law = PartLoadLaw::none;
  double coefficient = 0.25;                ///< c of the straight law and of the hyperbola, 0 to 1
  double start_s = 60.0;                    ///< time constant of starting, above 0
  double most_cycles_per_s = 3.0 / hour_s;  ///< of starting, above 0
};
/// The COP at part load over that at full load, for a load share from 0 to 1.
double part_load_share(const PartLoad& law, double load_share);

/// Heat pump at full load. Rows with frost in them, as rated at 2 degC or 35 degF, want no frost band.
struct HeatPumpRow {
  double outdoor_degC = 0.0;
  double capacity_W = 0.0;
  double cop = 0.0;
};
enum class StraightBetweenRows { cop, power };  ///< what goes straight from row to row, beside the capacity
enum class BeyondRows { hold, straight };       ///< the end row's values, or the end piece carried on

/// Between two temperatures, ends included, ice on the coil and its melting take a share of both. Warmer than some
/// 5 degC nothing freezes on; colder than -8 degC (17 degF) the air holds little (limits of practice, from memory).
struct FrostBand {
  double coldest_degC = -8.0;
  double warmest_degC = 5.0;
  double capacity_share = 1.0;  ///< that is left, above 0, up to 1
  double cop_share = 1.0;
};

/// Stops below `out_degC`; once stopped, starts again at `in_degC`, which is not below it.
struct CutOut {
  double out_degC = 0.0;
  double in_degC = 0.0;
};

struct HeatPump {
  std::vector<HeatPumpRow> row;  ///< two or more, outdoor rising, capacity and COP above 0
  StraightBetweenRows between = StraightBetweenRows::cop;
  BeyondRows colder = BeyondRows::straight;  ///< the careful side: capacity and COP fall on, to no less than 0
  BeyondRows warmer = BeyondRows::hold;
  std::optional<FrostBand> frost = {};
  PartLoad part_load = {};
  std::optional<CutOut> cut_out = {};
  std::optional<double> least_indoor_start_degC = {};  ///< it does not start in a room colder than this
  double least_cop = 1.0;                              ///< below, the other heater is no dearer: it stays off
  double idle_W = 0.0;                                 ///< heater of the crankcase and controls, while it stands
};
bool is_heat_pump(const HeatPump& pump);

/// With frost. `beyond_rows`: asked for outside the table, by the rules `colder` and `warmer`.
struct FullLoad {
  double capacity_W = 0.0;
  double cop = 0.0;  ///< 0 where there is no capacity
  bool beyond_rows = false;
};
/// Broken contract: not is_heat_pump(); a temperature that is not finite.
FullLoad full_load(const HeatPump& pump, double outdoor_degC);

/// What the next hour must know of this one.
struct HeatPumpState {
  bool outdoors_allow = true;  ///< false after a cut-out, until it is warm enough again
  bool running = false;
};

struct HeatPumpConditions {
  double outdoor_degC = 0.0;
  double indoor_degC = 0.0;
  double demand_W = 0.0;
};

/// Why it ran, or why not; the first that holds.
enum class HeatPumpRun {
  ran,
  below_cut_out,  ///< this hour is colder than the cut-out
  before_cut_in,  ///< it has been, and is not yet warm enough
  no_demand,
  indoors_too_cold,  ///< it stood, and may not start in so cold a room
  no_capacity,       ///< the table carried on says it gives nothing
  cop_below_least
};

struct HeatPumpHour {
  double heat_W = 0.0;
  double electric_W = 0.0;  ///< idle power included
  double load_share = 0.0;  ///< of the capacity
  HeatPumpRun run = HeatPumpRun::no_demand;
  FullLoad full_load;
  HeatPumpState after;
};
/// Broken contract: not is_heat_pump(); conditions that are not finite; a demand below 0.
HeatPumpHour heat_pump_hour(const HeatPump& pump, const HeatPumpConditions& conditions, const HeatPumpState& before);
/// The same with its full load known, which depends on nothing but the weather: for hours that are run over and over.
/// Of the machine and the conditions nothing is checked.
HeatPumpHour heat_pump_hour(const HeatPump& pump, const FullLoad& full, const HeatPumpConditions& conditions,
                            const HeatPumpState& before);

}  // namespace slabwright
