// Trees through the cells of a part. The tube is the walk round its tree, so every corner of the tube belongs to a
// cell.
#pragma once
#include <array>
#include <random>

#include "apron.hpp"

namespace slabwright::routing {

/// One part: its cells, its gate, and what it costs its tree to leave the gate's cell each way (a leader that would
/// have to turn back).
struct Part {
  std::vector<int> cell;
  Gate gate;
  std::array<int, 4> gate_price{};
};

/// Prices in tenths of a corner.
struct TreeOptions {
  int end_price = 27;  ///< two corners and a bit: a tube turns back on itself there
  int tee_price = 20;
  int stub_price = 0;         ///< more for an end one cell long beside a straight line: a wide U-turn has no room in it
  int joint_price = 60;       ///< for each edge over a joint: two places where tube crosses it
  int joint_bend_price = 10;  ///< more for a cell beside it that does not lead straight on
  int across_price = 30;      ///< for each edge across a band: tube is as close as asked there only along it
  int swaps_per_cell = 250;
  double wall_weight = 60.0;  ///< on where in its loop the tube beside walls lies, 0 to 1, times the root of cells
};

/// A bit for each way to a neighbour of the tree, by cell of the whole floor; the gate counts as one. Only the part's
/// own cells are set.
std::vector<std::uint8_t> few_turn_tree(const Cells& cells, const Part& part, const TreeOptions& options,
                                        std::mt19937_64& random);

/// The walk round the tree: corners from the right leader's end of the gate to the left one's. Corners on a straight
/// line are left out.
std::vector<Point> walk_round(const Cells& cells, const Gate& gate, const std::vector<std::uint8_t>& tree);

/// Where in the walk the tube beside walls lies on average: 0 at its beginning, 1 at its end.
double wall_place(const Cells& cells, const Gate& gate, const std::vector<std::uint8_t>& tree);

}  // namespace slabwright::routing
