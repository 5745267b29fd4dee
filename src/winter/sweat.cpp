// Vapour over the floor: outdoor air, what melts and dries in the room, and what the floor's face makes of it.
#include <algorithm>

#include "slabwright/building_vapour.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "winter/scene.hpp"

namespace slabwright::winter {
namespace {

bool has_vapour(const Design& design) {
  const bool snow = std::any_of(design.vehicle.begin(), design.vehicle.end(), [](const VehicleEntry& vehicle) {
    return vehicle.snow_kg > 0.0 && vehicle.evaporates_share > 0.0;
  });
  return snow || design.work.wash_kg > 0.0 || design.work.people_number > 0.0;
}

std::vector<VapourHour> hours_of(const Scene& scene, const WayYear& year) {
  std::vector<double> air_degC;
  for (const WayHour& hour : year.hour) air_degC.push_back(hour.air_degC);
  const std::vector<SeasonAir> air = season_air(scene.season, scene.shop, scene.year, air_degC);
  std::vector<VapourHour> hours;
  for (std::size_t i = 0; i < hours_of_year; ++i)
    hours.push_back({air[i].outdoor_ratio, air[i].exchange_kg_per_s, scene.season.hour[i].vapour_kg_per_s,
                     std::min(year.hour[i].air_degC, hottest_air_degC),
                     std::min(year.hour[i].floor_degC, hottest_air_degC)});
  return hours;
}

}  // namespace

Sweating sweating_of(const Scene& scene, const WayYear& year) {
  const Design& design = scene.shop.design;
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
    room.pressure_Pa = air_pressure_Pa(design.climate.altitude_m);
    inside = vapour_year(room, hours_of(scene, year));
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
