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
  double coldest_degC = 0.0;  ///< at the setting, in the worse of running and idle that counts for it
  double running_degC = 0.0;  ///< with heat in the tubes
  double limit_degC = 0.0;
  double freezes_degC = 0.0;
  double spare_K = 0.0;  ///< coldest less what it freezes at
  std::optional<double>
      asks_slab_degC;  ///< lowest slab sensor reading that keeps it above its limit; absent: none does
  std::optional<double> asks_air_degC;
  std::optional<double> ice_below_degC;  ///< floor line: outdoors below this it freezes at the setting
};

/// The lowest settings. A dial holds the sensor error and is rounded up to what a dial shows.
struct Freeze {
  FreezeVerdict verdict = FreezeVerdict::cannot_be_called;
  std::string reason;         ///< for the last two verdicts
  std::string decides;        ///< name of the place that sets the number
  double outdoor_degC = 0.0;  ///< coldest, as if it lasted
  double slab_degC = 0.0;     ///< best figure, before sensor error
  double air_degC = 0.0;
  double slab_dial_degC = 0.0;  ///< "slab sensor at tube depth, midway between two tubes"
  double air_dial_degC = 0.0;   ///< "air sensor on an inside wall, 5 ft up"
  std::string slab_sensor;      ///< where it sits, in words
  std::string air_sensor;
  double pump_kept_slab_dial_degC = 0.0;  ///< the same while the pump is kept running in the cold
  double pump_kept_air_dial_degC = 0.0;
  std::vector<PlaceAtSetting> place;  ///< those that decide first, coldest spare first
  std::vector<UnknownPlace> unknown;
  double hold_W = 0.0;                         ///< heat the water must give to hold it at the coldest
  std::optional<double> boiler_keeps_to_degC;  ///< outdoors, below this the boiler cannot keep the hold
};

/// `boiler_W` absent: no boiler is known, the hold is judged without one. Said: a slab sensor that leaves the room
/// below freezing, a boiler too small for the hold, what was guessed about doors.
Checked<Freeze> lowest_setting(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                               const WatchedPlaces& places, std::optional<double> boiler_W);

/// A setting of the user's own judged: refused with the reason where a place falls below its limit.
struct Judged {
  bool holds = false;
  std::vector<PlaceAtSetting> place;
  double room_degC = 0.0;  ///< the coldest room
};
Judged judge_slab_setting(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                          const WatchedPlaces& places, double slab_degC);

Record record_of(PlaceAtSetting&);
Record record_of(Freeze&);

}  // namespace slabwright
