// A row of line sources in a slab, expanded over its width in cosines: every wave decays by itself between the two
// faces, the mean travels as through plain layers. A round tube adds a row of dipoles.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_star.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double thinnest_cover_share = 1e-4;  ///< of the spacing: some 60 000 waves

/// What a unit of heat (1 W/m2 of floor) and a unit of dipole do at one point, over the mean there.
struct Ripple {
  double per_heat_m2K_per_W = 0.0;
  double per_step_ratio = 0.0;
};

/// Sums over the waves.
struct Waves {
  double series_ratio = 0.0;       ///< sum of (G_s - 1) / s
  double gradient_mK_per_W = 0.0;  ///< vertical, at the tube's axis, of the field without its own source
  Ripple over_tube, top_midway, under_tube, bottom_midway, plane_midway;
};

/// How a face sends a wave back: -1 held at a temperature, +1 adiabatic.
double reflection(double face_W_per_m2K, double wave_W_per_m2K) {
  return std::isinf(face_W_per_m2K) ? -1.0 : (wave_W_per_m2K - face_W_per_m2K) / (wave_W_per_m2K + face_W_per_m2K);
}

void add(Ripple& to, double per_heat, double per_step) {
  to.per_heat_m2K_per_W += per_heat;
  to.per_step_ratio += per_step;
}

Waves sum_waves(const StarGeometry& g) {
  Waves sum;
  const double nearest_m = std::min(g.cover_above_m, g.cover_below_m);
  const double decay = 2.0 * pi * nearest_m / g.spacing_m;
  const int waves = std::max(1, static_cast<int>(std::ceil(40.0 / decay)));  // exp(-40) is below the last digit
  for (int s = 1; s <= waves; ++s) {
    const double number_per_m = 2.0 * pi * s / g.spacing_m;
    const double wave = g.concrete_W_per_mK * number_per_m;
    const double r1 = reflection(g.above_W_per_m2K, wave), r2 = reflection(g.below_W_per_m2K, wave);
    const double reach1 = std::exp(-number_per_m * g.cover_above_m), reach2 = std::exp(-number_per_m * g.cover_below_m);
    const double back1 = r1 * reach1 * reach1, back2 = r2 * reach2 * reach2;
    const double both = 1.0 - back1 * back2;
    const double more = (1.0 + back1) * (1.0 + back2) / both - 1.0;  // G_s - 1
    sum.series_ratio += more / s;
    sum.gradient_mK_per_W += (back1 - back2) / (g.concrete_W_per_mK * both);

    const double top = reach1 * (1.0 + r1) / both, bottom = reach2 * (1.0 + r2) / both;
    const double sign = s % 2 == 0 ? 1.0 : -1.0;
    add(sum.over_tube, top * (1.0 + back2) / wave, 2.0 * top * (1.0 - back2));
    add(sum.top_midway, sign * top * (1.0 + back2) / wave, 2.0 * sign * top * (1.0 - back2));
    add(sum.under_tube, bottom * (1.0 + back1) / wave, -2.0 * bottom * (1.0 - back1));
    add(sum.bottom_midway, sign * bottom * (1.0 + back1) / wave, -2.0 * sign * bottom * (1.0 - back1));
    add(sum.plane_midway, sign * more / wave, 2.0 * sign * (back1 - back2) / both);
  }
  // The sources' own waves at mid-way, alternating 1/s, summed in closed form.
  add(sum.plane_midway, -std::numbers::ln2 * g.spacing_m / (2.0 * pi * g.concrete_W_per_mK), 0.0);
  return sum;
}

/// The slab as a linear system in the three temperatures.
struct Star {
  StarGeometry geometry;
  Waves waves;
  double up_W_per_m2K = 0.0;       ///< mean plane to room
  double down_W_per_m2K = 0.0;     ///< mean plane to below
  double through_W_per_m2K = 0.0;  ///< room to below
  double series_m2K_per_W = 0.0;   ///< R_x of the line
  double gradient_mK_per_W = 0.0;  ///< of waves and mean together, per unit of heat
  double step_m = 0.0;             ///< half the step of mean temperature across the plane, per unit of gradient
};

double layers_W_per_m2K(double face_W_per_m2K, double cover_m, double concrete_W_per_mK) {
  return 1.0 / (1.0 / face_W_per_m2K + cover_m / concrete_W_per_mK);  // 0 for an adiabatic face
}

Star prepare(const StarGeometry& g, TubeField field) {
  const double k = g.concrete_W_per_mK;
  Star star;
  star.geometry = g;
  star.waves = sum_waves(g);
  star.up_W_per_m2K = layers_W_per_m2K(g.above_W_per_m2K, g.cover_above_m, k);
  star.down_W_per_m2K = layers_W_per_m2K(g.below_W_per_m2K, g.cover_below_m, k);
  star.through_W_per_m2K = star.up_W_per_m2K * star.down_W_per_m2K / (star.up_W_per_m2K + star.down_W_per_m2K);
  star.series_m2K_per_W =
      g.spacing_m / (2.0 * pi * k) * (std::log(g.spacing_m / (pi * g.outside_m)) + star.waves.series_ratio);
  star.gradient_mK_per_W = star.waves.gradient_mK_per_W + (star.down_W_per_m2K - star.up_W_per_m2K) /
                                                              (star.down_W_per_m2K + star.up_W_per_m2K) / (2.0 * k);
  if (field == TubeField::dipole) {
    // An isothermal tube evens the gradient out (factor 1); a resistance on it lets part of the gradient through.
    const double insulating = 2.0 * pi * k * g.tube_mK_per_W;
    const double radius_m = g.outside_m / 2.0;
    star.step_m = -(1.0 - insulating) / (1.0 + insulating) * pi * radius_m * radius_m / g.spacing_m;
  }
  return star;
}

