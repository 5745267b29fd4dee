// Tube cut into pieces on the cells of a plan, and its water on the way through them.
#pragma once
#include <array>
#include <cstddef>
#include <vector>

#include "slabwright/conduction_plan.hpp"

namespace slabwright::conduction {

/// Where a piece is fed to the plate and read from it: three by three cells from `first` on, and the share of each.
/// All shares are 0 where there is no floor.
struct PlanPlace {
  std::size_t first = 0;
  std::array<double, 9> share{};
};
/// Shares of cells without floor go to the others.
PlanPlace place_of(const PlanFloor& floor, FieldPoint where);
double read(const PlanFloor& floor, const PlanPlace& place, const std::vector<double>& of_cell);
void feed(const PlanFloor& floor, const PlanPlace& place, double amount, std::vector<double>& to_cell);

/// The cell that a point lies in; the number of cells where it lies in none.
std::size_t cell_at(const PlanFloor& floor, FieldPoint where);

/// A tube's pieces, one after the other.
struct PlanRun {
  double capacity_W_per_K = 0.0, supply_degC = 0.0;
  std::size_t first = 0, end = 0;  ///< rows in PlanWater::piece
};

struct PlanWaterPiece {
  FieldPoint where;
  double at_m, length_m;
  PlanPlace place;
  double given_W_per_K;     ///< heat for each kelvin of the water that enters over what the piece stands in
  double own_ratio = 0.0;   ///< of its own line, felt at its place: tells how the line lies among the cells
  double other_degC = 0.0;  ///< what it stands in beside the plate's part
};

/// Water of all tubes. What a piece stands in is `felt_share` times the plate at its place, and its `other_degC`.
class PlanWater {
 public:
  /// `even_degC` [cell]: what plate and floor would have without tube.
  PlanWater(const PlanSlab& slab, const PlanFloor& floor, const std::vector<PlanTube>& tubes,
            const std::vector<double>& even_degC);

  /// [piece], W. Driven: by the supply of all tubes and all temperatures round the floor; else by the plate alone.
  std::vector<double> heat_W(const std::vector<double>& plate_degC, bool driven) const;

  const std::vector<PlanWaterPiece>& piece() const { return piece_; }
  const std::vector<PlanRun>& run() const { return run_; }
  /// A piece's heat to the cells.
  void add_to_cells(const std::vector<double>& piece_W, double times, std::vector<double>& cell_W) const;

 private:
  void cut(const PlanTube& tube, double longest_m);
  void add_conductances(const PlanSlab& slab, const std::vector<PlanTube>& tubes);

  const PlanFloor& floor_;
  double felt_share_;
  std::vector<PlanWaterPiece> piece_;
  std::vector<PlanRun> run_;
};

}  // namespace slabwright::conduction
