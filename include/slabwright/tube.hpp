// Tube: sizes, friction, bends and fittings, the film of water inside.
#pragma once
#include <string_view>
#include <vector>

#include "slabwright/fluid.hpp"

namespace slabwright {

/// A size that is sold, as one row of the table in src/tube/sizes.cpp, where each figure has its source.
struct TubeSize {
  std::string_view name;  ///< "1/2 in", "16 x 2 mm"
  double outside_diameter_m = 0.0;
  double wall_m = 0.0;               ///< mean: least wall and half its tolerance (inch sizes), nominal (metric sizes)
  double inside_diameter_m = 0.0;    ///< mean, for friction, content and film
  double longest_loop_m = 0.0;       ///< leaders included
  double least_bend_radius_m = 0.0;  ///< to the tube's centre line
  double roughness_m = 0.0;
  double conductivity_W_per_mK = 0.0;  ///< of the wall
  bool metric = false;
};

/// The names of all sizes, inch sizes first, each group from small to large.
std::vector<std::string_view> tube_names();

/// The size that a person means by "1/2 in", "1/2\"", "1/2-inch", "16 x 2 mm", "16x2.0"; null where the text names
/// none, or leaves the wall or the unit of a fraction open ("16 mm", "1/2").
const TubeSize* find_tube(std::string_view text);

/// Bend radius over outside diameter when a tube is bent free. Trade table; 5 to 6 with bend supports (from memory).
inline constexpr double least_bend_radius_per_diameter = 8.0;

double water_content_m3_per_m(const TubeSize& tube);
double velocity_m_per_s(double inside_diameter_m, double flow_m3_per_s);
double reynolds_number(double inside_diameter_m, const Liquid& liquid, double flow_m3_per_s);

/// Resistance of the wall of one metre of tube: ln(outside / inside) / (2 pi conductivity).
double wall_resistance_mK_per_W(const TubeSize& tube);

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

Bore bore_of(const TubeSize& tube, double length_m);

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

/// Loss coefficients K. From memory of handbooks, all of them; together they are a few percent of a loop.
inline constexpr double entry_loss_coefficient = 0.5;    ///< sharp, from a bar into a tube
inline constexpr double exit_loss_coefficient = 1.0;     ///< from a tube into a bar
inline constexpr double tee_run_loss_coefficient = 0.9;  ///< straight through; 0.5 to 0.9
inline constexpr double tee_branch_loss_coefficient = 1.8;
inline constexpr double ball_valve_loss_coefficient = 0.1;  ///< open; 0.05 to 0.1

/// What a gentle bend of the tube itself (radius of 8 diameters or so) loses beyond its arc, which counts as tube: 0.2
/// for half a turn. Rennels' and the handbook method give 0.18 and 0.41 at Reynolds 8000.
double bend_loss_coefficient(double turned_rad);

/// Between the water and the wall.
struct Film {
  double coefficient_W_per_m2K = 0.0;  ///< mean over the bore's length, on the inside diameter
  Regime regime = Regime::laminar;
  double reynolds = 0.0;
};

/// Laminar: uniform heat flux, developed velocity, developing temperature: the developed 48/11 and Leveque's asymptote
/// 1.953 (Re Pr d / L)^(1/3) joined as the VDI Heat Atlas G1 does (from memory; within 1 % of the exact series).
/// Turbulent: Gnielinski (1976) for smooth tube, good to about 10 %. Between 2300 and 4000 a straight line in the
/// Nusselt number (Gnielinski 2013), as uncertain as the friction there. The flow's sign does not matter; a flow of
/// zero is laminar. The water's own properties at its mean temperature; the wall's are not asked for.
Film inside_film(const Bore& bore, const FluidProperties& fluid, double flow_m3_per_s);

/// Resistance of the film of one metre of tube: 1 / (pi d h).
double film_resistance_mK_per_W(const Film& film, double inside_diameter_m);

}  // namespace slabwright
