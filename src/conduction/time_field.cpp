#include "conduction/time_field.hpp"

#include <cmath>

#include "conduction/index.hpp"
#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

Eigen::VectorXd capacities(const FieldSection& section, const Grid& grid, const Assembly& assembly) {
  for (const MaterialRectangle& material : section.materials) {
    expects(std::isfinite(material.heat_capacity_J_per_m3K) && material.heat_capacity_J_per_m3K >= 0.0,
            "conduction: a heat capacity must not be below 0");
  }
  const std::vector<std::size_t> materials = cell_materials(grid, section.materials);
  std::vector<double> by_node(grid.nodes(), 0.0);
  for_each_quarter(grid, [&](std::size_t cell, std::size_t node, double quarter_m2) {
    if (materials[cell] != no_material)
      by_node[node] += quarter_m2 * section.materials[materials[cell]].heat_capacity_J_per_m3K;
  });
  Eigen::VectorXd capacity(at(assembly.unknown_nodes.size()));
  for (std::size_t u = 0; u < assembly.unknown_nodes.size(); ++u) capacity(at(u)) = by_node[assembly.unknown_nodes[u]];
  return capacity;
}

}  // namespace

std::vector<std::vector<double>> rows_of(const Eigen::MatrixXd& matrix, std::size_t first, std::size_t count) {
  std::vector<std::vector<double>> rows(count);
  for (std::size_t row = 0; row < count; ++row) {
    const auto values = matrix.row(static_cast<Eigen::Index>(first + row));
    rows[row].assign(values.begin(), values.end());
  }
  return rows;
}

std::vector<std::size_t> cell_materials(const Grid& grid, const std::vector<MaterialRectangle>& materials) {
  std::vector<std::size_t> of_cell((grid.columns() + 1) * (grid.rows() + 1), no_material);
  for (std::size_t m = 0; m < materials.size(); ++m) {
    const MaterialRectangle& rectangle = materials[m];
    const std::size_t right = line_at(grid.lines.x_m, rectangle.x1_m), top = line_at(grid.lines.y_m, rectangle.y1_m);
    for (std::size_t j = line_at(grid.lines.y_m, rectangle.y0_m) + 1; j <= top; ++j) {
      for (std::size_t i = line_at(grid.lines.x_m, rectangle.x0_m) + 1; i <= right; ++i)
        of_cell[j * (grid.columns() + 1) + i] = m;
    }
  }
  return of_cell;
}

TimeField time_field(const FieldSection& section, const std::vector<FieldPoint>& watched, const FieldOptions& options) {
  TimeField field;
  field.grid = grid_on(graded_lines(section, options), section.materials);
  field.network = network_of(section, field.grid);
  field.assembly = assemble(field.network, section.drivers.size());
  field.capacity_J_per_mK = capacities(section, field.grid, field.assembly);
  field.outputs = output_map(field.grid, field.network, field.assembly, watched, section.boundaries.size());
  field.let_free_W_per_m = Eigen::VectorXd::Zero(at(section.drivers.size()));
  for (const HeatInput& heat : field.network.heat) field.let_free_W_per_m(at(heat.driver.at)) += heat.heat_W_per_m;
  return field;
}

}  // namespace slabwright::conduction
