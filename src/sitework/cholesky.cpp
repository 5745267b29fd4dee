#include "sitework/cholesky.hpp"

#include <cmath>
#include <cstddef>

#include "slabwright/contract.hpp"

namespace slabwright::sitework {
namespace {

using Matrix = std::vector<std::vector<double>>;

/// L with L L^T the matrix.
Matrix square_root(const Matrix& matrix) {
  const std::size_t n = matrix.size();
  Matrix lower(n, std::vector<double>(n, 0.0));
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j <= i; ++j) {
      double rest = matrix[i][j];
      for (std::size_t k = 0; k < j; ++k) rest -= lower[i][k] * lower[j][k];
      if (i == j) {
        expects(rest > 0.0, "inverse_of: a matrix with an eigenvalue of zero or below");
        lower[i][i] = std::sqrt(rest);
      } else {
        lower[i][j] = rest / lower[j][j];
      }
    }
  }
  return lower;
}

}  // namespace

Matrix inverse_of(const Matrix& matrix) {
  const Matrix lower = square_root(matrix);
  const std::size_t n = matrix.size();
  Matrix inverse(n, std::vector<double>(n, 0.0));
  for (std::size_t column = 0; column < n; ++column) {
    std::vector<double>& x = inverse[column];
    x[column] = 1.0;
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t k = 0; k < i; ++k) x[i] -= lower[i][k] * x[k];
      x[i] /= lower[i][i];
    }
    for (std::size_t i = n; i-- > 0;) {
      for (std::size_t k = i + 1; k < n; ++k) x[i] -= lower[k][i] * x[k];
      x[i] /= lower[i][i];
    }
  }
  return inverse;
}

}  // namespace slabwright::sitework
