// Darcy and Weisbach's loss with everything that does not depend on the flow taken out.
#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/tube_run.hpp"
#include "slabwright/units_exact.hpp"
#include "tube/colebrook.hpp"

namespace slabwright {
namespace {

// A step that moved x by no more than this share of it leaves less than a rounding (see colebrook_step).
constexpr double last_move_share = 1e-5;
constexpr int most_steps = 20;  // two or three do

}  // namespace

TubeRun::TubeRun(const Bore& bore, const Liquid& liquid) {
  const double d = bore.inside_diameter_m;
  expects(bore.length_m > 0.0 && d > 0.0 && bore.roughness_m >= 0.0, "TubeRun: a bore of no size");
  expects(liquid.density_kg_per_m3 > 0.0 && liquid.viscosity_Pa_s > 0.0, "TubeRun: a liquid without properties");
  square_coefficient_ = 8.0 * liquid.density_kg_per_m3 * bore.length_m / (pi * pi * d * d * d * d * d);
  unit_flow_reynolds_ = 4.0 * liquid.density_kg_per_m3 / (pi * d * liquid.viscosity_Pa_s);
  wall_ratio_ = bore.roughness_m / d / 3.7;
}

double TubeRun::rough_chord_Pa_s_per_m3(double flow_m3_per_s) const {
  constexpr double usual_friction_factor = 0.03;
  return std::max(laminar_Pa_s_per_m3(), usual_friction_factor * square_coefficient_ * flow_m3_per_s);
}

double TubeRun::inverse_root(double film, double reynolds) {
  const ColebrookEquation equation{wall_ratio_, film};
  double x = inverse_root_coefficient_ > 0.0 ? inverse_root_coefficient_ : serghides_start(equation, reynolds);
  for (int i = 0; i < most_steps; ++i) {
    const double before = x;
    x = colebrook_step(equation, x);
    if (std::abs(x - before) <= last_move_share * x) break;
  }
  return inverse_root_coefficient_ = x;
}

// f runs in a straight line from 64 / 2300 to Colebrook at 4000.
Loss TubeRun::blended(double flow, double reynolds) {
  constexpr double from = 64.0 / laminar_up_to_reynolds;
  if (blend_slope_coefficient_ == 0.0) {
    const double to = colebrook(turbulent_from_reynolds, 3.7 * wall_ratio_);
    blend_slope_coefficient_ = (to - from) / (turbulent_from_reynolds - laminar_up_to_reynolds);
  }
  const double f = from + blend_slope_coefficient_ * (reynolds - laminar_up_to_reynolds);
  const double per_flow = square_coefficient_ * std::abs(flow);
  return {f * per_flow * flow, per_flow * (2.0 * f + blend_slope_coefficient_ * reynolds)};
}

Loss TubeRun::loss(double flow) {
  const double reynolds = unit_flow_reynolds_ * std::abs(flow);
  if (reynolds <= laminar_up_to_reynolds) {
    const double resistance = laminar_Pa_s_per_m3();
    return {resistance * flow, resistance};
  }
  if (reynolds < turbulent_from_reynolds) return blended(flow, reynolds);
  const double film = 2.51 / reynolds, x = inverse_root(film, reynolds);
  const double per_flow = square_coefficient_ * std::abs(flow) / (x * x);
  // Colebrook's equation, differentiated, takes this much off the slope of a square law.
  const double argument = wall_ratio_ + film * x;
  return {per_flow * flow, 2.0 * per_flow * argument / (argument + two_log10 * film)};
}

}  // namespace slabwright
