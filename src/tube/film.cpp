// Heat from the water to the tube's wall.
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

double cube(double x) { return x * x * x; }

// graetz = Re Pr d / L. The 0.6 makes the cube of the asymptote's part vanish against the other 0.6 at rest.
double laminar_nusselt(double graetz) {
  constexpr double developed = 48.0 / 11.0;
  constexpr double shift = 0.6;
  return std::cbrt(cube(developed) + cube(shift) + cube(1.953 * std::cbrt(graetz) - shift));
}

// Gnielinski (1976), Int. Chem. Eng. 16, with the smooth tube's friction after Filonenko: a rough wall would raise the
// formula's friction more than the heat.
double turbulent_nusselt(double reynolds, double prandtl) {
  const double x = 1.82 * std::log10(reynolds) - 1.64;
  const double eighth = 0.125 / (x * x);
  const double pr_two_thirds = std::cbrt(prandtl * prandtl);
  return eighth * (reynolds - 1000.0) * prandtl / (1.0 + 12.7 * std::sqrt(eighth) * (pr_two_thirds - 1.0));
}

double blended_nusselt(double reynolds, double prandtl, double diameter_per_length) {
  const double low = laminar_nusselt(laminar_up_to_reynolds * prandtl * diameter_per_length);
  const double high = turbulent_nusselt(turbulent_from_reynolds, prandtl);
  const double share = (reynolds - laminar_up_to_reynolds) / (turbulent_from_reynolds - laminar_up_to_reynolds);
  return low + share * (high - low);
}

}  // namespace

Film inside_film(const Bore& bore, const FluidProperties& fluid, double flow_m3_per_s) {
  expects(bore.length_m > 0.0 && bore.inside_diameter_m > 0.0, "inside_film: a bore of no size");
  expects(fluid.density_kg_per_m3 > 0.0 && fluid.specific_heat_J_per_kgK > 0.0, "inside_film: no heat capacity");
  expects(fluid.viscosity_Pa_s > 0.0 && fluid.conductivity_W_per_mK > 0.0, "inside_film: no viscosity or conductivity");
  const double d = bore.inside_diameter_m;
  const double reynolds = reynolds_number(d, {fluid.density_kg_per_m3, fluid.viscosity_Pa_s}, flow_m3_per_s);
  const double prandtl = fluid.specific_heat_J_per_kgK * fluid.viscosity_Pa_s / fluid.conductivity_W_per_mK;
  const auto film = [&](double nusselt, Regime regime) {
    return Film{nusselt * fluid.conductivity_W_per_mK / d, regime, reynolds};
  };
  if (reynolds <= laminar_up_to_reynolds)
    return film(laminar_nusselt(reynolds * prandtl * d / bore.length_m), Regime::laminar);
  if (reynolds < turbulent_from_reynolds)
    return film(blended_nusselt(reynolds, prandtl, d / bore.length_m), Regime::blended);
  return film(turbulent_nusselt(reynolds, prandtl), Regime::turbulent);
}

double film_resistance_mK_per_W(const Film& film, double inside_diameter_m) {
  expects(film.coefficient_W_per_m2K > 0.0 && inside_diameter_m > 0.0, "film_resistance: no film");
  return 1.0 / (pi * inside_diameter_m * film.coefficient_W_per_m2K);
}

}  // namespace slabwright
