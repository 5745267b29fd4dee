#include <array>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double triple_degC = 0.01;
constexpr double coldest_degC = -100.0, hottest_degC = 200.0, coldest_drop_degC = -50.0;
/// Molar mass of water over that of dry air.
constexpr double vapour_to_air = 0.621945;

/// ln p[Pa] = a / T + b + c T + d T^2 + e T^3 + f T^4 + g ln T, T in kelvin.
using SaturationTerms = std::array<double, 7>;
constexpr SaturationTerms over_ice{-5.6745359e3, 6.3925247,     -9.677843e-3, 6.2215701e-7,
                                   2.0747825e-9, -9.484024e-13, 4.1635019};
constexpr SaturationTerms over_water{-5.8002206e3,  1.3914993, -4.8640239e-2, 4.1764768e-5,
                                     -1.4452093e-8, 0.0,       6.5459673};

double log_pressure(const SaturationTerms& at, double T) {
  return at[0] / T + at[1] + T * (at[2] + T * (at[3] + T * (at[4] + T * at[5]))) + at[6] * std::log(T);
}

double log_pressure_slope_per_K(const SaturationTerms& at, double T) {
  return -at[0] / (T * T) + at[2] + T * (2.0 * at[3] + T * (3.0 * at[4] + T * 4.0 * at[5])) + at[6] / T;
}

}  // namespace

double saturation_over_ice_Pa(double temperature_degC) {
  expects(temperature_degC >= coldest_degC && temperature_degC <= triple_degC, "ice, not colder than the formula");
  return std::exp(log_pressure(over_ice, temperature_degC + zero_degC_K));
}

double saturation_over_water_Pa(double temperature_degC) {
  expects(temperature_degC >= coldest_drop_degC && temperature_degC <= hottest_degC, "water within its formula");
  return std::exp(log_pressure(over_water, temperature_degC + zero_degC_K));
}

double saturation_Pa(double temperature_degC) {
  return temperature_degC <= triple_degC ? saturation_over_ice_Pa(temperature_degC)
                                         : saturation_over_water_Pa(temperature_degC);
}

double dew_point_degC(double vapour) {
  expects(vapour >= saturation_over_ice_Pa(coldest_degC) && vapour <= saturation_over_water_Pa(hottest_degC),
          "a vapour pressure that saturates from -100 to 200 degC");
  const bool frost = vapour <= saturation_over_ice_Pa(triple_degC);
  const SaturationTerms& terms = frost ? over_ice : over_water;
  const double wanted = std::log(vapour);
  // Newton's steps in 1/T, over which the logarithm is nearly a straight line.
  double T = triple_degC + zero_degC_K;
  constexpr int most_steps = 30;
  constexpr double enough_K = 1e-10;
  for (int step = 0; step < most_steps; ++step) {
    const double before = T;
    T = 1.0 / (1.0 / T - (wanted - log_pressure(terms, T)) / (T * T * log_pressure_slope_per_K(terms, T)));
    if (std::abs(T - before) < enough_K) break;
  }
  return T - zero_degC_K;
}

double humidity_ratio(double vapour, double total_Pa) {
  expects(vapour >= 0.0 && vapour < total_Pa, "a part of the pressure is not more than the whole");
  return vapour_to_air * vapour / (total_Pa - vapour);
}

double vapour_of_ratio_Pa(double ratio, double total_Pa) {
  expects(ratio >= 0.0 && total_Pa > 0.0, "a humidity ratio is not negative");
  return total_Pa * ratio / (vapour_to_air + ratio);
}

double humidity_ratio_of(double air_degC, double humidity_share, double total_Pa) {
  expects(humidity_share >= 0.0 && humidity_share <= 1.0, "relative humidity is a share");
  return humidity_ratio(humidity_share * saturation_Pa(air_degC), total_Pa);
}

double surface_humidity_share(double vapour, double surface_degC) { return vapour / saturation_Pa(surface_degC); }

double settling_kg_per_sm2(double convection_W_per_m2K, double air_ratio, double surface_ratio) {
  expects(convection_W_per_m2K >= 0.0, "convection is not negative");
  return convection_W_per_m2K / air_J_per_kgK * (air_ratio - surface_ratio);
}

}  // namespace slabwright
