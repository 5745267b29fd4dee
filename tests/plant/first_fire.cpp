// A cold start, boiler stages, air out of loops, pump and pressures, against arithmetic.
#include <cmath>
#include <numbers>

#include "plant/sized.hpp"
#include "plant/sizes.hpp"
#include "slabwright/conduction_edge.hpp"
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

// Water drawn from a closed circuit comes from nowhere: no flows fulfil that.
TEST_CASE("flows that do not settle at the first start are said") {
  const Sized one = sized(ten_lines());
  const BoilerSize& boiler = one.sizes.value->boiler;
  CHECK_FALSE(has(start_up(one.piped.plant, one.point, boiler).said, "plant.start-not-settled"));
  Plant leaking = one.piped.plant;
  leaking.graph.set_demand(leaking.graph.from(leaking.loop_branch[0]), 1e-4);
  CHECK(has(start_up(leaking, one.point, boiler).said, "plant.start-not-settled"));
}

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
  Design design = with_glycol(ten_lines(), 0.5);
  const Sized cold = sized(design);
  const double all_s = *cold.sizes.value->start.until_flow_s;
  CHECK(all_s > 60.0);
  BoilerSize half = cold.sizes.value->boiler;
  half.power_W *= 0.5;
  CHECK(*start_up(cold.piped.plant, cold.point, half).value->until_flow_s > 1.9 * all_s);
  design.fluid.start_degC = 40.0;
  CHECK(*sized(design).sizes.value->start.until_flow_s == 0.0);
}

TEST_CASE("water and slab, warmed step by step, come to the usual flow when it is said") {
  const Sized s = sized(with_glycol(ten_lines(), 0.5));
  const Plant& plant = s.piped.plant;
  const FluidProperties fluid = properties_of(mixture_of(plant.design.fluid), s.point.supply_degC);
  const double water_J_per_K = plant_content_m3(plant) * fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK;
  const double slab_J_per_K =
      plant.loops.tube_m * plant.floor->section.spacing_m * plant.design.slab.thickness_m * concrete_J_per_m3K;
  double water_degC = plant.design.fluid.start_degC, slab_degC = water_degC;
  constexpr double step_s = 1.0;
  for (double t_s = 0.0; t_s < *s.sizes.value->start.until_flow_s; t_s += step_s) {
    const double across_W = water_to_slab_W_per_K(plant, s.point) * (water_degC - slab_degC);
    water_degC += step_s * (s.sizes.value->boiler.power_W - across_W) / water_J_per_K;
    slab_degC += step_s * across_W / slab_J_per_K;
  }
  const auto total = [&](double degC) { return flows_at(plant, degC).flow_m3_per_s[plant.source_branch.at]; };
  const double usual = total(0.5 * (s.point.supply_degC + s.point.return_degC));
  // A step more or less of the crude walk moves the flow by far less than this.
  CHECK(total(water_degC) == Approx(0.95 * usual).epsilon(2e-3));
}

TEST_CASE("water does not start in a frozen slab, glycol does until it is slush") {
  Design design = ten_lines();
  design.fluid.start_degC = -5.0;
  const Sized water = sized(design);
  CHECK(water.sizes.value->start.frozen);
  CHECK(water.sizes.value->start.flow_m3_per_s == 0.0);
  CHECK(severity_of(water.sizes.said, "plant.start-frozen") == Severity::failure);
  design = with_glycol(design, 0.4);
  const Sized glycol = sized(design);
  CHECK_FALSE(glycol.sizes.value->start.frozen);
  CHECK(glycol.sizes.value->start.flow_m3_per_s > 0.0);
  CHECK_FALSE(has(glycol.sizes.said, "plant.start-frozen"));
  design.fluid.start_degC = freezing_point_degC(mixture_of(design.fluid)) - 1.0;
  CHECK(has(sized(design).sizes.said, "plant.start-frozen"));
}

TEST_CASE("a boiler that gets less than its maker asks for does not fire") {
  Design design = with_glycol(ten_lines(), 0.5);
  const Sized usual = sized(design);
  const double cold = usual.sizes.value->start.flow_m3_per_s;
  design.boiler.least_flow_m3_per_s = 0.5 * (cold + usual.point.flow_m3_per_s);
  const Sized between = sized(design);
  CHECK(severity_of(between.sizes.said, "plant.start-flow") == Severity::failure);
  // Warmed to what is named it fires, two kelvin colder it does not.
  REQUIRE(between.sizes.value->start.fires_from_degC);
  design.fluid.start_degC = *between.sizes.value->start.fires_from_degC + 0.1;
  CHECK_FALSE(has(sized(design).sizes.said, "plant.start-flow"));
  design.fluid.start_degC -= 2.0;
  CHECK(has(sized(design).sizes.said, "plant.start-flow"));
  design.boiler.least_flow_m3_per_s = 2.0 * usual.point.flow_m3_per_s;
  CHECK(severity_of(sized(design).sizes.said, "plant.boiler-flow") == Severity::failure);
}

TEST_CASE("where nobody knows what the boiler asks for it is said, and does not fail") {
  Design design = with_glycol(ten_lines(), 0.5);
  design.pump.drop_K = 18.0;
  const Sized s = sized(design);
  REQUIRE(has(s.sizes.said, "plant.start-flow") + has(s.sizes.said, "plant.boiler-flow") == 1);
  CHECK_FALSE(any(s.sizes.said, Severity::failure));
}

