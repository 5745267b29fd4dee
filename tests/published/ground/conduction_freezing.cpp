// Neumann's solution: a deep thawed body whose surface is held below freezing.
#include "slabwright/conduction_time.hpp"
#include "slabwright/units_exact.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double cell_m = 0.02, deep_m = 14.0;
/// The exact front is a jump; over 0.02 K of 10 K it is as good as one.
constexpr double range_K = 0.02;

/// ISO 13793 design soil: 1.5 and 2.5 W/mK, 3.0 and 1.9 MJ/m3K, 150 MJ/m3.
const FreezingMaterial soil_freezing{0, 150e6, 2.5, 1.9e6, -range_K, 0.0};

FieldSection soil() {
  FieldSection section;
  section.drivers = {{"surface", FieldDriver::Kind::temperature}};
  section.materials = {{0.0, deep_m, 0.0, 2.0 * cell_m, 1.5, 3.0e6}};
  section.boundaries = {{{{0.0, 0.0}, {0.0, 2.0 * cell_m}}, FixedTemperature{{0}, {0}}}};
  return section;
}

/// Where the middle of the range lies, between watched points a cell apart.
double front_m(const std::vector<FieldPoint>& points, const std::vector<double>& temperatures_degC) {
  std::size_t i = 1;
  while (temperatures_degC[i] < -range_K / 2.0) ++i;
  const double before = temperatures_degC[i - 1], after = temperatures_degC[i];
  return points[i - 1].x_m + cell_m * (-range_K / 2.0 - before) / (after - before);
}

}  // namespace

TEST_CASE("how deep the frost goes in a body that freezes from its surface") {
  const std::pair<double, const char*> cases[] = {{0.0, "1.6629"}, {5.0, "1.5083"}, {8.0, "1.4270"}};
  std::vector<FieldPoint> points;
  for (double x_m = 0.0; x_m < 3.0; x_m += cell_m) points.push_back({x_m, 0.0});
  for (const auto& [thawed_degC, depth] : cases) {
    const DriverSeries series{{0.0, 100.0 * day_s}, {{-10.0}, {-10.0}}};
    const FieldRun run = freezing_run(soil(), points, {soil_freezing}, steady_drivers({thawed_degC}), series,
                                      {{cell_m, 1.0, cell_m, false}, day_s / 4.0});
    CHECK_PUBLISHED(
        Source{"Neumann's freezing of a deep body", "ISO 13793 soil, surface at -10 degC, 100 days", Oracle::derived},
        "frost depth from " + std::to_string(static_cast<int>(thawed_degC)) + " degC, m", depth,
        front_m(points, run.temperatures_degC.back()), Within{0.0, 0.01, "cells of 20 mm, steps of 6 h"});
    CHECK(run.entered_J_per_m.back() == Approx(run.stored_J_per_m.back()).epsilon(1e-9));
  }
}
