#include "conduction/plan_solve.hpp"

#include <cmath>
#include <utility>

namespace slabwright::conduction {
namespace {

using Values = std::vector<double>;

constexpr int most_rounds = 400;

double dot(const Values& a, const Values& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// Plate, less what the water gives in answer to it.
class Operator {
 public:
  Operator(const PlanPlate& plate, const PlanWater& water) : plate_(plate), water_(water) {}

  /// In `y`, whose memory is used again: pages new from the system would cost more than the arithmetic.
  Values of(const Values& x, Values y) const {
    const std::size_t columns = plate_.columns, cells = x.size();
    y.resize(cells);
    for (std::size_t i = 0; i < cells; ++i) y[i] = plate_.diagonal_W_per_K[i] * x[i];
    for (std::size_t i = 0; i + 1 < cells; ++i) {
      y[i] -= plate_.right_W_per_K[i] * x[i + 1];
      y[i + 1] -= plate_.right_W_per_K[i] * x[i];
    }
    for (std::size_t i = 0; i + columns < cells; ++i) {
      y[i] -= plate_.up_W_per_K[i] * x[i + columns];
      y[i + columns] -= plate_.up_W_per_K[i] * x[i];
    }
    water_.add_to_cells(water_.heat_W(x, false), -1.0, y);
    return y;
  }

  Values drive() const {
    Values y(plate_.lost_W_per_K.size(), 0.0);
    for (std::size_t i = 0; i < y.size(); ++i) y[i] = plate_.lost_W_per_K[i] * plate_.even_degC[i];
    water_.add_to_cells(water_.heat_W(Values(y.size(), 0.0), true), 1.0, y);
    return y;
  }

 private:
  const PlanPlate& plate_;
  const PlanWater& water_;
};

/// Incomplete Cholesky factor of the plate and, on its diagonal, of what tube takes from it.
class Factor {
 public:
  Factor(const PlanSlab& slab, const PlanFloor& floor, const PlanPlate& plate, const PlanWater& water)
      : plate_(plate), inverse_(plate.diagonal_W_per_K) {
    for (const PlanWaterPiece& piece : water.piece())
      feed(floor, piece.place, slab.felt_share * piece.given_W_per_K, inverse_);
    for (std::size_t i = 0; i < inverse_.size(); ++i) {
      if (i > 0) inverse_[i] -= plate.right_W_per_K[i - 1] * plate.right_W_per_K[i - 1] * inverse_[i - 1];
      if (i >= plate.columns) {
        const std::size_t below = i - plate.columns;
        inverse_[i] -= plate.up_W_per_K[below] * plate.up_W_per_K[below] * inverse_[below];
      }
      inverse_[i] = 1.0 / inverse_[i];
    }
  }

  Values solved(Values y) const {
    const std::size_t columns = plate_.columns, cells = y.size();
    for (std::size_t i = 0; i < cells; ++i) {
      if (i > 0) y[i] += plate_.right_W_per_K[i - 1] * y[i - 1];
      if (i >= columns) y[i] += plate_.up_W_per_K[i - columns] * y[i - columns];
      y[i] *= inverse_[i];
    }
    for (std::size_t i = cells; i-- > 0;) {
      double later = 0.0;
      if (i + 1 < cells) later += plate_.right_W_per_K[i] * y[i + 1];
      if (i + columns < cells) later += plate_.up_W_per_K[i] * y[i + columns];
      y[i] += later * inverse_[i];
    }
    return y;
  }

 private:
  const PlanPlate& plate_;
  Values inverse_;
};

/// y + times x, in y.
void add(Values& y, double times, const Values& x) {
  for (std::size_t i = 0; i < y.size(); ++i) y[i] += times * x[i];
}

}  // namespace

double up_W_per_m2K(const PlanSlab& slab, const PlanCell& cell) {
  return 1.0 / (slab.up_m2K_per_W + 1.0 / cell.above_W_per_m2K);
}

double down_W_per_m2K(const PlanSlab& slab, const PlanCell& cell) {
  return cell.below_W_per_m2K > 0.0 ? 1.0 / (slab.down_m2K_per_W + 1.0 / cell.below_W_per_m2K) : 0.0;
}

PlanPlate plate_of(const PlanSlab& slab, const PlanFloor& floor) {
  const std::size_t cells = floor.cell.size(), columns = floor.columns;
  const double area_m2 = floor.cell_m * floor.cell_m;
  PlanPlate plate{columns,           Values(cells, 0.0), Values(cells, 0.0), Values(cells, 1.0), Values(cells, 0.0),
                  Values(cells, 0.0)};
  const auto on_floor = [&](std::size_t cell) { return floor.cell[cell].above_W_per_m2K > 0.0; };
  for (std::size_t i = 0; i < cells; ++i) {
    if (!on_floor(i)) continue;
    const PlanCell& cell = floor.cell[i];
    const double up = area_m2 * up_W_per_m2K(slab, cell), down = area_m2 * down_W_per_m2K(slab, cell);
    const double edge = area_m2 * cell.edge_W_per_m2K;
    plate.lost_W_per_K[i] = plate.diagonal_W_per_K[i] = up + down + edge;
    plate.even_degC[i] = (up * cell.room_degC + down * cell.below_degC + edge * cell.edge_degC) / (up + down + edge);
  }
  const auto join = [&](std::size_t a, std::size_t b, Values& link) {
    if (!on_floor(a) || !on_floor(b)) return;
    link[a] = slab.along_W_per_K;
    plate.diagonal_W_per_K[a] += slab.along_W_per_K;
    plate.diagonal_W_per_K[b] += slab.along_W_per_K;
  };
  for (std::size_t i = 0; i < cells; ++i) {
    if ((i + 1) % columns != 0) join(i, i + 1, plate.right_W_per_K);
    if (i + columns < cells) join(i, i + columns, plate.up_W_per_K);
  }
  return plate;
}

// The method as printed by its author, with the preconditioner on the right so that what is left is what it says.
PlanSolution solved(const PlanSlab& slab, const PlanFloor& floor, const PlanPlate& plate, const PlanWater& water,
                    const PlanStart& start) {
  const Operator plan(plate, water);
  const Factor factor(slab, floor, plate, water);
  const Values drive = plan.drive();
  const double whole = std::sqrt(dot(drive, drive));
  PlanSolution found{start.plate_degC.size() == drive.size() ? start.plate_degC : plate.even_degC, 0.0, 0};
  Values left = drive;
  add(left, -1.0, plan.of(found.plate_degC, {}));
  const Values shadow = left;
  Values way(left.size(), 0.0), moved(left.size(), 0.0), along, turned;
  double rho = 1.0, alpha = 1.0, omega = 1.0;
  found.left_share = whole > 0.0 ? std::sqrt(dot(left, left)) / whole : 0.0;
  while (found.left_share > start.left_share && found.rounds < most_rounds) {
    ++found.rounds;
    const double next = dot(shadow, left), beta = next / rho * (alpha / omega);
    rho = next;
    for (std::size_t i = 0; i < way.size(); ++i) way[i] = left[i] + beta * (way[i] - omega * moved[i]);
    along = way;
    along = factor.solved(std::move(along));
    moved = plan.of(along, std::move(moved));
    alpha = rho / dot(shadow, moved);
    add(left, -alpha, moved);
    add(found.plate_degC, alpha, along);
    along = left;
    along = factor.solved(std::move(along));
    turned = plan.of(along, std::move(turned));
    const double square = dot(turned, turned);
    omega = square > 0.0 ? dot(turned, left) / square : 0.0;
    add(left, -omega, turned);
    add(found.plate_degC, omega, along);
    found.left_share = std::sqrt(dot(left, left)) / whole;
    if (omega == 0.0 || !std::isfinite(found.left_share)) break;
  }
  return found;
}

}  // namespace slabwright::conduction
