// Stake-out: where loops lie, as lines measured from two walls, and each loop as a walk along them. Numbers in, numbers
// out: nothing here knows a design. Metres; x to the right, y up.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "slabwright/fields.hpp"
#include "slabwright/geometry_path.hpp"

namespace slabwright {

/// The inner face of a straight wall; the floor lies to its left on the way from `from` to `to`.
struct StakeWall {
  std::string name;
  Point from, to;
};

struct StakeTask {
  std::vector<std::string> name;  ///< of each loop
  std::vector<Path> loop;
  StakeWall first, second;    ///< not side by side: at 3 degrees or more to each other
  double step_m = 0.005;      ///< to which places are rounded, > 0
  double least_run_m = 0.25;  ///< straight tube shorter than this belongs to a turn
};

/// One line to snap on the slab, parallel to its wall.
struct StakeLine {
  std::string name;     ///< "A12": the twelfth from the first wall; "B3": the third from the second
  double at_m = 0.0;    ///< from the wall's inner face, square off it, rounded to the step
  double off_m = 0.0;   ///< the farthest that tube drawn on it lies from there
  double from_m = 0.0;  ///< where tube on it begins and ends, from the other wall
  double to_m = 0.0;
  bool turns_end = false;  ///< tubes turn back here: the tips of their turns touch this line
  bool carries = false;    ///< tube lies along it
};

struct StakeTable {
  std::string wall;
  std::vector<StakeLine> line;  ///< in the order of their distance
};

/// What follows on a run.
enum class StakeTurn { left, right, back_left, back_right, bears, end };

/// A place from both walls, rounded to the step.
struct StakePlace {
  double first_m = 0.0;
  double second_m = 0.0;
};

/// One part of a walk. Straight along a line, or, where `line` is empty, from place to place on a slant or a curve.
struct StakeStep {
  std::vector<std::string> line;   ///< one; or several, walked to and fro one after the other
  std::string from_line, to_line;  ///< where the first run begins and ends; empty where no line crosses there
  StakePlace from, to;             ///< the same as places: corners of the walk, before tube rounds them
  double radius_m = 0.0;           ///< of a curve
  StakeTurn then = StakeTurn::end;
  double at_end_m = 0.0;  ///< tube laid when it is done, from the supply port
};

struct StakeWalk {
  std::string loop;
  std::vector<StakeStep> step;
};

/// The end of a U-turn: its tip touches this line.
struct StakeTip {
  std::size_t loop = 0;  ///< row in StakeTask::loop
  std::string line;
  Point place;
  Point ahead;  ///< the way the tube came, of length 1
};

struct StakeOut {
  double step_m = 0.0;
  StakeTable first, second;  ///< lines A parallel to the first wall, lines B parallel to the second
  double off_m = 0.0;        ///< the farthest that tube lies from a line it is said to lie on
  std::vector<StakeWalk> walk;
  std::vector<StakeTip> tip;  ///< loop by loop, in the order of the tube
};

/// Straight tube that is parallel to a wall within 2 mm lies on a line; lines closer than a millimetre, and those that
/// round to the same step, are one. A run ends where the next one crosses it; before a turn back at the line that the
/// turn's tip touches. Three or more runs to and fro between the same two lines are one step. Asks for loops with
/// pieces, and a name for each.
StakeOut stake_out(const StakeTask& task);

Record record_of(StakeLine&);
Record record_of(StakeTable&);
Record record_of(StakePlace&);
Record record_of(StakeStep&);
Record record_of(StakeWalk&);
Record record_of(StakeOut&);

}  // namespace slabwright
