// Valves: coefficients, turns and authority.
#include <cmath>
#include <limits>

#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

ValveCurve random_valve() {
  const int kind = *rc::gen::inRange(0, 3);
  if (kind == 0) return LinearValve{drawn(0.3, 3.0), drawn(1.0, 8.0), drawn(0.01, 0.1)};
  if (kind == 1) return EqualPercentageValve{drawn(0.3, 3.0), drawn(1.0, 8.0), drawn(0.01, 0.1)};
  std::vector<TurnPoint> points{{0.0, drawn(0.0, 0.1)}};
  const int rows = *rc::gen::inRange(2, 8);
  for (int i = 1; i < rows; ++i) {
    points.push_back({points.back().turns + drawn(0.25, 1.0), points.back().kv + drawn(0.05, 0.5)});
  }
  return *valve_table(points).value;
}

}  // namespace

TEST_CASE("a valve loses one bar of water at its Kv") {
  CHECK(valve_loss(1.1, {1000.0, 1e-3}, 1.1 / per_hour).pressure_Pa == Approx(1e5));
  CHECK(valve_loss(1.1, {1000.0, 1e-3}, -2.2 / per_hour).pressure_Pa == Approx(-4e5));
  CHECK(valve_loss(1.1, {500.0, 1e-3}, 1.1 / per_hour).pressure_Pa == Approx(5e4));
}

TEST_CASE("the Kv wanted for a loss loses just that") {
  CHECK(rc::check("there and back", [] {
    const double flow = drawn(0.01, 3.0) / per_hour, loss = drawn(10.0, 1e5);
    const double kv = kv_for(flow, loss, cold_glycol);
    RC_ASSERT(std::abs(valve_loss(kv, cold_glycol, flow).pressure_Pa - loss) <= 1e-12 * loss);
  }));
}

TEST_CASE("Kv and Cv, Kv and K convert there and back") {
  CHECK(kv_from_cv(cv_from_kv(1.7)) == Approx(1.7).epsilon(1e-15));
  CHECK(kv_from_loss_coefficient(loss_coefficient_from_kv(1.7, 0.012), 0.012) == Approx(1.7).epsilon(1e-15));
  const double flow = 0.3 / per_hour;
  CHECK(fitting_loss(loss_coefficient_from_kv(1.7, 0.012), 0.012, warm_water, flow).pressure_Pa ==
        Approx(valve_loss(1.7, warm_water, flow).pressure_Pa).epsilon(1e-14));
}

TEST_CASE("valves in series add their losses, in parallel their flows") {
  const double flow = 0.4 / per_hour;
  const double both = valve_loss(1.1, warm_water, flow).pressure_Pa + valve_loss(2.0, warm_water, flow).pressure_Pa;
  CHECK(valve_loss(kv_in_series({1.1, 2.0}), warm_water, flow).pressure_Pa == Approx(both).epsilon(1e-14));
  CHECK(kv_in_parallel({1.1, 2.0}) == Approx(3.1));
}

TEST_CASE("a linear valve leaks when shut and opens in a straight line") {
  const ValveCurve valve = LinearValve{1.1, 5.0, 0.02};
  CHECK(kv_at_turns(valve, 0.0) == Approx(0.022));
  CHECK(kv_at_turns(valve, 2.5) == Approx(1.1 * 0.51));
  CHECK(kv_at_turns(valve, 5.0) == Approx(1.1));
  CHECK(kv_at_turns(valve, 9.0) == Approx(1.1));
  CHECK(kv_at_turns(valve, -1.0) == Approx(0.022));
}

TEST_CASE("turns give back the Kv they were sought for") {
  CHECK(rc::check("round trip", [] {
    const ValveCurve valve = random_valve();
    const double turns = drawn(0.0, 8.0), kv = kv_at_turns(valve, turns);
    RC_PRE(kv > 0.0);
    const TurnSetting setting = turns_for_kv(valve, kv);
    RC_ASSERT(setting.reached);
    RC_ASSERT(std::abs(kv_at_turns(valve, setting.open_turns) - kv) <= 1e-12 * kv);
  }));
}

