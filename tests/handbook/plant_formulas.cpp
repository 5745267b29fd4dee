// Tank, mixing, separator and currents: balances, and what they say to bad input.
#include <cmath>

#include "slabwright/handbook_electrical.hpp"
#include "slabwright/handbook_mixing.hpp"
#include "slabwright/handbook_tank.hpp"
#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("a tank holds what it must between its pressures") {
  const TankPressures p{184000.0, 308000.0};
  const double tank = diaphragm_tank_m3(0.0017, p).value();
  // Boyle: the gas of the full tank at fill pressure, squeezed to the most, leaves room for the expansion.
  CHECK(tank - tank * p.fill_Pa / p.most_Pa == Approx(0.0017).epsilon(1e-12));
  CHECK(closed_tank_m3(0.0017, p).value() > tank);
  CHECK_FALSE(diaphragm_tank_m3(0.0017, {308000.0, 308000.0}));
  CHECK_FALSE(diaphragm_tank_m3(0.0017, {0.0, 308000.0}));
  CHECK_FALSE(closed_tank_m3(0.0017, {90000.0, 308000.0}));
  CHECK(expansion_share(1000.0, 980.0) == Approx(1.0 / 49.0));
  CHECK(expansion_m3(1.0, 0.02, copper_expansion_per_K, 50.0) < expansion_m3(1.0, 0.02, 0.0, 50.0));
  CHECK_THROWS_AS(expansion_share(0.0, 980.0), std::logic_error);
  CHECK(planned_most_gauge_Pa(300000.0) == Approx(270000.0));
}

TEST_CASE("mixing only where the boiler is hotter than the supply") {
  CHECK(mixing_share(37.0, 37.0, 70.0).value() == 0.0);
  CHECK(mixing_share(70.0, 37.0, 70.0).value() == 1.0);
  CHECK_FALSE(mixing_share(71.0, 37.0, 70.0));
  CHECK_FALSE(mixing_share(36.0, 37.0, 70.0));
  CHECK_FALSE(mixing_share(37.0, 37.0, 37.0));
}

TEST_CASE("a separator loses no heat") {
  for (const double boiler : {0.1, 0.3, 0.5})
    for (const double floor : {0.1, 0.3, 0.6}) {
      const Separator s{boiler, floor, 55.0, 35.0};
      const Separated out = separate(s);
      CHECK(boiler * (55.0 - out.boiler_return_degC) == Approx(floor * (out.floor_supply_degC - 35.0)).epsilon(1e-12));
      CHECK(out.floor_supply_degC <= 55.0);
      CHECK(out.boiler_return_degC >= 35.0);
    }
  CHECK_THROWS_AS(separate({0.0, 0.3, 55.0, 35.0}), std::logic_error);
}

TEST_CASE("two runs one after the other are one long run") {
  const double half = run_end_degC(run_end_degC(45.0, 20.0, 6.0, 230.0), 20.0, 6.0, 230.0);
  CHECK(half == Approx(run_end_degC(45.0, 20.0, 12.0, 230.0)).epsilon(1e-14));
  CHECK(run_end_degC(45.0, 20.0, 12.0, 0.0) == 20.0);
  CHECK(run_end_degC(45.0, 20.0, 0.0, 230.0) == 45.0);
  CHECK_THROWS_AS(run_end_degC(45.0, 20.0, -1.0, 230.0), std::logic_error);
}

TEST_CASE("devices come in the code's own sizes") {
  const auto sizes = standard_devices_A();
  CHECK(sizes.front() == 15.0);
  CHECK(sizes.back() == 6000.0);
  for (std::size_t i = 1; i < sizes.size(); ++i) CHECK(sizes[i] > sizes[i - 1]);
  CHECK(north_american_supply(100.0).device_A.value() == 125.0);
  CHECK(north_american_supply(100.01).device_A.value() == 150.0);
  CHECK(north_american_supply(0.0).device_A.value() == 15.0);
  CHECK_FALSE(north_american_supply(4801.0).device_A);
  CHECK(north_american_supply(640.0).next_size_up);
  CHECK_FALSE(north_american_supply(641.0).next_size_up);
  CHECK(electric_current_A(9000.0, 400.0, Phases::three) == Approx(9000.0 / (400.0 * std::sqrt(3.0))));
  CHECK_THROWS_AS(electric_current_A(9000.0, 0.0, Phases::one), std::logic_error);
  CHECK_THROWS_AS(north_american_supply(-1.0), std::logic_error);
}

TEST_CASE("elements are divided into circuits") {
  CHECK(north_american_circuits(37.5, false) == 1);
  CHECK(north_american_circuits(48.0, false) == 1);
  CHECK(north_american_circuits(50.0, false) == 2);
  CHECK(north_american_circuits(100.0, false) == 3);
  CHECK(north_american_circuits(100.0, true) == 1);
  CHECK(north_american_circuits(0.0, false) == 1);
}
