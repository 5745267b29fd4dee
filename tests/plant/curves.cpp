// Pump against system: the two curves, whatever the figures, over every layout and way of piping.
#include <cmath>

#include "plant/plants.hpp"
#include "slabwright/plant_curves.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Drawn {
  Piped piped;
  OperatingPoint point;
  PlantCurves curves;
};

Drawn drawn(const Design& design, double supply_degC = 40.0) {
  Drawn one{piped(design), {}, {}};
  one.point = operate(one.piped.plant, one.piped.conditions, supply_degC);
  REQUIRE(one.point.stop == Stop::converged);
  const FlowTarget target = target_flows(one.piped.plant, &one.piped.envelope);
  const auto curves = plant_curves(one.piped.plant, one.point, target, 20e3);
  REQUIRE(curves);
  one.curves = *curves;
  return one;
}

/// Flows are settled to 1e-9 m3/s, and the point's water to 1e-5 K.
constexpr double settled_share = 2e-5;

void check_point(const Drawn& one) {
  const CurveRow& runs = one.curves.runs;
  CHECK(runs.flow_m3_per_s == Approx(one.point.flow_m3_per_s + one.point.source.bypass_m3_per_s));
  CHECK(runs.system_Pa == Approx(runs.pump_Pa).epsilon(settled_share));
  CHECK(runs.system_head_m == Approx(runs.pump_head_m).epsilon(settled_share));
  CHECK(runs.loop_m3_per_s == Approx(one.point.loop[one.point.hardest_loop].flow_m3_per_s).epsilon(settled_share));
  CHECK(runs.loop_Pa == Approx(one.point.loop[one.point.hardest_loop].loss_Pa).epsilon(settled_share));
}

}  // namespace

TEST_CASE("pump and system meet at the operating point") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Drawn found = drawn(one.file.design);
    check_point(found);
    // The hardest round's parts, added up by the operating point.
    CHECK(found.curves.runs.system_Pa == Approx(found.point.pump_Pa).epsilon(settled_share));
  }
}

TEST_CASE("they meet there too where the source mixes, where pumps share the work and where a bypass opens") {
  const std::vector<Keys> ways = {
      {{"boiler.piping", "closely spaced tees"}},
      {{"boiler.piping", "mixing valve"}, {"boiler.hottest", "160 F"}},
      {{"boiler.piping", "injection"}, {"boiler.hottest", "160 F"}},
      {{"pump.pumps", "2"}},
      {{"pump.pumps", "2"}, {"pump.together", "in series"}},
      {{"pump.points", "9 ft at 0 gpm; 7 ft at 4 gpm; 2 ft at 9 gpm"},
       {"pump.pumps", "2"},
       {"pump.second_points", "14 ft at 0 gpm; 9 ft at 5 gpm; 3 ft at 8 gpm"}},
      {{"pump.bypass_opening", "1 psi"}},
  };
  for (const Keys& keys : ways) {
    INFO(keys.front().first << " = " << keys.front().second << ", " << keys.back().second);
    check_point(drawn(with_keys(layout("ten-lines").file, keys).design));
  }
}

TEST_CASE("more water asks for more pressure and gets less") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const PlantCurves curves = drawn(one.file.design).curves;
    REQUIRE(curves.row.size() >= 11);
    CHECK(curves.row.front().flow_m3_per_s == 0.0);
    CHECK(curves.row.front().system_Pa == Approx(0.0).margin(1e-2));
    CHECK(curves.row.front().loop_Pa == Approx(0.0).margin(1e-2));
    CHECK(curves.row[10].flow_m3_per_s == curves.runs.flow_m3_per_s);
    for (std::size_t i = 1; i < curves.row.size(); ++i) {
      const CurveRow &low = curves.row[i - 1], &high = curves.row[i];
      CHECK(high.system_Pa > low.system_Pa);
      CHECK(high.loop_Pa > low.loop_Pa);
      CHECK(high.pump_Pa < low.pump_Pa);
      // What all loops share is lost beside the loop.
      CHECK(high.system_Pa > high.loop_Pa);
    }
    CHECK(curves.row.back().flow_m3_per_s <= curves.pump_end.flow_m3_per_s);
  }
}

TEST_CASE("a pump whose curve goes through a row of the system's runs there") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const LoopPlan loops = plan_loops(one.file.design).value.value();
    Design design = one.file.design;
    // No floor: the water is of one temperature everywhere, whatever flows.
    const Plant first = pipe_up(design, loops, nullptr).value.value();
    const FlowTarget target = target_flows(first, nullptr);
    const PlantCurves curves = plant_curves(first, operate(first, {}, 40.0), target, 20e3).value();
    const CurveRow& row = curves.row[7];
    design.pump.control = PumpMode::constant_speed;
    design.pump.points = {
        {1.5 * row.system_head_m, 0.0}, {row.system_head_m, row.flow_m3_per_s}, {0.0, 3.0 * row.flow_m3_per_s}};
    const OperatingPoint point = operate(pipe_up(design, loops, nullptr).value.value(), {}, 40.0);
    CHECK(point.flow_m3_per_s == Approx(row.flow_m3_per_s).epsilon(1e-4));
    CHECK(point.pump_Pa == Approx(row.system_Pa).epsilon(1e-4));
    CHECK(point.loop[curves.hardest_loop].loss_Pa == Approx(row.loop_Pa).epsilon(1e-4));
  }
}
