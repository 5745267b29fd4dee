// Tube on a floor: from an outline, manifolds and what tube may not lie on, to loops as paths of lines and arcs.
// Numbers in, paths out: nothing here knows a design. Metres; x to the right, y up.
#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "slabwright/diagnostics.hpp"
#include "slabwright/geometry_path.hpp"
#include "slabwright/progress.hpp"

namespace slabwright {

/// An area that no tube's centre line may enter or come nearer to than its clearance.
struct NoTubeArea {
  Polygon outline;
  double clearance_m = 0.0;
  bool is_tube = false;  ///< of a loop that lies already: rows of tube fall in with its long sides only
  friend bool operator==(const NoTubeArea&, const NoTubeArea&) = default;
};

/// Where tubes come up: a row of ports, two for each loop, at right angles to `facing` and centred on `place`.
struct PortRow {
  Point place;                  ///< at a wall or anywhere on the floor
  Point facing;                 ///< into the floor, parallel to walls; any length but none
  int loops_number = 0;         ///< most loops it can serve
  double port_pitch_m = 0.05;   ///< from each port to the next, the two of one loop neighbours
  int loops_wanted_number = 0;  ///< exactly so many loops from it, no more than it can serve; 0: as many as it takes
  /// Pairs of ports that other loops have: their middles, metres to the right of `place` for who looks into the floor.
  std::vector<double> taken_m{};
  friend bool operator==(const PortRow&, const PortRow&) = default;
};

/// A line where concrete ends, is sawn or meets other concrete: tube crosses it seldom, square, and in a sleeve.
struct JointLine {
  Point from, to;
  friend bool operator==(const JointLine&, const JointLine&) = default;
};

/// Floor along a wall where tube lies closer than elsewhere. Rows of tube run on beyond its ends, so what lies in line
/// with it is as close.
struct EdgeBand {
  Polygon outline;  ///< with a side on the wall
  double spacing_m = 0.0;
  friend bool operator==(const EdgeBand&, const EdgeBand&) = default;
};

/// Floor that loses this much heat for each of the rest: a loop that lies there gets less of it. Where areas overlap
/// the highest ratio counts.
struct LossArea {
  Polygon outline;
  double loss_ratio = 1.0;  ///< above 0
  friend bool operator==(const LossArea&, const LossArea&) = default;
};

/// A loop that lies already, or shall lie so: by the corners of its tube, which bends round them.
struct GivenLoop {
  std::size_t manifold = 0;   ///< row in LayoutTask::manifold
  std::vector<Point> corner;  ///< from its supply end to its return end: two or more, none of them a turn on the spot
  bool ends_at_ports = true;  ///< false: tube that is not drawn leads on to the manifold
  friend bool operator==(const GivenLoop&, const GivenLoop&) = default;
};

struct LayoutTask {
  Polygon outline;                       ///< simple
  std::vector<double> edge_clearance_m;  ///< of the edge from each corner to the next; `wall_clearance_m` where empty
  std::vector<NoTubeArea> no_tube;       ///< partitions too, between their openings
  std::vector<JointLine> joint;
  std::vector<EdgeBand> band;
  std::vector<LossArea> loss;      ///< loops are balanced by heat; by length where this is empty
  double wall_clearance_m = 0.15;  ///< of the tube's centre line
  double spacing_m = 0.30;
  double bend_radius_m = 0.12;  ///< least, of the tube's centre line; at most 0.9 of the spacing
  double longest_loop_m = 90.0;
  std::vector<PortRow> manifold;  ///< one at least
  /// Whether all tube lies exactly a spacing apart, for mesh to tie it to. Floor is then left over along walls on the
  /// right of a manifold and ahead of it. Otherwise spacings are stretched or squeezed a little to fill the floor.
  bool exact_spacing = false;
  std::vector<Polygon> own_floor{};   ///< loops heat it or else what lies outside; their leaders may pass through both
  std::optional<Point> runs_along{};  ///< which way most tube shall run; as few bends ask for when absent
  std::vector<GivenLoop> drawn{};     ///< they stay where they are
  bool rest_is_laid = true;           ///< whether floor that drawn loops leave gets tube of its own
  std::uint64_t seed = 1;
  friend bool operator==(const LayoutTask&, const LayoutTask&) = default;
};

/// Where a loop passes a joint.
struct JointCrossing {
  std::size_t joint = 0;  ///< row in LayoutTask::joint
  Point place;
  double at_m = 0.0;  ///< from the supply port
};

/// One loop, from its supply port to its return port.
struct LaidLoop {
  std::size_t manifold = 0;  ///< row in LayoutTask::manifold
  int port = 0;              ///< from 1, from left to right for who looks from the manifold into the floor
  bool left_first = false;   ///< the supply is the left one of its two ports
  Path path;
  double length_m = 0.0;
  double apron_m = 0.0;     ///< both leaders: what of it lies in the apron
  double turned_deg = 0.0;  ///< all its bends together
  double patch_m2 = 0.0;    ///< floor it covers, the apron left out
  std::vector<JointCrossing> crossing;
  std::optional<std::size_t> drawn{};  ///< row in LayoutTask::drawn
};

struct TubeLayout {
  std::vector<LaidLoop> loop;  ///< by manifold, then by port
  /// Of each manifold, the floor before it where leaders spread and lie closer than the spacing. With drawn loops it
  /// reaches (3 + n / 2) spacings to the sides and ahead, n being all loops of the manifold.
  std::vector<Polygon> apron;
};

/// Lays the tube. Absent, with the reason, where there is none: a radius above 0.9 of the spacing, no floor before a
/// manifold, ports that do not suffice, no room for the leaders. What falls short of the checks
/// is said beside the layout, as failures where tube could not be laid so: bends below the least radius, loops over the
/// limit, clearances. Tube never crosses tube. The same task gives the same layout. The number of loops is the least
/// that the limit allows. Several manifolds share the floor out along straight borders, so that loops come out equally
/// long over all of it. Method: spanning trees of cells two spacings wide, each walked round (Gabriely and Rimon,
/// "Spanning-tree based coverage of continuous areas by a mobile robot", 2001), one in each of the parts that the floor
/// is cut into. Drawn loops are taken as they are, whatever they break; others keep off them as off each other.
/// `progress` is told at each step; it changes nothing.
Checked<TubeLayout> lay_tube(const LayoutTask& task, const Progress& progress = {});

/// A place at a wall where this manifold would serve the floor better, the others left where they are: shorter ways
/// out, loops more alike, fewer bends. Places are tried a few paces apart and the most promising ones laid, so it takes
/// up to four times as long as `lay_tube`. Absent where none is clearly better. The same task gives the same place.
std::optional<PortRow> better_place(const LayoutTask& task, std::size_t manifold = 0, const Progress& progress = {});

/// The way out of a loop, both ways: twice the way from its ports, through its own floor, to the nearest half of its
/// tube. A loop whose first half runs in a corridor two tubes wide has at least half of its length for a way out, one
/// on a compact floor before its manifold a tenth or so.
double way_out_m(const Path& path, double spacing_m);

/// What a layout is worth, measured on its final lines and arcs. It asks nothing of how the layout was made.
struct LayoutCheck {
  int crossings_number = 0;       ///< places where tube meets tube
  int wrong_ends_number = 0;      ///< ends not at their own port
  int broken_number = 0;          ///< pieces that do not begin where the one before ended, or turn on the spot
  int tight_bends_number = 0;     ///< arcs below the least radius
  int over_limit_number = 0;      ///< loops longer than the longest allowed
  int too_near_number = 0;        ///< places nearer to a wall or a no-tube area than the clearance, outside the apron
  double separation_ratio = 0.0;  ///< least distance between tube lines outside the apron, in spacings of the place
  double bulb_separation_ratio = 0.0;  ///< the same beside U-turns wider than the spacing, which swing out
  double apron_separation_m = 0.0;     ///< the same inside the apron
  double apron_m_per_m2 = 0.0;         ///< tube on the apron's densest square, two spacings wide
  double clearance_m = 0.0;            ///< least distance to a wall outside the apron
  double far_floor_ratio = 0.0;        ///< share of the floor that lies more than the spacing there from any tube
  double farthest_ratio = 0.0;         ///< the farthest floor from a tube, in spacings
  double near_ratio = 0.0;             ///< 99 % of the floor lies within this many spacings of a tube
  double spread_ratio = 0.0;           ///< (longest - shortest) / mean
  double heat_spread_ratio = 0.0;      ///< the same by heat lost above each loop; by length where all floor is alike
  double longest_m = 0.0;
  double tube_m = 0.0;
  double bends_per_100ft_ratio = 0.0;  ///< right angles turned in 100 ft of tube
  int joint_crossings_number = 0;      ///< places where tube passes over a joint
  int most_crossings_number = 0;       ///< of one loop
  int slanted_crossings_number = 0;    ///< those more than 10 degrees off square
  double along_joint_m = 0.0;          ///< tube within 10 degrees of a joint's direction and 2 in of it

  /// All that must never be broken holds. Separation: 0.93 of the spacing, 0.6 beside bulbs.
  bool sound() const;
};
/// Ends of drawn loops may lie up to half a pitch off their ports; the row may have up to four pairs to spare.
LayoutCheck check_layout(const LayoutTask& task, const TubeLayout& layout);

/// What must never be broken.
enum class Broken { crossing, end, bend, limit, clearance, separation };

struct BrokenPlace {
  Broken what = Broken::crossing;
  Point place;
  std::size_t loop = 0, other = 0;  ///< rows in TubeLayout::loop; the same where only one has to do with it
  double is_m = 0.0;  ///< of bends the radius, of ends how far the port is, of limits the length, else the gap
};

/// Where a layout breaks what LayoutCheck::sound() asks: empty where it is sound and every piece begins where the one
/// before ended. Places of one kind and the same loops less than two spacings apart are one, with its worst figure. At
/// most 100, loop by loop.
std::vector<BrokenPlace> broken_places(const LayoutTask& task, const TubeLayout& layout);

}  // namespace slabwright
