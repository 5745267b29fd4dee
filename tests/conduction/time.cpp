// Steps in time: their order, the heat they keep, and what must hold between runs and unit steps.
#include <cmath>

#include "conduction/time_step.hpp"
#include "published/ground/edge_in_time.hpp"
#include "slabwright/conduction_time.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Kind = FieldDriver::Kind;
/// Identities hold on any grid.
const FieldOptions coarse{0.02, 1.5, 3.0, false};

/// A slab below air, every node given the heat it stores when the whole rises and falls as the air does.
conduction::TimeField even_field() {
  FieldSection section;
  section.drivers = {{"air", Kind::temperature}, {"rise", Kind::heat}};
  section.materials = {{0.0, 1.0, 0.0, 1.0, 2.0, 4.0}};
  section.boundaries = {{{{0.0, 0.0}, {0.0, 1.0}}, SurfaceFilm{3.0, {0}}}};
  conduction::TimeField field = conduction::time_field(section, {}, {0.25, 1.0, 0.25, false});
  field.assembly.drive.col(1) = field.capacity_J_per_mK;
  return field;
}

Eigen::VectorXd even_drivers(double time_s) { return Eigen::Vector2d{std::sin(time_s), std::cos(time_s)}; }

double error_after(double end_s, int steps) {
  using namespace conduction;
  const TimeField field = even_field();
  Stepper stepper(field, Eigen::RowVectorXd::Ones(1));
  const auto unknowns = static_cast<Eigen::Index>(field.assembly.unknown_nodes.size());
  TimeState state = stepper.start(Eigen::MatrixXd::Zero(unknowns, 1), even_drivers(0.0));
  const double step_s = end_s / steps;
  for (int i = 0; i < steps; ++i) {
    const double from_s = i * step_s;
    state =
        stepper.step(state, step_s, even_drivers(from_s + Stepper::inner_share * step_s), even_drivers(from_s + step_s))
            .state;
  }
  return (state.temperatures.array() - std::sin(end_s)).abs().maxCoeff();
}

/// 0.2 m of concrete, a foil that stores nothing, 0.1 m of board; warm air and cold.
FieldSection wall() {
  FieldSection section;
  section.drivers = {{"warm", Kind::temperature}, {"cold", Kind::temperature}, {"heat", Kind::heat}};
  section.materials = {
      {0.0, 0.2, 0.0, 0.1, 1.75, 2.0e6}, {0.2, 0.21, 0.0, 0.1, 0.3}, {0.21, 0.3, 0.0, 0.1, 0.035, 4e4}};
  section.boundaries = {{{{0.0, 0.0}, {0.0, 0.1}}, SurfaceFilm{8.0, {0}}},
                        {{{0.3, 0.1}, {0.3, 0.0}}, SurfaceFilm{25.0, {1}}}};
  section.planes = {{{{0.1, 0.0}, {0.1, 0.1}}, {2}}};
  return section;
}

}  // namespace

TEST_CASE("steps in time are of second order") {
  double before = error_after(2.0, 8);
  CHECK(before < 0.01);
  for (const int steps : {16, 32, 64}) {
    const double now = error_after(2.0, steps);
    CHECK(std::log2(before / now) == Approx(2.0).margin(0.1));
    before = now;
  }
}

TEST_CASE("heat stored is heat that entered, for every driver") {
  const StepResponses edge =
      step_responses(edge_in_time("door_under"), {}, {hour_s, 100.0 * hour_s, 1e4 * hour_s}, {coarse});
  CHECK(edge.imbalance_share < 1e-9);
  CHECK(edge.stored_J_per_m[0][0] > 0.0);
  const StepResponses layers = step_responses(wall(), {}, {hour_s, 1e4 * hour_s}, {coarse});
  CHECK(layers.imbalance_share < 1e-9);
}

TEST_CASE("steps come to the steady field, without overshoot where a temperature drives") {
  const FieldSection section = wall();
  const std::vector<FieldPoint> points{{0.05, 0.05}, {0.2, 0.05}, {0.25, 0.05}};
  std::vector<double> times_s;
  for (double hours = 0.25; hours < 2000.0; hours *= 2.0) times_s.push_back(hours * hour_s);
  const StepResponses steps = step_responses(section, points, times_s, {coarse});
  const UnitResponses steady = unit_responses(section, points, coarse);
  for (std::size_t point = 0; point < points.size(); ++point) {
    for (std::size_t driver = 0; driver < section.drivers.size(); ++driver) {
      for (std::size_t time = 1; time < times_s.size(); ++time)
        CHECK(steps.weights[time][point][driver] >= steps.weights[time - 1][point][driver] - 2e-5);
      CHECK(steps.weights.back()[point][driver] == Approx(steady.weights[point][driver]).margin(1e-5));
    }
  }
  for (std::size_t boundary = 0; boundary < section.boundaries.size(); ++boundary)
    for (std::size_t driver = 0; driver < section.drivers.size(); ++driver)
      CHECK(steps.heat_in.back()[boundary][driver] == Approx(steady.heat_in[boundary][driver]).margin(1e-5));
}

