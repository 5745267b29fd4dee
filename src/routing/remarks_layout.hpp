// What a person should know about a layout.
#pragma once
#include <string>

#include "marks.hpp"
#include "neck.hpp"
#include "slabwright/routing_layout.hpp"

namespace slabwright::routing {

Diagnostic bend_too_wide(const LayoutTask& task);
/// `place` as the task has it.
Diagnostic opening_closed(const Opening& opening, Point place, double spacing_m);
Diagnostic neck_too_narrow(const Neck& neck, Point place);
/// "manifold", or "manifold[2]" where there are several.
std::string manifold_named(const LayoutTask& task, std::size_t row);
Diagnostic no_floor_at_manifold(const std::string& manifold);
Diagnostic too_few_ports(const LayoutTask& task, int loops, int ports, double tube_m);
Diagnostic no_room_for_apron(const std::string& manifold, int loops);
Diagnostic floor_not_shared_out(const std::string& manifold, int loops);
Diagnostic floor_out_of_reach(const std::string& manifold, double area_m2);
/// Where spacings are exact.
Diagnostic floor_left_over(const LayoutTask& task, const std::string& manifold, double width_m);
Diagnostic manifolds_not_parted();
Diagnostic no_port_for_rest();
Diagnostic drawn_in_the_way();
Diagnostic own_floor_not_reached(int loops);

/// Joints crossed, floor far from tube.
std::vector<Diagnostic> notes_on_lie(const LayoutTask& task, const LayoutCheck& check);

/// What falls short on the final lines and arcs.
std::vector<Diagnostic> shortfalls(const LayoutTask& task, const LayoutCheck& check);

}  // namespace slabwright::routing
