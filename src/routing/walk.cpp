// The walk round a tree: a simple closed line, opened at the gate.
#include "slabwright/contract.hpp"
#include "tree.hpp"

namespace slabwright::routing {
namespace {

struct Step {
  int cell = 0;
  int corner = 0;
};

/// Quarter places in order, from the one right of the gate to the one left of it. A side of a cell goes from corner
/// (way + 1) to corner (way + 2), counter-clockwise; a tree passes it, anything else sends the tube along it.
std::vector<Step> steps(const Cells& cells, const Gate& gate, const std::vector<std::uint8_t>& tree) {
  std::vector<Step> all;
  Step at{gate.cell, (gate.side + 2) % 4};
  while (true) {
    all.push_back(at);
    const Way side = (at.corner + 3) % 4;
    if (at.cell == gate.cell && side == gate.side) return all;
    if ((tree[static_cast<std::size_t>(at.cell)] >> side & 1) != 0) {
      at = {cells.next(at.cell, side), side};
    } else {
      at.corner = (at.corner + 1) % 4;
    }
    expects(static_cast<int>(all.size()) <= 4 * cells.size(), "walk_round: not a tree");
  }
}

}  // namespace

std::vector<Point> walk_round(const Cells& cells, const Gate& gate, const std::vector<std::uint8_t>& tree) {
  std::vector<Point> corners;
  for (const Step& step : steps(cells, gate, tree)) {
    const Point here = cells.quarter(step.cell, step.corner);
    const std::size_t n = corners.size();
    const bool straight = n >= 2 && ((corners[n - 1].x_m == here.x_m && corners[n - 2].x_m == here.x_m) ||
                                     (corners[n - 1].y_m == here.y_m && corners[n - 2].y_m == here.y_m));
    if (straight) corners.pop_back();
    corners.push_back(here);
  }
  return corners;
}

double wall_place(const Cells& cells, const Gate& gate, const std::vector<std::uint8_t>& tree) {
  const std::vector<Step> all = steps(cells, gate, tree);
  double sum = 0.0;
  int count = 0;
  for (std::size_t k = 0; k < all.size(); ++k) {
    for (const Way side : {(all[k].corner + 3) % 4, (all[k].corner + 2) % 4}) {
      const Kind beyond = cells.is(cells.next(all[k].cell, side));
      if (beyond != Kind::outside) continue;
      sum += (static_cast<double>(k) + 0.5) / static_cast<double>(all.size());
      ++count;
    }
  }
  if (count == 0) return 0.5;
  return sum / count;
}

}  // namespace slabwright::routing
