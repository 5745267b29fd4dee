// The drilling guide of a design: its anchors, or a hole that somebody asks about, against its drawn loops.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/routing.hpp"
#include "slabwright/sitework_drill.hpp"

namespace slabwright {

/// A place where tube was found, as told on the site.
struct FoundEntry {
  PlanPlace place;
  std::optional<PlanPlace> drawn;  ///< the same spot of tube on the drawing, where it can be told
};

/// What is asked beside the design's anchors.
struct DrillAsked {
  std::optional<PlanPlace> at;        ///< a hole; the design's anchors when absent
  std::optional<double> diameter_m;   ///< of that hole; 1/2 in or 12 mm when absent (practice)
  std::optional<double> depth_m;      ///< 3 in or 80 mm when absent (practice)
  std::optional<double> tolerance_m;  ///< within which 19 of 20 places of tube lie; see usual_placing()
  std::optional<double> may_move_m;   ///< each way; 6 in or 150 mm when absent (practice)
  std::vector<FoundEntry> found;
};

/// What nobody said of a hole, practice: its size, how far a machine may be moved, and in which steps.
struct UsualHole {
  double diameter_m = 0.0, depth_m = 0.0, may_move_m = 0.0, step_m = 0.0;
};
UsualHole usual_hole(System system);

/// A place as coordinates and from two walls.
struct GuidePlace {
  double x_m = 0.0;
  double y_m = 0.0;
  double from_first_m = 0.0;
  double from_second_m = 0.0;
};

struct GuideHole {
  GuidePlace place;
  std::string loop;  ///< the nearest
  double along_m = 0.0;
  double distance_m = 0.0;
  double clear_m = 0.0;
  double depth_margin_m = 0.0;
  double sideways_m = 0.0;
  double over_share = 0.0;
  double deep_share = 0.0;
  double strike_share = 0.0;
  Drilling word = Drilling::in_doubt;
};

struct GuideMove {
  double right_m = 0.0;
  double up_m = 0.0;
  double turn_deg = 0.0;  ///< counter-clockwise about the middle of the holes; no key: `hole` tells it
  double moved_m = 0.0;   ///< of the hole that moves farthest
  std::vector<GuidePlace> hole;
  double strike_share = 0.0;
  bool clear = false;
};

struct GuideAnchor {
  std::string name;
  double diameter_m = 0.0;
  double depth_m = 0.0;
  std::vector<GuideHole> hole;
  double strike_share = 0.0;  ///< of all its holes together
  Drilling word = Drilling::in_doubt;
  std::vector<GuideMove> move;  ///< one, where it is not likely clear and a move within the limits helps
};

struct GuideFound {
  GuidePlace place;
  double off_m = 0.0;
  double left_m = 0.0;
  bool left_out = false;
};

struct DrillGuide {
  std::string first_wall, second_wall;  ///< that places are told from
  double outside_diameter_m = 0.0;      ///< of the tube
  double concrete_above_m = 0.0;
  double tolerance_m = 0.0;  ///< two standard deviations, sideways
  double depth_tolerance_m = 0.0;
  bool tolerance_is_ours = true;
  bool hole_is_ours = false;  ///< a diameter or depth is our guess
  double may_move_m = 0.0;
  std::vector<GuideAnchor> anchor;
  std::vector<GuideFound> found;
  double shift_right_m = 0.0;  ///< of the whole drawing, by what was found
  double shift_up_m = 0.0;
};

/// The two walls that places are told from: those of `place` where it names two, else the user's own first two that do
/// not run side by side, else left and bottom. Nothing where the slab's shape is not known.
std::optional<std::pair<PlanWall, PlanWall>> told_from(const Design& design, const std::optional<PlanPlace>& place);

/// Absent where loops are not drawn, all of them ("drill.no-drawing"), where nothing is asked ("drill.no-hole"), and
/// where a place names a wall that is not there ("drill.no-wall") or lies off the slab ("drill.off-slab"). Said beside
/// it: an anchor not to be drilled (a failure) or in doubt (a warning), a hole through the slab, measured places that
/// do not fit.
Checked<DrillGuide> drill_at(const Design& design, const LoopPlan& plan, const DrillAsked& asked);

Record record_of(GuidePlace&);
Record record_of(GuideHole&);
Record record_of(GuideMove&);
Record record_of(GuideAnchor&);
Record record_of(GuideFound&);
Record record_of(DrillGuide&);

}  // namespace slabwright
