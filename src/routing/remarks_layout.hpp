// What a person should know about a layout.
#pragma once
#include "marks.hpp"
#include "neck.hpp"
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

Diagnostic bend_too_wide(const LayoutTask& task);
Diagnostic manifold_off_wall(double off_m);
Diagnostic no_floor_at_manifold();
Diagnostic too_few_ports(const LayoutTask& task, int loops, double tube_m);
Diagnostic no_room_for_apron(int loops);
Diagnostic floor_out_of_reach(double area_m2);
/// `place` as the task has it.
Diagnostic opening_closed(const Opening& opening, Point place, double spacing_m);
Diagnostic neck_too_narrow(const Neck& neck, Point place);

/// What falls short on the final lines and arcs.
std::vector<Diagnostic> shortfalls(const LayoutTask& task, const LayoutCheck& check);

}  // namespace slabwright::routing
