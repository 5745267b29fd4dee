// What an owner chooses between, and what sheets draw of a winter: cost against the floor's setting, and the week of
// the cold snap.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/fields.hpp"

namespace slabwright {

/// What a change of the shop saves in a winter of the best way.
struct PayBack {
  std::string what;
  bool before_pour = false;
  double saved_J = 0.0;
  std::optional<double> saved_money;
};

/// The floor's thermostat at one setting the whole winter, in the way that leans on it most.
struct SettingCost {
  double setting_degC = 0.0;  ///< of the sensor that the list is of
  double use_J = 0.0;         ///< electricity for heat in the year
  std::optional<double> money;
  bool keeps = false;  ///< the setting is no lower than the lowest that keeps everything above its limit
};

/// A choice of the owner's and what a winter of it comes to: the floor held by the wall thermostat all winter.
struct OwnerCost {
  std::string insulation;      ///< "as it is", or what is added
  bool before_pour = false;    ///< that is too late once the concrete is in
  bool second_source = false;  ///< it warms working hours to working temperature
  double air_degC = 0.0;       ///< the floor's setting
  double use_J = 0.0;
  std::optional<double> money;
};

/// The coldest week: one way, hour by hour, with the design's cold snap laid into January.
struct WinterWeek {
  std::string way;
  int first_hour = 0;  ///< of the year, from 1 January, 0 h; the hours follow each other
  int month = 1;       ///< of that hour
  int day = 1;
  std::vector<double> outdoor_degC, air_degC, slab_degC, floor_degC;  ///< at each hour's end; the floor's face
  std::vector<double> boiler_W, source_W;                             ///< electric, mean of the hour
  std::vector<double> floor_heat_W, source_heat_W;                    ///< heat, mean of the hour
  double locked_s = 0.0;  ///< in it, the second source was wanted and too cold outdoors
  double lowest_outdoor_degC = 0.0, lowest_air_degC = 0.0, lowest_slab_degC = 0.0;
  double use_J = 0.0;  ///< electricity for heat in it
};

struct WinterSeries {
  std::string way;                                          ///< of `air` and `slab`; empty where none holds frost
  std::optional<double> air_lowest_degC, slab_lowest_degC;  ///< frost hold of either sensor
  std::vector<SettingCost> air, slab;                       ///< by rising setting: wall thermostat, slab sensor
  std::vector<OwnerCost> owner;  ///< by insulation, without and with the second source, by rising setting
  std::optional<WinterWeek> week;
};

Record record_of(SettingCost&);
Record record_of(OwnerCost&);
Record record_of(WinterWeek&);
/// Without `week`, which has a record of its own where it is there.
Record record_of(WinterSeries&);

}  // namespace slabwright
