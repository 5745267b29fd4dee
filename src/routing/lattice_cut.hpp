// Lattice lines with few bends that cut a region of cells in two.
#pragma once
#include "border.hpp"
#include "cuts.hpp"

namespace slabwright::routing {

/// A line from the border to the border, by its lattice vertices. What lies to its left goes to the gates before it.
struct Cut {
  std::vector<int> vertex;
  double price = 0.0;
};

/// The cheapest cuts, cheapest first, that begin between gate `middle - 1` and gate `middle` and leave `left_m` of tube
/// on their left. Price: how far off that is, in half cells, and what bends and steps cost.
struct CutWish {
  int middle = 1;  ///< of this many gates
  int gates = 2;
  double left_m = 0.0;
};
/// The cheapest cuts, cheapest first, that begin between gate `middle - 1` and gate `middle` and leave `left_m` of tube
/// on their left. Price: how far off that is, in half cells, and what bends and steps cost.
std::vector<Cut> cheapest_cuts(const Cells& cells, const Region& region, const Border& border, const ColumnSums& sums,
                               const CutWish& wish, const CutOptions& options);

/// The part of the region on the left of the cut.
Region left_of(const Cells& cells, const Region& region, const Cut& cut);

}  // namespace slabwright::routing
