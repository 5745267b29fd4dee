// The network in time: what its nodes store, and what is watched as rows over unknowns and drivers.
#pragma once
#include <Eigen/Dense>
#include <Eigen/SparseCore>
#include <vector>

#include "conduction/assembly.hpp"
#include "conduction/grid.hpp"
#include "conduction/network.hpp"

namespace slabwright::conduction {

/// Watched = of_temperatures T + of_drivers u. Rows are points, then boundaries.
struct OutputMap {
  Eigen::SparseMatrix<double, Eigen::RowMajor> of_temperatures;  ///< [output][unknown]
  Eigen::MatrixXd of_drivers;                                    ///< [output][driver]
  std::size_t points = 0, boundaries = 0;
};

OutputMap output_map(const Grid& grid, const Network& network, const Assembly& assembly,
                     const std::vector<FieldPoint>& watched, std::size_t boundaries);

struct TimeField {
  Grid grid;
  Network network;
  Assembly assembly;
  Eigen::VectorXd capacity_J_per_mK;  ///< [unknown]
  OutputMap outputs;
  Eigen::VectorXd let_free_W_per_m;  ///< [driver]: heat let free inside the section per unit
};

/// The caller has held the section's own contracts; those of its capacities are held here.
TimeField time_field(const FieldSection& section, const std::vector<FieldPoint>& watched, const FieldOptions& options);

/// Rows of a matrix from one on, as the public values show them.
std::vector<std::vector<double>> rows_of(const Eigen::MatrixXd& matrix, std::size_t first, std::size_t count);

/// Row of the material on top in each cell, numbered as conductivities are; `no_material` where there is nothing.
constexpr std::size_t no_material = static_cast<std::size_t>(-1);
std::vector<std::size_t> cell_materials(const Grid& grid, const std::vector<MaterialRectangle>& materials);

/// Calls visit(cell, node, quarter of the cell's area) for the four nodes around every cell between lines.
template <class Visit>
void for_each_quarter(const Grid& grid, Visit visit) {
  const std::vector<double>&x_m = grid.lines.x_m, &y_m = grid.lines.y_m;
  for (std::size_t j = 1; j < grid.rows(); ++j) {
    for (std::size_t i = 1; i < grid.columns(); ++i) {
      const double quarter_m2 = (x_m[i] - x_m[i - 1]) * (y_m[j] - y_m[j - 1]) / 4.0;
      const std::size_t cell = j * (grid.columns() + 1) + i;
      for (const std::size_t row : {j - 1, j})
        for (const std::size_t column : {i - 1, i}) visit(cell, grid.node(column, row), quarter_m2);
    }
  }
}

}  // namespace slabwright::conduction
