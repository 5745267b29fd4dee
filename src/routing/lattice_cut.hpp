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

/// Where a cut is to begin, and what it is to leave on its left.
struct CutWish {
  int middle = 1;  ///< between the gate before this one and this one
  double left_m = 0.0;
};
/// For each wish, the cheapest cuts, cheapest first. Price: how far off the tube on the left is, in half cells, and
/// what bends and steps cost. Of those found before the work is spent.
std::vector<std::vector<Cut>> cheapest_cuts(const Cells& cells, const Region& region, const Border& border,
                                            const ColumnSums& sums, const std::vector<CutWish>& wishes,
                                            const CutOptions& options, Work& work);

/// The part of the region on the left of the cut.
Region left_of(const Cells& cells, const Region& region, const Cut& cut);

}  // namespace slabwright::routing
