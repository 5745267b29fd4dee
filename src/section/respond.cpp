#include <cmath>
#include <numbers>

#include "response.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace section {
namespace {

StarGeometry geometry_of(const Section& s, double film_W_per_m2K) {
  StarGeometry g;
  g.spacing_m = s.spacing_m;
  g.outside_m = s.outside_diameter_m;
  g.cover_above_m = s.cover_above_m;
  g.cover_below_m = s.cover_below_m;
  g.concrete_W_per_mK = s.concrete_W_per_mK;
  g.above_W_per_m2K = lumped_coefficient_W_per_m2K(film_W_per_m2K, s.covering_m2K_per_W);
  g.below_W_per_m2K = s.underside_W_per_m2K;
  return g;
}

/// Weights of a point seen through a resistance at the tube, which lets through `kept` of the tube's part; a kelvin at
/// the room's or the lower side's end moves the tube's face by `by_room` and `by_below`.
StarWeights through_resistance(const StarWeights& w, double kept, double by_room, double by_below) {
  return {w.tube_share * kept, w.room_share + w.tube_share * by_room, w.below_share + w.tube_share * by_below};
}

}  // namespace

bool tube_fits(const Section& s) {
  return star_section(geometry_of(s, floor_film(0.0).coefficient_W_per_m2K)).has_value();
}

SectionResponse star_response(const Section& s, double film_W_per_m2K) {
  const StarGeometry g = geometry_of(s, film_W_per_m2K);
  const auto star = star_section(g, TubeField::line);
  expects(star.has_value(), "section: the tube does not fit into the slab");
  const auto floor = [&](const StarWeights& concrete_top) {
    return through_covering(concrete_top, g.above_W_per_m2K, film_W_per_m2K);
  };
  SectionResponse response;
  response.room_W_per_m_K = star->up_W_per_mK;
  response.below_W_per_m_K = star->down_W_per_mK;
  response.through_W_per_m_K = star->through_W_per_m2K * s.spacing_m;
  response.floor_mean = floor(star->top_mean);
  response.floor_over_tube = floor(star->top_over_tube);
  response.floor_midway = floor(star->top_midway);
  response.plane_midway = star->plane_midway;
  return response;
}

}  // namespace section

Section section_of(const Design& design, const GroundPath& ground) {
  const TubeSize* size = find_tube(design.tube.size.name);
  expects(size != nullptr, "section_of: a tube that the table does not have");
  TubeSize tube = *size;
  tube.conductivity_W_per_mK = design.tube.conductivity_W_per_mK.value_or(tube.conductivity_W_per_mK);

  Section section;
  section.spacing_m = design.tube.spacing_m;
  section.outside_diameter_m = tube.outside_diameter_m;
  section.cover_above_m = tube_axis_depth_m(design);
  section.cover_below_m = design.slab.thickness_m - section.cover_above_m;
  section.concrete_W_per_mK = design.slab.conductivity_W_per_mK;
  section.covering_m2K_per_W = design.slab.covering.resistance_m2K_per_W;
  section.underside_W_per_m2K = ground.underside_W_per_m2K;
  section.below_degC = ground.effective_degC;
  section.wall_mK_per_W = wall_resistance_mK_per_W(tube);
  return section;
}

SectionResponse respond(const Section& s, double film_W_per_m2K) {
  SectionResponse response = section::star_response(s, film_W_per_m2K);
  const auto dipole = star_section(section::geometry_of(s, film_W_per_m2K), TubeField::dipole);
  response.error_share = std::abs(response.room_W_per_m_K / dipole->up_W_per_mK - 1.0);
  return response;
}

SectionResponse in_series(const SectionResponse& r, double tube_mK_per_W) {
  expects(tube_mK_per_W >= 0.0, "in_series: a negative resistance");
  const double kept = 1.0 / (1.0 + tube_mK_per_W * (r.room_W_per_m_K + r.below_W_per_m_K));
  const double by_room = kept * tube_mK_per_W * r.room_W_per_m_K;
  const double by_below = kept * tube_mK_per_W * r.below_W_per_m_K;
  SectionResponse out = r;
  out.room_W_per_m_K *= kept;
  out.below_W_per_m_K *= kept;
  out.through_W_per_m_K += r.room_W_per_m_K * by_below;
  for (StarWeights SectionResponse::*place : {&SectionResponse::floor_mean, &SectionResponse::floor_over_tube,
                                              &SectionResponse::floor_midway, &SectionResponse::plane_midway})
    out.*place = section::through_resistance(r.*place, kept, by_room, by_below);
  return out;
}

}  // namespace slabwright
