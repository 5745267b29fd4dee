// A cold start, boiler stages, air out of loops, pump and pressures, against arithmetic.
#include <cmath>
#include <numbers>

#include "plant/sized.hpp"
#include "slabwright/handbook_cycling.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Design ten_lines() { return layout("ten-lines").file.design; }

Design with_glycol(Design design, double share) {
  design.fluid.kind = FluidKind::propylene_glycol;
  design.fluid.glycol.share = share;
  return design;
}

}  // namespace

TEST_CASE("cold water moves less, and cold glycol least") {
  const StartUp water = sized(ten_lines()).sizes.value->start;
  CHECK(water.water_degC == Approx(4.4).margin(0.1));
  CHECK(water.flow_share < 1.0);
  CHECK(water.flow_share > 0.5);
  const StartUp glycol = sized(with_glycol(ten_lines(), 0.5)).sizes.value->start;
  CHECK(glycol.flow_m3_per_s < water.flow_m3_per_s);
  CHECK(glycol.laminar_share == 1.0);
  REQUIRE(water.until_flow_s);
  REQUIRE(glycol.until_flow_s);
  CHECK(*glycol.until_flow_s > *water.until_flow_s);
}

TEST_CASE("a warm slab starts at once, and half the boiler takes longer than all of it") {
  Design design = ten_lines();
  const Sized cold = sized(design);
  const double all_s = *cold.sizes.value->start.until_flow_s;
  CHECK(all_s > 60.0);
  BoilerSize half = cold.sizes.value->boiler;
  half.power_W *= 0.5;
  CHECK(*start_up(cold.piped.plant, cold.point, half).value->until_flow_s > 1.9 * all_s);
  design.pressure.start_degC = 40.0;
  CHECK(*sized(design).sizes.value->start.until_flow_s == 0.0);
}

TEST_CASE("heat that went into water and slab is what the boiler gave") {
  // Long after the start all has risen by the heat over both masses, the water by what drives the rest into the slab.
  const Sized s = sized(ten_lines());
  const StartUp start = *s.sizes.value->start.until_flow_s > 0.0 ? s.sizes.value->start : StartUp{};
  const double slab_J_per_K = s.piped.plant.loops.tube_m * s.piped.plant.floor->section.spacing_m *
                              s.piped.plant.design.slab.thickness_m * 2300.0 * 880.0;
  const double most_s = slab_J_per_K * (0.5 * (s.point.supply_degC + s.point.return_degC) - start.water_degC) /
                        s.sizes.value->boiler.power_W;
  CHECK(*start.until_flow_s < 1.1 * most_s);
}

TEST_CASE("a boiler that gets too little water when cold is a failure") {
  Design design = with_glycol(ten_lines(), 0.5);
  const Sized usual = sized(design);
  const double cold = usual.sizes.value->start.flow_m3_per_s;
  design.boiler.least_flow_m3_per_s = 0.5 * (cold + usual.point.flow_m3_per_s);
  CHECK(has(sized(design).sizes.said, "plant.start-flow"));
  design.boiler.least_flow_m3_per_s = 0.9 * cold;
  CHECK_FALSE(has(sized(design).sizes.said, "plant.start-flow"));
}

TEST_CASE("a stage that the floor takes whole stays on; a larger one runs as the water allows") {
  Design design = ten_lines();
  design.boiler.stages = 4;
  const BoilerCycle small = sized(design).sizes.value->cycle;
  CHECK(small.stage_W * 4.0 == Approx(sized(design).sizes.value->boiler.power_W));
  CHECK_FALSE(small.on_s);
  CHECK(small.buffer_m3 == 0.0);
  design.boiler.stages = 1;
  design.boiler.power_W = 60e3;
  const Sized large = sized(design);
  const BoilerCycle& cycle = large.sizes.value->cycle;
  REQUIRE(cycle.on_s);
  CHECK(cycle.short_runs);
  CHECK(has(large.sizes.said, "plant.short-runs"));
  const FluidProperties water = properties_of({}, large.point.supply_degC);
  const double J_per_m3K = water.density_kg_per_m3 * water.specific_heat_J_per_kgK;
  const double content_m3 = plant_content_m3(large.piped.plant);
  CHECK(*cycle.on_s == Approx(content_m3 * J_per_m3K * design.boiler.differential_K / (60e3 - cycle.taken_W)));
  // With the tank it runs as long as it should.
  CHECK(on_s({60e3, cycle.taken_W, design.boiler.differential_K}, (content_m3 + cycle.buffer_m3) * J_per_m3K) ==
        Approx(design.boiler.least_on_s));
}

