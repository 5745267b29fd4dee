// EN 15377-1 / ISO 11855-2 type E star resistances, two circuits worked by hand (the first with the geometry of the
// handbook on thermally active slabs, ISBN 3-905594-19-5, section 4.6).
#include "slabwright/handbook_star.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("star resistances of two circuits") {
  const Source a{"EN 15377-1 star resistances", "W 0.20, d 0.025, 120 m on 24 m2", Oracle::derived};
  const StarResistances r = star_resistances({0.20, 0.025, 0.0025, 0.45, 120.0, 0.2}, 1.8);
  CHECK_PUBLISHED(a, "R_z, m2K/W", "0.0143198", r.flow_m2K_per_W);
  CHECK_PUBLISHED(a, "R_w, m2K/W", "0.00107347", r.film_m2K_per_W);
  CHECK_PUBLISHED(a, "R_r, m2K/W", "0.0157842", r.wall_m2K_per_W);
  CHECK_PUBLISHED(a, "R_x, m2K/W", "0.0165293", r.plain_m2K_per_W);
  CHECK_PUBLISHED(a, "m c (R_w + R_r + R_x)", "1.166", star_transfer_units(r));

  const Source b{"EN 15377-1 star resistances", "W 0.15, d 0.020, 120 m on 18 m2", Oracle::derived};
  const StarResistances s = star_resistances({0.15, 0.020, 0.0023, 0.35, 120.0, 0.05}, 1.9);
  CHECK_PUBLISHED(b, "R_z, m2K/W", "0.0429594", s.flow_m2K_per_W);
  CHECK_PUBLISHED(b, "R_w, m2K/W", "0.00214235", s.film_m2K_per_W);
  CHECK_PUBLISHED(b, "R_r, m2K/W", "0.0178275", s.wall_m2K_per_W);
  CHECK_PUBLISHED(b, "R_x, m2K/W", "0.0109336", s.plain_m2K_per_W);
  CHECK_PUBLISHED(b, "m c (R_w + R_r + R_x)", "0.360", star_transfer_units(s));
}
