// From frost hold back to work, and what a sensor in the wrong place does.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/freeze.hpp"

namespace slabwright {

/// One weather, boiler and second source together at full heat until the room is at its working temperature.
struct Recovery {
  double outdoor_degC = 0.0;
  double from_air_degC = 0.0;
  double to_air_degC = 0.0;
  std::optional<double> takes_s;      ///< absent: not within the clock
  std::optional<double> starts_at_s;  ///< clock time, from midnight of the day it opens; below 0: the day before
  double boiler_J = 0.0;
  double source_J = 0.0;        ///< heat of the second source
  double floor_degC = 0.0;      ///< the floor's face at opening time
  double operative_degC = 0.0;  ///< what it feels like there
  bool source_runs = false;     ///< whether the second source can, in that weather
};

/// Below this, standing work is on a cold floor: ISO 7730 and EN 1264-2 as commonly read, practice.
inline constexpr double cold_floor_degC = 19.0;

/// From the wall thermostat's dial, steady, in the weather planned for and in the coldest month's mean. Boiler absent:
/// nothing. Radiant surroundings are two fifths floor and three fifths inner faces that stand a twentieth of the way
/// from room to outdoor air (practice); operative temperature is the mean of air and those.
std::vector<Recovery> recoveries(const HeldShop& held, const Freeze& freeze, EdgeFields& fields,
                                 std::optional<double> boiler_W);

/// A slab sensor somewhere else than midway between two tubes, or that reads wrongly.
struct SensorCase {
  std::string where;
  double reads_off_K = 0.0;      ///< more than the right place, in the coldest hour at the slab dial
  double dial_degC = 0.0;        ///< what it would have to be set to, there
  double coldest_spare_K = 0.0;  ///< left at the right place's dial: the deciding place above what it freezes at
};
/// Midway; 2 in or 50 mm from a tube; 3 ft or 1 m inside the big door; in the sun; under a mat; reading 2 F or 1 K
/// high.
std::vector<SensorCase> sensor_cases(const HeldShop& held, const Freeze& freeze, EdgeFields& fields);

Record record_of(Recovery&);
Record record_of(SensorCase&);

}  // namespace slabwright
