// Infrared from the sky, and the sky's temperature.
#include <cmath>

#include "slabwright/climate_sun.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// As the EPW data dictionary prints it; the exact one is 5.670374e-8.
constexpr double black_W_per_m2K4 = 5.6697e-8;

}  // namespace

double sky_emissivity(double dew_point_degC, double opaque_share) {
  expects(opaque_share >= 0.0 && opaque_share <= 1.0, "cover is a share");
  const double tenths = 10.0 * opaque_share;
  const double clear = 0.787 + 0.764 * std::log((dew_point_degC + zero_degC_K) / 273.0);
  return clear * (1.0 + tenths * (0.0224 + tenths * (-0.0035 + tenths * 0.00028)));
}

double sky_infrared_W_per_m2(double air_degC, double dew_point_degC, double opaque_share) {
  const double air_K = air_degC + zero_degC_K, square = air_K * air_K;
  return sky_emissivity(dew_point_degC, opaque_share) * black_W_per_m2K4 * square * square;
}

double sky_degC(double infrared_W_per_m2) {
  expects(infrared_W_per_m2 >= 0.0, "radiation is not negative");
  return std::sqrt(std::sqrt(infrared_W_per_m2 / black_W_per_m2K4)) - zero_degC_K;
}

std::vector<double> sky_degC(const WeatherYear& year) {
  std::vector<double> out;
  const bool measured = !year.sky_infrared_W_per_m2.empty();
  if (!measured && year.dew_point_degC.empty()) return out;
  for (std::size_t hour = 0; hour < year.dry_bulb_degC.size(); ++hour) {
    const double cover = year.opaque_share.empty() ? 0.0 : year.opaque_share[hour];
    out.push_back(sky_degC(measured
                               ? year.sky_infrared_W_per_m2[hour]
                               : sky_infrared_W_per_m2(year.dry_bulb_degC[hour], year.dew_point_degC[hour], cover)));
  }
  return out;
}

}  // namespace slabwright
