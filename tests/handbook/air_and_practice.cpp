// Streams of air, yearly extremes, and the tables of practice.
#include <algorithm>
#include <cmath>

#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_extremes.hpp"
#include "slabwright/handbook_practice.hpp"
#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("air is thinner higher up") {
  CHECK(pressure_share(0.0) == 1.0);
  CHECK(pressure_share(1500.0) == Approx(84556.0 / 101325.0).epsilon(2e-4));  // US standard atmosphere
  CHECK(air_density_kg_per_m3(20.0) == Approx(1.204).epsilon(1e-3));
  CHECK(air_density_kg_per_m3(20.0, 1500.0) == Approx(pressure_share(1500.0) * air_density_kg_per_m3(20.0)));
  CHECK(infiltration_W_per_K(400.0, 0.5, 1500.0) == Approx(0.34 * 200.0 * pressure_share(1500.0)));
  CHECK_THROWS_AS(pressure_share(12000.0), std::logic_error);
}

TEST_CASE("three forms of the heat in air agree within their rounding") {
  const double volume = 407.8, changes = 0.5, flow = volume * changes / 3600.0;
  CHECK(infiltration_W_per_K(volume, changes) == Approx(air_stream_W_per_K(flow)).epsilon(0.02));
  CHECK(air_stream_cfm_form_W_per_K(flow) == Approx(air_stream_W_per_K(flow)).epsilon(0.01));
}

TEST_CASE("an open door loses with the power of three halves") {
  const double once = door_heat_W({3.0, 3.0}, 10.0);
  CHECK(door_heat_W({3.0, 3.0}, 40.0) == Approx(8.0 * once).epsilon(1e-12));
  CHECK(door_heat_W({6.0, 3.0}, 10.0) == Approx(2.0 * once).epsilon(1e-12));
  CHECK(door_heat_W({3.0, 12.0}, 10.0) == Approx(8.0 * once).epsilon(1e-12));
  CHECK(door_heat_W({3.0, 3.0}, 0.0) == 0.0);
  CHECK(door_heat_W({3.0, 3.0}, -10.0) == Approx(-once));
}

TEST_CASE("rarer cold is colder") {
  CHECK(n_year_minimum_degC(-25.0, 3.5, 50.0) < n_year_minimum_degC(-25.0, 3.5, 20.0));
  CHECK(n_year_minimum_degC(-25.0, 0.0, 20.0) == -25.0);
  CHECK_THROWS_AS(n_year_factor(1.0), std::logic_error);
  const std::array<double, 10> ten = ten_minima_degC(-34.0, 20.0, 3.5);
  CHECK(ten.front() == -34.0);
  CHECK(std::is_sorted(ten.begin(), ten.end()));
  // Their mean is the mean of yearly minima, as far as ten stand for all.
  double mean = 0.0;
  for (const double each : ten) mean += each / 10.0;
  CHECK(mean == Approx(-34.0 + 3.5 * n_year_factor(20.0)).margin(0.1 * 3.5));
  CHECK(ten_minima_degC(-34.0, 20.0, 0.0).back() == -34.0);
  CHECK(ten_minima_degC(-34.0, 2.0, 3.5)[1] == -34.0);  // no winter passes the one asked for
}

TEST_CASE("buildings go from tight to poor") {
  const double unit = 5.678263;  // Btu/h ft2 degF
  const std::array<double, 3> printed{0.20, 0.30, 0.45};
  for (std::size_t i = 0; i < building_guesses.size(); ++i) {
    CHECK(building_guesses[i].floor_W_per_m2K == Approx(printed[i] * unit).epsilon(5e-4));
    CHECK_FALSE(building_guesses[i].word.empty());
  }
  CHECK(building_guesses[1].name == "usual");
}

TEST_CASE("the next boiler up") {
  CHECK(next_boiler_W(6100.0, Customary::us).value() == 9000.0);
  CHECK(next_boiler_W(9000.0, Customary::us).value() == 9000.0);
  CHECK(next_boiler_W(12500.0, Customary::us).value() == 14400.0);
  CHECK(next_boiler_W(12500.0, Customary::si).value() == 15000.0);
  CHECK_FALSE(next_boiler_W(24001.0, Customary::si));
}

TEST_CASE("generic pumps fall from shut-off to nothing") {
  CHECK(generic_pumps().size() == 3);
  for (const GenericPump& pump : generic_pumps()) {
    CHECK(generic_pump_head_m(pump, 0.0) == pump.shutoff_m);
    CHECK(generic_pump_head_m(pump, -1e-4) == pump.shutoff_m);
    CHECK(generic_pump_head_m(pump, 0.5 * pump.most_m3_per_s) == Approx(0.75 * pump.shutoff_m));
    CHECK(generic_pump_head_m(pump, pump.most_m3_per_s) == 0.0);
    CHECK(generic_pump_head_m(pump, 2.0 * pump.most_m3_per_s) == 0.0);
  }
  CHECK(generic_pumps()[0].most_m3_per_s * 3600.0 == Approx(3.0));
}
