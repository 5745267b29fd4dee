// Pure solutions of the two glycols in water: Melinder, "Properties of secondary working fluids for indirect systems",
// IIF/IIR 2010, in the coefficients that the CoolProp repository carries (commit ea27c639).
// Glycol 0 to 60 % by mass, from the freezing point to 100 degC.
// f = sum over i, j of factor[j][i] (x - x_b)^i (T - T_b)^j, with the mass share x and T in kelvin; viscosity is
// exp(f).
#include <cmath>

#include "fluid/sources.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr int share_powers = 6;
constexpr int temperature_powers = 4;
using Polynomial = double[temperature_powers][share_powers];

struct Melinder {
  double base_temperature;  // kelvin
  double base_share;
  Polynomial density;             // kg/m3
  Polynomial specific_heat;       // J/(kg K)
  Polynomial conductivity;        // W/(m K)
  Polynomial log_viscosity;       // of Pa s
  double freezing[share_powers];  // kelvin
};

constexpr Melinder propylene{305.8583,
                             0.307031,
                             {{1018, 76.04, -24.98, -155, -113.1, 234.2},
                              {-0.5406, -0.945, 0.27, 2.829, -2.221, 0},
                              {-0.002666, 0.005541, -0.004018, -0.007175, 0, 0},
                              {1.347e-5, -1.343e-5, 3.376e-5, 0, 0, 0}},
                             {{3882, -1304, -1598, 353.9, 5000, -4959},
                              {2.699, 5.07, 0.9534, 31.02, -71.35, 0},
                              {-0.001659, -0.004752, 0.1167, -0.295, 0, 0},
                              {-1.032e-5, 1.522e-4, -4.87e-4, 0, 0, 0}},
                             {{0.4513, -0.4795, 0.2076, -0.09083, -0.05952, 0.2104},
                              {7.955e-4, -1.678e-3, 1.563e-3, -2.518e-3, -3.605e-3, 0},
                              {3.482e-8, 8.941e-6, -4.615e-5, 6.543e-5, 0, 0},
                              {-5.966e-9, 1.493e-8, 9.897e-8, 0, 0, 0}},
                             {{-6.224055, 3.328, 0.5453, -3.9, -1.587, 35.64},
                              {-0.03045, -0.03984, -0.00086, 0.1054, 0.04475, 0},
                              {2.525e-4, 4.332e-4, -1.593e-4, -1.589e-3, 0, 0},
                              {-1.399e-6, -1.86e-6, -4.465e-7, 0, 0, 0}},
                             {259.9, -66.31, -109.4, -228.3, -340.9, 146.5}};

constexpr Melinder ethylene{304.878,
                            0.308462,
                            {{1034, 131.1, 0.749, -106.2, -96.23, 489.1},
                             {-0.4781, -0.6876, 0.7855, 1.229, -7.211, 0},
                             {-0.002692, 0.004805, -0.003995, -0.01153, 0, 0},
                             {4.725e-6, 1.69e-6, 4.982e-5, 0, 0, 0}},
                            {{3737, -1799, -993.3, 2610, 1537, -16180},
                             {2.93, 10.46, 3.516, -1.189, -42.72, 0},
                             {-0.004675, -0.04147, 0.05109, -0.1643, 0, 0},
                             {-1.389e-5, 1.847e-5, -7.138e-4, 0, 0, 0}},
                            {{0.472, -0.4286, 0.1747, 0.03017, -0.1322, 0.2678},
                             {8.903e-4, -1.473e-3, 6.814e-4, -2.412e-3, 2.555e-3, 0},
                             {-1.058e-6, 1.059e-5, -3.612e-5, 4.004e-5, 0, 0},
                             {-2.789e-9, -1.142e-8, 2.365e-8, 0, 0, 0}},
                            {{-6.437255, 2.471, 0.03328, 1.659, 3.089, -18.65},
                             {-0.0255, -0.01171, 0.01086, 0.003157, 0.01831, 0},
                             {1.782e-4, 1.052e-4, 1.051e-4, 4.063e-4, 0, 0},
                             {-7.669e-7, -1.634e-6, -6.475e-6, 0, 0, 0}},
                            {257.9, -80.8, -133.4, -72.93, 100.6, 11.4}};

const Melinder& of(FluidKind kind) {
  expects(kind != FluidKind::water, "melinder: water is no glycol");
  return kind == FluidKind::propylene_glycol ? propylene : ethylene;
}

double by_share(const double (&factors)[share_powers], double from_base) {
  double sum = 0.0;
  for (int i = share_powers; i-- > 0;) sum = sum * from_base + factors[i];
  return sum;
}

double by_both(const Polynomial& factors, double share_from_base, double kelvin_from_base) {
  double sum = 0.0;
  for (int j = temperature_powers; j-- > 0;) sum = sum * kelvin_from_base + by_share(factors[j], share_from_base);
  return sum;
}

}  // namespace

FluidProperties melinder_properties(FluidKind kind, double mass_share, double temperature_degC) {
  const Melinder& source = of(kind);
  const double x = mass_share - source.base_share;
  const double t = temperature_degC + zero_degC_K - source.base_temperature;
  return {by_both(source.density, x, t), by_both(source.specific_heat, x, t),
          std::exp(by_both(source.log_viscosity, x, t)), by_both(source.conductivity, x, t)};
}

double melinder_freezing_point_degC(FluidKind kind, double mass_share) {
  const Melinder& source = of(kind);
  return by_share(source.freezing, mass_share - source.base_share) - zero_degC_K;
}

}  // namespace slabwright
