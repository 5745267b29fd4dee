// What to buy, checked against arithmetic.
#include <algorithm>
#include <cmath>

#include "plant/sized.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("the boiler carries floor, ground and a fifth more, in the next step sold") {
  for (const Layout& one : layouts()) {
    if (one.file.design.boiler.power_W) continue;
    INFO(one.name);
    const Sized s = sized(one.file.design);
    const BoilerSize& boiler = s.sizes.value->boiler;
    CHECK(boiler.floor_W == Approx(s.point.up_W + s.point.down_W));
    CHECK(boiler.wanted_W == Approx(1.2 * boiler.floor_W));
    CHECK(boiler.power_W >= boiler.wanted_W);
    CHECK(*boiler.fails_working_degC < *one.file.design.climate.outdoor_degC);
  }
}

TEST_CASE("a boiler just as large as the floor fails just at the weather planned for") {
  const Sized big = sized(layout("ten-lines").file.design);
  const double floor_W = big.sizes.value->boiler.floor_W;
  Design design = layout("ten-lines").file.design;
  design.boiler.power_W = floor_W;
  CHECK(*sized(design).sizes.value->boiler.fails_working_degC == Approx(*design.climate.outdoor_degC).margin(0.01));
  design.boiler.power_W = 0.8 * floor_W;
  CHECK(has(sized(design).sizes.said, "plant.boiler-too-small"));
}

TEST_CASE("current by phases, and 125 % only where the code family asks for it") {
  Design design = layout("ten-lines").file.design;
  design.boiler.power_W = 9000.0;
  const ElectricSize single = sized(design).sizes.value->electric;
  CHECK(single.current_A == Approx(37.5));
  CHECK(single.demand_A.value() == Approx(46.875));
  CHECK(single.demand_share.value() == 1.25);
  design.codes = Codes::europe;
  design.service.voltage_V = 400.0;
  design.service.phases = 3;
  const ElectricSize three = sized(design).sizes.value->electric;
  CHECK(three.current_A == Approx(9000.0 / (std::sqrt(3.0) * 400.0)));
  CHECK_FALSE(three.demand_A.has_value());
  CHECK_FALSE(three.demand_share.has_value());
}

TEST_CASE("a service that is too small fails") {
  Design design = layout("ten-lines").file.design;
  design.boiler.power_W = 18000.0;
  design.service.current_A = 60.0;
  const auto sizes = sized(design).sizes;
  CHECK_FALSE(sizes.value->electric.fits);
  CHECK(has(sizes.said, "plant.service-too-small"));
}

TEST_CASE("the tank takes the growth from coldest standing to hottest fluid") {
  const Design water = layout("ten-lines").file.design;
  const TankSize tank = sized(water).sizes.value->tank;
  CHECK(tank.coldest_degC == 4.0);
  CHECK(tank.expansion_m3 == Approx(tank.fluid_m3 * (volume_ratio({}, 4.0, water.boiler.hottest_degC) - 1.0)));
  const double p1 = tank.fill_Pa + 101325.0, p2 = tank.most_Pa + 101325.0;
  CHECK(tank.tank_m3 == Approx(tank.expansion_m3 / (1.0 - p1 / p2)));
  const TankSize glycol = sized(layout("potting-house").file.design).sizes.value->tank;
  CHECK(glycol.coldest_degC < 0.0);
  CHECK(glycol.glycol_m3 == Approx(0.3 * glycol.fluid_m3));
}

TEST_CASE("in thinner air a tank may be smaller and a pump has less before it boils") {
  Design design = layout("ten-lines").file.design;
  design.climate.altitude_m = 0.0;
  const PlantSizes sea = sized(design).sizes.value.value();
  design.climate.altitude_m = 2000.0;
  const PlantSizes high = sized(design).sizes.value.value();
  constexpr double air_Pa = 79495.0;  // at 2 000 m (US standard atmosphere, 1976)
  const double p1 = high.tank.fill_Pa + air_Pa, p2 = high.tank.most_Pa + air_Pa;
  CHECK(high.tank.tank_m3 == Approx(high.tank.expansion_m3 / (1.0 - p1 / p2)).epsilon(1e-4));
  CHECK(high.tank.tank_m3 < sea.tank.tank_m3);
  const double density = properties_of({}, design.boiler.hottest_degC).density_kg_per_m3;
  CHECK(sea.pump.suction_m - high.pump.suction_m ==
        Approx((101325.0 - air_Pa) / (density * gravity_m_per_s2)).epsilon(1e-3));
}

TEST_CASE("mixing share by temperatures") {
  const Sized s = sized(layout("cold-door").file.design);
  const double share = s.point.source.hot_share.value();
  const double boiler = s.piped.plant.design.boiler.hottest_degC;
  CHECK(share == Approx((s.point.supply_degC - s.point.return_degC) / (boiler - s.point.return_degC)));
}

TEST_CASE("no boiler at all still tells which one to leave room for") {
  Design design = layout("ten-lines").file.design;
  design.boiler.kind = BoilerKind::none;
  const auto sizes = sized(design).sizes;
  REQUIRE(sizes);
  CHECK(sizes.value->boiler.power_W > sizes.value->boiler.floor_W);
}
