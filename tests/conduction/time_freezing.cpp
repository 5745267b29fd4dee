// Materials that freeze: no latent heat is lost, and without it the run is an ordinary one.
#include "published/ground/edge_in_time.hpp"
#include "slabwright/conduction_time.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const FreezingOptions coarse{{0.02, 1.5, 2.0, false}, 6.0 * hour_s};
constexpr std::size_t soil_row = 0;
const FreezingMaterial soil_freezing{soil_row, 100e6, 2.5, 1.9e6, -0.5, 0.0};

DriverSeries month(double outdoor_degC) {
  return {
      {0.0, 30.0 * day_s, 30.0 * day_s, 60.0 * day_s},
      {{10.0, outdoor_degC, 8.0, 0.0}, {10.0, outdoor_degC, 8.0, 0.0}, {10.0, 10.0, 8.0, 0.0}, {10.0, 10.0, 8.0, 0.0}}};
}

}  // namespace

TEST_CASE("soil that freezes and thaws again keeps its heat") {
  const FieldSection section = edge_in_time("door_under");
  const std::vector<FieldPoint> points{{6.3, -0.3}, edge_point("door_under", 0.15, 0.075)};
  const PeriodicDrivers before = steady_drivers({10.0, 5.0, 8.0, 0.0});
  const FieldRun freezes = freezing_run(section, points, {soil_freezing}, before, month(-20.0), coarse);
  for (std::size_t row = 1; row < 4; ++row)
    CHECK(freezes.entered_J_per_m[row] == Approx(freezes.stored_J_per_m[row]).epsilon(1e-9));
  // Latent heat holds the cold back: the soil gives off more of it and stays warmer.
  const FieldRun dry = field_run(section, points, before, month(-20.0), {coarse.grid});
  CHECK(freezes.stored_J_per_m[1] < 1.2 * dry.stored_J_per_m[1]);
  CHECK(freezes.temperatures_degC[1][0] > dry.temperatures_degC[1][0] + 1.0);
  CHECK(freezes.temperatures_degC[1][0] < 0.0);
  // A month later it has thawed here.
  CHECK(freezes.temperatures_degC[3][0] > 0.0);
}

TEST_CASE("above its range soil that may freeze is soil as it was") {
  const FieldSection section = edge_in_time("door_under");
  const std::vector<FieldPoint> points{{6.3, -0.3}, edge_point("door_under", 0.15, 0.075)};
  const PeriodicDrivers before = steady_drivers({10.0, 12.0, 8.0, 0.0});
  const FieldRun freezes = freezing_run(section, points, {soil_freezing}, before, month(3.0), coarse);
  const FieldRun dry = field_run(section, points, before, month(3.0), {coarse.grid});
  // Steps of 6 h and first order, 9 K after a jump.
  for (const std::size_t point : {0u, 1u})
    CHECK(freezes.temperatures_degC[1][point] == Approx(dry.temperatures_degC[1][point]).margin(0.03));
  CHECK(freezes.stored_J_per_m[1] == Approx(dry.stored_J_per_m[1]).epsilon(0.01));
}

TEST_CASE("contracts of freezing materials") {
  const FieldSection section = edge_in_time("door");
  const PeriodicDrivers before = steady_drivers({10.0, 5.0, 8.0, 0.0});
  const auto run = [&](FreezingMaterial freezing, const FreezingOptions& options) {
    return freezing_run(section, {}, {freezing}, before, month(0.0), options);
  };
  FreezingMaterial freezing = soil_freezing;
  freezing.material = 99;
  CHECK_THROWS_AS(run(freezing, coarse), std::logic_error);
  freezing = soil_freezing;
  freezing.frozen_at_degC = freezing.thawed_at_degC;
  CHECK_THROWS_AS(run(freezing, coarse), std::logic_error);
  freezing = soil_freezing;
  freezing.latent_J_per_m3 = -1.0;
  CHECK_THROWS_AS(run(freezing, coarse), std::logic_error);
  freezing = soil_freezing;
  freezing.frozen_conductivity_W_per_mK = 0.0;
  CHECK_THROWS_AS(run(freezing, coarse), std::logic_error);
  CHECK_THROWS_AS(run(soil_freezing, {coarse.grid, 0.0}), std::logic_error);
}
