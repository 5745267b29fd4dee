// Small symmetric matrices.
#pragma once
#include <vector>

namespace slabwright::sitework {

/// The inverse of a symmetric matrix whose eigenvalues are all above zero (std::logic_error where one is not), by
/// Cholesky's square root.
std::vector<std::vector<double>> inverse_of(const std::vector<std::vector<double>>& matrix);

}  // namespace slabwright::sitework
