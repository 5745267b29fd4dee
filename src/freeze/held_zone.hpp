// The shop as the frost hold sees it: steady and in time.
#pragma once
#include <functional>

#include "freeze/shop.hpp"
#include "slabwright/building_zone.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::freeze {

struct HeldZone {
  Shop shop;
  WatchedPlaces places;  ///< in rooms with tubes; the others are unknown
  Zone zone;
};
/// Needs climate.coldest. Absent where no tube lies in any floor, or no edge of a heated floor is known.
std::optional<HeldZone> held_zone(const HeldShop& held, EdgeFields& fields, FloorHeat heat = FloorHeat::up);

/// Places of rooms that carry no tube after all are unknown like the others.
WatchedPlaces in_heated_rooms(const WatchedPlaces& places, const Shop& shop, const Design& design);

/// The zone's air while a room stands at this temperature: the inverse of room_air_degC(). And the air of the room with
/// the sensors.
double zone_air_degC(const Zone& zone, std::size_t room, double room_degC, double outdoor_degC);
double sensor_room_degC(const HeldZone& held, const ZoneDrivers& at);

/// Steady, held by the wall thermostat at a true air temperature; a floor cannot cool.
ZoneDrivers held_at_dial(const HeldZone& held, double air_degC, double outdoor_degC);

/// The wall thermostat's dial as the room really is when its sensor reads too high by its error.
double true_air_degC(const Design& design, double air_dial_degC, double outdoor_degC);

/// When a place comes down to what it freezes at. `moved`: water goes round, and holds tubes and manifold together.
enum class Water { stands, moves };
std::optional<double> freezes_after_s(const HeldZone& held, std::size_t place, const std::vector<ZoneRow>& rows,
                                      Water water);

/// A step's doing, from the moment it begins at.
using Doing = std::function<ZoneStep(const ZoneRow&)>;

struct RunOptions {
  double step_s = 1200.0;  ///< half as long moves no hour by 0.2 %
  double longest_s = 96.0 * hour_s;
};
/// The moments from the start until all deciding places have frozen or the clock has run out.
std::vector<ZoneRow> run_until_frozen(const HeldZone& held, const ZoneDrivers& before, const Doing& doing,
                                      const RunOptions& options = {});

/// Nothing runs: no pump, no boiler, no fans, no gains, doors shut.
ZoneStep without_power(const HeldZone& held, double outdoor_degC);

/// Weathers of a power cut, rising in cold: the coldest month on a mark of 10 F or 5 K where that is so much milder as
/// to be worth a row, the weather planned for, the coldest hour.
std::vector<double> cut_weathers_degC(const Design& design);

/// The soonest of the deciding places.
struct FirstFrozen {
  std::string name;
  std::optional<double> after_s;
};
FirstFrozen first_frozen(const HeldZone& held, const std::vector<ZoneRow>& rows, Water water);

}  // namespace slabwright::freeze
