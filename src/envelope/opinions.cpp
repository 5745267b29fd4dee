// ISO 13370 beside the field.
#include "envelope/opinions.hpp"

#include <algorithm>

#include "envelope/floors.hpp"
#include "envelope/foam.hpp"
#include "envelope/ground.hpp"
#include "slabwright/handbook_iso13370.hpp"

namespace slabwright::envelope {
namespace {

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

Iso13370Floor iso13370_below_tubes(const Design& design) {
  Iso13370Floor floor = iso13370_floor(design);
  floor.inside_m2K_per_W = 0.0;
  floor.floor_m2K_per_W = below_tube_m2K_per_W(design) + foam_under_m2K_per_W(design);
  return floor;
}

}  // namespace

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

}  // namespace slabwright::envelope
