// Slabs, floors of cells and tube on them, for the tests of plans.
#pragma once
#include <cmath>
#include <vector>

#include "slabwright/conduction_plan.hpp"

namespace slabwright::test {

constexpr double inch_m = 0.0254, tube_mK_per_W = 0.08;

/// 5 in of concrete on 2 in of foam, 5/8 in tube at mid-depth every 12 in.
inline TubeRow five_inch_slab() { return {0.3048, 0.015875, 0.0635, {{0.127, 1.75}, {0.0508, 0.035}}, 10.0, 1.0}; }

/// Everything round it at 0 degC.
inline PlanCell cell_of(const TubeRow& row) { return {row.above_W_per_m2K, 0.0, row.below_W_per_m2K, 0.0, 0.0, 0.0}; }

/// Its lower left corner at zero, whole cells, a ring without floor round it.
inline PlanFloor floor_of(double width_m, double depth_m, double cell_m, const PlanCell& cell) {
  PlanFloor floor;
  floor.corner = {-cell_m, -cell_m};
  floor.cell_m = cell_m;
  floor.columns = static_cast<std::size_t>(std::lround(width_m / cell_m)) + 2;
  floor.rows = static_cast<std::size_t>(std::lround(depth_m / cell_m)) + 2;
  floor.cell.resize(floor.columns * floor.rows);
  for (std::size_t j = 1; j + 1 < floor.rows; ++j) {
    for (std::size_t i = 1; i + 1 < floor.columns; ++i) floor.cell[j * floor.columns + i] = cell;
  }
  return floor;
}

/// Water that stays as warm as it came.
constexpr double endless_W_per_K = 1e12;

inline PlanTube tube_along(std::vector<FieldPoint> line, double supply_degC, double capacity_W_per_K) {
  return {std::move(line), supply_degC, capacity_W_per_K, tube_mK_per_W, {}};
}

/// Lines across the whole floor, the first half a spacing from its lower side, all fed at the left.
inline std::vector<PlanTube> row_on(double width_m, double depth_m, double spacing_m, double capacity_W_per_K) {
  std::vector<PlanTube> tubes;
  for (double y = 0.5 * spacing_m; y < depth_m; y += spacing_m) {
    tubes.push_back(tube_along({{0.0, y}, {width_m, y}}, 20.0, capacity_W_per_K));
  }
  return tubes;
}

inline double heat_W(const PlanField& field) {
  double sum = 0.0;
  for (const PlanTubeState& tube : field.tube) sum += tube.heat_W;
  return sum;
}

inline std::size_t cell_number(const PlanFloor& floor, double x_m, double y_m) {
  const auto at = [&](double m) { return static_cast<std::size_t>(std::floor(m / floor.cell_m)) + 1; };
  return at(y_m) * floor.columns + at(x_m);
}

}  // namespace slabwright::test
