// The apron: a block of cells before the manifold where leaders spread, with a gate for each loop in port order.
#pragma once
#include <optional>

#include "cells.hpp"

namespace slabwright::routing {

/// A cell beside the apron, and the side of it by which its loop comes and goes.
struct Gate {
  int cell = 0;
  Way side = 3;
};

struct Apron {
  int left = 0, bottom = 0, width = 0, depth = 0;  ///< in cells
  std::vector<Gate> gate;                          ///< by port
};

/// How deep an apron is, in rows, and how many gates may lie on its sides, the others ahead.
struct ApronShape {
  int depth = 1;
  int left = 1, right = 1;
  double lowest_m = 0.0;  ///< ahead of the ports: gates lie no nearer, or their leaders would have to come back
};

/// A block for this many loops, its cells taken from the free ones. Absent where it has no room.
std::optional<Apron> place_apron(Cells& cells, int loops, const ApronShape& shape);

/// The floor of the block and a spacing more round it: there leaders may lie closer than the spacing.
Polygon apron_floor(const Cells& cells, const Apron& apron, double spacing_m);

/// The quarter place of a gate where its left or right leader ends; left for who looks from the manifold.
Point gate_end(const Cells& cells, const Gate& gate, bool left);

/// Corners of a leader between its port and the gate, both ends left out: one, where it turns from straight ahead.
/// Leaders that go to the left turn one after the other, the leftmost first; those to the right likewise.
double lowest_gate_m(const LayoutTask& task);
std::vector<Point> ports_of(const LayoutTask& task, int loops);
std::vector<Point> leader_turns(const LayoutTask& task, const Cells& cells, const Apron& apron);
/// Whether every leader turns before it reaches its gate: a shallow apron has no room for many.
bool leaders_fit(const LayoutTask& task, const Cells& cells, const Apron& apron);

}  // namespace slabwright::routing
