// Other methods on the same section.
#include <cmath>
#include <numbers>

#include "response.hpp"
#include "slabwright/handbook_en1264.hpp"

namespace slabwright {
namespace {

constexpr double standard_film_W_per_m2K = 10.8;  ///< alpha of EN 1264

/// A tube with less concrete than this part of its diameter below it lies on the foam.
constexpr double bedding_share = 0.5;

bool on_insulation(const Section& s) { return s.cover_below_m <= (0.5 + bedding_share) * s.outside_diameter_m; }

/// The section in the standard's words, with the standard's own tube wall. Its cover runs from the tube's crown.
En1264Floor floor_by_standard(const Section& s) {
  En1264Floor floor;
  floor.spacing_m = s.spacing_m;
  floor.outside_m = s.outside_diameter_m;
  floor.cover_m = s.cover_above_m - s.outside_diameter_m / 2.0;
  floor.screed_W_per_mK = s.concrete_W_per_mK;
  floor.covering_m2K_per_W = s.covering_m2K_per_W;
  floor.tube_on_insulation = on_insulation(s);
  return floor;
}

/// Heat upward per kelvin of water over the room by the star, under the standard's film and wall. The standard reckons
/// the heat upward as though none went down and adds that afterwards: the underside is adiabatic here too.
double star_by_standard_W_per_m2K(Section s, const En1264Floor& floor) {
  s.underside_W_per_m2K = 0.0;
  const double inside_m = floor.outside_m - 2.0 * floor.wall_m;
  const double wall_mK_per_W = std::log(floor.outside_m / inside_m) / (2.0 * std::numbers::pi * floor.wall_W_per_mK);
  return in_series(section::star_response(s, standard_film_W_per_m2K), wall_mK_per_W).room_W_per_m_K / s.spacing_m;
}

}  // namespace

std::vector<SectionOpinion> opinions_on(const Section& s) {
  const En1264Floor floor = floor_by_standard(s);
  if (floor.cover_m <= 0.0 || !section::tube_fits(s)) return {};
  const MadeFor fit = made_for(floor);
  SectionOpinion opinion;
  opinion.name = "EN 1264-2 power function";
  opinion.up_W_per_m2K = en1264_coefficient_W_per_m2K(floor);
  opinion.first_W_per_m2K = star_by_standard_W_per_m2K(s, floor);
  opinion.difference_share = opinion.up_W_per_m2K / opinion.first_W_per_m2K - 1.0;
  opinion.made_for = fit.holds();
  opinion.why_not.assign(fit.why_not.begin(), fit.why_not.end());
  return {opinion};
}

}  // namespace slabwright
