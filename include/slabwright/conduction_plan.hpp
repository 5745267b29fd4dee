// A heated floor in plan: the slab as a plate of square cells, tube as it lies, its water cooling on the way. Steady.
#pragma once
#include <cstddef>
#include <vector>

#include "slabwright/conduction.hpp"
#include "slabwright/conduction_tube_row.hpp"

namespace slabwright {

/// What a piece of tube that has other tube near it lays between its own outer face and the plate.
struct PlanNear {
  double other_ratio;  ///< tube of other passes felt there, as metres in a cell over the cell's side; rising
  double mK_per_W;
};

/// A slab made ready for plans of one fineness. Across its depth temperatures settle within a hand's breadth, so that
/// one shape of profile (the slowest that tube heats) spreads in plan as in a plate; what tube adds near itself is
/// known from the same layers.
struct PlanSlab {
  double cell_m = 0.0;
  double up_m2K_per_W = 0.0;    ///< from the tubes' plane to the top face
  double down_m2K_per_W = 0.0;  ///< and to the bottom of the last layer
  double along_W_per_K = 0.0;   ///< what the plate passes along itself, per metre of width: about thickness times k
  double felt_share = 0.0;      ///< of the plate's rise, seen by a tube beside its own part
  double shown_share = 0.0;     ///< of the plate's rise, seen by the top face beside what tubes near it add
  std::vector<PlanNear> near;
  double place_mK_per_W = 0.0;      ///< by which that changes with `own_ratio`, which tells a line's place among cells
  double piece_m = 0.0;             ///< longest pieces of tube: a cell, less under a thin cover, whose peak is narrow
  double reach_m = 0.0;             ///< beyond which tube adds nothing of its own to the top face
  std::vector<double> add_K_per_W;  ///< what it adds, by the square of the distance, 0 to the reach, evenly spaced
};

/// `row` is the slab with its tubes at the usual spacing, `tube_mK_per_W` a usual wall and film. At that spacing and at
/// closer ones plans agree with rows of tubes by construction. Cells of a quarter of the spacing are meant; of a third
/// they are still good.
/// Broken contracts (std::logic_error): those of tube_row_responses; a cell not above 0.
PlanSlab plan_slab(const TubeRow& row, double tube_mK_per_W, double cell_m);

/// A plate's outermost `zone_m`, where heat leaves sideways. `W_per_mK` of edge leave with the tubes' plane from
/// `held_m` in and the room behind `film_m2K_per_W` both a kelvin over what takes it.
struct PlanRim {
  double zone_m = 0.0, held_m = 0.0;
  double film_m2K_per_W = 0.0;
  double W_per_mK = 0.0;
};
/// The zone's PlanCell::edge_W_per_m2K that lets as much heat through, what the plate itself is in its way included.
/// Broken contracts (std::logic_error): a zone or film not above 0, a negative heat.
double rim_W_per_m2K(const PlanSlab& slab, const PlanRim& rim);

/// What a cell lies between. `above` 0: no floor here.
struct PlanCell {
  double above_W_per_m2K = 0.0;  ///< film on the top face, with what TubeRow::above_W_per_m2K lumps into it
  double room_degC = 0.0;
  double below_W_per_m2K = 0.0;  ///< from the last layer's bottom; 0 passes nothing
  double below_degC = 0.0;
  double edge_W_per_m2K = 0.0;  ///< from the tubes' plane sideways, where the cell lies at a cold edge
  double edge_degC = 0.0;
};

/// Cells side by side; cell (i, j), i along x, is number j * columns + i. No heat passes between floor and no floor.
struct PlanFloor {
  FieldPoint corner;  ///< lower left of cell (0, 0)
  double cell_m = 0.0;
  std::size_t columns = 0, rows = 0;
  std::vector<PlanCell> cell;
};

/// A length of tube in a sleeve.
struct PlanSleeve {
  double from_m, to_m;  ///< along the tube; pieces whose middle lies between
  double mK_per_W;      ///< that the sleeve adds, 0 or more
};

/// Water enters at the first corner. Without flow it gives no heat.
struct PlanTube {
  std::vector<FieldPoint> line;  ///< two corners or more; bends as short straight lines
  double supply_degC = 0.0;
  double capacity_W_per_K = 0.0;  ///< flow times density times specific heat, 0 or more
  double tube_mK_per_W = 0.0;     ///< wall and water film
  std::vector<PlanSleeve> sleeve;
};

/// Tube in equal pieces, none longer than PlanSlab::piece_m.
struct PlanPiece {
  FieldPoint where;  ///< its middle
  double at_m = 0.0, length_m = 0.0;
  double water_degC = 0.0;  ///< mean
  double heat_W = 0.0;
  double over_degC = 0.0;  ///< top face right over it
};

struct PlanTubeState {
  std::vector<PlanPiece> piece;
  double return_degC = 0.0;
  double heat_W = 0.0;
};

enum class PlanEnd {
  solved,
  rounds_spent  ///< `left_share` is what is left
};

/// Heat of the water = up + down + sideways, but for `left_share`.
struct PlanField {
  std::vector<double> top_degC;    ///< [cell], top face at the cell's middle; 0 where there is no floor
  std::vector<double> plate_degC;  ///< [cell], at the tubes' plane, tube's own part left out
  std::vector<double> up_W;        ///< [cell]
  double up_total_W = 0.0, down_total_W = 0.0, edge_total_W = 0.0;
  std::vector<PlanTubeState> tube;
  double left_share = 0.0;  ///< of the drive, left in the worst sense of a mean square
  int rounds = 0;
  PlanEnd end = PlanEnd::solved;
};

/// A rectangle along the axes, sides included.
struct PlanWindow {
  FieldPoint low, high;
};

struct PlanOptions {
  /// A field of the same floor from which to begin; null begins cold.
  const PlanField* start = nullptr;
  bool with_top = true;                             ///< false leaves out all temperatures of the top face
  PlanWindow top_within{{-1e9, -1e9}, {1e9, 1e9}};  ///< and this all those outside it, which are 0 then
  double left_share = 1e-9;  ///< of the drive, above 0: heat is then right to about a hundred times as much
};

/// Plate and water as one linear system: every piece of tube passes its water on to the next, cooled exactly towards
/// the plate. Solved by a Krylov method (stabilised bi-conjugate gradients, van der Vorst 1992) with an incomplete
/// factor of the plate. Tube that lies off the floor gives no heat.
/// Broken contracts (std::logic_error): cells of another size than the slab's, counts that do not fit, a tube of one
/// corner or without length, a negative capacity, resistance or coefficient, a number that is not finite.
PlanField plan_field(const PlanSlab& slab, const PlanFloor& floor, const std::vector<PlanTube>& tubes,
                     const PlanOptions& options = {});

}  // namespace slabwright
