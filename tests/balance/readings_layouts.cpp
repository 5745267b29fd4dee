// Every demo scenario read back: healthy as drawn, and one thing wrong with it found.
#include <algorithm>
#include <cmath>

#include "plant/plants.hpp"
#include "slabwright/balance_lengths.hpp"
#include "slabwright/key.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Readings exact(const Plant& plant, const OperatingPoint& point) {
  Readings readings;
  readings.supply_degC = point.supply_degC;
  readings.water_degC = 0.5 * (point.supply_degC + point.return_degC);
  const double m3_per_m = water_content_m3_per_m(tube_of(plant.design));
  for (std::size_t i = 0; i < point.loop.size(); ++i) {
    const LoopState& loop = point.loop[i];
    readings.port.push_back(
        {loop.flow_m3_per_s, loop.return_degC, m3_per_m * plant.loops.loop[i].length_m / loop.flow_m3_per_s});
  }
  return readings;
}

}  // namespace

TEST_CASE("each scenario reads healthy as drawn, and a loop a third longer is found in it") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Piped p = piped(one.file.design);
    const double supply_degC = target_flows(p.plant, &p.envelope).supply_degC;
    const OperatingPoint healthy = operate(p.plant, p.conditions, supply_degC);
    const auto as_drawn = read_back(p.plant, exact(p.plant, healthy), p.conditions, {});
    REQUIRE(as_drawn);
    CHECK(as_drawn.value->healthy);
    const std::size_t loop = p.plant.loops.loop.size() - 1;
    const Plant longer = with_cause(p.plant, {Cause::longer, loop, loop, 0.0, 1.35, 0.0, 0.0}, 0.0);
    const auto found = read_back(p.plant, exact(longer, operate(longer, p.conditions, supply_degC)), p.conditions, {});
    REQUIRE(found);
    CHECK(found.value->ranked[0].group == CauseGroup::longer);
    CHECK(found.value->ranked[0].loop == loop);
  }
}

TEST_CASE("lengths alone, with no heat asked for, can be read back by flows and fronts") {
  const Design design = from_keys({{"tube.size", "1/2 in"},
                                   {"loop[1].length", "188 ft"},
                                   {"loop[2].length", "241 ft"},
                                   {"loop[3].length", "262 ft"},
                                   {"loop[4].length", "290 ft"}})
                            .design;
  const Plant plant = pipe_up(design, plan_loops(design).value.value(), nullptr).value.value();
  const NetworkSolution solved = flows_at(plant, 35.0);
  Readings readings;
  readings.water_degC = 35.0;
  for (const BranchId branch : plant.loop_branch) readings.port.push_back({solved.flow_m3_per_s[branch.at], {}, {}});
  CHECK(read_back(plant, readings, {}, {}).value->healthy);
  // The third of four meters at a third of what it should show.
  *readings.port[2].flow_m3_per_s *= 0.33;
  const auto low = read_back(plant, readings, {}, {});
  CHECK(low.value->ranked[0].group == CauseGroup::reads_less);
  CHECK(low.value->ranked[0].loop == 2);
  CHECK(low.value->next.kind != TestKind::returns);
}

TEST_CASE("every figure of readings and of what comes back has a key") {
  Readings readings;
  Suspect suspect;
  SuspectGroup group;
  NextTest next;
  ReadBack back;
  FittedLength length;
  FittedLengths lengths;
  CHECK(record_of(readings).keys.size() == 9);
  CHECK(record_of(suspect).keys.size() == 7);
  CHECK(record_of(group).keys.size() == 5);
  CHECK(record_of(next).keys.size() == 11);
  // The new settings are shown as a balance of their own.
  CHECK(record_of(back).keys.size() == 8);
  CHECK(record_of(length).keys.size() == 6);
  CHECK(record_of(lengths).keys.size() == 10);
}