/// Heat and temperatures for one set of driving temperatures.
struct Response {
  double to_room_W_per_m2 = 0.0, to_below_W_per_m2 = 0.0;
  double top_mean_degC = 0.0, top_over_degC = 0.0, top_midway_degC = 0.0;
  double bottom_mean_degC = 0.0, bottom_under_degC = 0.0, bottom_midway_degC = 0.0, plane_midway_degC = 0.0;
};

Response respond(const Star& star, double tube, double room, double below) {
  const StarGeometry& g = star.geometry;
  const double k = g.concrete_W_per_mK, all = star.up_W_per_m2K + star.down_W_per_m2K;
  const double passing = star.through_W_per_m2K * (room - below);
  const double slope = passing / k;  // of the heat that passes the tubes
  const double plane = (star.up_W_per_m2K * room + star.down_W_per_m2K * below) / all;
  // By reciprocity the dipoles act on the tube as the gradient acts on them.
  const double resistance = star.series_m2K_per_W + g.spacing_m * g.tube_mK_per_W + 1.0 / all +
                            2.0 * k * star.step_m * star.gradient_mK_per_W * star.gradient_mK_per_W;
  const double heat = (tube - plane - 2.0 * k * star.step_m * star.gradient_mK_per_W * slope) / resistance;
  const double step = star.step_m * (heat * star.gradient_mK_per_W + slope);
  const double just_above = plane + (heat + 2.0 * step * star.down_W_per_m2K) / all;
  const double just_below = just_above - 2.0 * step;

  const auto at = [&](double mean, const Ripple& ripple) {
    return mean + heat * ripple.per_heat_m2K_per_W + step * ripple.per_step_ratio;
  };
  Response r;
  r.to_room_W_per_m2 = star.up_W_per_m2K / all * heat + 2.0 * star.through_W_per_m2K * step - passing;
  r.to_below_W_per_m2 = star.down_W_per_m2K / all * heat - 2.0 * star.through_W_per_m2K * step + passing;
  r.top_mean_degC = just_above - r.to_room_W_per_m2 * g.cover_above_m / k;
  r.bottom_mean_degC = just_below - r.to_below_W_per_m2 * g.cover_below_m / k;
  r.top_over_degC = at(r.top_mean_degC, star.waves.over_tube);
  r.top_midway_degC = at(r.top_mean_degC, star.waves.top_midway);
  r.bottom_under_degC = at(r.bottom_mean_degC, star.waves.under_tube);
  r.bottom_midway_degC = at(r.bottom_mean_degC, star.waves.bottom_midway);
  r.plane_midway_degC = at((just_above + just_below) / 2.0, star.waves.plane_midway);
  return r;
}

bool possible(const StarGeometry& g) {
  const double radius_m = g.outside_m / 2.0;
  const double nearest_m = std::min(g.cover_above_m, g.cover_below_m);
  return radius_m > 0.0 && g.spacing_m > g.outside_m && nearest_m >= radius_m &&
         nearest_m >= thinnest_cover_share * g.spacing_m && g.concrete_W_per_mK > 0.0 && g.tube_mK_per_W >= 0.0 &&
         g.above_W_per_m2K >= 0.0 && g.below_W_per_m2K >= 0.0 && g.above_W_per_m2K + g.below_W_per_m2K > 0.0;
}

}  // namespace

double lumped_coefficient_W_per_m2K(double film_W_per_m2K, double layers_m2K_per_W) {
  expects(film_W_per_m2K > 0.0 && layers_m2K_per_W >= 0.0, "a film or a layer that cannot be");
  return 1.0 / (1.0 / film_W_per_m2K + layers_m2K_per_W);
}

double temperature_degC(const StarWeights& w, double tube_degC, double room_degC, double below_degC) {
  return w.tube_share * tube_degC + w.room_share * room_degC + w.below_share * below_degC;
}

std::optional<StarSection> star_section(const StarGeometry& g, TubeField field) {
  if (!possible(g)) return std::nullopt;
  const Star star = prepare(g, field);
  const Response tube = respond(star, 1.0, 0.0, 0.0), room = respond(star, 0.0, 1.0, 0.0),
                 below = respond(star, 0.0, 0.0, 1.0);
  const auto weights = [&](double Response::*place) { return StarWeights{tube.*place, room.*place, below.*place}; };

  StarSection section;
  section.series_m2K_per_W = star.series_m2K_per_W;
  section.up_W_per_m2K = tube.to_room_W_per_m2;
  section.down_W_per_m2K = tube.to_below_W_per_m2;
  section.through_W_per_m2K = below.to_room_W_per_m2;
  section.up_W_per_mK = tube.to_room_W_per_m2 * g.spacing_m;
  section.down_W_per_mK = tube.to_below_W_per_m2 * g.spacing_m;
  section.top_mean = weights(&Response::top_mean_degC);
  section.top_over_tube = weights(&Response::top_over_degC);
  section.top_midway = weights(&Response::top_midway_degC);
  section.bottom_mean = weights(&Response::bottom_mean_degC);
  section.bottom_under_tube = weights(&Response::bottom_under_degC);
  section.bottom_midway = weights(&Response::bottom_midway_degC);
  section.plane_midway = weights(&Response::plane_midway_degC);
  return section;
}

}  // namespace slabwright
