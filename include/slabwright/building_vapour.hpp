// Water in the air of a room over a cold floor: where it comes from, what settles, and when the floor sweats.
//
// One well-mixed room. Within an hour everything that drives it stays as it is, and the air goes exponentially between
// the moments at which the floor becomes wet or dry and the dryer starts or stops, so no step is too long.
#pragma once
#include <vector>

#include "climate.hpp"
#include "handbook_air.hpp"
#include "units_exact.hpp"

namespace slabwright {

/// Faces in air damper than this rust and mould in time (practice).
inline constexpr double damp_share = 0.8;

struct VapourRoom {
  double air_kg = 0.0;                ///< dry air, above 0
  double floor_m2 = 0.0;              ///< 0 or more, as all here
  double convection_W_per_m2K = 1.0;  ///< onto a floor colder than the air; 3 with fans (practice)
  double dryer_kg_per_s = 0.0;        ///< what a dehumidifier takes while it runs
  double dryer_above_share = 0.6;     ///< it runs above this relative humidity (practice), 0 to 1
  double pressure_Pa = standard_atmosphere_Pa;
};

/// What acts through an hour.
struct VapourHour {
  double outdoor_ratio = 0.0;      ///< kg of vapour to a kg of dry air
  double exchange_kg_per_s = 0.0;  ///< dry air by leaks, doors and fans, each way
  double source_kg_per_s = 0.0;    ///< of melting, washing, people: what goes into the air
  double air_degC = 0.0;           ///< -100 to 200, as the floor's
  double floor_degC = 0.0;         ///< its face
};

/// The room at a moment.
struct RoomVapour {
  double ratio = 0.0;
  double floor_kg = 0.0;  ///< water that has settled and not dried; the whole floor is wet or dry at once
};

/// Where the water went, kg. Closed to rounding: in + source = out + dried + settled + fallen + the air's own rise.
struct VapourAmounts {
  double in_kg = 0.0, out_kg = 0.0;  ///< with the air, each way
  double source_kg = 0.0;
  double dried_kg = 0.0;    ///< by the dryer
  double settled_kg = 0.0;  ///< on the floor; below 0 where it dries
  /// More than the air can hold, at the end of a step: on windows and walls, and never back.
  double fallen_kg = 0.0;
};
struct VapourStep {
  RoomVapour end;
  VapourAmounts amounts;
};

/// One step. A dry floor takes on water while the air over it is richer than saturated air at its face, and gives back
/// what lies on it and no more. A dryer that could hold its humidity runs as much as it must. `step_s` above 0; a
/// frozen floor is saturated over ice.
VapourStep vapour_step(const VapourRoom& room, const VapourHour& hour, const RoomVapour& from, double step_s = hour_s);

/// How the room stands at the end of an hour.
struct IndoorVapour {
  RoomVapour at;
  double dew_point_degC = 0.0;  ///< frost point below 0.01 degC; -100 for air drier than that
  double face_share = 0.0;      ///< relative humidity on the floor's face
  bool sweats = false;          ///< dew point above the face
  bool damp = false;            ///< more than 80 % on the face: iron rusts (from memory of ISO 9223)
};
struct IndoorYear {
  std::vector<IndoorVapour> hour;
  VapourAmounts amounts;  ///< of all hours
};
/// Hour after hour, from the first hour's outdoor air over a dry floor. Empty for no hours.
IndoorYear vapour_year(const VapourRoom& room, const std::vector<VapourHour>& hours);

/// Humidity ratio outdoors by hours, from the dew point and the year's own pressure, else `pressure_Pa`. Empty where
/// the year has no dew point.
std::vector<double> outdoor_ratios(const WeatherYear& year, double pressure_Pa = standard_atmosphere_Pa);

}  // namespace slabwright
