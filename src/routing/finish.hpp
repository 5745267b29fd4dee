// From walks on the lattice to tube: tips slid into floor that the lattice left over, corners rounded.
#pragma once
#include "apron.hpp"
#include "tube_map.hpp"
#include "work.hpp"

namespace slabwright::routing {

/// A loop as a broken line from its right port to its left one. The first and the last `leader` corners are not moved.
struct Strand {
  std::vector<Point> corner;
};
/// Port, turn, and the end at the gate: corners of a leader.
constexpr std::size_t leader_corners = 3;

/// Slides U-turns outward while they keep their distances; then long runs halfway into what floor is left beside them.
void slide_out(const LayoutTask& task, std::vector<Strand>& strands);

/// Takes back ends too short for the bulb they need, where the tube then runs straight on.
void drop_short_ends(const LayoutTask& task, std::vector<Strand>& strands);

/// Draws U-turns back whose bulbs would come too near to each other.
void stagger_bulbs(const LayoutTask& task, std::vector<Strand>& strands);

/// Lines and arcs. Corners are rounded to half a spacing, or to the least radius where that is larger or where a wall
/// or a no-tube area lies inside the bend. U-turns narrower than two radii become bulbs: both legs swing outward first.
Path bent(const LayoutTask& task, const Strand& strand);

/// A task with its clearances as they are asked for, and the map of its floor, made once.
struct ExactTask {
  LayoutTask task;
  TubeMap without_tube;
  explicit ExactTask(LayoutTask asked) : task(std::move(asked)), without_tube(task) {}
};

/// Moves tube lines towards floor that lies more than a spacing from any tube. `paths` are the strands' own, and are
/// kept so. Each move keeps the radius, the clearances and the distance to other tube; where none does, or no
/// work is left, the floor stays bare. A step is a corner of a
/// line that is tried.
void fill_bare_floor(const ExactTask& exact, std::vector<Strand>& strands, std::vector<Path>& paths, Work& work);

/// Whether the arcs of an end at a and b, its legs coming from `before` and going to `after`, keep the clearances.
bool end_keeps_clear(const LayoutTask& task, Point before, Point a, Point b, Point after);

/// How much of the line after corner i, or else of the one before it, its bend takes at least.
double bend_room_m(const LayoutTask& task, const std::vector<Point>& corner, std::size_t i, bool after);

/// Corners i and i + 1 of a line turn back, between parallel legs.
bool turns_back(const std::vector<Point>& corner, std::size_t i);

}  // namespace slabwright::routing