TEST_CASE("a run of drivers is the sum of their steps") {
  const FieldSection section = wall();
  const std::vector<FieldPoint> points{{0.05, 0.05}, {0.25, 0.05}};
  const StepResponses steps = step_responses(section, points, {2.0 * hour_s, 6.0 * hour_s}, {coarse, 1e-6});
  // Cold air falls at once, heat comes on four hours later: a jump.
  const DriverSeries series{{0.0, 4.0 * hour_s, 4.0 * hour_s, 6.0 * hour_s},
                            {{0.0, -20.0, 0.0}, {0.0, -20.0, 0.0}, {0.0, -20.0, 50.0}, {0.0, -20.0, 50.0}}};
  const FieldRun run = field_run(section, points, steady_drivers({0.0, 0.0, 0.0}), series, {coarse, 1e-6, 1e-4});
  for (std::size_t point = 0; point < points.size(); ++point) {
    const double kelvin = -20.0 * steps.weights[1][point][1] + 50.0 * steps.weights[0][point][2];
    CHECK(run.temperatures_degC.back()[point] == Approx(kelvin).margin(1e-3));
  }
  CHECK(run.entered_J_per_m.back() == Approx(run.stored_J_per_m.back()).epsilon(1e-9));
}

TEST_CASE("a run that starts as it has always been stays so") {
  const FieldSection section = wall();
  const PeriodicDrivers swing{day_s, {20.0, -5.0, 3.0}, {0.0, 4.0, 0.0}, {0.0, -3.0, 1.0}};
  DriverSeries series;
  for (int i = 0; i <= 240; ++i) {
    const double angle = 6.283185307179586 * i / 240.0;
    series.times_s.push_back(i * day_s / 240.0);
    series.drivers.push_back({20.0, -5.0 + 4.0 * std::cos(angle) - 3.0 * std::sin(angle), 3.0 + std::sin(angle)});
  }
  const FieldRun run = field_run(section, {{0.15, 0.05}, {0.3, 0.05}}, swing, series, {coarse, 1e-6, 1e-4});
  for (const std::size_t point : {0u, 1u})
    CHECK(run.temperatures_degC.back()[point] == Approx(run.temperatures_degC.front()[point]).margin(2e-3));
  CHECK(run.stored_J_per_m.back() / 4e4 == Approx(0.0).margin(2e-3));
}

TEST_CASE("what stores nothing follows at once") {
  FieldSection section = wall();
  for (MaterialRectangle& material : section.materials) material.heat_capacity_J_per_m3K = 0.0;
  const std::vector<FieldPoint> points{{0.05, 0.05}, {0.25, 0.05}};
  const StepResponses steps = step_responses(section, points, {1.0}, {coarse});
  const UnitResponses steady = unit_responses(section, points, coarse);
  for (std::size_t driver = 0; driver < 3; ++driver)
    CHECK(steps.weights[0][1][driver] == Approx(steady.weights[1][driver]).margin(1e-9));
  // At a jump the second of two rows has followed already.
  const DriverSeries jump{{0.0, hour_s, hour_s}, {{20.0, 0.0, 0.0}, {20.0, 0.0, 0.0}, {20.0, -10.0, 0.0}}};
  const FieldRun run = field_run(section, points, steady_drivers({20.0, 0.0, 0.0}), jump, {coarse});
  CHECK(run.temperatures_degC[1][1] == Approx(20.0 * steady.weights[1][0]).margin(1e-6));
  const double after = 20.0 * steady.weights[1][0] - 10.0 * steady.weights[1][1];
  CHECK(run.temperatures_degC[2][1] == Approx(after).margin(1e-6));
}

TEST_CASE("contracts of fields in time") {
  FieldSection section = wall();
  CHECK_THROWS_AS(step_responses(section, {}, {3600.0, 3600.0}), std::logic_error);
  CHECK_THROWS_AS(step_responses(section, {}, {0.0}), std::logic_error);
  CHECK_THROWS_AS(step_responses(section, {}, {1.0}, {coarse, 0.0}), std::logic_error);
  CHECK_THROWS_AS(swing_responses(section, {}, 0.0), std::logic_error);
  const PeriodicDrivers rest = steady_drivers({0.0, 0.0, 0.0});
  CHECK_THROWS_AS(field_run(section, {}, rest, {{}, {}}), std::logic_error);
  CHECK_THROWS_AS(field_run(section, {}, rest, {{0.0}, {{1.0, 2.0}}}), std::logic_error);
  CHECK_THROWS_AS(field_run(section, {}, rest, {{1.0, 0.0}, {{1.0, 2.0, 3.0}, {1.0, 2.0, 3.0}}}), std::logic_error);
  CHECK_THROWS_AS(field_run(section, {}, steady_drivers({0.0}), {{0.0}, {{1.0, 2.0, 3.0}}}), std::logic_error);
  section.materials[0].heat_capacity_J_per_m3K = -1.0;
  CHECK_THROWS_AS(step_responses(section, {}, {1.0}), std::logic_error);
}
