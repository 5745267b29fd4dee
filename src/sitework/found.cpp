// A drawing laid over what was found.
#include <algorithm>
#include <cmath>

#include "sitework/cholesky.hpp"
#include "sitework/nearest.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/sitework_found.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace sitework;

constexpr double degrees_per_rad = 180.0 / pi;
/// Nearest tube is looked for anew so often.
constexpr int rounds = 3;

/// How alike the local part is at two places, 0 to 1.
double alike(const RefitOptions& options, Point a, Point b) {
  const double r = distance_m(a, b) / options.fades_m;
  return std::exp(-0.5 * r * r);
}

/// By how much a small turn of the whole moves a place in a direction, for a turn that moves the mean arm by 1.
double turned(const Refit& fit, Point place, Point direction) {
  const Point arm = minus(place, fit.middle);
  return (direction.y_m * arm.x_m - direction.x_m * arm.y_m) / fit.mean_arm_m;
}

/// What the displacements of two places in two directions have in common.
double covariance_m2(const Refit& fit, Point a, Point a_way, Point b, Point b_way) {
  const double whole = dot(a_way, b_way) * (1.0 + alike(fit.options, a, b));
  return fit.usual.sideways_m * fit.usual.sideways_m * (whole + turned(fit, a, a_way) * turned(fit, b, b_way));
}

std::vector<double> with_sightings_m2(const Refit& fit, Point place, Point direction) {
  std::vector<double> row;
  for (const Sighting& s : fit.sighting) row.push_back(covariance_m2(fit, place, direction, s.drawn, s.direction));
  return row;
}

double product(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

double displaced_m(const Refit& fit, Point place, Point direction) {
  return product(with_sightings_m2(fit, place, direction), fit.weight_per_m);
}

Point displaced(const Refit& fit, Point place) {
  return {displaced_m(fit, place, {1.0, 0.0}), displaced_m(fit, place, {0.0, 1.0})};
}

/// The middle of all tube, and how far it lies from there in the mean square.
void place_middle(const std::vector<Path>& loops, Refit& fit) {
  double tube_m = 0.0, square_m3 = 0.0;
  Point sum{0.0, 0.0};
  for (const Path& path : loops) {
    for (const Piece& piece : path) {
      const double length = length_m(piece);
      tube_m += length;
      sum = plus(sum, {0.5 * length * (piece.from.x_m + piece.to.x_m), 0.5 * length * (piece.from.y_m + piece.to.y_m)});
    }
  }
  expects(tube_m > 0.0, "refit: no tube is drawn");
  fit.middle = {sum.x_m / tube_m, sum.y_m / tube_m};
  for (const Path& path : loops) {
    for (const Piece& piece : path) {
      const Point arm =
          minus({0.5 * (piece.from.x_m + piece.to.x_m), 0.5 * (piece.from.y_m + piece.to.y_m)}, fit.middle);
      square_m3 += length_m(piece) * dot(arm, arm);
    }
  }
  fit.mean_arm_m = std::max(std::sqrt(square_m3 / tube_m), 0.1);
}

/// The sightings of the places that are not left out; `row` tells which place each is of.
struct Sightings {
  std::vector<Sighting> all;
  std::vector<std::size_t> row;
};

/// A place found near tube says how far that lies off, square to it; a spot that is known says so both ways.
Sightings sightings_of(const std::vector<Path>& loops, const std::vector<FoundPoint>& found, Refit& fit) {
  Sightings sightings;
  for (std::size_t i = 0; i < found.size(); ++i) {
    FoundTube& tube = fit.found[i];
    if (found[i].drawn) {
      tube.drawn = *found[i].drawn;
      const Point off = minus(found[i].place, tube.drawn);
      if (!tube.left_out) {
        sightings.all.push_back({tube.drawn, {1.0, 0.0}, off.x_m});
        sightings.all.push_back({tube.drawn, {0.0, 1.0}, off.y_m});
        sightings.row.insert(sightings.row.end(), {i, i});
      }
      continue;
    }
    const Foot foot = nearest_of(minus(found[i].place, displaced(fit, found[i].place)), loops).foot;
    const Point square{-foot.ahead.y_m, foot.ahead.x_m};
    tube.drawn = foot.place;
    if (tube.left_out) continue;
    sightings.all.push_back({foot.place, square, dot(square, minus(found[i].place, foot.place))});
    sightings.row.push_back(i);
  }
  return sightings;
}

void weigh(Refit& fit) {
  const std::size_t n = fit.sighting.size();
  std::vector<std::vector<double>> covariance(n);
  std::vector<double> off_m;
  for (std::size_t i = 0; i < n; ++i) {
    covariance[i] = with_sightings_m2(fit, fit.sighting[i].drawn, fit.sighting[i].direction);
    covariance[i][i] += fit.options.measured_m * fit.options.measured_m;
    off_m.push_back(fit.sighting[i].off_m);
  }
  fit.inverse_per_m2 = inverse_of(covariance);
  fit.weight_per_m.clear();
  for (const std::vector<double>& row : fit.inverse_per_m2) fit.weight_per_m.push_back(product(row, off_m));
}

/// The sighting that the others speak against most, in standard deviations of what they say: from the inverse of the
/// covariance, without fitting anew for each.
struct Strangest {
  std::size_t sighting = 0;
  double ratio = 0.0;
};
Strangest strangest(const Refit& fit) {
  Strangest worst;
  for (std::size_t i = 0; i < fit.sighting.size(); ++i) {
    const double ratio = std::abs(fit.weight_per_m[i]) / std::sqrt(fit.inverse_per_m2[i][i]);
    if (ratio > worst.ratio) worst = {i, ratio};
  }
  return worst;
}

void note_what_is_left(const std::vector<FoundPoint>& found, Refit& fit) {
  for (std::size_t i = 0; i < found.size(); ++i) {
    FoundTube& tube = fit.found[i];
    const Point off = minus(tube.place, tube.drawn), left = minus(off, displaced(fit, tube.drawn));
    tube.off_m = std::sqrt(dot(off, off));
    tube.left_m = std::sqrt(dot(left, left));
    if (found[i].drawn) continue;
    // Along its tube a found place says nothing.
    tube.left_m = tube.off_m > 0.0 ? std::abs(dot(left, unit(off))) : 0.0;
  }
  const double variance_m2 = fit.usual.sideways_m * fit.usual.sideways_m;
  fit.shift = {0.0, 0.0};
  double turn = 0.0;
  for (std::size_t i = 0; i < fit.sighting.size(); ++i) {
    const Sighting& s = fit.sighting[i];
    const double weight = variance_m2 * fit.weight_per_m[i];
    fit.shift = plus(fit.shift, {weight * s.direction.x_m, weight * s.direction.y_m});
    turn += weight * turned(fit, s.drawn, s.direction);
  }
  fit.turn_deg = turn / fit.mean_arm_m * degrees_per_rad;
}

}  // namespace

