// Scaling and squaring with the diagonal Pade form of order 13 (Higham 2005, SIAM J. Matrix Anal. Appl. 26(4)).
#include "maths/exponential.hpp"

#include <Eigen/LU>
#include <array>
#include <cmath>

namespace slabwright {
namespace {

using Eigen::MatrixXd;

// (26 - k)! 13! / (26! k! (13 - k)!), all times 26! / 13!: whole numbers.
constexpr std::array<double, 14> pade{64764752532480000.0,
                                      32382376266240000.0,
                                      7771770303897600.0,
                                      1187353796428800.0,
                                      129060195264000.0,
                                      10559470521600.0,
                                      670442572800.0,
                                      33522128640.0,
                                      1323241920.0,
                                      40840800.0,
                                      960960.0,
                                      16380.0,
                                      182.0,
                                      1.0};
// Up to this norm the form's own error is below rounding.
constexpr double largest_norm = 5.371920351148152;

MatrixXd pade_of(const MatrixXd& a) {
  const MatrixXd one = MatrixXd::Identity(a.rows(), a.cols());
  const MatrixXd a2 = a * a, a4 = a2 * a2, a6 = a4 * a2;
  const MatrixXd odd_high = pade[13] * a6 + pade[11] * a4 + pade[9] * a2;
  const MatrixXd even_high = pade[12] * a6 + pade[10] * a4 + pade[8] * a2;
  const MatrixXd odd_sum = a6 * odd_high + pade[7] * a6 + pade[5] * a4 + pade[3] * a2 + pade[1] * one;
  const MatrixXd odd = a * odd_sum;
  const MatrixXd even = a6 * even_high + pade[6] * a6 + pade[4] * a4 + pade[2] * a2 + pade[0] * one;
  return (even - odd).partialPivLu().solve(even + odd);
}

}  // namespace

double column_norm(const MatrixXd& matrix) {
  return matrix.size() == 0 ? 0.0 : matrix.cwiseAbs().colwise().sum().maxCoeff();
}

MatrixXd exponential(const MatrixXd& matrix) {
  if (matrix.size() == 0) return matrix;
  int halvings = 0;
  for (double norm = column_norm(matrix); norm > largest_norm; norm *= 0.5) ++halvings;
  MatrixXd power = pade_of(std::ldexp(1.0, -halvings) * matrix);
  for (int i = 0; i < halvings; ++i) power = (power * power).eval();
  return power;
}

}  // namespace slabwright