TEST_CASE("air goes out of a loop at 1.2 m/s, its water changed twice") {
  const Sized s = sized(ten_lines());
  const double bore_m = tube_of(s.piped.plant.design).inside_diameter_m;
  REQUIRE(s.sizes.value->purge.size() == s.piped.loops.loop.size());
  for (std::size_t i = 0; i < s.sizes.value->purge.size(); ++i) {
    const Purge& purge = s.sizes.value->purge[i];
    CHECK(purge.flow_m3_per_s == Approx(1.2 * std::numbers::pi / 4.0 * bore_m * bore_m));
    CHECK(purge.least_m3_per_s == Approx(0.5 * purge.flow_m3_per_s));
    CHECK(purge.for_s == Approx(2.0 * s.piped.loops.loop[i].length_m / 1.2));
    CHECK(purge.loss_Pa > s.point.loop[i].loss_Pa);
  }
}

TEST_CASE("a pump with the heads of all loops added up is called so") {
  Design design = ten_lines();
  const Sized usual = sized(design);
  const double duty_m = usual.sizes.value->pump.head_m, duty = usual.sizes.value->pump.flow_m3_per_s;
  double share = 0.0;
  for (const LoopState& loop : usual.point.loop) share += loop.loss_Pa / usual.point.pump_Pa;
  REQUIRE(share > 2.5);
  design.pump.points = {{1.3 * share * duty_m, 0.0}, {share * duty_m, duty}, {0.0, 3.0 * duty}};
  const Sized added = sized(design);
  REQUIRE(has(added.sizes.said, "plant.pump-too-strong"));
  design.pump.points = {{1.4 * duty_m, 0.0}, {1.1 * duty_m, duty}, {0.0, 3.0 * duty}};
  CHECK_FALSE(has(sized(design).sizes.said, "plant.pump-too-strong"));
}

TEST_CASE("a pump's power, winter and suction") {
  const Sized s = sized(ten_lines());
  const PumpSize& pump = s.sizes.value->pump;
  const Design& design = s.piped.plant.design;
  CHECK(pump.electric_W == Approx(s.point.flow_m3_per_s * s.point.pump_Pa / 0.3));
  CHECK(pump.season_J == Approx(pump.electric_W * 4000.0 * 3600.0));
  CHECK(pump.suction_m > 15.0);
  CHECK(pump.suction_m < (design.pressure.fill_Pa + 101325.0) / (980.0 * 9.80665));
}

TEST_CASE("glycol is filled to more than it will keep, water is not") {
  const TankSize water = sized(ten_lines()).sizes.value->tank;
  CHECK(water.start_Pa == Approx(water.fill_Pa).epsilon(1e-3));
  const TankSize glycol = sized(with_glycol(ten_lines(), 0.4)).sizes.value->tank;
  CHECK(glycol.start_Pa > 1.02 * glycol.fill_Pa);
  // The tank's air at both ends holds as many molecules.
  const double held_m3 = glycol.tank_m3 * (1.0 - (glycol.fill_Pa + 101325.0) / (glycol.start_Pa + 101325.0));
  const Mixture mixture{FluidKind::propylene_glycol, 0.4};
  CHECK(held_m3 ==
        Approx(glycol.fluid_m3 * (volume_ratio(mixture, glycol.coldest_degC, glycol.start_degC) - 1.0)).epsilon(1e-6));
  Design high = ten_lines();
  high.pressure.height_m = 7.0;
  CHECK(has(sized(high).sizes.said, "plant.low-fill"));
}

TEST_CASE("all that runs at once against the main breaker, and the ways out") {
  Design design = ten_lines();
  design.boiler.power_W = 12e3;
  design.service.main_A = 100.0;
  design.service.other_A = 20.0;
  design.second_source.kind = SecondSourceKind::heat_pump;
  design.second_source.current_A = 24.0;
  const Sized both = sized(design);
  const ElectricSize& electric = both.sizes.value->electric;
  // 1.25 x 50 + 1.25 x 24 + 20; one alone 62.5 + 20; left for the boiler (100 - 30 - 20) / 1.25 A at 240 V.
  CHECK(*electric.together_A == Approx(112.5));
  CHECK(*electric.one_heats_A == Approx(82.5));
  CHECK(*electric.room_W == Approx(40.0 * 240.0));
  CHECK(has(both.sizes.said, "plant.service-together"));
  design.service.main_A = 125.0;
  CHECK_FALSE(has(sized(design).sizes.said, "plant.service-together"));
}

TEST_CASE("a boiler made for 240 V gives three quarters on 208 V") {
  Design design = ten_lines();
  design.boiler.power_W = 12e3;
  design.boiler.rated_V = 240.0;
  design.service.voltage_V = 208.0;
  const Sized s = sized(design);
  CHECK(s.sizes.value->boiler.power_W == Approx(12e3 * 0.751111).epsilon(1e-5));
  CHECK(s.sizes.value->electric.current_A == Approx(s.sizes.value->boiler.power_W / 208.0));
  CHECK(has(s.sizes.said, "plant.voltage"));
}
