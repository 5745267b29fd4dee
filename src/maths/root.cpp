// A root in a bracket.
#include <algorithm>
#include <cmath>
#include <limits>

#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {
namespace {

struct Probe {
  double x = 0.0;
  double value = 0.0;
};

// Three probes: the root lies between `newest` and `other`; `left` is the one the bracket has just let go of.
struct Bracket {
  Probe newest, other, left;
  const Probe& best() const { return std::abs(newest.value) < std::abs(other.value) ? newest : other; }
};

// Where in the bracket, as a share of the way from newest to other, the next probe should stand. The parabola through
// the three probes (x over value) is trusted only where it is monotone between them; elsewhere the middle is safer.
double next_share(const Bracket& b) {
  const auto& [a, o, l] = b;
  const double place = (a.x - o.x) / (l.x - o.x);
  const double height = (a.value - o.value) / (l.value - o.value);
  if (!(height * height < place && (1.0 - height) * (1.0 - height) < 1.0 - place)) return 0.5;
  return a.value / (o.value - a.value) * l.value / (o.value - l.value) +
         (l.x - a.x) / (o.x - a.x) * a.value / (l.value - a.value) * o.value / (l.value - o.value);
}

void take(Bracket& b, Probe found) {
  const bool same_side = std::signbit(found.value) == std::signbit(b.newest.value);
  b.left = same_side ? b.newest : b.other;
  if (!same_side) b.other = b.newest;
  b.newest = found;
}

Root ended(const Bracket& b, Stop stop, int rounds) {
  const Probe best = b.best();
  return {best.x, best.value, std::min(b.newest.x, b.other.x), std::max(b.newest.x, b.other.x), stop, rounds};
}

}  // namespace

Root root_in_bracket(const std::function<double(double)>& f, double low, double high, const RootOptions& options) {
  expects(std::isfinite(low) && std::isfinite(high) && low < high, "root_in_bracket: low < high");
  Bracket b{{low, f(low)}, {high, f(high)}, {}};
  b.left = b.other;
  double share = 0.5;
  for (int round = 0;; ++round) {
    if (!std::isfinite(b.newest.value) || !std::isfinite(b.other.value)) return ended(b, Stop::not_finite, round);
    const Probe best = b.best();
    if (std::abs(best.value) <= options.value_tolerance) return ended(b, Stop::converged, round);
    if (std::signbit(b.newest.value) == std::signbit(b.other.value)) return ended(b, Stop::no_solution, round);
    const double width = std::abs(b.other.x - b.newest.x);
    const double least = 2.0 * std::numeric_limits<double>::epsilon() * std::abs(best.x) + 0.5 * options.x_tolerance;
    if (width <= 2.0 * least) return ended(b, Stop::converged, round);
    if (round == options.most_rounds) return ended(b, Stop::rounds_spent, round);
    if (round > 0) share = next_share(b);
    // A step from either end of at least the tolerance makes sure that the last bracket closes from both sides.
    share = std::clamp(share, least / width, 1.0 - least / width);
    const double x = b.newest.x + share * (b.other.x - b.newest.x);
    take(b, {x, f(x)});
  }
}

}  // namespace slabwright
