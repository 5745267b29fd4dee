// How low the floor may be left: the lowest slab and air setpoints that keep every watched place above its limit.
// First form: the coldest hour taken as if it lasted.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/building.hpp"
#include "slabwright/plant.hpp"

namespace slabwright {

enum class FreezeVerdict {
  found,            ///< a setting keeps everything above its limit
  no_setting,       ///< "NO SETTING IS SAFE": the reason names the place
  cannot_be_called  ///< "cannot be called safe": a place could not be computed
};

/// A place at the setting, and what it alone would ask for.
struct PlaceAtSetting {
  std::string name;
  PlaceKind kind = PlaceKind::tube;
  bool decides = true;
  double coldest_degC = 0.0;  ///< at the setting, no heat in the tubes near it
  double running_degC = 0.0;  ///< the same with the pump running
  double limit_degC = 0.0;
  double freezes_degC = 0.0;
  double spare_K = 0.0;  ///< coldest less what it freezes at
  std::optional<double>
      asks_slab_degC;                   ///< lowest slab sensor reading that keeps it above its limit; absent: none does
  std::optional<double> asks_air_degC;  ///< the first heated room's air then
  std::optional<double> ice_below_degC;  ///< of a place that only is reported: outdoors below this it freezes
};

/// The lowest settings. A dial holds the sensor error and is rounded up to a whole F or half a C.
/// Where no setting is safe, or it cannot be called, the numbers are those of the places that have one.
struct Freeze {
  FreezeVerdict verdict = FreezeVerdict::cannot_be_called;
  std::string reason;           ///< for the last two verdicts, a sentence or more in the reader's units
  std::string decides;          ///< name of the place that sets the number
  double outdoor_degC = 0.0;    ///< coldest, as if it lasted
  double slab_degC = 0.0;       ///< best figure, before sensor error
  double air_degC = 0.0;        ///< of the first heated room, which the slab then holds
  double slab_dial_degC = 0.0;  ///< must be left at this: at the coldest the room takes most heat out of the floor
  double air_dial_degC = 0.0;   ///< follows the weather by itself
  std::string slab_sensor;      ///< where it sits, in words
  std::string air_sensor;
  double pump_kept_slab_dial_degC = 0.0;  ///< the same while the pump is kept running in the cold
  double pump_kept_air_dial_degC = 0.0;
  std::vector<PlaceAtSetting> place;  ///< what decides, then what would decide next; those only reported at the end
  std::vector<UnknownPlace> unknown;
  double hold_W = 0.0;                         ///< heat the water must give to hold the slab dial at the coldest
  std::optional<double> boiler_keeps_to_degC;  ///< outdoors, below this the boiler cannot keep the slab dial
};

/// The warmest mean surface a floor may be held at: EN 1264-2, occupied area.
inline constexpr double warmest_floor_degC = 29.0;

/// Every heated room's slab stands at one temperature, as one water feeds them; the coldest place of all decides.
///
/// What decides is judged with no heat in the tubes near it: its loop may be shut, or the pump rests while the rest of
/// the floor holds the room. With the pump kept running the tubes give what the floor must give, and settings are
/// lower. `boiler_W` absent: no boiler is known, the hold is judged without one. Absent without `climate.coldest`
/// ("freeze.no-outdoor"). Said: no setting and what cannot be called (failures), a boiler too small for the hold
/// (failure), that a slab sensor at the usual 40 F would leave a room too cold, that the two dials are not alike.
Checked<Freeze> lowest_setting(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                               const WatchedPlaces& watched, std::optional<double> boiler_W);

/// A slab setting of the user's own judged, with a sensor that reads too high by its error.
struct Judged {
  bool holds = false;
  std::string reason;                 ///< where it is refused: which place, how cold
  std::vector<PlaceAtSetting> place;  ///< in the same order
  double room_degC = 0.0;             ///< the coldest room
};
/// Needs `climate.coldest`. Refused where a place that decides falls below its limit, or one could not be computed.
Judged judge_slab_setting(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                          const WatchedPlaces& watched, double slab_degC);

/// A power cut at one setting and one weather.
struct OutagePlace {
  std::string name;
  std::optional<double> lasts_s;  ///< until it is as cold as it freezes at; absent: longer than the clock runs
};
struct OutageCase {
  double outdoor_degC = 0.0;
  double air_dial_degC = 0.0;      ///< the wall thermostat until the cut
  std::string first;               ///< empty where nothing freezes while the clock runs
  std::optional<double> lasts_s;   ///< of the first
  std::vector<OutagePlace> place;  ///< that decides, soonest first
  std::string pump_first;          ///< the same two while a small generator keeps the pump alone running
  std::optional<double> pump_lasts_s;
};
struct Outage {
  double longest_s = 0.0;        ///< how long the clock runs
  bool floor_cools_air = false;  ///< in some case the floor took heat from the air: the worse film was taken
  std::vector<OutageCase> row;   ///< mildest weather first, lowest setting first
};

/// What the frost hold was found from.
struct HeldShop {
  const Design& design;
  const Envelope& envelope;
  const FloorPlan& floor;
  const WatchedPlaces& watched;
};

/// How long every place that decides keeps from freezing when power goes off: no pump, no boiler, no fans, no gains,
/// doors shut. From the wall thermostat's dial and from two higher settings (6 F or 3 K apart, no higher than the
/// working temperature), the sensor reading too high by its error; at `climate.coldest`, at `climate.outdoor` and in
/// milder weather, each as if it had lasted, soil included. The hours end at the freezing point itself: margins are
/// what a setting keeps. What was not found frozen within 96 h has no hours. Absent without a setting or without an
/// edge.
std::optional<Outage> outage_clock(const HeldShop& held, const Freeze& freeze, EdgeFields& fields);

Record record_of(PlaceAtSetting&);
Record record_of(UnknownPlace&);
Record record_of(Freeze&);
Record record_of(OutagePlace&);
Record record_of(OutageCase&);
Record record_of(Outage&);

}  // namespace slabwright
