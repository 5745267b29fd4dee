// A plan solved, and its surface: the plate seen through the layers, and what tube adds near itself.
#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "conduction/plan_shape.hpp"
#include "conduction/plan_solve.hpp"
#include "slabwright/conduction_plan.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace conduction;

bool not_negative(std::initializer_list<double> numbers) {
  return std::all_of(numbers.begin(), numbers.end(), [](double n) { return std::isfinite(n) && n >= 0.0; });
}

void expect_sound(const PlanSlab& slab, const PlanFloor& floor) {
  expects(floor.cell_m == slab.cell_m && floor.cell_m > 0.0, "plan: cells of another size than the slab's");
  expects(floor.cell.size() == floor.columns * floor.rows && !floor.cell.empty(), "plan: cells that do not fit");
  expects(std::isfinite(floor.corner.x_m) && std::isfinite(floor.corner.y_m), "plan: a corner that is nowhere");
  for (const PlanCell& cell : floor.cell) {
    expects(not_negative({cell.above_W_per_m2K, cell.below_W_per_m2K, cell.edge_W_per_m2K}),
            "plan: a coefficient below 0");
    expects(std::isfinite(cell.room_degC) && std::isfinite(cell.below_degC) && std::isfinite(cell.edge_degC),
            "plan: a temperature that is no number");
  }
}

void expect_sound(const PlanTube& tube) {
  expects(tube.line.size() >= 2, "plan: a tube needs two corners");
  bool has_length = false;
  for (std::size_t i = 0; i < tube.line.size(); ++i) {
    expects(std::isfinite(tube.line[i].x_m) && std::isfinite(tube.line[i].y_m), "plan: tube that is nowhere");
    has_length = has_length || tube.line[i].x_m != tube.line[0].x_m || tube.line[i].y_m != tube.line[0].y_m;
  }
  expects(has_length, "plan: tube without length");
  expects(not_negative({tube.capacity_W_per_K, tube.tube_mK_per_W}), "plan: flow or resistance below 0");
  expects(std::isfinite(tube.supply_degC), "plan: a supply that is no number");
  for (const PlanSleeve& sleeve : tube.sleeve) expects(not_negative({sleeve.mK_per_W}), "plan: a sleeve below 0");
}

/// Heat of pieces by the cell that they lie in.
class PiecesByCell {
 public:
  PiecesByCell(const PlanFloor& floor, const PlanWater& water) : floor_(floor), start_(floor.cell.size() + 2, 0) {
    std::vector<std::size_t> cells;
    for (const PlanWaterPiece& piece : water.piece()) {
      cells.push_back(cell_at(floor, piece.where));
      ++start_[cells.back() + 1];
    }
    for (std::size_t i = 1; i < start_.size(); ++i) start_[i] += start_[i - 1];
    piece_.resize(cells.size());
    std::vector<std::size_t> next = start_;
    for (std::size_t i = 0; i < cells.size(); ++i) piece_[next[cells[i]]++] = i;
  }

  /// For each piece in the square of cells that reaches `cells` from the one where the point lies.
  template <class Do>
  void for_each_near(FieldPoint where, std::size_t cells, const Do& act) const {
    const std::size_t at = cell_at(floor_, where);
    if (at == floor_.cell.size()) return;
    const std::size_t i = at % floor_.columns, j = at / floor_.columns;
    const std::size_t left = i - std::min(i, cells), right = std::min(i + cells, floor_.columns - 1);
    for (std::size_t row = j - std::min(j, cells); row <= std::min(j + cells, floor_.rows - 1); ++row) {
      // A row's cells follow one another, and so do their pieces.
      const std::size_t from = start_[row * floor_.columns + left], to = start_[row * floor_.columns + right + 1];
      for (std::size_t n = from; n < to; ++n) act(piece_[n]);
    }
  }

 private:
  const PlanFloor& floor_;
  std::vector<std::size_t> start_, piece_;
};

class Surface {
 public:
  Surface(const PlanSlab& slab, const PlanFloor& floor, const PlanPlate& plate, const std::vector<double>& plate_degC)
      : slab_(slab),
        floor_(floor),
        plate_(plate),
        plate_degC_(plate_degC),
        per_square_(static_cast<double>(slab.add_K_per_W.size() - 1) / (slab.reach_m * slab.reach_m)),
        reach_cells_(static_cast<std::size_t>(std::ceil(slab.reach_m / slab.cell_m))) {}

  double of_plate(FieldPoint where, std::size_t at) const {
    const PlanCell& cell = floor_.cell[at];
    const double seen = up_W_per_m2K(slab_, cell) / cell.above_W_per_m2K, even = plate_.even_degC[at];
    const PlanPlace place = place_of(floor_, where);
    const double rise = place.share[4] > 0.0 ? read(floor_, place, plate_degC_) - even : plate_degC_[at] - even;
    return cell.room_degC + seen * (even - cell.room_degC + slab_.shown_share * rise);
  }

  /// What the plate read at a piece is too cool, for how its line lies among the cells.
  double by_place(const PlanWaterPiece& piece, double heat_W) const {
    const std::size_t at = cell_at(floor_, piece.where);
    if (at == floor_.cell.size() || floor_.cell[at].above_W_per_m2K <= 0.0) return 0.0;
    const double seen = up_W_per_m2K(slab_, floor_.cell[at]) / floor_.cell[at].above_W_per_m2K;
    const double read_mK_per_W = slab_.place_mK_per_W / slab_.felt_share * (piece.own_ratio - plan_own_ratio);
    return seen * slab_.shown_share * read_mK_per_W * heat_W / piece.length_m;
  }

