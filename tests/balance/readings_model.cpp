// The model behind the readings against full solves of the coupled plant.
#include <algorithm>
#include <cmath>

#include "balance/causes.hpp"
#include "balance/faults.hpp"
#include "balance/loop_returns.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// A tenth of what meters and thermometers err; the worst lies where the loop's flow turns laminar.
constexpr double flow_rms_share = 0.01, return_rms_K = 0.1, return_worst_K = 0.4;

Suspect suspect_of(const PutFault& fault) {
  static constexpr Cause causes[] = {Cause::none, Cause::longer, Cause::restricted, Cause::meter, Cause::swapped};
  return {causes[static_cast<std::size_t>(fault.wrong)], fault.loop, fault.other, 0.0, fault.size, 0.0, 0.0};
}

}  // namespace

TEST_CASE("flows and returns under a cause are those of the plant solved with it") {
  Draw draw(3);
  double flow_squares = 0.0, return_squares = 0.0, worst = 0.0;
  int count = 0;
  for (int m = 0; m < 6; ++m) {
    const DrawnManifold manifold = draw_manifold(draw, 4 + draw.below(9), m % 2 == 1);
    const LoopReturns returns(manifold.plant, manifold.piped.conditions, manifold.supply_degC);
    ReadNetwork network(manifold.plant, returns.point(), manifold.supply_degC);
    for (int k = 0; k < 20; ++k) {
      const PutFault fault = draw_fault(draw, manifold.healthy.loop.size());
      const True truth = true_state(manifold, fault);
      const PortsUnder ports = ports_under(network, suspect_of(fault));
      for (std::size_t i = 0; i < ports.flow_m3_per_s.size(); ++i) {
        const double flow_off = ports.flow_m3_per_s[i] / truth.flow_m3_per_s[i] - 1.0;
        const double return_degC =
            returns.supply_degC() - returns.drop_K(ports.tube[i], ports.flow_m3_per_s[i], ports.length_share[i]);
        const double return_off = return_degC - truth.return_degC[i];
        flow_squares += flow_off * flow_off;
        return_squares += return_off * return_off;
        worst = std::max(worst, std::abs(return_off));
        ++count;
      }
    }
  }
  CHECK(std::sqrt(flow_squares / count) < flow_rms_share);
  CHECK(std::sqrt(return_squares / count) < return_rms_K);
  CHECK(worst < return_worst_K);
}

TEST_CASE("a loop cut to a share of its flow carries it, and the others as with a valve that cuts it so") {
  Draw draw(8);
  const DrawnManifold manifold = draw_manifold(draw, 5, false);
  const double water_degC = 32.0;
  ReadNetwork network(manifold.plant, {}, water_degC);
  for (const double share : {0.7, 0.3, 0.05}) {
    const std::vector<double> cut = network.cut(2, share);
    CHECK(cut[2] == Approx(share * network.healthy_m3_per_s()[2]));
    const Suspect suspect{Cause::restricted, 2, 2, 0.0, share, 0.0, 0.0};
    const Plant choked = with_cause(manifold.plant, suspect, water_degC);
    const NetworkSolution solved = flows_at(choked, water_degC);
    // Both solve to a millipascal and a thousandth of a millilitre a second.
    for (std::size_t i = 0; i < 5; ++i)
      CHECK(solved.flow_m3_per_s[choked.loop_branch[i].at] == Approx(cut[i]).epsilon(1e-3));
  }
  CHECK(network.cut(2, 0.0)[2] == 0.0);
  CHECK_FALSE(network.cutting_kv(2, 0.0).has_value());
}

TEST_CASE("tubes changed over twice are as they were") {
  Draw draw(9);
  const DrawnManifold manifold = draw_manifold(draw, 5, true);
  const Suspect swap{Cause::swapped, 1, 3, 0.0, 1.0, 0.0, 0.0};
  const Plant once = with_cause(manifold.plant, swap, 32.0), twice = with_cause(once, swap, 32.0);
  const NetworkSolution before = flows_at(manifold.plant, 32.0), after = flows_at(twice, 32.0);
  for (std::size_t i = 0; i < before.flow_m3_per_s.size(); ++i)
    CHECK(after.flow_m3_per_s[i] == Approx(before.flow_m3_per_s[i]).epsilon(1e-6));
  CHECK(once.loops.loop[1].length_m == manifold.plant.loops.loop[3].length_m);
  CHECK(once.loops.loop[1].name == manifold.plant.loops.loop[1].name);
  CHECK(once.loops.loop[1].port == manifold.plant.loops.loop[1].port);
}

TEST_CASE("the ranges of causes add up to everything that may be") {
  double whole = 0.0;
  for (const CauseRange& range : cause_ranges()) {
    CHECK(range.least_share <= range.most_share);
    whole += range.before_share;
  }
  CHECK(whole == Approx(1.0));
}
