// Recoveries with their course.
#pragma once
#include <vector>

#include "freeze/held_zone.hpp"
#include "slabwright/freeze_recovery.hpp"

namespace slabwright::freeze {

inline constexpr double recovery_step_s = 600.0;

/// With its rows, a step apart, up to the first that is warm enough or to the end of the clock.
struct RecoveryRun {
  Recovery recovery;
  std::vector<ZoneRow> rows;
};
/// `climate.outdoor` must be there.
std::vector<RecoveryRun> recovery_runs(const HeldShop& held, const HeldZone& zone, const Freeze& freeze,
                                       double boiler_W);

/// The mean face of the heated floor.
double floor_face_degC(const HeldZone& held, const ZoneRow& row);

}  // namespace slabwright::freeze
