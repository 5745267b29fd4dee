#include "slabwright/building_sun.hpp"

#include <array>

#include "slabwright/contract.hpp"

namespace slabwright {

BuildingSun building_sun(const WeatherYear& year, const GroundReflection& ground) {
  constexpr std::array<Aspect, 5> aspects{{{90.0, 0.0}, {90.0, 90.0}, {90.0, 180.0}, {90.0, 270.0}, {0.0, 180.0}}};
  const std::vector<Sunlight> light = sunlight_of(year);
  BuildingSun out;
  const std::array<std::vector<double>*, 5> faces{&out.north_W_per_m2, &out.east_W_per_m2, &out.south_W_per_m2,
                                                  &out.west_W_per_m2, &out.roof_W_per_m2};
  for (auto* series : faces) series->assign(light.size(), 0.0);
  out.wall_W_per_m2.assign(light.size(), 0.0);
  for (std::size_t hour = 0; hour < light.size(); ++hour) {
    const Sunlight& now = light[hour];
    if (now.global_W_per_m2 == 0.0 && now.direct_W_per_m2 == 0.0 && now.diffuse_W_per_m2 == 0.0) continue;
    const bool snow = !year.snow_depth_m.empty() && year.snow_depth_m[hour] > 0.0;
    const double ground_share = snow ? ground.snow_share : ground.bare_share;
    const SunPosition sun = sun_position(year.station, static_cast<double>(hour) + 0.5);
    for (std::size_t face = 0; face < faces.size(); ++face)
      (*faces[face])[hour] = surface_sun(sun, aspects[face], now, ground_share).total_W_per_m2();
    out.wall_W_per_m2[hour] =
        (out.north_W_per_m2[hour] + out.east_W_per_m2[hour] + out.south_W_per_m2[hour] + out.west_W_per_m2[hour]) / 4.0;
  }
  return out;
}

double sol_air_excess_K(const OuterFace& face, double sun_W_per_m2, double air_degC, double sky_temperature_degC) {
  expects(sun_W_per_m2 >= 0.0 && face.film_W_per_m2K > 0.0, "sun on a face with a film");
  const double to_sky_W_per_m2K = face.sees_sky_share * face.emits_share * face.radiation_W_per_m2K;
  const double net_W_per_m2 = face.takes_up_share * sun_W_per_m2 - to_sky_W_per_m2K * (air_degC - sky_temperature_degC);
  return net_W_per_m2 / face.film_W_per_m2K;
}

SolAir sol_air_of(const WeatherYear& year, const BuildingSun& sun, const OuterFace& wall, const OuterFace& roof) {
  const std::vector<double> sky = sky_degC(year);
  const std::size_t hours = year.dry_bulb_degC.size();
  const bool shines = !sun.wall_W_per_m2.empty();
  expects(!shines || (sun.wall_W_per_m2.size() == hours && sun.roof_W_per_m2.size() == hours), "sun of the same year");
  SolAir out;
  out.wall_K.reserve(hours);
  out.roof_K.reserve(hours);
  for (std::size_t hour = 0; hour < hours; ++hour) {
    const double air_degC = year.dry_bulb_degC[hour], above_degC = sky.empty() ? air_degC : sky[hour];
    const double on_wall = shines ? sun.wall_W_per_m2[hour] : 0.0, on_roof = shines ? sun.roof_W_per_m2[hour] : 0.0;
    out.wall_K.push_back(sol_air_excess_K(wall, on_wall, air_degC, above_degC));
    out.roof_K.push_back(sol_air_excess_K(roof, on_roof, air_degC, above_degC));
  }
  return out;
}

}  // namespace slabwright
