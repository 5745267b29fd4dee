#include <numeric>

#include "response.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace section {
namespace {

/// Weights of a point seen through a resistance at the tube, which lets through `kept` of the tube's part; a kelvin at
/// the room's or the lower side's end moves the tube's face by `by_room` and `by_below`.
SectionWeights through_resistance(const SectionWeights& w, double kept, double by_room, double by_below) {
  return {w.tube_share * kept, w.room_share + w.tube_share * by_room, w.below_share + w.tube_share * by_below};
}

double sum_m(const std::vector<FlatLayer>& layers) {
  return std::accumulate(layers.begin(), layers.end(), 0.0,
                         [](double sum, const FlatLayer& layer) { return sum + layer.thickness_m; });
}

}  // namespace

bool tube_fits(const Section& s) {
  // A tube flush with its layer may be off by the last digit of a sum of metres.
  constexpr double rounding_m = 1e-9;
  const double radius_m = s.outside_diameter_m / 2.0 - rounding_m;
  return s.cover_above_m >= radius_m && s.cover_below_m >= radius_m && s.spacing_m > s.outside_diameter_m;
}

// A cylinder of resistance h on its face in concrete k answers a gradient with a dipole in proportion to
// (h r - k) / (h r + k), where h r = 1 / (2 pi r_p).
double evened_share(const Section& s, double tube_mK_per_W) {
  const double resists = 2.0 * pi * s.concrete_W_per_mK * tube_mK_per_W;
  return (1.0 - resists) / (1.0 + resists);
}

double tube_mK_per_W_for(const Section& s, double evened_share) {
  return (1.0 - evened_share) / (1.0 + evened_share) / (2.0 * pi * s.concrete_W_per_mK);
}

double plane_m2K_per_W(const Section& s) {
  double sum = s.covering_m2K_per_W + s.cover_above_m / s.concrete_W_per_mK;
  for (const FlatLayer& layer : s.above) sum += layer.thickness_m / layer.conductivity_W_per_mK;
  return sum;
}

TubeRow tube_row(const Section& s, double film_W_per_m2K, double mat_m2K_per_W) {
  TubeRow row{};
  row.spacing_m = s.spacing_m;
  row.outside_diameter_m = s.outside_diameter_m;
  row.axis_depth_m = sum_m(s.above) + s.cover_above_m;
  row.layers = s.above;
  row.layers.push_back({s.cover_above_m + s.cover_below_m, s.concrete_W_per_mK});
  row.layers.insert(row.layers.end(), s.under.begin(), s.under.end());
  row.above_W_per_m2K = 1.0 / (1.0 / film_W_per_m2K + s.covering_m2K_per_W + mat_m2K_per_W);
  row.below_W_per_m2K = s.underside_W_per_m2K;
  return row;
}

SectionResponse with_resistance(const SectionResponse& r, double tube_mK_per_W) {
  const double passed = 1.0 + tube_mK_per_W * (r.room_W_per_m_K + r.below_W_per_m_K);
  expects(passed > 0.0, "section: more resistance taken away at the tube than lies there");
  const double kept = 1.0 / passed;
  const double by_room = kept * tube_mK_per_W * r.room_W_per_m_K;
  const double by_below = kept * tube_mK_per_W * r.below_W_per_m_K;
  SectionResponse out = r;
  out.room_W_per_m_K *= kept;
  out.below_W_per_m_K *= kept;
  out.through_W_per_m_K += r.room_W_per_m_K * by_below;
  for (SectionWeights SectionResponse::*place : {&SectionResponse::floor_mean, &SectionResponse::floor_over_tube,
                                                 &SectionResponse::floor_midway, &SectionResponse::plane_midway})
    out.*place = through_resistance(r.*place, kept, by_room, by_below);
  return out;
}

namespace {

/// Slab and topping above, round and under the tube.
void lay(Section& section, const Slab& slab, double axis_depth_m) {
  const FlatLayer concrete{slab.thickness_m, slab.conductivity_W_per_mK};
  const FlatLayer topping{slab.topping_m.value_or(0.0), slab.topping_conductivity_W_per_mK.value_or(0.0)};
  const bool in_topping = slab.topping_above_tube_m.has_value();
  const FlatLayer& own = in_topping ? topping : concrete;
  if (in_topping)
    section.under = {concrete};
  else if (slab.topping_m)
    section.above = {topping};
  section.cover_above_m = axis_depth_m - sum_m(section.above);
  section.cover_below_m = own.thickness_m - section.cover_above_m;
  section.concrete_W_per_mK = own.conductivity_W_per_mK;
}

}  // namespace
}  // namespace section

Section section_of(const Design& design, const GroundPath& ground) {
  const TubeSize* size = find_tube(design.tube.size.name);
  expects(size != nullptr, "section_of: a tube that the table does not have");
  TubeSize tube = *size;
  tube.conductivity_W_per_mK = design.tube.conductivity_W_per_mK.value_or(tube.conductivity_W_per_mK);

  Section section;
  section.spacing_m = design.tube.spacing_m;
  section.outside_diameter_m = tube.outside_diameter_m;
  section::lay(section, design.slab, tube_axis_depth_m(design));
  section.covering_m2K_per_W = design.slab.covering.resistance_m2K_per_W;
  section.matted_share = design.slab.mats_share.value_or(0.0);
  if (design.slab.mat_insulation) section.mat_m2K_per_W = design.slab.mat_insulation->resistance_m2K_per_W;
  section.underside_W_per_m2K = ground.underside_W_per_m2K;
  section.below_degC = ground.effective_degC;
  section.wall_mK_per_W = wall_resistance_mK_per_W(tube);
  return section;
}

TubeRow tube_row_of(const Section& section, double film_W_per_m2K) {
  return section::tube_row(section, film_W_per_m2K);
}

double temperature_degC(const SectionWeights& w, double tube_degC, double room_degC, double below_degC) {
  return w.tube_share * tube_degC + w.room_share * room_degC + w.below_share * below_degC;
}

}  // namespace slabwright
