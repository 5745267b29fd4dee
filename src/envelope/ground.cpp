#include <algorithm>

#include "envelope/floors.hpp"
#include "envelope/ground.hpp"
#include "slabwright/envelope.hpp"
#include "slabwright/handbook_materials.hpp"

namespace slabwright {
namespace envelope {
namespace {

/// Soil of ISO 13370's default, sand or gravel; clay stores half as much again, which moves the yearly swing little.
constexpr double soil_J_per_m3K = 2.0e6;
/// A floor whose edge is all inside the building has no perimeter to the formula; a metre of it leaves next to no loss.
constexpr double least_perimeter_m = 1.0;

}  // namespace

Iso13370Floor iso13370_floor(const Design& design) {
  const WholeFloor whole = whole_floor(design);
  Iso13370Floor floor;
  floor.area_m2 = whole.area_m2;
  floor.perimeter_m = std::max(whole.exposed_m, least_perimeter_m);
  floor.wall_m = WallEdge{}.width_m;
  floor.ground_W_per_mK = design.ground.conductivity_W_per_mK;
  floor.penetration_m = iso13370_penetration_m(floor.ground_W_per_mK, soil_J_per_m3K);
  const double board_m2K_per_W = design.edge.insulation.resistance_m2K_per_W;
  if (board_m2K_per_W > 0.0) {
    const double quarter_m = floor.area_m2 / floor.perimeter_m / 2.0;
    floor.edge = {Iso13370Edge::Lies::upright, std::min(design.edge.depth_m, quarter_m), board_m2K_per_W,
                  board_m2K_per_W * find_insulation("XPS")->conductivity_W_per_mK};
  }
  return floor;
}

}  // namespace envelope

GroundPath ground_of(const Design& design) {
  const double below_tube_m2K_per_W =
      (design.slab.thickness_m - tube_axis_depth_m(design)) / design.slab.conductivity_W_per_mK;
  Iso13370Floor floor = envelope::iso13370_floor(design);
  floor.inside_m2K_per_W = 0.0;
  floor.floor_m2K_per_W = below_tube_m2K_per_W + design.insulation.under.resistance_m2K_per_W;
  const Iso13370Coefficients c = iso13370_coefficients(floor);

  GroundPath ground;
  ground.plane_W_per_m2K = c.floor_W_per_m2K;
  ground.underside_W_per_m2K = 1.0 / (1.0 / c.floor_W_per_m2K - below_tube_m2K_per_W);
  ground.effective_degC = design.climate.mean_degC -
                          c.outside_swing_W_per_K * design.climate.half_swing_K / (floor.area_m2 * c.floor_W_per_m2K);
  ground.dimension_m = c.dimension_m;
  return ground;
}

}  // namespace slabwright
