// Other methods on the same section, beside the field.
#include <cmath>

#include "response.hpp"
#include "slabwright/handbook_en1264.hpp"
#include "slabwright/handbook_star.hpp"
#include "slabwright/units_exact.hpp"

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

double wall_mK_per_W(const En1264Floor& floor) {
  const double inside_m = floor.outside_m - 2.0 * floor.wall_m;
  return std::log(floor.outside_m / inside_m) / (2.0 * pi * floor.wall_W_per_mK);
}

/// The standard reckons the heat upward as though none went down and adds that afterwards: nothing passes below the
/// concrete here either.
Section with_nothing_below(Section s) {
  s.under.clear();
  s.underside_W_per_m2K = 0.0;
  return s;
}

double field_W_per_m2K(const Section& s, double tube_mK_per_W) {
  const TubeRow row = section::tube_row(s, standard_film_W_per_m2K);
  return tube_row_responses(row, {tube_mK_per_W}).front().above_W_per_m_K / s.spacing_m;
}

/// EN 1264-2 on floors it was made for, against conduction: covers of 30 to 65 mm, concrete of 1.0 to 1.3 W/mK, tubes
/// of 16 to 20 mm (computed here; it grows to 40 % at the corners of the tables: thin tubes, poor concrete, wide rows).
constexpr double en_least_share = -0.06, en_most_share = 0.20;
/// The star's row of lines against round tubes, with its series, in any slab that holds the tube.
constexpr double star_least_share = -0.02, star_most_share = 0.01;

SectionOpinion beside(std::string name, double up_W_per_m2K, double field_W_per_m2K, const MadeFor& fit) {
  SectionOpinion opinion;
  opinion.name = std::move(name);
  opinion.up_W_per_m2K = up_W_per_m2K;
  opinion.first_W_per_m2K = field_W_per_m2K;
  opinion.difference_share = up_W_per_m2K / field_W_per_m2K - 1.0;
  opinion.made_for = fit.holds();
  opinion.why_not.assign(fit.why_not.begin(), fit.why_not.end());
  return opinion;
}

std::optional<double> star_W_per_m2K(const Section& s, double tube_mK_per_W) {
  StarGeometry g;
  g.spacing_m = s.spacing_m;
  g.outside_m = s.outside_diameter_m;
  g.cover_above_m = s.cover_above_m;
  g.cover_below_m = s.cover_below_m;
  g.concrete_W_per_mK = s.concrete_W_per_mK;
  g.above_W_per_m2K = lumped_coefficient_W_per_m2K(standard_film_W_per_m2K, s.covering_m2K_per_W);
  g.below_W_per_m2K = s.underside_W_per_m2K;
  g.tube_mK_per_W = tube_mK_per_W;
  const auto star = star_section(g);
  return star ? std::optional(star->up_W_per_m2K) : std::nullopt;
}

}  // namespace

std::vector<SectionOpinion> opinions_on(const Section& s) {
  const En1264Floor floor = floor_by_standard(s);
  if (floor.cover_m <= 0.0 || !section::tube_fits(s)) return {};
  const Section bare = with_nothing_below(s);
  const double tube_mK_per_W = wall_mK_per_W(floor);
  const double field = field_W_per_m2K(bare, tube_mK_per_W);
  std::vector<SectionOpinion> opinions{
      beside("EN 1264-2 power function", en1264_coefficient_W_per_m2K(floor), field, made_for(floor))};
  opinions.back().least_known_share = en_least_share;
  opinions.back().most_known_share = en_most_share;
  MadeFor star_fit;
  if (!s.above.empty()) star_fit.why_not.push_back("a topping lies over the concrete round the tube");
  const auto star = star_W_per_m2K(bare, tube_mK_per_W);
  if (!star) return opinions;
  opinions.push_back(beside("star of resistances after ISO 11855-2", *star, field, star_fit));
  opinions.back().least_known_share = star_least_share;
  opinions.back().most_known_share = star_most_share;
  return opinions;
}

}  // namespace slabwright
