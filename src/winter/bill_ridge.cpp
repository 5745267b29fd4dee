// What a bill cannot tell apart.
#include <algorithm>
#include <cmath>

#include "winter/bill_ridge.hpp"

namespace slabwright::winter {
namespace {

/// Steps that are tried, the largest first; indoors as many kelvin.
constexpr double pair_steps_share[] = {0.3, 0.2, 0.1};
/// The bill is missed by one standard error more: nobody could tell.
constexpr double unseen_squares = 1.0;
/// What lies further off was not believed beforehand; what lies nearer is no exchange.
constexpr double believed_errors = 2.5, least_exchange_errors = 0.15;

double product(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// The other unknown follows as the bill wants it, by Gauss and Newton on the surface itself: over so long a way it is
/// not straight.
BillPair exchanged(const RidgeQuestion& of, BillUnknown one, BillUnknown other, double step_errors) {
  constexpr int rounds = 5;
  std::vector<double> z = of.known.likeliest;
  const double from = z[other];
  z[one] += step_errors;
  std::vector<double> left = missed(of.bill, of.months, z);
  for (int round = 0; round < rounds; ++round) {
    std::vector<double> up = z;
    up[other] += bill_slope_step;
    std::vector<double> slope = missed(of.bill, of.months, up);
    for (std::size_t i = 0; i < left.size(); ++i) slope[i] = (slope[i] - left[i]) / bill_slope_step;
    const double precision = squares_of(slope);
    if (precision <= 0.0) break;  // at the end of what the surface was made for
    z[other] = std::clamp(z[other] - product(left, slope) / precision, from - believed_errors, from + believed_errors);
    left = missed(of.bill, of.months, z);
  }
  return {one, other, step_errors, z[other] - from, squares_of(left) - of.known.squares};
}

}  // namespace

std::vector<BillPair> ridge_of(const RidgeQuestion& of) {
  const BillPriors& priors = of.bill.priors;
  struct Asked {
    BillUnknown one, other;
    double error;
  };
  const Asked asked[] = {{air_loss, indoor_warmth, priors.loss_share},
                         {air_loss, ground_loss, priors.loss_share},
                         {air_loss, other_use, priors.loss_share},
                         {ground_loss, indoor_warmth, priors.ground_share},
                         {ground_loss, other_use, priors.ground_share}};
  std::vector<BillPair> ridge;
  for (const Asked& pair : asked) {
    if (pair.other >= of.known.unknowns) continue;
    for (const double step_share : pair_steps_share) {
      const BillPair found = exchanged(of, pair.one, pair.other, std::log1p(step_share) / pair.error);
      const double follows = std::abs(found.other_errors);
      if (found.squares > unseen_squares || follows >= believed_errors || follows < least_exchange_errors) continue;
      ridge.push_back(found);
      break;
    }
  }
  std::stable_sort(ridge.begin(), ridge.end(), [](const BillPair& a, const BillPair& b) {
    return a.squares / (a.one_errors * a.one_errors) < b.squares / (b.one_errors * b.one_errors);
  });
  return ridge;
}

/// Power iteration: the covariance is small and positive.
std::vector<double> least_known(const BillKnown& known) {
  constexpr int rounds = 200;
  std::vector<double> direction(known.unknowns, 1.0);
  double variance = 0.0;
  for (int round = 0; round < rounds; ++round) {
    std::vector<double> next;
    for (const std::vector<double>& row : known.covariance) next.push_back(product(row, direction));
    variance = std::sqrt(product(next, next));
    for (std::size_t i = 0; i < next.size(); ++i) direction[i] = next[i] / variance;
  }
  const double sign = direction[air_loss] < 0.0 ? -1.0 : 1.0;
  for (double& part : direction) part *= sign * std::sqrt(variance);
  return direction;
}

}  // namespace slabwright::winter
