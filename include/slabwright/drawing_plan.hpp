// The plan of a heated floor: what a crew tapes to the wall. Plain values in, a drawing or a map of letters out. Metres
// on the floor, x to the right and y up.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/drawing_words.hpp"
#include "slabwright/units.hpp"

namespace slabwright {

struct DrawnWall {
  Point from, to;
  KeyedText name;
};

struct DrawnRoom {
  KeyedText name;
  Polygon outline;
};

/// An opening in a wall, from jamb to jamb.
struct DrawnDoor {
  Point from, to;
  KeyedText words;  ///< its name and how wide it is
};

struct DrawnNoTube {
  Polygon outline;
  KeyedText name;  ///< may be empty: a column among many
};

/// A wall inside the floor, or what is left of it beside an opening.
struct DrawnPartition {
  Point from, to;
};

struct DrawnSleeve {
  Point place;
  KeyedText number;
};

struct DrawnJoint {
  Point from, to;
  KeyedText name;
  std::vector<DrawnSleeve> sleeve;
};

struct DrawnLoop {
  KeyedText number;          ///< short: it stands large in the loop's patch
  std::size_t manifold = 0;  ///< row in DrawnFloor::manifold
  KeyedText port;            ///< short: it stands in a square at the manifold
  Path path;                 ///< supply to return
  KeyedText length = {};     ///< for the list of loops
};

struct DrawnManifold {
  KeyedText name;
  Point place;
  Point facing;  ///< into the floor; any length but none
};

/// Holes that somebody wants to drill.
struct DrawnAnchor {
  KeyedText words;  ///< its name and whether it may be drilled
  std::vector<Point> hole;
  double diameter_m = 0.0;
};

/// The end of a U-turn on a line of the stake-out table.
struct DrawnTip {
  Point place;
  Point ahead;  ///< the way the tube came, of length 1
  KeyedText line;
};

/// A point to be measured from, or to.
struct DrawnMark {
  Point place;
  KeyedText name;
  bool corner = false;  ///< of the slab, from which is measured
};

/// How far on either side of tube nobody should drill, and how far it is in doubt.
struct DrawnBands {
  double do_not_m = 0.0, doubt_m = 0.0;
};

/// Where a dimension stands: beyond the lowest, leftmost, highest, rightmost wall, or along a wall that slants.
enum class DrawnSide { below, left, above, right, slanting };

/// Between two places of the floor's rim.
struct DrawnDimension {
  DrawnSide side = DrawnSide::below;
  bool whole = false;  ///< across all of the floor: outermost
  Point from, to;
  KeyedText length;
};

struct DrawnFloor {
  KeyedWords title;
  std::vector<KeyedWords> notes;  ///< sentences beside the plan
  System units = System::us;
  Floor floor;
  std::vector<DrawnWall> wall;  ///< those that have a name
  std::vector<DrawnRoom> room;
  std::vector<DrawnDoor> door;
  std::vector<DrawnNoTube> no_tube;
  std::vector<DrawnPartition> partition;
  std::vector<DrawnJoint> joint;
  std::vector<DrawnManifold> manifold;
  std::vector<DrawnLoop> loop;
  std::vector<DrawnAnchor> anchor;
  std::vector<DrawnTip> tip;
  std::vector<DrawnDimension> dimension;
  std::vector<DrawnMark> mark;
  std::optional<DrawnBands> bands;  ///< drawn in place of the loops' patches and of the flow
  double tube_diameter_m = 0.0;     ///< outside
  double spacing_m = 0.0;
  std::string north_words = "north";
  std::optional<Point> north;  ///< a direction; where it is not known the sheet leaves a place to mark it by hand
};

/// A sheet on paper: US 11 x 17 in, SI A3, and larger ones where tube would lie too close to tell apart.
struct PlanSheet {
  Picture picture;
  double scale_ratio = 0.0;         ///< paper over floor
  Point zero;                       ///< the floor's, on paper
  std::vector<KeyedText> left_out;  ///< words for which no place was found; every one also stands on the sheet
  std::vector<int> pattern;         ///< of each loop's patch, from 0
  int chevrons_number = 0;
  int ports_number = 0;
};

/// A length as a tape reads it: "12 ft 4 1/4 in" to a quarter of an inch, "3.45 m" or, where it is not round, "3.048
/// m".
std::string length_words(double length_m, System system);

/// Draws the plan: tube dark, the first half solid and the second hollow, on a layer each; each patch pale with one of
/// five light patterns, neighbours unlike; a chevron every 10 ft or 3 m, numbered every 50 ft or 15 m; loop numbers
/// large and grey; port numbers in squares; a bar at the end of each U-turn, with its line's name where there is room;
/// joints dash-dot, crossings ringed with their sleeve's number; no-tube areas hatched; doors, anchors, dimensions,
/// walls by name, north, scale bar and key. Tube is drawn at its true width, but never so thin that solid and hollow
/// look alike; the sheet then says so. Asks for an outline of three corners or more and paths that are not empty.
PlanSheet draw_plan(const DrawnFloor& plan);

/// The same floor in letters for a terminal, at most 78 columns and 22 rows: a letter for each loop's patch, `#` no
/// tube, `=` doors, `M` manifold, `.` floor with no tube near, blank outside; the last line says so (the last two,
/// where many loops need it).
std::vector<std::string> letter_map(const DrawnFloor& plan);

}  // namespace slabwright
