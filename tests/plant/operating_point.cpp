// The coupled operating point over every layout: what physics demands of it, whatever the figures.
#include <cmath>

#include "plant/plants.hpp"
#include "slabwright/handbook_practice.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("water gives up what floor and ground take") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Piped p = piped(one.file.design);
    const OperatingPoint point = operate(p.plant, p.conditions, 40.0);
    REQUIRE(point.stop == Stop::converged);
    double up = 0.0, down = 0.0, water = 0.0;
    for (const LoopState& loop : point.loop) {
      up += loop.up_W;
      down += loop.down_W;
      const FluidProperties fluid =
          properties_of(mixture_of(one.file.design.fluid), 0.5 * (point.supply_degC + loop.return_degC));
      water += loop.flow_m3_per_s * fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK *
               (point.supply_degC - loop.return_degC);
    }
    CHECK(point.up_W == Approx(up));
    CHECK(point.down_W == Approx(down));
    // Properties are taken at a mean that is settled to 1e-5 K.
    CHECK(water == Approx(point.water_W).epsilon(1e-6));
    double rooms = 0.0;
    for (const double w : point.room_up_W) rooms += w;
    CHECK(rooms == Approx(point.up_W));
  }
}

TEST_CASE("flows meet at every port and the pump lifts what the hardest round loses") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Piped p = piped(one.file.design);
    const NetworkSolution solved = flows_at(p.plant, 40.0);
    REQUIRE(solved.stop == Stop::converged);
    CHECK(solved.worst_imbalance_m3_per_s < 1e-9);
    double loops = 0.0;
    for (const BranchId branch : p.plant.loop_branch) loops += solved.flow_m3_per_s[branch.at];
    CHECK(loops == Approx(solved.flow_m3_per_s[p.plant.source_branch.at]));
    for (const auto& round : independent_loops(p.plant.graph)) {
      double around_Pa = 0.0;
      for (const Leg& leg : round) {
        const double rise =
            solved.pressure_Pa[p.plant.graph.from(leg.branch).at] - solved.pressure_Pa[p.plant.graph.to(leg.branch).at];
        around_Pa += leg.forward ? rise : -rise;
      }
      CHECK(std::abs(around_Pa) < 1e-6);
    }
  }
}

TEST_CASE("the hardest round's parts add up to what the pump gives") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Piped p = piped(one.file.design);
    const OperatingPoint point = operate(p.plant, p.conditions, 40.0);
    const GenericPump& pump = generic_pumps()[0];
    // Where something mixes, the pump stands behind it.
    const double at_pump_degC = p.plant.source.mix ? point.supply_degC : point.return_degC;
    const double density = liquid(mixture_of(one.file.design.fluid), at_pump_degC).density_kg_per_m3;
    const double given_Pa = generic_pump_head_m(pump, point.flow_m3_per_s) * 9.80665 * density;
    // The pump's density is that of the plain mean of the returns, the head's that of the mixed return.
    CHECK(point.pump_Pa == Approx(given_Pa).epsilon(2e-3));
  }
}

TEST_CASE("warmer supply gives every loop more heat") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Piped p = piped(one.file.design);
    OperatingPoint cooler = operate(p.plant, p.conditions, 30.0);
    for (const double supply : {35.0, 40.0, 45.0, 50.0}) {
      const OperatingPoint warmer = operate(p.plant, p.conditions, supply, &cooler);
      for (std::size_t i = 0; i < warmer.loop.size(); ++i) CHECK(warmer.loop[i].up_W > cooler.loop[i].up_W);
      cooler = warmer;
    }
  }
}

TEST_CASE("a warm start ends where a cold start does") {
  const Piped p = piped(layout("potting-house").file.design);
  const OperatingPoint far = operate(p.plant, p.conditions, 55.0);
  const OperatingPoint cold = operate(p.plant, p.conditions, 38.0);
  const OperatingPoint warm = operate(p.plant, p.conditions, 38.0, &far);
  for (std::size_t i = 0; i < cold.loop.size(); ++i) {
    CHECK(warm.loop[i].return_degC == Approx(cold.loop[i].return_degC).margin(1e-4));
  }
}
