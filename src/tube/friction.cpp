// Friction of round tubes: Hagen-Poiseuille, Colebrook-White, and a straight line between them.
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

constexpr double pi = 3.14159265358979323846;

// Colebrook and White's 2 log10, as a multiple of the natural logarithm (2 / ln 10): one log is dearer than all the
// rest.
constexpr double two_log10 = 0.86858896380650365530;

// 1/sqrt(f) of Serghides' form: three turns of the fixed point, then Steffensen's step.
double inverse_root_start(double wall, double per_reynolds) {
  const double a = -two_log10 * std::log(wall + 12.0 * per_reynolds);
  const double b = -two_log10 * std::log(wall + 2.51 * per_reynolds * a);
  const double c = -two_log10 * std::log(wall + 2.51 * per_reynolds * b);
  const double bend = c - 2.0 * b + a;
  return bend == 0.0 ? c : a - (b - a) * (b - a) / bend;
}

// The root x = 1/sqrt(f) of x + 2 log10(wall + film x) = 0, and the slope of the logarithm's argument there.
struct Root {
  double inverse_root = 0.0;
  double log_slope = 0.0;  // d ln(wall + film x) / dx
};

Root solve_colebrook(double reynolds, double relative_roughness) {
  const double wall = relative_roughness / 3.7;
  const double film = 2.51 / reynolds;
  const double start = inverse_root_start(wall, 1.0 / reynolds);
  // One step of Halley's method (Newton with the curvature): third order, so that Serghides' 2e-5 becomes rounding
  // with one logarithm where Newton would need two.
  const double argument = wall + film * start;
  const double log_slope = film / argument;
  const double residual = start + two_log10 * std::log(argument);
  const double slope = 1.0 + two_log10 * log_slope;
  const double curvature = -two_log10 * log_slope * log_slope;
  const double x = start - residual / (slope - 0.5 * curvature * residual / slope);
  return {x, film / (wall + film * x)};
}

FrictionFactor turbulent(double reynolds, double relative_roughness) {
  const Root root = solve_colebrook(reynolds, relative_roughness);
  const double darcy = 1.0 / (root.inverse_root * root.inverse_root);
  const double pull = two_log10 * root.log_slope;
  return {darcy, -2.0 * darcy * pull / (reynolds * (1.0 + pull)), Regime::turbulent};
}

FrictionFactor blended(double reynolds, double relative_roughness) {
  constexpr double from = 64.0 / laminar_up_to_reynolds;
  const double to = colebrook(turbulent_from_reynolds, relative_roughness);
  const double slope = (to - from) / (turbulent_from_reynolds - laminar_up_to_reynolds);
  return {from + slope * (reynolds - laminar_up_to_reynolds), slope, Regime::blended};
}

}  // namespace

double serghides(double reynolds, double relative_roughness) {
  expects(reynolds > 0.0 && relative_roughness >= 0.0, "serghides: reynolds > 0, relative roughness >= 0");
  const double x = inverse_root_start(relative_roughness / 3.7, 1.0 / reynolds);
  return 1.0 / (x * x);
}

double colebrook(double reynolds, double relative_roughness) {
  expects(reynolds > 0.0 && relative_roughness >= 0.0, "colebrook: reynolds > 0, relative roughness >= 0");
  const double x = solve_colebrook(reynolds, relative_roughness).inverse_root;
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
  const double reynolds = 4.0 * liquid.density_kg_per_m3 * flow / (pi * d * liquid.viscosity_Pa_s);
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

}  // namespace slabwright
