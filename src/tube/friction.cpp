// Friction of round tubes: Hagen-Poiseuille, Colebrook-White, and a straight line between them.
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"
#include "tube/colebrook.hpp"

namespace slabwright {
namespace {

double inverse_root(const ColebrookEquation& of, double reynolds) {
  return colebrook_step(of, colebrook_step(of, serghides_start(of, reynolds)));
}

ColebrookEquation colebrook_white(double reynolds, double relative_roughness) {
  return {relative_roughness / 3.7, 2.51 / reynolds};
}

FrictionFactor turbulent(double reynolds, double relative_roughness) {
  const ColebrookEquation equation = colebrook_white(reynolds, relative_roughness);
  const double x = inverse_root(equation, reynolds);
  const double darcy = 1.0 / (x * x);
  // The equation differentiated by x and by the Reynolds number.
  const double pull = two_log10 * equation.film / (equation.wall + equation.film * x);
  return {darcy, -2.0 * darcy * pull / (reynolds * (1.0 + pull)), Regime::turbulent};
}

FrictionFactor blended(double reynolds, double relative_roughness) {
  constexpr double from = 64.0 / laminar_up_to_reynolds;
  const double to = colebrook(turbulent_from_reynolds, relative_roughness);
  const double slope = (to - from) / (turbulent_from_reynolds - laminar_up_to_reynolds);
  return {from + slope * (reynolds - laminar_up_to_reynolds), slope, Regime::blended};
}

}  // namespace

double reynolds_number(double inside_diameter_m, const Liquid& liquid, double flow_m3_per_s) {
  const double mass_flow = liquid.density_kg_per_m3 * std::abs(flow_m3_per_s);
  return 4.0 * mass_flow / (pi * inside_diameter_m * liquid.viscosity_Pa_s);
}

double colebrook(double reynolds, double relative_roughness) {
  expects(reynolds > 0.0 && relative_roughness >= 0.0, "colebrook: reynolds > 0, relative roughness >= 0");
  const double x = inverse_root(colebrook_white(reynolds, relative_roughness), reynolds);
  return 1.0 / (x * x);
}

FrictionFactor friction_factor(double reynolds, double relative_roughness) {
  expects(reynolds > 0.0 && relative_roughness >= 0.0, "friction_factor: reynolds > 0, relative roughness >= 0");
  if (reynolds <= laminar_up_to_reynolds) return {64.0 / reynolds, -64.0 / (reynolds * reynolds), Regime::laminar};
  if (reynolds < turbulent_from_reynolds) return blended(reynolds, relative_roughness);
  return turbulent(reynolds, relative_roughness);
}

Loss tube_loss(const Bore& bore, const Liquid& liquid, double flow_m3_per_s) {
  const double d = bore.inside_diameter_m;
  expects(bore.length_m > 0.0 && d > 0.0 && bore.roughness_m >= 0.0, "tube_loss: a bore of no size");
  expects(liquid.density_kg_per_m3 > 0.0 && liquid.viscosity_Pa_s > 0.0, "tube_loss: a liquid without properties");
  const double flow = std::abs(flow_m3_per_s);
  const double reynolds = reynolds_number(d, liquid, flow);
  if (reynolds <= laminar_up_to_reynolds) {
    const double resistance = 128.0 * liquid.viscosity_Pa_s * bore.length_m / (pi * d * d * d * d);
    return {resistance * flow_m3_per_s, resistance};
  }
  const FrictionFactor f = friction_factor(reynolds, bore.roughness_m / d);
  const double per_flow = 8.0 * liquid.density_kg_per_m3 * bore.length_m / (pi * pi * d * d * d * d * d) * flow;
  return {f.darcy * per_flow * flow_m3_per_s, per_flow * (2.0 * f.darcy + reynolds * f.slope_per_reynolds)};
}

Loss fitting_loss(double loss_coefficient, double inside_diameter_m, const Liquid& liquid, double flow_m3_per_s) {
  expects(loss_coefficient >= 0.0 && inside_diameter_m > 0.0, "fitting_loss: K >= 0 and a bore greater than zero");
  expects(liquid.density_kg_per_m3 > 0.0, "fitting_loss: a liquid without density");
  const double area = 0.25 * pi * inside_diameter_m * inside_diameter_m;
  const double per_flow = 0.5 * loss_coefficient * liquid.density_kg_per_m3 / (area * area) * std::abs(flow_m3_per_s);
  return {per_flow * flow_m3_per_s, 2.0 * per_flow};
}

double bend_loss_coefficient(double turned_rad) {
  constexpr double of_half_a_turn = 0.2;
  return of_half_a_turn * std::abs(turned_rad) / pi;
}

}  // namespace slabwright
