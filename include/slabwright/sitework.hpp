// What the people on the site do with the loops: which coils to buy and how to cut them, what else to buy, where to
// snap lines.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/routing.hpp"
#include "slabwright/sitework_materials.hpp"
#include "slabwright/sitework_stakes.hpp"

namespace slabwright {

/// A loop cut off a coil.
struct CutPiece {
  std::string loop;
  double length_m = 0.0;  ///< with what is left to work with at its ends
  double from_m = 0.0;    ///< where it begins on the coil, by the coil's own length marks from its outer end ...
  double to_m = 0.0;      ///< ... and ends
};

struct CutCoil {
  int number = 0;         ///< in the list, from 1: what is written on it
  double length_m = 0.0;  ///< as it is sold
  double left_m = 0.0;
  std::vector<CutPiece> piece;  ///< in the order of the loops
};

/// No splice lies in the slab: a loop is cut from one coil.
struct CutList {
  std::vector<CutCoil> coil;  ///< longest first, then in the order of their first loops
  double bought_m = 0.0;
  double left_m = 0.0;
  bool least = true;   ///< no other choice of coils leaves less
  double gap_m = 0.0;  ///< how much less another choice could buy at most, where that is not known
};

/// Coils of these lengths, as many as are wanted, for these pieces: the least length bought, and of those that buy the
/// same the fewest coils: found among all ways for up to 12 pieces. For more the longest pieces come first, each off
/// the coil that it leaves least of; then a search goes through all ways that could buy less, until it ends or has
/// looked at 300 000 coils. `bound_m` is proved: no way buys less. `coil` holds rows of `pieces`. Empty, with `least`,
/// where a piece is longer than every coil. Pieces and coils > 0.
struct CoilChoice {
  std::vector<std::vector<std::size_t>> coil;  ///< [coil]: pieces
  std::vector<double> length_m;                ///< [coil]
  bool least = true;                           ///< no way buys less
  double bound_m = 0.0;                        ///< what any way buys at least
};
CoilChoice cut_coils(const std::vector<double>& pieces_m, const std::vector<double>& coils_m);

/// Coils as they are sold, practice: 100, 300, 500 and 1000 ft, or 100, 120, 200, 240 and 500 m.
std::vector<double> usual_coils_m(System system);

/// The cut list of a plan. Absent where loops are only counted, in a slab that is poured, and where no coil is as long
/// as the longest loop ("sitework.no-coil", a warning).
Checked<CutList> cut_list(const Design& design, const LoopPlan& plan);

/// What the loops are laid with. Absent in a slab that is poured. Where loops are not drawn, ties are reckoned from
/// their lengths and sleeves are not counted.
std::optional<Materials> materials_of(const Design& design, const LoopPlan& plan);

/// Lines and walks of a plan whose loops are all drawn, from the walls told_from() picks, to 1/4 in or 5 mm.
std::optional<StakeOut> stake_out(const Design& design, const LoopPlan& plan);

Record record_of(CutPiece&);
Record record_of(CutCoil&);
Record record_of(CutList&);

}  // namespace slabwright
