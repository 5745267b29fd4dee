// A building whole: the room's air and every edge's full field, coupled in time. No reduction, no superposition, only
// the kernel of fields and the balance of the air. Slow; what faster models are held against.
#pragma once
#include <cstddef>
#include <vector>

#include "slabwright/conduction_time.hpp"

namespace slabwright::test {

/// A driver that is the zone's air, or stands on the way from it to the outdoor air.
struct AirOver {
  FieldDriverId driver;
  double rise_share = 1.0;  ///< of the zone's rise over outdoors
};

struct WholeEdge {
  FieldSection section;
  std::vector<FieldPoint> watched;
  double length_m = 0.0;     ///< of the strip, above 0
  std::vector<AirOver> air;  ///< they meet the section by films only
  /// What the section has settled to, or swings in, before the first time, the air over this strip included.
  PeriodicDrivers before;
  std::vector<DriverValues> drivers;  ///< [time]; what stands in the place of the air is not looked at
};

struct WholeBuilding {
  std::vector<double> times_s;  ///< not falling; two of one time are a jump, of anything but the air
  std::vector<WholeEdge> edges;
  double capacity_J_per_K = 0.0;     ///< of air and contents, one node; above 0
  double loss_W_per_K = 0.0;         ///< from the air to the outdoor air
  double start_degC = 0.0;           ///< of the air
  std::vector<double> outdoor_degC;  ///< [time]
  std::vector<double> gain_W;        ///< [time]: heat let free in the air by whatever is not the floor
};

struct WholeOptions {
  TimeOptions fields = {};
  /// What the air's series may still move from one round to the next. The answer is off by up to twice this: the last
  /// rounds close in by a factor of three and more.
  double air_K = 1e-3;
  std::size_t most_rounds = 40;
  std::vector<double> air_guess_degC;  ///< [time], where a faster model has one; else the start's throughout
};

struct WholeRun {
  std::vector<double> air_degC;  ///< [time]: the air that the fields ran under
  std::vector<double> up_W;      ///< [time]: from the floor into the air
  std::vector<FieldRun> edges;   ///< temperatures of the watched points, and heat per metre
  double moved_K = 0.0;          ///< by what the last round would still move the air: above air_K where it gave up
  std::size_t rounds = 0;
};

/// Waveform iteration. Every field runs through the whole time under a guess of the air, then the air is balanced
/// against the fields' heat, with what a film gives more or less when its air moves, and so on until the air rests.
/// Air is straight between times, the balance by the trapezoidal rule: times half as far apart err a quarter as much.
/// Broken contracts (std::logic_error): those of field_run; rows that do not fit the times; a fixed surface at the air.
WholeRun whole_run(const WholeBuilding& building, const WholeOptions& options = {});

}  // namespace slabwright::test
