// Where the grid lines lie, and what is between them.
#pragma once
#include <cstddef>
#include <vector>

#include "slabwright/conduction.hpp"

namespace slabwright::conduction {

/// Coordinates, rising. The lines at even places are the grid of half the fineness, named lines included.
struct Lines {
  std::vector<double> x_m, y_m;
};

/// Nodes lie where lines cross: node (i, j) is number j * columns + i, i along x.
/// Cell (i, j) is the one below and to the left of node (i, j); a ring of cells with nothing in them goes round, so
/// that the cells around any node are (i, j), (i + 1, j), (i, j + 1), (i + 1, j + 1).
struct Grid {
  Lines lines;
  std::vector<double> conductivity_W_per_mK;  ///< of cell (i, j) at j * (columns + 1) + i; 0 where there is nothing

  std::size_t columns() const { return lines.x_m.size(); }
  std::size_t rows() const { return lines.y_m.size(); }
  std::size_t nodes() const { return columns() * rows(); }
  std::size_t node(std::size_t i, std::size_t j) const { return j * columns() + i; }
  double& conductivity(std::size_t i, std::size_t j) { return conductivity_W_per_mK[j * (columns() + 1) + i]; }
  double conductivity(std::size_t i, std::size_t j) const { return conductivity_W_per_mK[j * (columns() + 1) + i]; }
};

/// Lines on every named coordinate of the section and between them, close together where the field is steep.
Lines graded_lines(const FieldSection& section, const FieldOptions& options);
Lines every_second(const Lines& lines);
Grid grid_on(Lines lines, const std::vector<MaterialRectangle>& materials);

/// Two coordinates nearer than this are one line: sums of metres differ in their last bits, and no detail is as thin.
constexpr double same_line_m = 1e-7;
/// The line at a coordinate that was named when the lines were drawn.
std::size_t line_at(const std::vector<double>& lines_m, double at_m);

}  // namespace slabwright::conduction
