// The border of a region of cells without holes, walked with the region on the left.
#pragma once
#include "apron.hpp"

namespace slabwright::routing {

/// Cells of a region by cell: 1 where it has them.
using Region = std::vector<char>;

/// Sums of tube over the rows below, for each column: the tube inside any closed line on the lattice follows from its
/// horizontal steps alone (Green's theorem).
struct ColumnSums {
  int columns = 0, rows = 0;
  std::vector<double> below_m;
  explicit ColumnSums(const Cells& cells);
  double below(int i, int j) const { return below_m[static_cast<std::size_t>(j * columns + i)]; }
};

/// A lattice vertex is numbered j * (columns + 1) + i.
struct Border {
  std::vector<int> vertex;     ///< in order
  std::vector<double> sum_m;   ///< of Green's terms from the first vertex to each, and round to it again
  std::vector<int> place;      ///< of each lattice vertex on the border; -1 off it, -2 where it passes twice
  std::vector<int> gate_edge;  ///< for each gate, the place where its side begins
};

/// The border begins at the side of the first gate.
Border border_of(const Cells& cells, const Region& region, const std::vector<Gate>& gates, const ColumnSums& sums);

/// Cells of the region that can be reached from one of them; through open passages only, or over its blocked cells too.
Region reached(const Cells& cells, const Region& region, int from, bool through_passages);

}  // namespace slabwright::routing
