// What happens when power goes off, or one thing fails: which place freezes first, and when.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/freeze.hpp"

namespace slabwright {

struct OutagePlace {
  std::string name;
  std::optional<double> lasts_s;       ///< until it is as cold as it freezes at; absent: longer than the clock runs
  std::optional<double> whole_s = {};  ///< the same in whole hours, rounded down: who is told of three has three
};

/// A power cut at one setting and one weather.
struct OutageCase {
  double outdoor_degC = 0.0;
  double air_dial_degC = 0.0;          ///< the wall thermostat until the cut
  std::string first;                   ///< empty where nothing freezes while the clock runs
  std::optional<double> lasts_s;       ///< of the first
  std::optional<double> whole_s = {};  ///< in whole hours, rounded down; the others too
  std::vector<OutagePlace> place;      ///< that decides, soonest first
  std::string pump_first;              ///< the same two while a small generator keeps the pump alone running
  std::optional<double> pump_lasts_s, pump_whole_s;
  std::string stage_first;  ///< and while a larger one also feeds one element of the boiler
  std::optional<double> stage_lasts_s, stage_whole_s;
};

struct Outage {
  double longest_s = 0.0;        ///< how long the clock runs
  bool floor_cools_air = false;  ///< in some case the floor took heat from the air: the worse film was taken
  double stage_W = 0.0;          ///< one element of the boiler; 0 without one
  double line_ice_s = 0.0;       ///< a bare 1/2 in water line in the coldest air outdoors, from freezing to solid ice
  std::vector<OutageCase> row;   ///< mildest weather first, lowest setting first
};

/// Elements of electric boilers, practice: no larger than this, all alike.
inline constexpr double largest_element_W = 4500.0;

/// How long every place that decides keeps from freezing when power goes off: no pump, no boiler, no fans, no gains,
/// doors shut. From the wall thermostat's dial and from two higher settings (6 F or 3 K apart, no higher than the
/// working temperature), the sensor reading too high by its error; at `climate.coldest`, at `climate.outdoor` and in
/// milder weather, each as if it had lasted, soil included. The hours end at the freezing point itself: margins are
/// what a setting keeps. What was not found frozen within 96 h has no hours. Absent without a setting or without an
/// edge.
std::optional<Outage> outage_clock(const HeldShop& held, const Freeze& freeze, EdgeFields& fields,
                                   std::optional<double> boiler_W);

/// One thing fails in the coldest hour, as if that had lasted, from the wall thermostat's dial; power stays on.
struct SingleFault {
  std::string what;
  std::string first;              ///< the first place to freeze; empty where none does
  std::optional<double> lasts_s;  ///< absent: nothing freezes within the clock
  std::string means;              ///< a word on what is left or what it costs, in the reader's units; may be empty
};
/// Pump dead or a thermostat that sticks; boiler tripped while the pump runs; second source lost; one zone valve shut;
/// the big door left open for a night of 12 h, the floor at full heat.
std::vector<SingleFault> single_faults(const HeldShop& held, const Freeze& freeze, EdgeFields& fields,
                                       std::optional<double> boiler_W);

/// Whether everything may be switched off for the winter.
struct TurnOff {
  bool yes = false;
  std::vector<std::string> freezes;    ///< what would, coldest first
  double coldest_tube_degC = 0.0;      ///< in the snap, after years without heat
  double coldest_air_degC = 0.0;       ///< at manifold and boiler
  std::optional<double> glycol_share;  ///< by volume that keeps what the loops hold liquid; absent: none up to 50 %
};
TurnOff turned_off(const HeldShop& held, EdgeFields& fields);

Record record_of(OutagePlace&);
Record record_of(OutageCase&);
Record record_of(Outage&);
Record record_of(SingleFault&);
Record record_of(TurnOff&);

}  // namespace slabwright
