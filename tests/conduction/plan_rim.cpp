// A plate's rim passes what its edge's section passes.
#include <cmath>

#include "slabwright/conduction_plan.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

PlanSlab plate() {
  PlanSlab slab;
  slab.up_m2K_per_W = 0.05;
  slab.along_W_per_K = 0.25;
  return slab;
}

/// derived: the same fin in thin slices, from the held plane out to the rim; what leaves in the zone.
double sliced_W_per_mK(const PlanSlab& slab, const PlanRim& rim, double loss) {
  constexpr int slices = 40'000;
  const double held_m = rim.held_m, dx = held_m / slices, beyond = loss * std::max(0.0, rim.zone_m - held_m);
  const double up = 1.0 / (slab.up_m2K_per_W + rim.film_m2K_per_W);
  // From the rim in, u and its slope for a rim at 0 and one at 1; the mix that is 1 at the plane.
  double value[2] = {0.0, 1.0}, slope[2] = {0.0, 0.0}, lost[2] = {0.0, 0.0};
  for (int i = 0; i < slices; ++i) {
    const double here = (i + 0.5) * dx < rim.zone_m ? loss : 0.0;
    for (int k = 0; k < 2; ++k) {
      lost[k] += here * value[k] * dx;
      slope[k] += dx * (up * (value[k] - 1.0) + here * value[k]) / slab.along_W_per_K;
      value[k] += dx * slope[k];
    }
  }
  const double share = (1.0 - value[0]) / (value[1] - value[0]);
  return beyond + lost[0] + share * (lost[1] - lost[0]);
}

}  // namespace

TEST_CASE("the rim's loss is the one that passes the heat asked for") {
  for (const double held_m : {0.01, 0.1, 0.3, 0.6}) {
    for (const double heat : {0.05, 0.3, 0.7}) {
      const PlanRim rim{0.125, held_m, 0.17, heat};
      const double loss = rim_W_per_m2K(plate(), rim);
      CHECK(sliced_W_per_mK(plate(), rim, loss) == Approx(heat).epsilon(2e-3));
    }
  }
}

TEST_CASE("no heat needs no loss, and more heat more") {
  CHECK(rim_W_per_m2K(plate(), {0.125, 0.3, 0.17, 0.0}) == 0.0);
  CHECK(rim_W_per_m2K(plate(), {0.125, 0.3, 0.17, 0.4}) > rim_W_per_m2K(plate(), {0.125, 0.3, 0.17, 0.2}));
  CHECK(rim_W_per_m2K(plate(), {0.125, 0.3, 0.17, 1e3}) <= 1e4);
  CHECK_THROWS_AS(rim_W_per_m2K(plate(), {0.0, 0.3, 0.17, 0.2}), std::logic_error);
}
