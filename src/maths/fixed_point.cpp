// x = next(x) with one relaxation factor for all unknowns.
#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {
namespace {

using Vector = std::vector<double>;

// What one step would change, each unknown measured by its own scale, so that a kelvin and a litre can be added.
Vector scaled_change(const Vector& from, const Vector& to, const Vector& scale) {
  expects(to.size() == from.size(), "fixed_point: next() gave another number of unknowns");
  Vector change(from.size());
  for (std::size_t i = 0; i < from.size(); ++i) change[i] = (to[i] - from[i]) / scale[i];
  return change;
}

std::size_t worst_of(const Vector& change) {
  std::size_t worst = 0;
  for (std::size_t i = 0; i < change.size(); ++i) {
    if (!std::isfinite(change[i])) return i;
    if (std::abs(change[i]) > std::abs(change[worst])) worst = i;
  }
  return worst;
}

// The share that would have made the last change vanish, were the map a straight line.
double aitken(double share, const Vector& before, const Vector& now, const FixedPointOptions& options) {
  double along = 0.0, length = 0.0;
  for (std::size_t i = 0; i < now.size(); ++i) {
    const double difference = now[i] - before[i];
    along += before[i] * difference;
    length += difference * difference;
  }
  if (!(length > 0.0)) return share;
  return std::clamp(-share * along / length, options.least_share, options.most_share);
}

}  // namespace

FixedPoint fixed_point(Vector x, const Vector& scale, const NextPoint& next, const FixedPointOptions& options) {
  expects(x.size() == scale.size(), "fixed_point: a scale for each unknown");
  expects(std::all_of(scale.begin(), scale.end(), [](double s) { return s > 0.0; }), "fixed_point: scales over zero");
  FixedPoint best;
  Vector before;
  double share = options.first_share;
  for (int round = 1; round <= options.most_rounds; ++round) {
    const Vector change = scaled_change(x, next(x), scale);
    const std::size_t at = worst_of(change);
    const double worst = change.empty() ? 0.0 : std::abs(change[at]);
    best.rounds = round;
    if (!std::isfinite(worst)) {
      if (round == 1) best.x = x, best.worst = worst;
      best.stop = Stop::not_finite;
      best.worst_unknown = at;
      return best;
    }
    if (round == 1 || worst < best.worst) best.x = x, best.worst = worst, best.worst_unknown = at;
    if (worst <= options.tolerance) {
      best.stop = Stop::converged;
      return best;
    }
    if (round > 1) share = aitken(share, before, change, options);
    for (std::size_t i = 0; i < x.size(); ++i) x[i] += share * change[i] * scale[i];
    before = change;
  }
  return best;
}

}  // namespace slabwright
