// What every way of planning loops starts from, and the pieces they share.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "slabwright/routing.hpp"

namespace slabwright::routing {

/// The floor to lay tube in, before any loop lies there.
struct Floors {
  std::vector<double> heated_m2;  ///< a row for each Design::room, 0 where its floor carries no tube or has no size
  std::size_t manifold_room = 0;  ///< where leaders lie: the first heated room
  double spacing_m = 0.0;
  double leader_m = 0.0;  ///< each way
  double limit_m = 0.0;   ///< longest loop, leaders included
};
Floors floors_of(const Design& design);

/// Tube for one room's floor.
double tube_of(const Floors& floors, std::size_t room);

/// A loop of the given stretches of patch between two leaders; parts without length are left out.
Loop lay(const Floors& floors, double leader_m, const std::vector<Stretch>& patch);

/// The ways to know a loop.
Checked<std::vector<Loop>> loops_as_listed(const Design& design, const Floors& floors);
std::vector<Loop> loops_by_count(const Design& design, const Floors& floors);
std::vector<Loop> loops_from_area(const Design& design, const Floors& floors);

/// The floor as a task with those loops drawn that have a path; nothing where the slab has no shape, or a manifold no
/// place.
std::optional<LayoutTask> task_on_plan(const Design& design);

/// The loops that the design lists with a path, by their rows; nothing for the others. What they break is said.
struct Overlay {
  std::vector<std::optional<Loop>> loop;
  std::vector<Diagnostic> said;
};
Overlay loops_on_paths(const Design& design);

/// Each place where drawn loops break what must never be broken, told from two walls. `names`: of the layout's loops.
std::vector<Diagnostic> broken_said(const Design& design, const LayoutTask& task, const TubeLayout& layout,
                                    const std::vector<Loop>& loops);

/// The loops of a layout, in its order.
std::vector<Loop> loops_as_drawn(const Design& design, const LayoutTask& task, const TubeLayout& layout);

/// How many loops leave each manifold where nobody has said: shared evenly as far as ports allow; what finds no port
/// hangs on the last.
std::vector<std::size_t> shared_out(std::size_t loops, const std::vector<Manifold>& manifold);

/// What is worth saying about a plan.
std::vector<Diagnostic> remarks_on(const Design& design, const Floors& floors, const LoopPlan& plan);

/// Leaders so close before a manifold that the floor there gets warm; the densest manifold's.
std::vector<Diagnostic> remarks_on_aprons(const Design& design, const LoopPlan& plan);

/// What codes and saws ask of tube in concrete.
std::vector<Diagnostic> remarks_on_concrete(const Design& design, const LoopPlan& plan);

}  // namespace slabwright::routing
