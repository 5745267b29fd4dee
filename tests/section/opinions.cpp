// EN 1264's power function beside the star, each where it may be asked.
#include <algorithm>
#include <cmath>

#include "section/sections.hpp"
#include "slabwright/handbook_en1264.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// A screed of the standard's kind: 45 mm over the crown, the tube on the foam.
Section screed_floor(double spacing_m, double concrete_W_per_mK, double covering_m2K_per_W, double cover_m = 0.045) {
  Section s;
  s.spacing_m = spacing_m;
  s.outside_diameter_m = 0.017;
  s.cover_above_m = cover_m + 0.0085;
  s.cover_below_m = 0.0086;
  s.concrete_W_per_mK = concrete_W_per_mK;
  s.covering_m2K_per_W = covering_m2K_per_W;
  s.underside_W_per_m2K = 1.0 / 1.42;  // 1.25 m2K/W of foam over a room below
  s.below_degC = 15.0;
  return s;
}

}  // namespace

TEST_CASE("a tube at mid-depth of a structural slab is not what EN 1264 was made for") {
  const SectionOpinion opinion = opinions_on(shop_slab()).at(0);
  CHECK(opinion.name == "EN 1264-2 power function");
  CHECK_FALSE(opinion.made_for);
  CHECK(std::find(opinion.why_not.begin(), opinion.why_not.end(), "the tubes do not lie on insulation") !=
        opinion.why_not.end());
  CHECK(opinion.difference_share < -0.05);
  CHECK(opinion.difference_share > -0.30);
}

TEST_CASE("the standard is asked on its own terms") {
  const Section s = screed_floor(0.15, 1.2, 0.0);
  const SectionOpinion opinion = opinions_on(s).at(0);
  CHECK(opinion.made_for);
  CHECK(opinion.why_not.empty());
  En1264Floor floor;
  floor.spacing_m = 0.15;
  floor.outside_m = 0.017;
  floor.cover_m = 0.045;
  floor.screed_W_per_mK = 1.2;
  CHECK(opinion.up_W_per_m2K == Approx(en1264_coefficient_W_per_m2K(floor)).epsilon(1e-12));
  // Wall of 2 mm and 0.35 W/mK, film 10.8, nothing downward, by the star itself.
  StarGeometry g{0.15, 0.017, s.cover_above_m, s.cover_below_m, 1.2, 10.8, 0.0, 0.0};
  g.tube_mK_per_W = std::log(0.017 / 0.013) / (2.0 * 3.14159265358979 * 0.35);
  CHECK(opinion.first_W_per_m2K == Approx(star_section(g)->up_W_per_m2K).epsilon(1e-12));
  CHECK(opinion.difference_share == Approx(opinion.up_W_per_m2K / opinion.first_W_per_m2K - 1.0));
}

TEST_CASE("the section's own tube wall and underside do not enter") {
  Section s = shop_slab();
  const double before = opinions_on(s).at(0).first_W_per_m2K;
  s.wall_mK_per_W = 0.5;
  s.underside_W_per_m2K = 3.0;
  CHECK(opinions_on(s).at(0).first_W_per_m2K == before);
}

// The reference figures for one floor are those of exact conduction over the power function: 0.88 for a bare screed of
// 1.0 W/mK with 45 mm over tubes of 17 mm every 0.30 m, 0.94 under a covering of 0.10 m2K/W with tubes every 0.375 m.
TEST_CASE("the power function is as far from conduction as exact conduction finds it") {
  struct Known {
    double spacing_m, covering_m2K_per_W, conduction_ratio;
  };
  for (const Known& known : {Known{0.30, 0.0, 0.88}, Known{0.375, 0.10, 0.94}}) {
    const Section s = screed_floor(known.spacing_m, 1.0, known.covering_m2K_per_W);
    // A tube flush on the foam is the hardest case for the star: the row of lines is low, the dipole high.
    const double wall_mK_per_W = std::log(0.017 / 0.013) / (2.0 * 3.14159265358979 * 0.35);
    StarGeometry g{s.spacing_m, 0.017, s.cover_above_m, s.cover_below_m, 1.0, 0.0, 0.0, wall_mK_per_W};
    g.above_W_per_m2K = lumped_coefficient_W_per_m2K(10.8, s.covering_m2K_per_W);
    const double left = star_section(g, TubeField::dipole)->up_W_per_m2K / star_section(g)->up_W_per_m2K - 1.0;
    CHECK(left < 0.01);
    const double ours = 1.0 / (1.0 + opinions_on(s).at(0).difference_share);
    CHECK(ours < known.conduction_ratio + 0.005);
    CHECK(ours * (1.0 + left) > known.conduction_ratio - 0.005);
  }
}

TEST_CASE("both opinions agree within their known spread where the standard is at home") {
  for (double spacing_m : {0.05, 0.10, 0.15, 0.20, 0.30}) {
    for (double concrete_W_per_mK : {1.0, 1.2, 1.3}) {
      for (double covering_m2K_per_W : {0.0, 0.05, 0.10, 0.15}) {
        for (double cover_m : {0.030, 0.045, 0.065}) {
          CAPTURE(spacing_m, concrete_W_per_mK, covering_m2K_per_W, cover_m);
          const auto opinion =
              opinions_on(screed_floor(spacing_m, concrete_W_per_mK, covering_m2K_per_W, cover_m)).at(0);
          CHECK(opinion.made_for);
          CHECK(opinion.difference_share > -0.06);
          CHECK(opinion.difference_share < 0.20);
        }
      }
    }
  }
}

TEST_CASE("no opinion on a tube that breaks the surface") {
  Section s = shop_slab();
  s.cover_above_m = s.outside_diameter_m / 2.0;
  CHECK(opinions_on(s).empty());
  s.cover_above_m = 0.0635;
  s.cover_below_m = 0.004;
  CHECK(opinions_on(s).empty());
}
