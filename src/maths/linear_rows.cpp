#include "maths/linear_rows.hpp"

#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

bool finite_rows(const MatrixRows& rows, std::size_t columns) {
  for (const auto& row : rows) {
    if (row.size() != columns) return false;
    for (const double x : row)
      if (!std::isfinite(x)) return false;
  }
  return true;
}

}  // namespace

Eigen::MatrixXd matrix_of(const MatrixRows& rows, std::size_t columns) {
  Eigen::MatrixXd matrix(static_cast<Eigen::Index>(rows.size()), static_cast<Eigen::Index>(columns));
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (std::size_t j = 0; j < columns; ++j)
      matrix(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) = rows[i][j];
  return matrix;
}

std::size_t input_count(const LinearSystem& system) {
  return system.of_inputs.empty() ? 0 : system.of_inputs.front().size();
}

void expects_system(const LinearSystem& system) {
  const std::size_t states = system.of_states.size();
  expects(states > 0 && finite_rows(system.of_states, states), "a linear system's states: square and finite");
  expects(system.of_inputs.size() == states && finite_rows(system.of_inputs, input_count(system)),
          "a linear system's inputs: a row for each state, of one width, finite");
}

}  // namespace slabwright
