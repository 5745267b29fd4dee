#include "winter/bill_draws.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "slabwright/units_exact.hpp"

namespace slabwright::winter {
namespace {

constexpr std::size_t bill_draws = 2048;
constexpr std::uint64_t draw_seed = 7;
/// Draws reach further than the normal law that they are from, or its tails could not be corrected.
constexpr double wider = 1.5;

/// Lower triangle L with L L' the matrix, which is positive.
MatrixRows root_of(const MatrixRows& matrix) {
  MatrixRows root(matrix.size(), std::vector<double>(matrix.size(), 0.0));
  for (std::size_t i = 0; i < matrix.size(); ++i) {
    for (std::size_t j = 0; j <= i; ++j) {
      double left = matrix[i][j];
      for (std::size_t k = 0; k < j; ++k) left -= root[i][k] * root[j][k];
      root[i][j] = i == j ? std::sqrt(std::max(left, 1e-12)) : left / root[j][j];
    }
  }
  return root;
}

/// Evenly spread draws of a normal law, two of each pair of coordinates (Box and Muller 1958).
std::vector<double> normal_of(const std::vector<double>& unit, std::size_t unknowns) {
  constexpr double whole_turn = 2.0 * pi;
  std::vector<double> normal;
  for (std::size_t i = 0; i < unit.size(); i += 2) {
    const double radius = std::sqrt(-2.0 * std::log(1.0 - unit[i]));
    normal.push_back(radius * std::cos(whole_turn * unit[i + 1]));
    normal.push_back(radius * std::sin(whole_turn * unit[i + 1]));
  }
  normal.resize(unknowns);
  return normal;
}

/// The loss to the air that all else asks for, and its standard error beside all else.
struct LossAlone {
  double likeliest = 0.0, error = 1.0;
};
LossAlone loss_beside(const HeldBill& q, const std::vector<ReadMonth>& months, std::vector<double> z) {
  constexpr int rounds = 3;
  LossAlone loss{z[air_loss], 1.0};
  for (int round = 0; round < rounds; ++round) {
    z[air_loss] = loss.likeliest;
    const std::vector<double> left = missed(q, months, z);
    z[air_loss] += bill_slope_step;
    std::vector<double> slope = missed(q, months, z);
    for (std::size_t i = 0; i < left.size(); ++i) slope[i] = (slope[i] - left[i]) / bill_slope_step;
    const double precision = 1.0 + squares_of(slope);
    const double uphill = loss.likeliest + std::inner_product(left.begin(), left.end(), slope.begin(), 0.0);
    loss.likeliest -= uphill / precision;
    loss.error = 1.0 / std::sqrt(precision);
  }
  return loss;
}

MatrixRows without_loss(const MatrixRows& covariance) {
  MatrixRows rest(covariance.begin() + 1, covariance.end());
  for (std::vector<double>& row : rest) row.erase(row.begin());
  return rest;
}

double weighted_quantile(const BillDraws& draws, const std::vector<std::size_t>& rising, std::size_t unknown,
                         double share) {
  const double all = std::accumulate(draws.weight.begin(), draws.weight.end(), 0.0);
  double sum = 0.0;
  for (const std::size_t i : rising) {
    sum += draws.weight[i];
    if (sum >= share * all) return draws.z[i][unknown];
  }
  return draws.z[rising.back()][unknown];
}

}  // namespace

/// Where two losses take each other's place the likely shops lie along a curve: so all else is drawn first, and the
/// loss to the air where all else asks for it.
BillDraws drawn(const HeldBill& q, const std::vector<ReadMonth>& months, const BillKnown& known) {
  const MatrixRows root = root_of(without_loss(known.covariance));
  const double best = known.squares + squares_of(known.likeliest);
  BillDraws draws;
  for (const std::vector<double>& unit : quasi_random(bill_draws, 4, draw_seed)) {
    const std::vector<double> normal = normal_of(unit, known.unknowns);
    std::vector<double> z = known.likeliest;
    for (std::size_t i = 1; i < z.size(); ++i)
      for (std::size_t j = 1; j <= i; ++j) z[i] += wider * root[i - 1][j - 1] * normal[j];
    const LossAlone loss = loss_beside(q, months, z);
    z[air_loss] = loss.likeliest + wider * loss.error * normal[air_loss];
    const double squares = squares_of(missed(q, months, z)) + squares_of(z);
    draws.weight.push_back(loss.error * std::exp(0.5 * (best - squares + squares_of(normal))));
    draws.z.push_back(std::move(z));
  }
  return draws;
}

Band band_in(const BillDraws& draws, std::size_t unknown) {
  std::vector<std::size_t> rising(draws.z.size());
  std::iota(rising.begin(), rising.end(), 0);
  std::sort(rising.begin(), rising.end(), [&](std::size_t a, std::size_t b) {
    return draws.z[a][unknown] != draws.z[b][unknown] ? draws.z[a][unknown] < draws.z[b][unknown] : a < b;
  });
  return {weighted_quantile(draws, rising, unknown, 0.05), weighted_quantile(draws, rising, unknown, 0.50),
          weighted_quantile(draws, rising, unknown, 0.95)};
}

}  // namespace slabwright::winter