Placing usual_placing(System system) {
  if (system == System::us) return {0.75 * inch_m, 0.25 * inch_m};
  return {0.020, 0.006};
}

Refit refit(const std::vector<Path>& loops, const Placing& usual, const std::vector<FoundPoint>& found,
            const RefitOptions& options) {
  expects(!found.empty() && usual.sideways_m > 0.0, "refit: nothing found, or nothing in doubt");
  expects(options.measured_m > 0.0 && options.fades_m > 0.0, "refit: a measured place is good to some length");
  Refit fit;
  fit.usual = usual;
  fit.options = options;
  place_middle(loops, fit);
  for (const FoundPoint& point : found) fit.found.push_back({point.place, point.place, 0.0, 0.0, false});
  const std::size_t may_leave = found.size() < 3 ? 0 : std::max<std::size_t>(1, found.size() / 4);
  std::size_t left_out = 0;
  for (int round = 0; round < rounds;) {
    Sightings sightings = sightings_of(loops, found, fit);
    fit.sighting = std::move(sightings.all);
    weigh(fit);
    const Strangest worst = strangest(fit);
    if (worst.ratio > options.strange_ratio && left_out < may_leave) {
      fit.found[sightings.row[worst.sighting]].left_out = true;
      ++left_out;
      continue;
    }
    ++round;
  }
  note_what_is_left(found, fit);
  return fit;
}

Point displacement_at(const TubeDoubt& doubt, Point place) {
  return doubt.refit ? displaced(*doubt.refit, place) : Point{0.0, 0.0};
}

double sideways_at_m(const TubeDoubt& doubt, Point place, Point direction) {
  const double usual_m2 = doubt.usual.sideways_m * doubt.usual.sideways_m;
  if (!doubt.refit) return doubt.usual.sideways_m;
  const Refit& fit = *doubt.refit;
  const std::vector<double> common = with_sightings_m2(fit, place, direction);
  double known_m2 = 0.0;
  for (std::size_t i = 0; i < common.size(); ++i) known_m2 += common[i] * product(fit.inverse_per_m2[i], common);
  double variance_m2 = std::min(usual_m2, covariance_m2(fit, place, direction, place, direction) - known_m2);
  // Something is odd near a place that does not fit.
  for (const FoundTube& tube : fit.found)
    if (tube.left_out) variance_m2 += tube.left_m * tube.left_m * alike(fit.options, place, tube.drawn);
  return std::sqrt(std::max(variance_m2, 0.0));
}

}  // namespace slabwright
