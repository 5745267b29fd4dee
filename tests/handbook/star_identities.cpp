// What must hold of the star whatever the slab.
#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "slabwright/handbook_star.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr TubeField fields[] = {TubeField::line, TubeField::dipole};

double between(double least, double most) { return least + (most - least) * *rc::gen::inRange(0, 10001) / 10000.0; }

StarGeometry any_slab() {
  StarGeometry g;
  g.outside_m = between(0.010, 0.025);
  g.spacing_m = between(0.10, 0.60);
  g.cover_above_m = between(1.5, 10.0) * g.outside_m;
  g.cover_below_m = between(1.5, 10.0) * g.outside_m;
  g.concrete_W_per_mK = between(0.8, 2.5);
  g.above_W_per_m2K = between(2.0, 15.0);
  g.below_W_per_m2K = between(0.1, 15.0);
  g.tube_mK_per_W = between(0.0, 0.3);
  return g;
}

bool near(double a, double b) { return std::abs(a - b) <= 1e-12 * (1.0 + std::abs(a) + std::abs(b)); }

StarGeometry upside_down(StarGeometry g) {
  std::swap(g.cover_above_m, g.cover_below_m);
  std::swap(g.above_W_per_m2K, g.below_W_per_m2K);
  return g;
}

bool mirrored(const StarWeights& a, const StarWeights& b) {
  return near(a.tube_share, b.tube_share) && near(a.room_share, b.below_share) && near(a.below_share, b.room_share);
}

void on_any_slab(const char* what, void (*holds)(const StarGeometry&, const StarSection&, TubeField)) {
  CHECK(rc::check(what, [holds] {
    const StarGeometry g = any_slab();
    for (const TubeField field : fields) {
      const auto section = star_section(g, field);
      RC_ASSERT(section.has_value());
      holds(g, *section, field);
    }
  }));
}

}  // namespace

TEST_CASE("a slab turned over swaps its two sides") {
  on_any_slab("mirror", [](const StarGeometry& g, const StarSection& s, TubeField field) {
    const StarSection over = star_section(upside_down(g), field).value();
    RC_ASSERT(near(s.up_W_per_m2K, over.down_W_per_m2K));
    RC_ASSERT(near(s.down_W_per_m2K, over.up_W_per_m2K));
    RC_ASSERT(near(s.through_W_per_m2K, over.through_W_per_m2K));
    RC_ASSERT(mirrored(s.top_mean, over.bottom_mean));
    RC_ASSERT(mirrored(s.top_over_tube, over.bottom_under_tube));
    RC_ASSERT(mirrored(s.top_midway, over.bottom_midway));
    RC_ASSERT(mirrored(s.plane_midway, over.plane_midway));
  });
}

TEST_CASE("heat through each face is its film times its mean temperature") {
  on_any_slab("faces", [](const StarGeometry& g, const StarSection& s, TubeField) {
    RC_ASSERT(near(s.up_W_per_m2K, g.above_W_per_m2K * s.top_mean.tube_share));
    RC_ASSERT(near(s.through_W_per_m2K, g.above_W_per_m2K * s.top_mean.below_share));
    RC_ASSERT(near(s.down_W_per_m2K, g.below_W_per_m2K * s.bottom_mean.tube_share));
    RC_ASSERT(near(s.through_W_per_m2K, g.below_W_per_m2K * s.bottom_mean.room_share));
    RC_ASSERT(near(s.up_W_per_mK, s.up_W_per_m2K * g.spacing_m));
  });
}

TEST_CASE("shares add to one and lie where physics puts them") {
  on_any_slab("shares", [](const StarGeometry&, const StarSection& s, TubeField) {
    for (const StarWeights& w : {s.top_mean, s.top_over_tube, s.top_midway, s.bottom_mean, s.bottom_under_tube,
                                 s.bottom_midway, s.plane_midway}) {
      RC_ASSERT(near(w.tube_share + w.room_share + w.below_share, 1.0));
      RC_ASSERT(w.tube_share > 0.0);
      RC_ASSERT(w.tube_share < 1.0);
    }
    RC_ASSERT(s.top_over_tube.tube_share > s.top_mean.tube_share);
    RC_ASSERT(s.top_mean.tube_share > s.top_midway.tube_share);
    RC_ASSERT(s.bottom_under_tube.tube_share > s.bottom_midway.tube_share);
  });
}

TEST_CASE("more insulation below sends more heat up and less down") {
  on_any_slab("insulation", [](const StarGeometry& g, const StarSection& s, TubeField field) {
    StarGeometry better = g;
    better.below_W_per_m2K = 0.5 * g.below_W_per_m2K;
    const StarSection b = star_section(better, field).value();
    RC_ASSERT(b.up_W_per_m2K > s.up_W_per_m2K);
    RC_ASSERT(b.down_W_per_m2K < s.down_W_per_m2K);
  });
}

TEST_CASE("the tube's wall and film are in series with the line") {
  StarGeometry g{0.30, 0.020, 0.075, 0.075, 1.8, 10.8, 0.5};
  const StarSection bare = star_section(g).value();
  g.tube_mK_per_W = 0.111417;
  const StarSection walled = star_section(g).value();
  const double bare_m2K_per_W = 1.0 / (bare.up_W_per_m2K + bare.down_W_per_m2K);
  const double walled_m2K_per_W = 1.0 / (walled.up_W_per_m2K + walled.down_W_per_m2K);
  CHECK(walled_m2K_per_W - bare_m2K_per_W == Approx(0.30 * 0.111417).epsilon(1e-12));
  CHECK(walled.up_W_per_m2K / walled.down_W_per_m2K == Approx(bare.up_W_per_m2K / bare.down_W_per_m2K).epsilon(1e-12));
}

TEST_CASE("far apart, a tube gives what it would give alone") {
  // Between two held planes the heat of a lone tube leaves within a few covers, so spacing stops to matter.
  const double held = std::numeric_limits<double>::infinity();
  StarGeometry g{1.0, 0.020, 0.05, 0.05, 1.0, held, held};
  const double near_W_per_mK = star_section(g)->up_W_per_mK;
  g.spacing_m = 2.0;
  const double far_W_per_mK = star_section(g)->up_W_per_mK;
  CHECK(near_W_per_mK == Approx(far_W_per_mK).epsilon(1e-8));
  CHECK(2.0 * far_W_per_mK == Approx(2.0 * 3.14159265358979 / std::log(8.0 * 0.05 / (3.14159265358979 * 0.020))));
}
