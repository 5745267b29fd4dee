// Liquid water at 0.1 MPa: IAPWS Supplementary Release SR6-08(2011), "Revised Supplementary Release on Properties of
// Liquid Water at 0.1 MPa". Valid from 253.15 to 383.15 K. Coefficients as printed there; figures to check against:
// tests/published/fluid/water_iapws.cpp.
#include <cmath>

#include "fluid/sources.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double specific_gas_constant = 461.51805;  // J/(kg K)
constexpr double reducing_temperature = 10.0;        // K
constexpr double pressure = 1e5;                     // Pa

struct Term {
  double factor;
  double power;
};
struct WholeTerm {
  double factor;
  int power;
};

// Specific volume: a5, then a6 .. a10 over powers of alpha, b5 .. b10 over powers of beta.
constexpr double volume_constant = 1.93763157e-2;
constexpr WholeTerm volume_alpha[] = {
    {6.74458446e3, 4}, {-2.22521604e5, 5}, {1.00231247e8, 7}, {-1.63552118e9, 8}, {8.32299658e9, 9}};
constexpr WholeTerm volume_beta[] = {{5.78545292e-3, 1},  {-1.53195665e-2, 2}, {3.11337859e-2, 3},
                                     {-4.23546241e-2, 4}, {3.38713507e-2, 5},  {-1.19946761e-2, 6}};

// Isobaric heat capacity: c3, then a1 .. a3 over powers of alpha, b1 .. b4 over powers of beta.
constexpr double heat_constant = -8.983025854;
constexpr WholeTerm heat_alpha[] = {{-1.661470539e5, 4}, {2.708781640e6, 5}, {-1.557191544e8, 7}};
constexpr WholeTerm heat_beta[] = {{-8.237426256e-1, 2}, {1.908956353, 3}, {-2.017597384, 4}, {8.546361348e-1, 5}};

// Viscosity in micropascal seconds and conductivity in W/(m K), over powers of T / 300 K.
constexpr Term viscosity_terms[] = {{280.68, -1.9}, {511.45, -7.7}, {61.131, -19.6}, {0.45903, -40.0}};
constexpr Term conductivity_terms[] = {{1.6630, -1.15}, {-1.7781, -3.4}, {1.1567, -6.0}, {-0.432115, -7.6}};

// SR1-86(1992): ln(p / pc) = Tc / T times terms over powers of 1 - T / Tc.
constexpr double critical_K = 647.096, critical_Pa = 22.064e6;
constexpr Term vapour_terms[] = {{-7.85951783, 1.0}, {1.84408259, 1.5},  {-11.7866497, 3.0},
                                 {22.6807411, 3.5},  {-15.9618719, 4.0}, {1.80122502, 7.5}};

double power(double base, int exponent) {
  double product = 1.0;
  for (int i = 0; i < exponent; ++i) product *= base;
  return product;
}

struct Place {
  double kelvin = 0.0;
  double alpha = 0.0;
  double beta = 0.0;
};

Place place_at(double temperature_degC) {
  const double kelvin = temperature_degC + zero_degC_K;
  return {kelvin, reducing_temperature / (593.0 - kelvin), reducing_temperature / (kelvin - 232.0)};
}

double density(const Place& at) {
  double sum = volume_constant;
  for (const WholeTerm& term : volume_alpha) sum += term.factor * power(at.alpha, term.power);
  for (const WholeTerm& term : volume_beta) sum += term.factor * power(at.beta, term.power);
  return pressure / (specific_gas_constant * reducing_temperature * sum);
}

double specific_heat(const Place& at) {
  double sum = 0.0;
  for (const WholeTerm& term : heat_alpha)
    sum += term.power * (term.power + 1) * term.factor * power(at.alpha, term.power + 2);
  for (const WholeTerm& term : heat_beta)
    sum += term.power * (term.power + 1) * term.factor * power(at.beta, term.power + 2);
  return -specific_gas_constant * (heat_constant + at.kelvin / reducing_temperature * sum);
}

template <std::size_t count>
double over_300_kelvin(const Term (&terms)[count], double kelvin) {
  const double logarithm = std::log(kelvin / 300.0);
  double sum = 0.0;
  for (const Term& term : terms) sum += term.factor * std::exp(term.power * logarithm);
  return sum;
}

}  // namespace

FluidProperties water_properties(double temperature_degC) {
  const Place at = place_at(temperature_degC);
  return {density(at), specific_heat(at), 1e-6 * over_300_kelvin(viscosity_terms, at.kelvin),
          over_300_kelvin(conductivity_terms, at.kelvin)};
}

Liquid water_liquid(double temperature_degC) {
  const Place at = place_at(temperature_degC);
  return {density(at), 1e-6 * over_300_kelvin(viscosity_terms, at.kelvin)};
}

double water_vapour_pressure_Pa(double temperature_degC) {
  const double kelvin = temperature_degC + zero_degC_K, below = 1.0 - kelvin / critical_K;
  expects(below > 0.0 && kelvin > 0.0, "no liquid water has this temperature");
  double sum = 0.0;
  for (const Term& term : vapour_terms) sum += term.factor * std::pow(below, term.power);
  return critical_Pa * std::exp(sum * critical_K / kelvin);
}

}  // namespace slabwright
