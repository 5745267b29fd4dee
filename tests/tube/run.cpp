// A run of tube that remembers gives what one gives that does not.
#include "slabwright/tube_run.hpp"

#include <rapidcheck.h>

#include <cmath>

#include "support/catch.hpp"

using namespace slabwright;

namespace {

// A number between the two, evenly in its logarithm.
double drawn(double low, double high) {
  const double share = static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
  return low * std::pow(high / low, share);
}

}  // namespace

TEST_CASE("whatever a run was asked before, its loss is that of the tube") {
  CHECK(rc::check("history", [] {
    const Liquid liquid{drawn(900.0, 1100.0), drawn(3e-4, 1e-2)};
    const double roughness = *rc::gen::inRange(0, 4) == 0 ? 0.0 : drawn(1e-7, 1e-4);
    const Bore bore{drawn(0.05, 200.0), drawn(0.005, 0.5), roughness};
    TubeRun run(bore, liquid);
    for (int i = 0; i < 12; ++i) {
      // By turns anywhere and near the last flow.
      const double flow = (*rc::gen::inRange(0, 2) == 0 ? 1.0 : -1.0) * drawn(1e-7, 1e-2);
      for (const double share : {1.0, drawn(0.9, 1.1), drawn(0.9999, 1.0001)}) {
        const Loss ours = run.loss(share * flow), plain = tube_loss(bore, liquid, share * flow);
        // 20 roundings of 2.2e-16 on each way there.
        RC_ASSERT(std::abs(ours.pressure_Pa - plain.pressure_Pa) <= 1e-14 * std::abs(plain.pressure_Pa));
        RC_ASSERT(std::abs(ours.slope_Pa_s_per_m3 - plain.slope_Pa_s_per_m3) <= 1e-14 * plain.slope_Pa_s_per_m3);
      }
    }
  }));
}

TEST_CASE("a run at rest has the slope of Hagen and Poiseuille") {
  TubeRun run({90.0, 0.012, 7e-6}, {992.2, 652.7e-6});
  const Loss rest = run.loss(0.0);
  CHECK(rest.pressure_Pa == 0.0);
  CHECK(rest.slope_Pa_s_per_m3 == Approx(tube_loss({90.0, 0.012, 7e-6}, {992.2, 652.7e-6}, 0.0).slope_Pa_s_per_m3));
}

TEST_CASE("a run of no size is a bug") {
  CHECK_THROWS(TubeRun({0.0, 0.012, 7e-6}, {992.2, 652.7e-6}));
  CHECK_THROWS(TubeRun({90.0, 0.012, 7e-6}, {0.0, 652.7e-6}));
}
