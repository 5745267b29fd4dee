#include <algorithm>

#include "lay_out.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace routing {
namespace {

double limit_of(const Tube& tube) {
  if (tube.longest_loop_m) return *tube.longest_loop_m;
  const TubeSize* size = find_tube(tube.size.name);
  expects(size != nullptr, "plan_loops: a tube that the table does not have");
  return size->longest_loop_m;
}

Diagnostic no_floor(const Design& design) {
  const bool unheated = !design.room.empty() && std::all_of(design.room.begin(), design.room.end(),
                                                            [](const Room& room) { return !room.heated_floor; });
  return {Severity::problem,
          "loops.no-floor",
          unheated ? "room[1].heated_floor" : "slab.size",
          unheated ? "no room's floor is to be heated: write heated_floor = true in one"
                   : "there is no floor to lay tube in: give the slab's size, or each loop's length",
          {}};
}

Diagnostic no_room_for_leaders(const Floors& floors) {
  return {Severity::problem,
          "tube.leader-too-long",
          "tube.leader",
          "leaders of {} each way leave nothing for the floor: a loop of this tube may be {} long",
          {Measured{floors.leader_m, Dimension::length}, Measured{floors.limit_m, Dimension::length}}};
}

/// Loops numbered port by port, and the sums over them.
LoopPlan summed_up(const Design& design, const Floors& floors, std::vector<Loop> loops) {
  LoopPlan plan;
  plan.limit_m = floors.limit_m;
  plan.room_tube_m.assign(design.room.size(), 0.0);
  std::vector<int> taken(design.manifold.size(), 0);
  for (Loop& loop : loops) {
    loop.port = ++taken[loop.manifold];
    plan.tube_m += loop.length_m;
    for (const Stretch& stretch : loop.along) {
      plan.room_tube_m[stretch.room] += heating_m(stretch);
    }
  }
  const std::vector<double> floor_m2 = room_floors_m2(design);
  for (std::size_t room = 0; room < floor_m2.size(); ++room) {
    const double could_m2 = plan.room_tube_m[room] * floors.spacing_m;
    plan.room_heated_m2.push_back(floor_m2[room] > 0.0 ? std::min(could_m2, floor_m2[room]) : could_m2);
  }
  plan.loop = std::move(loops);
  return plan;
}

/// Loops that cannot be drawn can still be counted and sized.
std::vector<Diagnostic> as_warnings(std::vector<Diagnostic> said) {
  for (Diagnostic& d : said) d.severity = std::min(d.severity, Severity::warning);
  return said;
}

Checked<LoopPlan> drawn_plan(const Design& design, const Floors& floors, const LaidTask& laid) {
  const TubeLayout& layout = *laid.layout.value;
  LoopPlan plan = summed_up(design, floors, loops_as_drawn(design, laid.task, layout));
  plan.drawing = Drawing{laid.task, layout.apron, laid.check};
  std::vector<Diagnostic> said = laid.layout.said;
  const auto broken = broken_said(design, laid.task, layout, plan.loop);
  said.insert(said.end(), broken.begin(), broken.end());
  const auto remarks = remarks_on(design, floors, plan);
  said.insert(said.end(), remarks.begin(), remarks.end());
  return {std::move(plan), std::move(said)};
}

}  // namespace

Floors floors_of(const Design& design) {
  Floors floors;
  floors.heated_m2 = room_floors_m2(design);
  floors.manifold_room = design.room.size();
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    if (!design.room[i].heated_floor) floors.heated_m2[i] = 0.0;
    if (design.room[i].heated_floor) floors.manifold_room = std::min(floors.manifold_room, i);
  }
  if (floors.manifold_room == design.room.size()) floors.manifold_room = 0;
  floors.spacing_m = design.tube.spacing_m;
  floors.leader_m = design.tube.leader_m;
  floors.limit_m = limit_of(design.tube);
  return floors;
}

double tube_of(const Floors& floors, std::size_t room) { return floors.heated_m2[room] / floors.spacing_m; }

Loop lay(const Floors& floors, double leader_m, const std::vector<Stretch>& patch) {
  Loop loop;
  const auto append = [&](Stretch stretch) {
    if (stretch.length_m <= 0.0) return;
    stretch.start_m = loop.length_m;
    stretch.heating_share = stretch.leader ? 0.0 : 1.0;
    loop.length_m += stretch.length_m;
    loop.along.push_back(stretch);
  };
  append({floors.manifold_room, 0.0, leader_m, true});
  for (const Stretch& stretch : patch) {
    append(stretch);
    loop.patch_m2 += stretch.length_m * floors.spacing_m;
  }
  append({floors.manifold_room, 0.0, leader_m, true});
  return loop;
}

}  // namespace routing

bool is_drawn(const LoopPlan& plan) {
  return !plan.loop.empty() &&
         std::all_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return l.path && !l.path->empty(); });
}

bool drawn_by_us(const LoopPlan& plan) {
  return std::any_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return l.from == LengthFrom::drawing; });
}

Checked<LoopPlan> plan_loops(const Design& design, LaidBefore* laid, const Progress& progress) {
  expects(!design.room.empty() && !design.manifold.empty(), "plan_loops: the design is not settled");
  expects(design.tube.spacing_m > 0.0 && design.tube.leader_m >= 0.0, "plan_loops: a length that cannot be");
  const routing::Floors floors = routing::floors_of(design);
  std::vector<Diagnostic> undrawn;
  // Paths of the file are no guess: they are followed wherever loops are asked for.
  LaidBefore own;
  if (const auto task = laid || !design.loop.empty() ? layout_task(design) : std::nullopt) {
    const LaidTask& known = (laid ? *laid : own).laid(*task, progress);
    if (known.layout) return routing::drawn_plan(design, floors, known);
    undrawn = routing::as_warnings(known.layout.said);
  }
  const bool counted = std::any_of(design.manifold.begin(), design.manifold.end(),
                                   [](const Manifold& manifold) { return manifold.loops_number.has_value(); });
  Checked<std::vector<Loop>> loops;
  if (!design.loop.empty()) {
    loops = routing::loops_as_listed(design, floors);
  } else if (std::all_of(floors.heated_m2.begin(), floors.heated_m2.end(), [](double m2) { return m2 <= 0.0; })) {
    loops.said.push_back(routing::no_floor(design));
  } else if (counted) {
    loops.value = routing::loops_by_count(design, floors);
  } else if (floors.limit_m <= 2.0 * floors.leader_m) {
    loops.said.push_back(routing::no_room_for_leaders(floors));
  } else {
    loops.value = routing::loops_from_area(design, floors);
  }
  if (!loops) return {std::nullopt, std::move(loops.said)};

  LoopPlan plan = routing::summed_up(design, floors, std::move(*loops.value));
  const auto remarks = routing::remarks_on(design, floors, plan);
  loops.said.insert(loops.said.end(), undrawn.begin(), undrawn.end());
  loops.said.insert(loops.said.end(), remarks.begin(), remarks.end());
  return {std::move(plan), std::move(loops.said)};
}

}  // namespace slabwright
