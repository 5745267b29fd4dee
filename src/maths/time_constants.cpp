#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <limits>

#include "maths/exponential.hpp"
#include "maths/linear_rows.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {

std::vector<double> time_constants_s(const LinearSystem& system) {
  expects_system(system);
  const Eigen::MatrixXd a = matrix_of(system.of_states, system.of_states.size());
  const Eigen::EigenSolver<Eigen::MatrixXd> modes(a, false);
  expects(modes.info() == Eigen::Success, "rates of a linear system not found");
  // What is left of a rate of zero after rounding.
  const double nothing = 1e-15 * column_norm(a);
  std::vector<double> constants;
  for (const auto& rate : modes.eigenvalues())
    constants.push_back(std::abs(rate.real()) <= nothing ? std::numeric_limits<double>::infinity()
                                                         : -1.0 / rate.real());
  std::sort(constants.begin(), constants.end());
  return constants;
}

}  // namespace slabwright
