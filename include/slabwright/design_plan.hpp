// What stands on the plan and in the way of tube: walls by name, partitions, no-tube areas, joints, anchors.
#pragma once
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "design_words.hpp"
#include "fields.hpp"
#include "geometry.hpp"

namespace slabwright {

/// A wall of the form, or a part of one, by name.
struct WallEntry {
  std::string name;
  Place from, to;
  std::optional<double> tube_spacing_m;  ///< closer tube along it
  std::optional<double> band_width_m;    ///< how far in that reaches; settled where there is a spacing
  friend bool operator==(const WallEntry&, const WallEntry&) = default;
};

/// A wall inside: tube passes at its openings only.
struct Partition {
  std::string name;
  Place from, to;
  std::vector<Gap> openings;
  double thickness_m = 0.0;
  double clearance_m = 0.0;  ///< from its face to the nearest tube
  friend bool operator==(const Partition&, const Partition&) = default;
};

/// Where no tube may lie: a drain, a column, a machine's pad, a wall to come. Its outline, or a rectangle or a circle
/// about a place.
struct NoTubeEntry {
  std::string name;
  std::vector<Place> outline;
  std::optional<PlanPlace> place;
  std::optional<Size> size;
  std::optional<double> diameter_m;
  double clearance_m = 0.0;  ///< to the nearest tube's centre line
  friend bool operator==(const NoTubeEntry&, const NoTubeEntry&) = default;
};

/// Sawn: a cut in the top that steers cracks. Expansion: the concrete ends.
enum class JointKind { sawn, expansion };

struct Joint {
  std::string name;
  JointKind kind = JointKind::sawn;
  Place from, to;
  std::optional<double> saw_depth_m;
  friend bool operator==(const Joint&, const Joint&) = default;
};

/// A line that no loop crosses, without a wall on it: where loops shall end.
struct Border {
  std::string name;
  Place from, to;
  friend bool operator==(const Border&, const Border&) = default;
};

/// Holes to be drilled: one at `place`, or several by their distances from it.
struct Anchor {
  std::string name;
  PlanPlace place;
  std::vector<Place> holes;
  double diameter_m = 0.0;
  double depth_m = 0.0;
  friend bool operator==(const Anchor&, const Anchor&) = default;
};

Record record_of(WallEntry&);
Record record_of(Partition&);
Record record_of(NoTubeEntry&);
Record record_of(Joint&);
Record record_of(Border&);
Record record_of(Anchor&);

struct Design;

/// A wall as a line that distances are measured from, and what it may be called.
struct PlanWall {
  std::string name;
  Point from, to;  ///< the floor lies to the left
};

/// Walls that places may be measured from, the user's own first; then "left", "right", "bottom" and "top wall" of the
/// plan, also called west, east, south and north; then "door wall" where a big door has a place. Empty where the
/// slab's shape is not known.
std::vector<PlanWall> plan_walls(const Design& design);

/// The wall that the text names: "west wall", "the west wall", "west". Null where there is none.
const PlanWall* find_wall(const std::vector<PlanWall>& walls, std::string_view text);

/// The two walls that places are told from: the first two of the user's own that stand across each other, else the left
/// and the bottom one.
std::optional<std::pair<PlanWall, PlanWall>> walls_told_from(const Design& design);

/// From a wall's inner face into the floor, square to it.
double from_wall_m(const PlanWall& wall, Point place);

/// A place as a point; nothing where it names a wall that is not there, or two that run alongside each other.
std::optional<Point> point_on_plan(const std::vector<PlanWall>& walls, const PlanPlace& place);

/// The outline of a no-tube area; a circle as a polygon round it. Empty where its place cannot be found.
Polygon outline_of(const NoTubeEntry& area, const std::vector<PlanWall>& walls);

/// The parts of a partition between its openings, as thin rectangles.
std::vector<Polygon> solid_parts(const Partition& partition);

/// An opening on the plan: the nearest piece of the outline, as wide as it is. Nothing where its place is not known.
struct PlanOpening {
  std::size_t opening = 0;  ///< row in Design::opening
  Point from, to;           ///< on the outline, the floor to the left
  Point inward;             ///< of length 1
};
std::vector<PlanOpening> openings_on_plan(const Design& design);

}  // namespace slabwright
