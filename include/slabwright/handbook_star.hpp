// A row of tubes inside a slab: star resistances, and the line-source series for a finite cover.
// The star is that of EN 15377-1 / ISO 11855-2 type E; the series is derived here for surfaces with a coefficient.
#pragma once
#include <optional>

#include "slabwright/handbook_made_for.hpp"

namespace slabwright {

/// A slab with a row of tubes, up to the two temperatures that drive it. Covers run from the tube's axis.
/// A coefficient of infinity means a surface held at the driving temperature, 0 an adiabatic one.
struct StarGeometry {
  double spacing_m = 0.0;      ///< W
  double outside_m = 0.0;      ///< d
  double cover_above_m = 0.0;  ///< S1, axis to the concrete's top
  double cover_below_m = 0.0;  ///< S2, axis to the concrete's underside
  double concrete_W_per_mK = 0.0;
  double above_W_per_m2K = 0.0;  ///< h1: film with any covering, see lumped_coefficient
  double below_W_per_m2K = 0.0;  ///< h2: insulation and whatever follows
  double tube_mK_per_W = 0.0;    ///< r_p: wall and film, per metre of tube, outside the series; 0 = outer face
};

/// A film behind layers: 1 / (1/film + layers).
double lumped_coefficient_W_per_m2K(double film_W_per_m2K, double layers_m2K_per_W);

/// A temperature as shares of the three that drive it; they add to 1.
struct StarWeights {
  double tube_share = 0.0;
  double room_share = 0.0;
  double below_share = 0.0;
};
double temperature_degC(const StarWeights&, double tube_degC, double room_degC, double below_degC);

/// The section's answer. Heat to the room = up (tube - room) + through (below - room), per m2 of floor; heat
/// downward = down (tube - below) - through (below - room). The tube's temperature is that of its outer face, or of
/// the water where `tube_mK_per_W` holds wall and film.
struct StarSection {
  double series_m2K_per_W = 0.0;  ///< R_x, tube's outer face to the mean tube plane, per m2 of floor
  double up_W_per_m2K = 0.0;      ///< per m2 of floor
  double down_W_per_m2K = 0.0;
  double through_W_per_m2K = 0.0;  ///< from below to the room past the tubes
  double up_W_per_mK = 0.0;        ///< the same per metre of tube
  double down_W_per_mK = 0.0;
  StarWeights top_mean;  ///< faces of the concrete
  StarWeights top_over_tube;
  StarWeights top_midway;
  StarWeights bottom_mean;
  StarWeights bottom_under_tube;
  StarWeights bottom_midway;
  StarWeights plane_midway;  ///< at the tube's depth, half way to the next tube
};

/// How the tube is seen.
enum class TubeField {
  line,   ///< a line source at the radius of the tube: the plain series
  dipole  ///< the same, and the dipole by which a round tube evens out the vertical gradient across itself
};

/// R_x by the series G_s over both surfaces; without covers (deep slab) it is W ln(W/(pi d)) / (2 pi k).
///
/// `line` is up to 0.3 % low in upward heat from an isothermal tube where covers exceed a sixth of the spacing and
/// 0.7 % with a cover of 1.5 tube diameters; `dipole` is within 0.05 % of exact conduction there, so their
/// difference is the error of `line`. For water behind a plastic wall `line` with r_p in series is already within
/// 0.02 %: the wall lets the gradient pass, the dipole shrinks by (1 - 2 pi k r_p) / (1 + 2 pi k r_p) and all but
/// vanishes. Absent where the tube does not fit (covers below its radius, tubes that touch), where a number is not
/// positive, where neither side can take heat, or where a cover is below 1e-4 of the spacing.
std::optional<StarSection> star_section(const StarGeometry&, TubeField = TubeField::line);

/// The water's side of the star (EN 15377-1), per m2 of floor.
struct StarCircuit {
  double spacing_m = 0.0;
  double outside_m = 0.0;
  double wall_m = 0.0;
  double wall_W_per_mK = 0.0;
  double length_m = 0.0;        ///< of one circuit; its floor is length times spacing
  double water_kg_per_s = 0.0;  ///< through the circuit
  double water_J_per_kgK = 4190.0;
};
struct StarResistances {
  double flow_m2K_per_W = 0.0;   ///< R_z = 1/(2 m c): from inlet to mean water
  double film_m2K_per_W = 0.0;   ///< R_w, turbulent water only
  double wall_m2K_per_W = 0.0;   ///< R_r
  double plain_m2K_per_W = 0.0;  ///< R_x without covers
};
StarResistances star_resistances(const StarCircuit&, double concrete_W_per_mK);

/// m c (R_w + R_r + R_x): below 0.5 the standard asks to divide the circuit.
double star_transfer_units(const StarResistances&);

/// Whether the plain R_x and the linear R_z may be used: covers above 0.3 of the spacing, tube below 0.2 of it,
/// transfer at least 0.5. The series needs none of the first two.
MadeFor made_for(const StarGeometry&, const StarResistances&);

}  // namespace slabwright
