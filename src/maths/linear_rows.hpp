// Rows of numbers to matrices, and what a linear system must be.
#pragma once
#include <Eigen/Core>
#include <cstddef>

#include "slabwright/maths_linear.hpp"

namespace slabwright {

/// `columns` may be 0.
Eigen::MatrixXd matrix_of(const MatrixRows& rows, std::size_t columns);
std::size_t input_count(const LinearSystem& system);

/// Throws std::logic_error unless A is square, B has as many rows, one width, and all is finite.
void expects_system(const LinearSystem& system);

}  // namespace slabwright
