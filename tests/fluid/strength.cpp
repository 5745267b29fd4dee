// Shares by volume and by mass.
#include <rapidcheck.h>

#include <cmath>

#include "slabwright/fluid.hpp"
#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("to mass and back is where it began") {
  CHECK(rc::check("round trip", [] {
    const FluidKind kind = *rc::gen::inRange(0, 2) == 0 ? FluidKind::propylene_glycol : FluidKind::ethylene_glycol;
    const double share = *rc::gen::inRange(0, 1001) / 1000.0;
    const Mixture back = mixture_by_mass(kind, glycol_mass_share({kind, share}));
    RC_ASSERT(back.kind == kind);
    RC_ASSERT(std::abs(back.glycol_volume_share - share) < 1e-14);
  }));
}

TEST_CASE("the share by mass rises with the share by volume, to pure glycol") {
  for (const FluidKind kind : {FluidKind::propylene_glycol, FluidKind::ethylene_glycol}) {
    double last = 0.0;
    for (int percent = 1; percent <= 100; ++percent) {
      const double now = glycol_mass_share({kind, 0.01 * percent});
      CHECK(now > last);
      last = now;
    }
    CHECK(last == Approx(1.0).epsilon(1e-15));
  }
}

TEST_CASE("too strong by mass is too strong by volume") {
  CHECK(mixture_by_mass(FluidKind::propylene_glycol, 0.7).glycol_volume_share > most_glycol_share);
  CHECK(mixture_by_mass(FluidKind::propylene_glycol, 0.0).glycol_volume_share == 0.0);
}

TEST_CASE("water holds no glycol by mass") {
  CHECK(glycol_mass_share({}) == 0.0);
  CHECK(mixture_by_mass(FluidKind::water, 0.0).glycol_volume_share == 0.0);
}
