// The slab's way down to the ground.
#include <cmath>
#include <numbers>

#include "envelope/shops.hpp"
#include "slabwright/envelope.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("the ground under a slab is ISO 13370's, from the tube plane down") {
  const GroundPath ground = ground_of(bare_shop());
  const double B_m = 2.0 * 108.0 / 42.0, below_tube = 0.06 / 1.75;
  const double d_m = 0.2 + 2.0 * (below_tube + 1.8 + 0.04);  // F.(3), wall 0.2 m, no film at the tube plane
  const double pi = std::numbers::pi;
  const double U = d_m < B_m ? 4.0 / (pi * B_m + d_m) * std::log(pi * B_m / d_m + 1.0) : 2.0 / (0.457 * B_m + d_m);
  CHECK(ground.dimension_m == Approx(B_m));
  CHECK(ground.plane_W_per_m2K == Approx(U));
  CHECK(1.0 / ground.plane_W_per_m2K - 1.0 / ground.underside_W_per_m2K == Approx(below_tube));
  const double delta_m = std::sqrt(3.15e7 * 2.0 / (pi * 2.0e6));
  const double swing_W_per_K = 0.37 * 42.0 * 2.0 * std::log(delta_m / d_m + 1.0);  // annex H
  CHECK(ground.effective_degC == Approx(7.0 - swing_W_per_K * 12.0 / (108.0 * U)));
}

TEST_CASE("foam under the slab or at its edge lets less heat down") {
  Design d = bare_shop();
  const double plain = ground_of(d).plane_W_per_m2K;
  d.edge.insulation = {1.8};
  CHECK(ground_of(d).plane_W_per_m2K < plain);
  d = bare_shop();
  d.insulation.under = {0.0};
  CHECK(ground_of(d).plane_W_per_m2K > 1.5 * plain);
}

TEST_CASE("any slab a file can describe has a way down") {
  for (const double area_m2 : {1.0, 30.0, 1e5}) {
    for (const double exposed_m : {0.0, 1.0, 40.0, 2000.0}) {
      for (const double edge_m2K_per_W : {0.0, 9.0}) {
        Design d = bare_shop();
        d.slab.size.reset();
        d.slab.area_m2 = area_m2;
        d.slab.exposed_perimeter_m = exposed_m;
        d.insulation.under = {0.0};
        d.edge = {{edge_m2K_per_W}, 3.0, {}};
        const GroundPath ground = ground_of(d);
        CHECK(ground.plane_W_per_m2K > 0.0);
        CHECK(ground.underside_W_per_m2K > ground.plane_W_per_m2K);
        CHECK(std::isfinite(ground.effective_degC));
      }
    }
  }
}
