// How low the floor may be left: the lowest slab and air setpoints that keep every watched place above its limit,
// through a cold snap with its control, and in the coldest hour as if it lasted.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/freeze_snap.hpp"
#include "slabwright/plant.hpp"

namespace slabwright {

enum class FreezeVerdict {
  found,            ///< a setting keeps everything above its limit
  no_setting,       ///< "NO SETTING IS SAFE": the reason names the place
  cannot_be_called  ///< "cannot be called safe": a place could not be computed
};

/// A place through the snap, the wall thermostat at the lowest setting, and what it alone would ask for.
struct PlaceAtSetting {
  std::string name;
  PlaceKind kind = PlaceKind::tube;
  bool decides = true;
  double coldest_degC = 0.0;
  double limit_degC = 0.0;
  double freezes_degC = 0.0;
  double spare_K = 0.0;                  ///< coldest less what it freezes at
  std::optional<double> asks_air_degC;   ///< lowest wall thermostat that keeps it above its limit; absent: none does
  std::optional<double> asks_slab_degC;  ///< lowest slab sensor
  double shut_degC = 0.0;  ///< its loop shut for good, the coldest hour as if it lasted, the room at the setting
  std::optional<double> ice_below_degC;  ///< of a place that only is reported: outdoors below this it freezes
  PlaceCurve air, slab;  ///< through the snap, for any setting of either dial; empty where it is reported
};

/// The arithmetic of the place that decides, for the wall thermostat, at the moment that asks for most.
struct Explained {
  DriverWeights idle, running;  ///< steady, of its edge: why it follows outdoors as it does
  double after_s = 0.0;         ///< since the lead of the snap began
  double outdoor_degC = 0.0;    ///< then
  double gain_share = 0.0;      ///< its temperature is gain x dial + base
  double base_degC = 0.0;
  double limit_degC = 0.0;
  double asks_degC = 0.0;  ///< (limit - base) / gain
  double control_K = 0.0;
  double sensor_error_K = 0.0;
  double dial_degC = 0.0;  ///< the sum on a mark of the dial; what the bands ask for may be more
};

/// The lowest setting of one dial, from what the place that asks for most wants to what is written on the dial.
struct DialSetting {
  std::string decides;       ///< name of that place
  double best_degC = 0.0;    ///< best figure, before sensor error
  double control_K = 0.0;    ///< what switching on and off in a deadband adds; in the figure above
  double wanted_degC = 0.0;  ///< with the sensor error, or what the bands ask for
  double dial_degC = 0.0;    ///< its next mark: a whole F or half a C
};

/// The lowest settings.
/// Where no setting is safe, or it cannot be called, the numbers are those of the places that have one.
struct Freeze {
  FreezeVerdict verdict = FreezeVerdict::cannot_be_called;
  std::string reason;                    ///< for the last two verdicts, a sentence or more in the reader's units
  std::string tried;                     ///< the snap, in words
  std::vector<double> snap_hourly_degC;  ///< and hour by hour, its lead first
  double outdoor_degC = 0.0;             ///< its coldest hour
  std::optional<DialSetting> air;        ///< the wall thermostat, which follows the weather by itself
  /// The slab sensor. Must be left at this: in the cold the room takes most heat out of the floor. Absent: no slab
  /// setting is enough.
  std::optional<DialSetting> slab;
  std::string slab_sensor;  ///< where it sits, in words
  std::string air_sensor;
  /// Had the coldest hour always lasted, the pump kept running; and with any one loop shut for good. Absent: none does.
  std::optional<double> lasting_air_dial_degC, lasting_slab_dial_degC;
  std::optional<double> shut_air_dial_degC, shut_slab_dial_degC;
  std::vector<PlaceAtSetting> place;  ///< what decides, then what would decide next; those only reported at the end
  std::vector<UnknownPlace> unknown;
  std::string beyond_boiler;  ///< the place that a boiler at full heat leaves too cold at any setting; empty: none
  double hold_W = 0.0;        ///< heat the water must give to hold the slab dial at the coldest
  std::optional<double> boiler_keeps_to_degC;  ///< outdoors, below this the boiler cannot keep the slab dial
  std::vector<Explained> explained;            ///< one, or none where no place decides
};

/// The warmest mean surface a floor may be held at: EN 1264-2, occupied area.
inline constexpr double warmest_floor_degC = 29.0;

/// What the frost hold is found from.
struct HeldShop {
  const Design& design;
  const Envelope& envelope;
  const FloorPlan& floor;
  const WatchedPlaces& watched;
  const Snap& snap;
};

/// Every heated room's slab stands under one control, as one water feeds them; the coldest place of all decides. No
/// setting counts that is above the working temperature, or above what keeps the floor at its limit.
///
/// `boiler_W` absent: no boiler is known, the hold is judged without one. Absent without `climate.coldest`
/// ("freeze.no-outdoor"). Said: no setting and what cannot be called (failures), a boiler too small for the hold
/// (failure), that a slab sensor at the usual 40 F would leave a room too cold, that the two dials are not alike.
Checked<Freeze> lowest_setting(const HeldShop& held, EdgeFields& fields, std::optional<double> boiler_W);

/// What dials have to reach at least, for reasons that the search did not know.
struct LeastDials {
  double air_degC = -100.0, slab_degC = -100.0;
};
/// The same settings with dials that reach so far, all that depends on them anew, and said anew.
Checked<Freeze> with_dials(const HeldShop& held, Freeze freeze, const LeastDials& least,
                           std::optional<double> boiler_W);

/// What a dial is set to, where a setting was found.
std::optional<double> found_dial_degC(const std::optional<Freeze>& freeze, std::optional<DialSetting> Freeze::*dial);

/// Rounded up to a mark of a dial: whole degrees F, or half degrees C.
double dial_mark_degC(double degC, System system);

/// Only the slab's best figure had the coldest hour always lasted, the pump kept running: a tenth of the work, for what
/// differences are asked of. Absent where there is none.
std::optional<double> lasting_slab_degC(const HeldShop& held);

Record record_of(PlaceAtSetting&);
Record record_of(UnknownPlace&);
Record record_of(DriverWeights&);
Record record_of(Explained&);
Record record_of(Freeze&);

}  // namespace slabwright
