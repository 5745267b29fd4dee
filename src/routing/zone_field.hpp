// What a floor carries, summed over any polygon on it.
#pragma once
#include "cells.hpp"

namespace slabwright::routing {

/// A weight spread evenly over each cell. The sum over a polygon follows from its edges alone (Green's theorem).
class FloorField {
 public:
  FloorField(const Cells& cells, const std::vector<double>& weight);
  /// Over a counter-clockwise polygon; exact where its slanting edges are short beside a cell.
  double within(const Polygon& polygon) const;

 private:
  double below(std::size_t column, double y_m) const;
  std::vector<double> x_m_, y_m_;
  std::vector<double> below_;  ///< of a column, up to each row line, for a metre of its width
};

/// The way through open passages from a place to each cell, metres; -1 where none leads there.
std::vector<double> way_to_cells_m(const Cells& cells, Point from);

}  // namespace slabwright::routing
