// Tube: friction.
#pragma once
#include "slabwright/fluid.hpp"

namespace slabwright {

/// How the water moves. No agreed law exists between 2300 and 4000: what is `blended` is uncertain by about 20 %.
enum class Regime { laminar, blended, turbulent };

inline constexpr double laminar_up_to_reynolds = 2300.0;
inline constexpr double turbulent_from_reynolds = 4000.0;

/// `slope_per_reynolds` is d darcy / d reynolds; at a kink (2300, 4000) that of the outer side.
struct FrictionFactor {
  double darcy = 0.0;
  double slope_per_reynolds = 0.0;
  Regime regime = Regime::laminar;
};

/// Colebrook and White's Darcy friction factor, exact to rounding. reynolds > 0; relative_roughness 0 to 0.05.
/// Below 4000 the number is algebra, not physics.
double colebrook(double reynolds, double relative_roughness);

/// 64 / Re up to 2300, Colebrook from 4000, a straight line in f between them. reynolds > 0 (tube_loss() takes care of
/// water at rest). Continuous; a loss made from it rises strictly with the flow.
FrictionFactor friction_factor(double reynolds, double relative_roughness);

/// A straight run of round tube. Everything greater than zero, but for the roughness, which may be zero.
struct Bore {
  double length_m = 0.0;
  double inside_diameter_m = 0.0;
  double roughness_m = 0.0;
};

/// Pressure lost along the flow, and its derivative by the flow. Odd in the flow: water that runs backwards gains.
struct Loss {
  double pressure_Pa = 0.0;
  double slope_Pa_s_per_m3 = 0.0;
};

/// Darcy and Weisbach's loss. The slope is greater than zero everywhere, at rest that of Hagen and Poiseuille.
Loss tube_loss(const Bore& bore, const Liquid& liquid, double flow_m3_per_s);

/// Loss of a bend, a tee or an entry: K times the velocity pressure in the given bore. K >= 0. At rest its slope is
/// zero, so that a solver must floor it where nothing but fittings stands between two nodes.
Loss fitting_loss(double loss_coefficient, double inside_diameter_m, const Liquid& liquid, double flow_m3_per_s);

}  // namespace slabwright
