// A cold snap run through the zone: what every watched place does in it, for any setting of either dial.
#pragma once
#include <optional>
#include <vector>

#include "slabwright/building_snap.hpp"
#include "slabwright/building_zone.hpp"

namespace slabwright {

/// Which sensor calls for heat: the wall thermostat of the room with the sensors, or the one in the slab.
enum class DialKind { air, slab };

/// What the snap is run under.
struct SnapCase {
  std::vector<double> hourly_degC;
  std::size_t coldest_hour = 0;
  double mean_degC = 0.0;           ///< of the year
  double coldest_month_degC = 0.0;  ///< where the year's wave stands when the snap begins
  std::size_t sensor_room = 0;      ///< row in Design::room
  double satisfied_s = 0.0;         ///< something warm keeps the floor off so long, up to the coldest hour
  /// A second source that can hold the room without the floor keeps it off in all weather warmer than this.
  std::optional<double> second_source_above_degC;
};
SnapCase snap_case(const Design& design, const Snap& snap, std::size_t sensor_room);

/// Places that gain less per kelvin of a dial are not that dial's to keep.
inline constexpr double least_gain_share = 1e-3;

/// A place through the snap and its lead, where the floor has less heat, a row for each moment: gain_share x dial +
/// base.
struct PlaceCurve {
  std::vector<double> gain_share, base_degC;
};
double coldest_degC(const PlaceCurve& curve, double dial_degC);
/// Row of the moment that asks for the most.
std::size_t asking_moment(const PlaceCurve& curve, double limit_degC);
/// How long after the snap's lead begins a wall thermostat's row is.
double moment_s(std::size_t moment);
/// The lowest dial that keeps it above a limit, from all moments at once; absent where some moment is below it that
/// gains less than `least_gain_share`.
std::optional<double> asked_dial_degC(const PlaceCurve& curve, double limit_degC);

/// [place], for each dial. One evaluation costs microseconds; making them is four runs.
struct SnapCurves {
  std::vector<PlaceCurve> air, slab;
};

/// Superposition: the zone is linear, so two runs at two dials give all others. The soil has known this hold for years:
/// the same dial, the year's wave outdoors; in summer too, when a floor that could would cool, so that no warmth of a
/// summer counts.
/// - Wall thermostat: the room's air stays at the dial, and tubes give what the room and the ground take at the mean of
///   the last day, which is as fast as a slab can follow.
/// - Slab sensor: tubes give what keeps the sensor at the dial, and the air follows floor and outdoors.
/// - Satisfied: for `satisfied_s` up to the coldest hour the floor is off: under a wall thermostat the air stays warm,
///   as something warms it; under a slab sensor the air falls, as something warm stands on the sensor. With a second
///   source the floor is off in all weather that it can run in, the air as warm as either dial.
SnapCurves snap_curves(const Zone& zone, const SnapCase& snap);

/// On and off, as a real thermostat does it.
struct RealControl {
  DialKind kind = DialKind::air;
  double dial_degC = 0.0;
  double deadband_K = 0.0;     ///< on at half of it below the dial, off at half of it above
  double most_W_per_m2 = 0.0;  ///< of tube heat while it is on
};
/// Every moment, nothing else keeping the floor off.
std::vector<ZoneRow> controlled_snap(const Zone& zone, const SnapCase& snap, const RealControl& control);

/// The same without any heat, for years and through the snap.
std::vector<ZoneRow> unheated_snap(const Zone& zone, const SnapCase& snap);

}  // namespace slabwright
