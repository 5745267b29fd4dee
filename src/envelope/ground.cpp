// The slab's way down, from the fields of its edges, with ISO 13370 beside it.
#include "envelope/ground.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "envelope/floors.hpp"
#include "envelope/foam.hpp"
#include "slabwright/envelope.hpp"
#include "slabwright/handbook_materials.hpp"

namespace slabwright {
namespace {

/// A floor whose edge is all inside the building has no perimeter to the formula; a metre of it leaves next to no loss.
constexpr double least_perimeter_m = 1.0;

}  // namespace

namespace envelope {

Iso13370Floor iso13370_floor(const Design& design) {
  const WholeFloor whole = whole_floor(design);
  Iso13370Floor floor;
  floor.area_m2 = whole.area_m2;
  floor.perimeter_m = std::max(whole.exposed_m, least_perimeter_m);
  floor.wall_m = design.edge.stem_wall_m.value_or(WallEdge{}.width_m);
  floor.ground_W_per_mK = design.ground.conductivity_W_per_mK;
  floor.penetration_m = iso13370_penetration_m(floor.ground_W_per_mK, soil_J_per_m3K);
  if (const auto board = board_of(design.edge.insulation, spoiled(design.edge))) {
    const double quarter_m = floor.area_m2 / floor.perimeter_m / 2.0;
    floor.edge = {Iso13370Edge::Lies::upright, std::min(design.edge.depth_m, quarter_m), board->resistance_m2K_per_W,
                  board->thickness_m};
  }
  return floor;
}

}  // namespace envelope

namespace {

using namespace envelope;

/// So much goes out sideways that next to nothing is left below the concrete: a floor of a metre or two.
constexpr double least_below_concrete_m2K_per_W = 0.01;

double below_tube_m2K_per_W(const Design& design) {
  return (design.slab.thickness_m - tube_axis_depth_m(design)) / design.slab.conductivity_W_per_mK;
}

Iso13370Floor iso13370_below_tubes(const Design& design) {
  Iso13370Floor floor = iso13370_floor(design);
  floor.inside_m2K_per_W = 0.0;
  floor.floor_m2K_per_W = below_tube_m2K_per_W(design) + foam_under_m2K_per_W(design);
  return floor;
}

GroundOpinion iso13370_opinion(const Design& design, double plane_W_per_m2K) {
  const Iso13370Floor floor = iso13370_below_tubes(design);
  const Iso13370Coefficients c = iso13370_coefficients(floor);
  GroundOpinion opinion;
  opinion.plane_W_per_m2K = c.floor_W_per_m2K;
  opinion.swing_share = c.outside_swing_W_per_K / (floor.area_m2 * c.floor_W_per_m2K);
  opinion.effective_degC = design.climate.mean_degC - opinion.swing_share * design.climate.half_swing_K;
  opinion.difference_share = c.floor_W_per_m2K / plane_W_per_m2K - 1.0;
  return opinion;
}

/// Straight down from the tube plane to the ground that keeps its temperature, where no edge is near.
double middle_W_per_m2K(const Design& design) {
  const double soil_m = EdgeDetail{}.domain_depth_m - design.slab.thickness_m - foam_under_m(design);
  return 1.0 / (below_tube_m2K_per_W(design) + foam_under_m2K_per_W(design) +
                std::max(0.0, soil_m) / design.ground.conductivity_W_per_mK);
}

struct FloorHeat {
  double outdoor_W_per_K = 0.0, deep_W_per_K = 0.0;
  double year_with_W_per_K = 0.0, year_behind_W_per_K = 0.0;
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
  ground.effective_degC = design.climate.mean_degC - swing_W_per_K / all_W_per_K * design.climate.half_swing_K;
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