TEST_CASE("more turns, more water") {
  CHECK(rc::check("rising", [] {
    const ValveCurve valve = random_valve();
    const double turns = drawn(0.0, 8.0);
    RC_ASSERT(kv_at_turns(valve, turns + drawn(0.0, 1.0)) >= kv_at_turns(valve, turns));
  }));
}

TEST_CASE("a Kv out of reach gives the nearer end and says so") {
  for (const ValveCurve& valve :
       {ValveCurve{LinearValve{1.1, 5.0, 0.02}}, ValveCurve{EqualPercentageValve{1.1, 5.0, 0.02}},
        ValveCurve{*valve_table({{0.0, 0.022}, {2.0, 0.3}, {5.0, 1.1}}).value}}) {
    CHECK_FALSE(turns_for_kv(valve, 1.2).reached);
    CHECK(turns_for_kv(valve, 1.2).open_turns == 5.0);
    CHECK_FALSE(turns_for_kv(valve, 0.02).reached);
    CHECK(turns_for_kv(valve, 0.02).open_turns == 0.0);
    CHECK(turns_for_kv(valve, 1.1).reached);
  }
}

TEST_CASE("a table that does not rise is refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_FALSE(valve_table({{0.0, 0.1}}));
  CHECK_FALSE(valve_table({{0.0, 0.1}, {1.0, 0.1}}));
  CHECK_FALSE(valve_table({{1.0, 0.1}, {1.0, 0.2}}));
  CHECK_FALSE(valve_table({{-1.0, 0.1}, {1.0, 0.2}}));
  CHECK_FALSE(valve_table({{0.0, 0.1}, {1.0, nan}}));
  CHECK(valve_table({{0.0, 0.1}, {1.0, 0.05}}).said.front().code == "valve.table");
}

TEST_CASE("authority is the valve's share of its circuit") {
  CHECK(valve_authority(3000.0, 7000.0) == Approx(0.3));
  CHECK(installed_flow_share(1.0, 0.1) == 1.0);
  CHECK(installed_flow_share(0.3, 1.0) == Approx(0.3));
}

TEST_CASE("an installed share is what the solver finds") {
  // A valve and a fixed loss in series between two held pressures: the circuit whose whole drop stays the same.
  const double rest_kv = 0.6, open_kv = 1.1, share = 0.4;
  const auto flow = [&](double kv) {
    HydronicGraph graph;
    const NodeId supply = graph.add_node("supply"), back = graph.add_node("return");
    graph.hold_pressure(supply, 2e4);
    graph.hold_pressure(back, 0.0);
    graph.add_branch(supply, back, "loop", warm_water,
                     {{Part::balancing_valve, KvValve{kv}}, {Part::tube, KvValve{rest_kv}}});
    return solve_network(graph, tight).flow_m3_per_s[0];
  };
  const double authority = valve_authority(1.0 / (open_kv * open_kv), 1.0 / (rest_kv * rest_kv));
  CHECK(flow(share * open_kv) / flow(open_kv) == Approx(installed_flow_share(share, authority)).epsilon(1e-9));
}

TEST_CASE("what makes no sense of a valve is a bug") {
  CHECK_THROWS(valve_loss(0.0, warm_water, 1e-5));
  CHECK_THROWS(kv_for(0.0, 100.0, warm_water));
  CHECK_THROWS(kv_in_series({}));
  CHECK_THROWS(kv_in_parallel({1.0, 0.0}));
  CHECK_THROWS(turns_for_kv(LinearValve{}, 0.0));
  CHECK_THROWS(kv_at_turns(LinearValve{1.1, 0.0, 0.02}, 1.0));
  CHECK_THROWS(valve_authority(0.0, 0.0));
  CHECK_THROWS(installed_flow_share(0.0, 0.5));
}
