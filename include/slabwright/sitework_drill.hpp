// The drilling guide: how near a hole comes to tube, and how likely it strikes it. Numbers in, numbers out.
#pragma once
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "slabwright/sitework_found.hpp"

namespace slabwright {

struct DrawnTube {
  std::vector<Path> loop;
  double outside_diameter_m = 0.0;
  double concrete_above_m = 0.0;  ///< from the top of the floor to the top of the tube
};

struct Hole {
  Point place;
  double diameter_m = 0.0;
  double depth_m = 0.0;
};

/// Never a bare "safe".
enum class Drilling { likely_clear, in_doubt, do_not_drill };

/// Chances of a strike that the words stand for. Practice, ours: below 1 in 100 a hole is likely clear, from 1 in 10
/// on nobody should drill.
inline constexpr double likely_clear_share = 0.01, do_not_drill_share = 0.10;
Drilling drilling_word(double strike_share);
/// "likely clear", "in doubt", "do not drill".
std::string_view drilling_words(Drilling word);

/// One hole against the tube as it is believed to lie.
struct HoleReading {
  std::size_t loop = 0;         ///< the nearest
  double along_m = 0.0;         ///< its length from the supply port to the place nearest to the hole
  Point tube;                   ///< that place, as drawn
  double distance_m = 0.0;      ///< from the hole's middle to the tube's centre line, exact on lines and arcs
  double clear_m = 0.0;         ///< between the hole's edge and the tube's; below 0 where they overlap
  double depth_margin_m = 0.0;  ///< concrete above the tube, less the hole's depth; below 0 where it goes deeper
  double sideways_m = 0.0;      ///< standard deviations used
  double depth_m = 0.0;
  double over_share = 0.0;    ///< chance that the hole lies over tube
  double deep_share = 0.0;    ///< chance that it goes as deep as tube
  double strike_share = 0.0;  ///< both
  Drilling word = Drilling::in_doubt;
};

/// A tube passes at the distance d of its centre line; its true one is normal about d with standard deviation s. Hole
/// and tube overlap on the plan where it is within R, the sum of their radii:
///   over = F((R - d) / s) - F((-R - d) / s),  F the normal distribution.
/// Passes that come within reach are added up, at most to 1: a floor that lies to one side cannot strike at both. The
/// depth to the tube's top is normal too: deep = F((depth - concrete above) / s_depth). Their product leaves out that
/// the top of a tube is round, and is no less than the true chance for it. Asks for a loop with a path.
HoleReading read_hole(const DrawnTube& tube, const TubeDoubt& doubt, const Hole& hole);

/// How near to the drawn axis of tube the middle of a hole that goes as deep as tube is not to be drilled, and nearer
/// than what it is in doubt, whatever tube lies on its other side.
struct ClearDistances {
  double do_not_m = 0.0;
  double doubt_m = 0.0;
};

/// Where the chance to lie over one pass of tube has fallen to half of the share that the word stands for: a hole
/// between two passes has the chances of both, and no more than two come within reach of it where a tube's pitch is
/// wider than the larger distance. By the usual doubt alone, nothing found.
ClearDistances clear_distances(double outside_diameter_m, const Placing& usual, double hole_diameter_m);

/// The holes of a machine's base plate.
struct AnchorPattern {
  std::vector<Point> hole;
  double diameter_m = 0.0;
  double depth_m = 0.0;
};

/// All of them together: the sum of their chances, at most 1, which no dependence between them exceeds.
struct PatternReading {
  std::vector<HoleReading> hole;
  double strike_share = 0.0;
  Drilling word = Drilling::in_doubt;
};
PatternReading read_pattern(const DrawnTube& tube, const TubeDoubt& doubt, const AnchorPattern& pattern);

/// How far the machine may be moved. The turn is about the middle of its holes.
struct MoveLimits {
  double shift_m = 0.0;        ///< along x and along y, each way
  double step_m = 0.006;       ///< > 0
  double turn_deg = 0.0;       ///< each way
  double turn_step_deg = 1.0;  ///< > 0
};

struct PatternMove {
  Point shift;
  double turn_deg = 0.0;  ///< counter-clockwise
  double moved_m = 0.0;   ///< of the hole that moves farthest
  std::vector<Point> hole;
  double strike_share = 0.0;
  bool clear = false;  ///< likely clear; else the least chance within the limits
};

/// The nearest move within the limits that makes the pattern likely clear; where none does, the one with the least
/// chance of a strike. Steps of the limits are tried, all of them.
PatternMove least_risk_move(const DrawnTube& tube, const TubeDoubt& doubt, const AnchorPattern& pattern,
                            const MoveLimits& limits);

}  // namespace slabwright
