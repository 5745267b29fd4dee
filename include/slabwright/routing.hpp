// Rooms to tube loops: how many, how long, what each heats. A loop is a loop whether it was drawn, its length was
// given, derived from area and spacing, or shared out over a count; hydraulics, section and leaders read only `along`.
#pragma once
#include <cstddef>
#include <deque>
#include <string>
#include <vector>

#include "slabwright/design.hpp"
#include "slabwright/routing_layout.hpp"

namespace slabwright {

/// A part of a loop that lies in one room.
struct Stretch {
  std::size_t room = 0;  ///< row in Design::room
  double start_m = 0.0;  ///< from the supply end
  double length_m = 0.0;
  bool leader = false;  ///< on the way to or from the loop's own patch of floor
  /// Heat it gives beside as much tube of the patch: of leaders 0 where nobody knows where they lie, and what the floor
  /// they crowd together in can take up where they are drawn.
  double heating_share = 1.0;
};
/// Tube of a patch that would give as much heat.
inline double heating_m(const Stretch& stretch) { return stretch.heating_share * stretch.length_m; }

/// How a loop's length is known.
enum class LengthFrom { file, area_and_spacing, count, drawing, path };

struct Loop {
  std::string name;
  std::size_t manifold = 0;  ///< row in Design::manifold
  int port = 0;              ///< from 1
  LengthFrom from = LengthFrom::area_and_spacing;
  double length_m = 0.0;  ///< manifold to manifold, leaders included
  double patch_m2 = 0.0;  ///< floor it heats: as drawn, else its tube without leaders, times the spacing
  std::vector<Stretch> along;
  std::optional<Path> path;             ///< where it is drawn: from its supply port to its return port
  double bends_number = 0.0;            ///< right angles that `path` turns
  std::vector<JointCrossing> crossing;  ///< of `path`, by rows of Design::joint
  std::optional<std::size_t> entry{};   ///< row in Design::loop, where it is listed
};

/// What a drawing is made from, and what it is worth.
struct Drawing {
  LayoutTask task;
  std::vector<Polygon> apron;  ///< of each manifold: the floor where leaders spread
  LayoutCheck check;
};

/// A task, what was laid for it, and what that is worth.
struct LaidTask {
  LayoutTask task;
  Checked<TubeLayout> layout;
  LayoutCheck check;  ///< where there is a layout
};

/// Layouts that were laid before, so that passes over one floor lay and measure it once.
class LaidBefore {
 public:
  /// Stands as long as this does.
  const LaidTask& laid(const LayoutTask& task, const Progress& progress = {});
  bool knows(const LayoutTask& task) const { return find(task) != nullptr; }

 private:
  const LaidTask* find(const LayoutTask& task) const;
  std::deque<LaidTask> known_;
};

struct LoopPlan {
  std::vector<Loop> loop;
  std::vector<double> room_tube_m;  ///< tube that heats each room, see heating_m(); a row for each Design::room
  /// Floor over that tube: the tube times its spacing, and no more than the room has, which tube beyond its need adds
  /// nothing to.
  std::vector<double> room_heated_m2;
  double tube_m = 0.0;             ///< all of it, leaders included
  double limit_m = 0.0;            ///< longest loop allowed for this tube
  std::optional<Drawing> drawing;  ///< where all loops are drawn
};

/// Whether it is known where all loops lie.
bool is_drawn(const LoopPlan& plan);
/// Whether a loop of it lies where this program put it: true of a floor that was laid by the drawing, of no other.
bool drawn_by_us(const LoopPlan& plan);

/// Floor that a metre of tube heats in a room: the spacing, or less where tube lies closer; 0 where none lies.
inline double heated_m2_per_m(const LoopPlan& plan, std::size_t room) {
  return plan.room_tube_m[room] > 0.0 ? plan.room_heated_m2[room] / plan.room_tube_m[room] : 0.0;
}

/// The design's floor as a task: its outline, what tube may not lie on, its manifolds. Nothing where it says too little
/// to draw: a slab without shape, rooms without outlines, several manifolds without places, loops known by length or by
/// count only. Loops listed with a path are in it as drawn; where they are all there shall be, only the slab need have
/// a shape.
std::optional<LayoutTask> layout_task(const Design& design);

/// The loops of a settled design (a room and a manifold at least). Drawn where layout_task() finds enough to draw, and
/// `laid` is given; what cannot be laid is said, and the loops are worked out as without a drawing. Listed lengths
/// stand as they are, leaders within them unless they say otherwise; a listed path gives its loop's length, and what it
/// breaks is said with its place. Without a list but with a count: the tube of all
/// heated floors shared out evenly, one room after the other. With neither: N = ceil(tube / (limit - leaders)) loops of
/// equal length in each heated room, where tube = area / spacing, shared evenly among manifolds with free ports.
/// Leaders lie in the first heated room. Absent where there is no floor to lay tube in, where leaders take all that a
/// loop may have, or where a listed loop names what the design does not have; the reasons say so. Also said: loops too
/// long, uneven, very short or shorter than their leaders, tube and floor that do not match, ports that do not suffice.
/// `progress` is told of a drawing that is laid anew.
Checked<LoopPlan> plan_loops(const Design& design, LaidBefore* laid = nullptr, const Progress& progress = {});

/// Where a manifold would serve the floor better.
struct BetterPlace {
  std::size_t manifold = 0;     ///< row in Design::manifold
  double x_m = 0.0, y_m = 0.0;  ///< on the plan
};
/// For each manifold of a floor that is laid, see better_place(): none where no place is clearly better, or where loops
/// that are drawn already hang on it.
std::vector<BetterPlace> better_places(const Design& design, const Progress& progress = {});

Record record_of(Stretch&);
Record record_of(Loop&);
Record record_of(LoopPlan&);
Record record_of(BetterPlace&);

}  // namespace slabwright
