// The exponential of a small matrix.
#pragma once
#include <Eigen/Core>

namespace slabwright {

/// 1-norm: the largest sum of sizes in a column.
double column_norm(const Eigen::MatrixXd& matrix);

/// exp(matrix), square and finite. Its relative error is about 1e-16 times the norm, or 1e-15.
Eigen::MatrixXd exponential(const Eigen::MatrixXd& matrix);

}  // namespace slabwright
