// Warm tube beside cool tube: why a floor gives less heat than its loops would among equals.
#include <algorithm>
#include <cmath>

#include "plan_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double spacing_m = 0.2286, cell_m = 0.25 * spacing_m, long_m = 160 * cell_m, deep_m = 24 * spacing_m;

TubeRow slab() {
  TubeRow row = five_inch_slab();
  row.spacing_m = spacing_m;
  return row;
}

/// Every second line runs the other way.
std::vector<PlanTube> there_and_back(double capacity_W_per_K, double first_degC, double second_degC) {
  std::vector<PlanTube> tubes = row_on(long_m, deep_m, spacing_m, capacity_W_per_K);
  for (std::size_t i = 0; i < tubes.size(); ++i) {
    tubes[i].supply_degC = i % 2 == 0 ? first_degC : second_degC;
    if (i % 2 == 1) std::reverse(tubes[i].line.begin(), tubes[i].line.end());
  }
  return tubes;
}

PlanField solved(const std::vector<PlanTube>& tubes) {
  return plan_field(plan_slab(slab(), tube_mK_per_W, cell_m), floor_of(long_m, deep_m, cell_m, cell_of(slab())), tubes);
}

/// Two lines in the middle, far from the floor's sides.
constexpr std::size_t one = 12, other = 13;

}  // namespace

// derived: S and D, half the sum and half the difference of two neighbours' water, lose a S and b D to the floor: a
// among equals, b between neighbours as much colder as the line is warmer. Against each other's flow
// C S' = -b D, C D' = -a S, from which return = supply (1 - r t) / (1 + r t), r = sqrt(a / b),
// t = tanh(sqrt(a b) L / (2 C)); where b were a, exp(-a L / C).
TEST_CASE("lines against each other's flow give less heat than lines side by side") {
  const double a = solved(there_and_back(endless_W_per_K, 20.0, 20.0)).tube[one].heat_W / 20.0;
  const double b = solved(there_and_back(endless_W_per_K, 20.0, -20.0)).tube[one].heat_W / 20.0;
  CHECK(b > 1.5 * a);
  for (const double units : {0.2, 1.0}) {
    const double capacity = a / units, r = std::sqrt(a / b), t = std::tanh(0.5 * std::sqrt(a * b) / capacity);
    const PlanField against = solved(there_and_back(capacity, 20.0, 20.0));
    const PlanField along = solved(row_on(long_m, deep_m, spacing_m, capacity));
    const double back_degC = 0.5 * (against.tube[one].return_degC + against.tube[other].return_degC);
    CHECK(along.tube[one].return_degC == Approx(20.0 * std::exp(-units)).epsilon(3e-3));
    CHECK(20.0 - back_degC == Approx(20.0 - 20.0 * (1.0 - r * t) / (1.0 + r * t)).epsilon(3e-3));
    INFO("b / a " << b / a << ", heat " << heat_W(against) / heat_W(along));
    CHECK(heat_W(against) < (units > 0.5 ? 0.98 : 1.0) * heat_W(along));
  }
}