TEST_CASE("a stage that floor and slab take whole stays on") {
  Design design = ten_lines();
  design.boiler.stages_number = 4.0;
  const BoilerCycle small = sized(design).sizes.value->cycle;
  CHECK(small.stage_W * 4.0 == Approx(sized(design).sizes.value->boiler.power_W));
  CHECK_FALSE(small.on_s);
  CHECK(small.buffer_m3 == 0.0);
  design.boiler.stages_number = std::nullopt;
  design.boiler.power_W = 18e3;
  CHECK(sized(design).sizes.value->cycle.stages_number == 3);
  design.boiler.power_W = 18.1e3;
  CHECK(sized(design).sizes.value->cycle.stages_number == 4);
}

TEST_CASE("a large stage runs as water and slab allow, longer with a buffer tank") {
  Design design = ten_lines();
  design.boiler.stages_number = 1.0;
  design.boiler.power_W = 60e3;
  const Sized large = sized(design);
  const BoilerCycle& cycle = large.sizes.value->cycle;
  REQUIRE(cycle.on_s);
  CHECK(cycle.short_runs);
  CHECK(severity_of(large.sizes.said, "plant.short-runs") == Severity::warning);
  const FluidProperties water = properties_of({}, large.point.supply_degC);
  const double J_per_m3K = water.density_kg_per_m3 * water.specific_heat_J_per_kgK;
  const double content_m3 = plant_content_m3(large.piped.plant);
  const double slab_W_per_K = water_to_slab_W_per_K(large.piped.plant, large.point);
  CHECK(cycle.taken_W == Approx(0.25 * large.sizes.value->boiler.floor_W));
  // Water alone would be through its swing sooner.
  CHECK(*cycle.on_s > content_m3 * J_per_m3K * design.boiler.differential_K / (60e3 - cycle.taken_W));
  CHECK(on_s({60e3, cycle.taken_W, design.boiler.differential_K, slab_W_per_K},
             (content_m3 + cycle.buffer_m3) * J_per_m3K) == Approx(design.boiler.least_on_s));
  // Behind a mixing valve nothing but the boiler's own water swings.
  design.boiler.piping = BoilerPiping::mixing_valve;
  CHECK(*sized(design).sizes.value->cycle.on_s < 0.5 * *cycle.on_s);
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
  const PumpSize& size = usual.sizes.value->pump;
  const double duty_m = size.head_m, duty = size.flow_m3_per_s, added_m = size.added_head_m;
  REQUIRE(added_m > 2.5 * duty_m);
  const auto said_of = [&](double head_m) {
    design.pump.points = {{1.3 * head_m, 0.0}, {head_m, duty}, {0.0, 3.0 * duty}};
    for (const Diagnostic& d : sized(design).sizes.said)
      if (d.code == "plant.pump-too-strong") return say(d, System::us);
    return std::string{};
  };
  CHECK(said_of(added_m).find("added up") != std::string::npos);
  CHECK(said_of(2.0 * added_m).find("a smaller one") != std::string::npos);
  CHECK(said_of(1.1 * duty_m).empty());
}

TEST_CASE("the end of a pump's curve, and water that may boil in it") {
  Design design = ten_lines();
  const double duty = sized(design).sizes.value->pump.flow_m3_per_s;
  design.pump.points = {{20.0, 0.0}, {0.0, 1.02 * duty}};
  CHECK(has(sized(design).sizes.said, "plant.pump-end"));
  design.pump.points = {{20.0, 0.0}, {0.0, 3.0 * duty}};
  CHECK_FALSE(has(sized(design).sizes.said, "plant.pump-end"));
  CHECK_FALSE(has(sized(design).sizes.said, "plant.pump-suction"));
  design.boiler.hottest_degC = 105.0;
  design.pressure.fill_Pa = 2e4;
  CHECK(has(sized(design).sizes.said, "plant.pump-suction"));
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
  design.service.main_breaker_A = 100.0;
  design.service.other_loads_A = 20.0;
  design.second_source.current_A = 24.0;
  CHECK(*sized(design).sizes.value->electric.together_A == Approx(82.5));  // no second source, whatever it takes
  design.second_source.kind = SecondSourceKind::heat_pump;
  const Sized both = sized(design);
  const ElectricSize& electric = both.sizes.value->electric;
  // 1.25 x 50 + 1.25 x 24 + 20; one alone 62.5 + 20; beside the rest 50 A of 62.5: one stage of two.
  CHECK(*electric.together_A == Approx(112.5));
  CHECK(*electric.one_heats_A == Approx(82.5));
  CHECK(electric.room_stages_number == 1);
  CHECK(severity_of(both.sizes.said, "plant.service-together") == Severity::warning);
  design.service.main_breaker_A = 80.0;
  CHECK(severity_of(sized(design).sizes.said, "plant.service-together") == Severity::failure);
  design.service.main_breaker_A = 125.0;
  CHECK_FALSE(has(sized(design).sizes.said, "plant.service-together"));
}

TEST_CASE("a boiler made for 240 V gives three quarters on 208 V, and burns on 480 V") {
  Design design = ten_lines();
  design.boiler.power_W = 12e3;
  design.service.voltage_V = 208.0;
  CHECK(severity_of(sized(design).sizes.said, "plant.voltage") == Severity::warning);
  design.boiler.rated_voltage_V = 240.0;
  const Sized s = sized(design);
  CHECK(s.sizes.value->boiler.power_W == Approx(12e3 * 0.751111).epsilon(1e-5));
  CHECK(s.sizes.value->electric.current_A == Approx(s.sizes.value->boiler.power_W / 208.0));
  CHECK(severity_of(s.sizes.said, "plant.voltage") == Severity::note);
  design.service.voltage_V = 480.0;
  CHECK(severity_of(sized(design).sizes.said, "plant.voltage") == Severity::failure);
  design.service.voltage_V = 240.0;
  CHECK_FALSE(has(sized(design).sizes.said, "plant.voltage"));
}
