// Vapour over the floor: outdoor air, what melts and dries in the room, and what the floor's face makes of it.
#include <algorithm>

#include "slabwright/building_vapour.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "winter/scene.hpp"

namespace slabwright::winter {
namespace {

constexpr double day_s = 86400.0;
/// A building that is not described: so much of its loss goes with the air (practice).
constexpr double leak_share = 0.35;

double leaks_kg_per_s(const Scene& scene) {
  double W_per_K = 0.0;
  for (const ShopRoom& room : scene.year.room) {
    const RoomLoss& loss = scene.shop.envelope.room[room.of];
    W_per_K += loss.air_W_per_K + leak_share * loss.by_area_W_per_K;
  }
  return W_per_K / air_J_per_kgK;
}

/// Fans and open doors of an hour.
double open_kg_per_s(const Scene& scene, std::size_t hour, double rise_K) {
  double W_per_K = 0.0;
  for (const double more : scene.season.drivers[hour].more_W_per_K) W_per_K += more;
  const SeasonHour& at = scene.season.hour[hour];
  for (const SeasonDoor& door : scene.season.door) W_per_K += opened_W_per_K(door, at, rise_K);
  return W_per_K / air_J_per_kgK + at.tempered_kg_per_s;
}

bool has_vapour(const Design& design) {
  const bool snow = std::any_of(design.vehicle.begin(), design.vehicle.end(), [](const VehicleEntry& vehicle) {
    return vehicle.snow_kg > 0.0 && vehicle.evaporates_share > 0.0;
  });
  return snow || design.work.wash_kg > 0.0 || design.work.people_number > 0.0;
}

double ratio_at(double dew_point_degC, double pressure_Pa) {
  return humidity_ratio(saturation_Pa(dew_point_degC), pressure_Pa);
}

std::vector<VapourHour> hours_of(const Scene& scene, const WayYear& year, double pressure_Pa) {
  const double leaks = leaks_kg_per_s(scene);
  std::vector<VapourHour> hours;
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const SeasonHour& at = scene.season.hour[i];
    VapourHour hour;
    hour.outdoor_ratio = ratio_at(std::min(at.dew_point_degC, at.outdoor_degC), pressure_Pa);
    hour.exchange_kg_per_s = leaks + open_kg_per_s(scene, i, year.hour[i].air_degC - at.outdoor_degC);
    hour.source_kg_per_s = at.vapour_kg_per_s;
    hour.air_degC = year.hour[i].air_degC;
    hour.floor_degC = year.hour[i].floor_degC;
    hours.push_back(hour);
  }
  return hours;
}

}  // namespace

Sweating sweating_of(const Scene& scene, const WayYear& year) {
  const Design& design = scene.shop.design;
  const double pressure_Pa = air_pressure_Pa(design.climate.altitude_m);
  Sweating sweating;
  sweating.inside_known = has_vapour(design);
  IndoorYear inside;
  if (sweating.inside_known) {
    VapourRoom room;
    for (const ShopRoom& one : scene.year.room) {
      room.air_kg += one.air_J_per_K / air_J_per_kgK;
      room.floor_m2 += one.floor_m2;
    }
    room.dryer_kg_per_s = design.work.dryer_kg / day_s;
    room.pressure_Pa = pressure_Pa;
    inside = vapour_year(room, hours_of(scene, year, pressure_Pa));
  }
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const SeasonHour& at = scene.season.hour[i];
    const double dew_degC = std::min(at.dew_point_degC, at.outdoor_degC), face_degC = year.hour[i].floor_degC;
    const bool wet = sweating.inside_known ? inside.hour[i].sweats : dew_degC > face_degC;
    const bool damp =
        sweating.inside_known ? inside.hour[i].damp : saturation_Pa(dew_degC) > damp_share * saturation_Pa(face_degC);
    const auto month = static_cast<std::size_t>(at.month - 1);
    sweating.wet_s[month] += wet ? an_hour_s : 0.0;
    sweating.damp_s[month] += damp ? an_hour_s : 0.0;
  }
  return sweating;
}

}  // namespace slabwright::winter
