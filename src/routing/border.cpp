#include "border.hpp"

namespace slabwright::routing {
namespace {

struct Edge {
  int cell = 0;
  Way side = 0;
};

/// Where the side of a cell begins, walked with the cell on the left.
int start_of(const Cells& cells, Edge edge) {
  const int i = cells.column(edge.cell) + (edge.side == 0 || edge.side == 1);
  const int j = cells.row(edge.cell) + (edge.side == 1 || edge.side == 2);
  return j * (cells.columns + 1) + i;
}

/// The border keeps to its cell where it can, so that cells that touch at a corner only stay apart.
Edge after(const Cells& cells, const Region& region, Edge edge) {
  const auto holds = [&](int cell) { return cell >= 0 && region[index(cell)] != 0; };
  const Way ahead = (edge.side + 1) % 4;
  const int next = cells.next(edge.cell, ahead);
  if (!holds(next)) return {edge.cell, ahead};
  const int beyond = cells.next(next, edge.side);
  if (!holds(beyond)) return {next, edge.side};
  return {beyond, (edge.side + 3) % 4};
}

double term(const Cells& cells, const ColumnSums& sums, Edge edge) {
  if (edge.side == 3) return -sums.below(cells.column(edge.cell), cells.row(edge.cell));
  if (edge.side == 1) return sums.below(cells.column(edge.cell), cells.row(edge.cell) + 1);
  return 0.0;
}

}  // namespace

ColumnSums::ColumnSums(const Cells& cells) : columns(cells.columns), rows(cells.rows) {
  below_m.assign(index(columns * (rows + 1)), 0.0);
  for (int i = 0; i < columns; ++i) {
    for (int j = 0; j < rows; ++j) {
      const int cell = cells.at(i, j);
      below_m[index((j + 1) * columns + i)] = below(i, j) + (cells.is(cell) == Kind::free ? cells.share_m(cell) : 0.0);
    }
  }
}

Border border_of(const Cells& cells, const Region& region, const std::vector<Gate>& gates, const ColumnSums& sums) {
  Border border;
  border.place.assign(index((cells.columns + 1) * (cells.rows + 1)), -1);
  border.gate_edge.assign(gates.size(), -1);
  const Edge first{gates.front().cell, gates.front().side};
  Edge edge = first;
  double sum = 0.0;
  do {
    const int vertex = start_of(cells, edge), here = static_cast<int>(border.vertex.size());
    int& place = border.place[index(vertex)];
    place = place == -1 ? here : -2;
    border.vertex.push_back(vertex);
    border.sum_m.push_back(sum);
    for (std::size_t g = 0; g < gates.size(); ++g) {
      if (gates[g].cell == edge.cell && gates[g].side == edge.side) border.gate_edge[g] = here;
    }
    sum += term(cells, sums, edge);
    edge = after(cells, region, edge);
  } while (edge.cell != first.cell || edge.side != first.side);
  border.sum_m.push_back(sum);
  return border;
}

Region reached(const Cells& cells, const Region& region, int from, bool through_passages) {
  Region found(region.size(), 0);
  std::vector<int> open{from};
  found[index(from)] = 1;
  while (!open.empty()) {
    const int cell = open.back();
    open.pop_back();
    for (Way way = 0; way < 4; ++way) {
      const int other = cells.next(cell, way);
      if (other < 0 || region[index(other)] == 0 || found[index(other)] != 0) continue;
      if (through_passages && !cells.passes(cell, way)) continue;
      found[index(other)] = 1;
      open.push_back(other);
    }
  }
  return found;
}

}  // namespace slabwright::routing
