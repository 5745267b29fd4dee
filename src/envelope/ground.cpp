// The slab's way down, from the fields of its edges.
#include "envelope/ground.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "envelope/floors.hpp"
#include "envelope/foam.hpp"
#include "envelope/opinions.hpp"
#include "slabwright/envelope.hpp"

namespace slabwright {
namespace envelope {
namespace {

double topping_m2K_per_W(const Slab& slab, double thickness_m) {
  return slab.topping_m ? thickness_m / *slab.topping_conductivity_W_per_mK : 0.0;
}

}  // namespace

double above_tube_m2K_per_W(const Design& design) {
  const Slab& slab = design.slab;
  const double axis_m = tube_axis_depth_m(design), topping_m = slab.topping_m.value_or(0.0);
  return slab.covering.resistance_m2K_per_W + topping_m2K_per_W(slab, std::min(axis_m, topping_m)) +
         std::max(0.0, axis_m - topping_m) / slab.conductivity_W_per_mK;
}

double below_tube_m2K_per_W(const Design& design) {
  const Slab& slab = design.slab;
  const double all_m2K_per_W = slab.covering.resistance_m2K_per_W +
                               topping_m2K_per_W(slab, slab.topping_m.value_or(0.0)) +
                               slab.thickness_m / slab.conductivity_W_per_mK;
  return all_m2K_per_W - above_tube_m2K_per_W(design);
}

}  // namespace envelope

namespace {

using namespace envelope;

/// So much goes out sideways that next to nothing is left below the concrete: a floor of a metre or two.
constexpr double least_below_concrete_m2K_per_W = 0.01;

/// Straight down from the tube plane to the ground that keeps its temperature, where no edge is near.
double middle_W_per_m2K(const Design& design) {
  const double soil_m = EdgeDetail{}.domain_depth_m - floor_thickness_m(design.slab) - foam_under_m(design);
  return 1.0 / (below_tube_m2K_per_W(design) + foam_under_m2K_per_W(design) +
                std::max(0.0, soil_m) / design.ground.conductivity_W_per_mK);
}

struct FloorHeat {
  double outdoor_W_per_K = 0.0, deep_W_per_K = 0.0;
  double year_with_W_per_K = 0.0, year_behind_W_per_K = 0.0;
  double spell_W_per_K = 0.0;
  double floor_m2 = 0.0;  ///< that gives it
};

/// The edges, each with its half of the floor, and what of a wide floor lies beyond their sections. A floor narrower
/// than a section can be is taken as wide as that. Walls that a file gives longer or shorter than the exposed perimeter
/// are taken for their share of it: the perimeter decides how much edge the floor has.
FloorHeat floor_heat(const Design& design, const std::vector<EdgeStretch>& edges, EdgeFields& fields) {
  const WholeFloor whole = whole_floor(design);
  const double given_m = std::accumulate(edges.begin(), edges.end(), 0.0,
                                         [](double sum, const EdgeStretch& edge) { return sum + edge.length_m; });
  FloorHeat all;
  for (const EdgeStretch& edge : edges) {
    const EdgeHeat heat = fields.heat_down(edge.detail);
    const double length_m = edge.length_m * whole.exposed_m / given_m;
    all.outdoor_W_per_K += length_m * heat.outdoor_W_per_mK;
    all.deep_W_per_K += length_m * heat.ground_W_per_mK;
    all.year_with_W_per_K += length_m * heat.year_with_W_per_mK;
    all.year_behind_W_per_K += length_m * heat.year_behind_W_per_mK;
    all.spell_W_per_K += length_m * heat.spell_W_per_mK;
    all.floor_m2 += length_m * edge.detail.half_width_m;
  }
  const double rest_m2 = std::max(0.0, whole.area_m2 - all.floor_m2);
  all.deep_W_per_K += rest_m2 * middle_W_per_m2K(design);
  all.floor_m2 += rest_m2;
  return all;
}

}  // namespace

GroundPath ground_of(const Design& design, const std::vector<EdgeStretch>& edges, EdgeFields& fields) {
  const FloorHeat heat = floor_heat(design, edges, fields);
  const double all_W_per_K = heat.outdoor_W_per_K + heat.deep_W_per_K;
  // Edges do not all lag alike: what they follow together is less than the sum of their swings.
  const double swing_W_per_K = std::hypot(heat.year_with_W_per_K, heat.year_behind_W_per_K);

  GroundPath ground;
  ground.plane_W_per_m2K = all_W_per_K / heat.floor_m2;
  ground.underside_W_per_m2K =
      1.0 / std::max(least_below_concrete_m2K_per_W, 1.0 / ground.plane_W_per_m2K - below_tube_m2K_per_W(design));
  ground.outdoor_share = heat.outdoor_W_per_K / all_W_per_K;
  ground.deep_share = heat.deep_W_per_K / all_W_per_K;
  if (heat.outdoor_W_per_K > 0.0) ground.swing_share = swing_W_per_K / heat.outdoor_W_per_K;
  if (heat.outdoor_W_per_K > 0.0) ground.spell_share = heat.spell_W_per_K / heat.outdoor_W_per_K;
  const Climate& climate = design.climate;
  const double coldest_month_degC = climate.mean_degC - climate.half_swing_K;
  const double spell_K = std::max(0.0, coldest_month_degC - climate.outdoor_degC.value_or(coldest_month_degC));
  ground.effective_degC =
      climate.mean_degC - (swing_W_per_K * climate.half_swing_K + heat.spell_W_per_K * spell_K) / all_W_per_K;
  const WholeFloor whole = whole_floor(design);
  ground.dimension_m = 2.0 * whole.area_m2 / std::max(whole.exposed_m, least_perimeter_m);
  ground.iso13370 = iso13370_opinion(design, ground.plane_W_per_m2K);
  return ground;
}

GroundPath ground_of(const Design& design) {
  EdgeFields fields;
  return ground_of(design, edges_of(design), fields);
}

}  // namespace slabwright
