#pragma once
#include <Eigen/Dense>

#include "conduction/assembly.hpp"

namespace slabwright::conduction {

/// [node][driver]: steady temperatures per unit of each driver; rows of nodes outside the material are 0.
/// One factorisation for all drivers.
Eigen::MatrixXd steady_temperatures(const Assembly& assembly);

}  // namespace slabwright::conduction
