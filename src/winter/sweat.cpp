// Vapour over the floor: outdoor air, what melts and dries in the room, and what the floor's face makes of it.
#include <algorithm>

#include "slabwright/building_vapour.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "slabwright/units_exact.hpp"
#include "winter/scene.hpp"

namespace slabwright::winter {
namespace {

bool has_vapour(const Design& design) {
  const bool snow = std::any_of(design.vehicle.begin(), design.vehicle.end(), [](const VehicleEntry& vehicle) {
    return vehicle.snow_kg > 0.0 && vehicle.evaporates_share > 0.0;
  });
  return snow || design.work.wash_kg > 0.0 || design.work.people_number > 0.0;
}

std::vector<VapourHour> hours_of(const Scene& scene, const WayYear& year, double pressure_Pa) {
  const double leaks = leaks_kg_per_s(scene.shop, scene.year);
  const std::vector<double> outdoor_ratio = ratios_outdoors(scene.season, pressure_Pa);
  std::vector<VapourHour> hours;
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const SeasonHour& at = scene.season.hour[i];
    const WayHour& way = year.hour[i];
    std::vector<double> more_W_per_K = scene.season.drivers[i].more_W_per_K;
    for (const SeasonDoor& door : scene.season.door)
      more_W_per_K[door.room] += opened_W_per_K(door, at, way.air_degC - at.outdoor_degC);
    hours.push_back({outdoor_ratio[i], leaks + open_kg_per_s(at, more_W_per_K), at.vapour_kg_per_s + way.dries_kg_per_s,
                     std::clamp(way.air_degC, coldest_air_degC, hottest_air_degC),
                     std::clamp(way.floor_degC, coldest_air_degC, hottest_air_degC)});
  }
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
    inside = vapour_year(room, hours_of(scene, year, room.pressure_Pa));
  }
  for (std::size_t i = 0; i < hours_of_year; ++i) {
    const SeasonHour& at = scene.season.hour[i];
    const double dew_degC = std::min(at.dew_point_degC, at.outdoor_degC), face_degC = year.hour[i].floor_degC;
    const bool wet = sweating.inside_known ? inside.hour[i].sweats : dew_degC > face_degC;
    const bool damp =
        sweating.inside_known ? inside.hour[i].damp : saturation_Pa(dew_degC) > damp_share * saturation_Pa(face_degC);
    const auto month = static_cast<std::size_t>(at.month - 1);
    sweating.wet_s[month] += wet ? hour_s : 0.0;
    sweating.damp_s[month] += damp ? hour_s : 0.0;
  }
  return sweating;
}

}  // namespace slabwright::winter