  double added_K_per_W(FieldPoint a, FieldPoint b) const {
    const double dx = a.x_m - b.x_m, dy = a.y_m - b.y_m, row = (dx * dx + dy * dy) * per_square_;
    if (!(row < static_cast<double>(slab_.add_K_per_W.size() - 1))) return 0.0;
    const std::size_t i = static_cast<std::size_t>(row);
    const double share = row - static_cast<double>(i);
    return slab_.add_K_per_W[i] + share * (slab_.add_K_per_W[i + 1] - slab_.add_K_per_W[i]);
  }

  FieldPoint middle(std::size_t cell) const {
    return {floor_.corner.x_m + floor_.cell_m * (static_cast<double>(cell % floor_.columns) + 0.5),
            floor_.corner.y_m + floor_.cell_m * (static_cast<double>(cell / floor_.columns) + 0.5)};
  }

  double at(FieldPoint where, const PlanWater& water, const std::vector<double>& heat_W,
            const PiecesByCell& by_cell) const {
    const std::size_t cell = cell_at(floor_, where);
    if (cell == floor_.cell.size() || floor_.cell[cell].above_W_per_m2K <= 0.0) return 0.0;
    double sum = of_plate(where, cell);
    by_cell.for_each_near(where, reach_cells_, [&](std::size_t piece) {
      sum += heat_W[piece] * added_K_per_W(where, water.piece()[piece].where);
    });
    return sum;
  }

 private:
  const PlanSlab& slab_;
  const PlanFloor& floor_;
  const PlanPlate& plate_;
  const std::vector<double>& plate_degC_;
  double per_square_;
  std::size_t reach_cells_;
};

PlanTubeState state_of(const PlanRun& run, const PlanWater& water, const std::vector<double>& heat_W) {
  PlanTubeState state;
  double water_degC = run.supply_degC;
  for (std::size_t i = run.first; i < run.end; ++i) {
    const PlanWaterPiece& piece = water.piece()[i];
    const double fall_K = run.capacity_W_per_K > 0.0 ? heat_W[i] / run.capacity_W_per_K : 0.0;
    state.piece.push_back({piece.where, piece.at_m, piece.length_m, water_degC - 0.5 * fall_K, heat_W[i], 0.0});
    state.heat_W += heat_W[i];
    water_degC -= fall_K;
  }
  state.return_degC = water_degC;
  return state;
}

void add_heat(PlanField& field, const PlanSlab& slab, const PlanFloor& floor) {
  const double area_m2 = floor.cell_m * floor.cell_m;
  field.up_W.assign(floor.cell.size(), 0.0);
  for (std::size_t i = 0; i < floor.cell.size(); ++i) {
    const PlanCell& cell = floor.cell[i];
    if (cell.above_W_per_m2K <= 0.0) continue;
    const double plate = field.plate_degC[i];
    field.up_W[i] = area_m2 * up_W_per_m2K(slab, cell) * (plate - cell.room_degC);
    field.up_total_W += field.up_W[i];
    field.down_total_W += area_m2 * down_W_per_m2K(slab, cell) * (plate - cell.below_degC);
    field.edge_total_W += area_m2 * cell.edge_W_per_m2K * (plate - cell.edge_degC);
  }
}

void add_top(PlanField& field, const PlanSlab& slab, const PlanFloor& floor, const PlanPlate& plate,
             const PlanWater& water, const PlanWindow& within) {
  const auto counts = [&](FieldPoint at) {
    return at.x_m >= within.low.x_m && at.x_m <= within.high.x_m && at.y_m >= within.low.y_m &&
           at.y_m <= within.high.y_m;
  };
  std::vector<double> heat_W;
  for (const PlanTubeState& tube : field.tube) {
    for (const PlanPiece& piece : tube.piece) heat_W.push_back(piece.heat_W);
  }
  const PiecesByCell by_cell(floor, water);
  const Surface surface(slab, floor, plate, field.plate_degC);
  std::size_t row = 0;
  for (PlanTubeState& tube : field.tube) {
    for (PlanPiece& piece : tube.piece) {
      if (counts(piece.where))
        piece.over_degC =
            surface.at(piece.where, water, heat_W, by_cell) + surface.by_place(water.piece()[row], heat_W[row]);
      ++row;
    }
  }
  field.top_degC.assign(floor.cell.size(), 0.0);
  for (std::size_t i = 0; i < floor.cell.size(); ++i) {
    const FieldPoint middle = surface.middle(i);
    if (counts(middle)) field.top_degC[i] = surface.at(middle, water, heat_W, by_cell);
  }
}

}  // namespace

PlanField plan_field(const PlanSlab& slab, const PlanFloor& floor, const std::vector<PlanTube>& tubes,
                     const PlanOptions& options) {
  expect_sound(slab, floor);
  for (const PlanTube& tube : tubes) expect_sound(tube);
  expects(options.left_share > 0.0, "plan: a share left that is not above 0");
  const PlanPlate plate = plate_of(slab, floor);
  const PlanWater water(slab, floor, tubes, plate.even_degC);
  PlanSolution solution =
      solved(slab, floor, plate, water,
             {options.start ? options.start->plate_degC : std::vector<double>(), options.left_share});
  PlanField field;
  field.plate_degC = std::move(solution.plate_degC);
  field.left_share = solution.left_share;
  field.rounds = solution.rounds;
  field.end = solution.left_share <= options.left_share ? PlanEnd::solved : PlanEnd::rounds_spent;
  const std::vector<double> heat_W = water.heat_W(field.plate_degC, true);
  for (const PlanRun& run : water.run()) field.tube.push_back(state_of(run, water, heat_W));
  add_heat(field, slab, floor);
  if (options.with_top) add_top(field, slab, floor, plate, water, options.top_within);
  return field;
}

}  // namespace slabwright
