// The plate of a plan as a matrix of five diagonals, and plate with water solved together.
#pragma once
#include <cstddef>
#include <vector>

#include "conduction/plan_water.hpp"

namespace slabwright::conduction {

/// From the tubes' plane, where there is floor.
double up_W_per_m2K(const PlanSlab& slab, const PlanCell& cell);
double down_W_per_m2K(const PlanSlab& slab, const PlanCell& cell);

/// [cell]: what the cells pass to their surroundings and to one another. Cells without floor stand alone.
struct PlanPlate {
  std::size_t columns = 0;
  std::vector<double> lost_W_per_K;               ///< to all surroundings
  std::vector<double> even_degC;                  ///< what these would bring the cell to by themselves
  std::vector<double> diagonal_W_per_K;           ///< lost, and passed to neighbours
  std::vector<double> right_W_per_K, up_W_per_K;  ///< to the next in x and in y
};
PlanPlate plate_of(const PlanSlab& slab, const PlanFloor& floor);

struct PlanSolution {
  std::vector<double> plate_degC;  ///< [cell]
  double left_share = 0.0;
  int rounds = 0;
};
/// Where to begin and when to end.
struct PlanStart {
  std::vector<double> plate_degC;  ///< [cell], or empty
  double left_share;
};
PlanSolution solved(const PlanSlab& slab, const PlanFloor& floor, const PlanPlate& plate, const PlanWater& water,
                    const PlanStart& start);

}  // namespace slabwright::conduction
