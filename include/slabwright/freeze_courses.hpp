// Power cuts and the way back to work as curves: hours against the setting, slab and air against hours.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/freeze_outage.hpp"
#include "slabwright/freeze_recovery.hpp"

namespace slabwright {

/// A power cut at one setting and one weather, as OutageCase without its generators.
struct HoursAtSetting {
  double outdoor_degC = 0.0;
  double air_dial_degC = 0.0;     ///< the wall thermostat until the cut
  double slab_degC = 0.0;         ///< what a slab sensor then reads
  std::string first;              ///< empty where nothing freezes while the clock runs
  std::optional<double> lasts_s;  ///< until it does
};

/// Slab and air through a power cut, equally far apart in time, from the cut on.
struct OutageCourse {
  double outdoor_degC = 0.0;
  double air_dial_degC = 0.0;
  std::string first;              ///< the place that freezes first, else the one that comes nearest
  std::optional<double> lasts_s;  ///< as in the table of hours
  double freezes_degC = 0.0;      ///< what that place freezes at
  double every_s = 0.0;
  std::vector<double> air_degC;   ///< of the room with the thermostat; one sensor error below the dial at the cut
  std::vector<double> slab_degC;  ///< midway between two tubes, where a slab sensor lies
  std::vector<double> place_degC;
};

/// Slab and air on the way back to work, from the dial on, equally far apart in time, until it is warm.
struct RecoveryCourse {
  double outdoor_degC = 0.0;
  double from_air_degC = 0.0, to_air_degC = 0.0;
  std::optional<double> takes_s;  ///< as in the list of recoveries
  double every_s = 0.0;
  std::vector<double> air_degC;
  std::vector<double> slab_degC;
  std::vector<double> floor_degC;  ///< the floor's face
};

struct FreezeCourses {
  std::vector<HoursAtSetting> setting;   ///< mildest weather first, lowest setting first
  std::vector<OutageCourse> outage;      ///< in the coldest hour and in the weather planned for, from the dial
  std::vector<RecoveryCourse> recovery;  ///< row for row as recoveries()
};

/// The same runs as outage_clock() and recoveries(), told step by step. Settings from the wall thermostat's dial to the
/// working temperature, 3 F or 1.5 K apart. Outages for 48 h, or until 6 h after the first place has frozen where that
/// is later. Absent where outage_clock() is.
std::optional<FreezeCourses> freeze_courses(const HeldShop& held, const Freeze& freeze, EdgeFields& fields,
                                            std::optional<double> boiler_W);

Record record_of(HoursAtSetting&);
Record record_of(OutageCourse&);
Record record_of(RecoveryCourse&);
Record record_of(FreezeCourses&);

}  // namespace slabwright
