// How near a hole comes to tube, and how likely it strikes it.
#include <algorithm>
#include <cmath>

#include "sitework/nearest.hpp"
#include "sitework/strike.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/sitework_drill.hpp"

namespace slabwright {
namespace sitework {
namespace {

/// Passes farther away than so many standard deviations count for nothing.
constexpr double reach_ratio = 8.0;

/// A tenth of a hundredth of a millimetre is left when a distance is known.
constexpr double known_m = 1e-6;

/// The chance to lie over a pass whose drawn axis is so far away.
double pass_share(double both_m, double distance_m, double deviation_m) {
  return normal_share(both_m - distance_m, deviation_m) - normal_share(-both_m - distance_m, deviation_m);
}

/// The chance falls with the distance: halves until the distance is known, and then its upper end.
double falls_to_m(double share, double both_m, double deviation_m) {
  if (pass_share(both_m, 0.0, deviation_m) < share) return 0.0;
  double near_m = 0.0, far_m = both_m + reach_ratio * deviation_m;
  while (far_m - near_m > known_m) {
    const double middle_m = 0.5 * (near_m + far_m);
    (pass_share(both_m, middle_m, deviation_m) < share ? far_m : near_m) = middle_m;
  }
  return far_m;
}

}  // namespace

double normal_share(double from_mean, double deviation) {
  if (deviation <= 0.0) return from_mean >= 0.0 ? 1.0 : 0.0;
  return 0.5 * std::erfc(-from_mean / (deviation * std::sqrt(2.0)));
}

double reach_m(const DrawnTube& tube, const TubeDoubt& doubt, double hole_diameter_m) {
  double odd_m = 0.0;
  if (doubt.refit)
    for (const FoundTube& found : doubt.refit->found) odd_m = std::max(odd_m, found.left_out ? found.left_m : 0.0);
  return 0.5 * (tube.outside_diameter_m + hole_diameter_m) + reach_ratio * (doubt.usual.sideways_m + odd_m);
}

double over_share(const DrawnTube& tube, const TubeDoubt& doubt, const Hole& hole) {
  const double both_m = 0.5 * (tube.outside_diameter_m + hole.diameter_m);
  const double reach = reach_m(tube, doubt, hole.diameter_m);
  // Moving the drawing one way is moving the hole the other way.
  const Point place = minus(hole.place, displacement_at(doubt, hole.place));
  double sum = 0.0;
  for (const Path& path : tube.loop) {
    for (const Foot& pass : passes_of(place, path, reach)) {
      const Point square{-pass.ahead.y_m, pass.ahead.x_m};
      const double deviation_m = sideways_at_m(doubt, hole.place, square);
      sum += pass_share(both_m, pass.distance_m, deviation_m);
    }
  }
  return std::min(sum, 1.0);
}

double deep_share(const DrawnTube& tube, const TubeDoubt& doubt, double depth_m) {
  return normal_share(depth_m - tube.concrete_above_m, doubt.usual.depth_m);
}

}  // namespace sitework

Drilling drilling_word(double strike_share) {
  if (strike_share >= do_not_drill_share) return Drilling::do_not_drill;
  return strike_share < likely_clear_share ? Drilling::likely_clear : Drilling::in_doubt;
}

ClearDistances clear_distances(double outside_diameter_m, const Placing& usual, double hole_diameter_m) {
  expects(outside_diameter_m > 0.0 && hole_diameter_m > 0.0, "drill: no hole or no tube");
  const double both_m = 0.5 * (outside_diameter_m + hole_diameter_m);
  return {sitework::falls_to_m(0.5 * do_not_drill_share, both_m, usual.sideways_m),
          sitework::falls_to_m(0.5 * likely_clear_share, both_m, usual.sideways_m)};
}

HoleReading read_hole(const DrawnTube& tube, const TubeDoubt& doubt, const Hole& hole) {
  expects(tube.outside_diameter_m > 0.0 && hole.diameter_m > 0.0 && hole.depth_m > 0.0, "drill: no hole or no tube");
  const Point place = sitework::minus(hole.place, displacement_at(doubt, hole.place));
  const sitework::NearestFoot nearest = sitework::nearest_of(place, tube.loop);
  HoleReading reading;
  reading.loop = nearest.loop;
  reading.along_m = nearest.foot.along_m;
  reading.tube = nearest.foot.place;
  reading.distance_m = nearest.foot.distance_m;
  reading.clear_m = reading.distance_m - 0.5 * (tube.outside_diameter_m + hole.diameter_m);
  reading.depth_margin_m = tube.concrete_above_m - hole.depth_m;
  reading.sideways_m = sideways_at_m(doubt, hole.place, {-nearest.foot.ahead.y_m, nearest.foot.ahead.x_m});
  reading.depth_m = doubt.usual.depth_m;
  reading.over_share = sitework::over_share(tube, doubt, hole);
  reading.deep_share = sitework::deep_share(tube, doubt, hole.depth_m);
  reading.strike_share = reading.over_share * reading.deep_share;
  reading.word = drilling_word(reading.strike_share);
  return reading;
}

PatternReading read_pattern(const DrawnTube& tube, const TubeDoubt& doubt, const AnchorPattern& pattern) {
  PatternReading reading;
  double sum = 0.0;
  for (const Point& place : pattern.hole) {
    reading.hole.push_back(read_hole(tube, doubt, {place, pattern.diameter_m, pattern.depth_m}));
    sum += reading.hole.back().strike_share;
  }
  reading.strike_share = std::min(sum, 1.0);
  reading.word = drilling_word(reading.strike_share);
  return reading;
}

}  // namespace slabwright
