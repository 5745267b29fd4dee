#include "halves.hpp"

#include "mirror.hpp"

namespace slabwright::routing {
namespace {

int across(const Cells& cells, int cell) { return cells.at(cells.columns - 1 - cells.column(cell), cells.row(cell)); }
Way across(Way way) { return way % 2 == 0 ? 2 - way : way; }

}  // namespace

bool make_symmetric(const Cells& cells, Apron& apron) {
  if (cells.columns % 2 != 0 || 2 * apron.left + apron.width != cells.columns) return false;
  for (std::size_t i = 0; i < cells.tube_x_m.size(); ++i) {
    if (cells.tube_x_m[i] != -cells.tube_x_m[cells.tube_x_m.size() - 1 - i]) return false;
  }
  for (int cell = 0; cell < cells.size(); ++cell) {
    if (cells.is(cell) != cells.is(across(cells, cell))) return false;
    for (Way way = 0; way < 4; ++way) {
      if (cells.passes(cell, way) != cells.passes(across(cells, cell), across(way))) return false;
    }
  }
  const std::size_t loops = apron.gate.size();
  for (std::size_t k = 0; k < loops / 2; ++k) {
    if (2 * cells.column(apron.gate[k].cell) >= cells.columns) return false;
    apron.gate[loops - 1 - k] = {across(cells, apron.gate[k].cell), across(apron.gate[k].side)};
  }
  return true;
}

void fold(Draft& draft) {
  draft.whole = draft.cells;
  draft.leader_m.resize(draft.leader_m.size() / 2);
  Cells& cells = draft.cells;
  // The right half is no floor to lay, and no wall either.
  for (int cell = 0; cell < cells.size(); ++cell) {
    const int off_axis = 2 * cells.column(cell) - cells.columns;
    if (off_axis >= 0) {
      cells.kind[index(cell)] = Kind::apron;
      cells.open[index(cell)] = 0;
    }
    if (off_axis == -2) cells.open[index(cell)] = static_cast<std::uint8_t>(cells.open[index(cell)] & ~1);
  }
}

void unfold(Draft& draft) {
  const std::size_t half = draft.path.size();
  draft.cells = *draft.whole;
  draft.whole.reset();
  const int loops = 2 * static_cast<int>(half);
  for (int cell = 0; cell < draft.cells.size(); ++cell) {
    const int owner = draft.owner[index(cell)], other = across(draft.cells, cell);
    if (owner >= 0 && owner < static_cast<int>(half)) draft.owner[index(other)] = loops - 1 - owner;
  }
  for (std::size_t k = half; k-- > 0;) {
    draft.leader_m.push_back(draft.leader_m[k]);
    // From the right port to the left one again, so walked the other way.
    draft.path.push_back(reversed(mirrored(draft.path[k])));
    draft.plain_path.push_back(reversed(mirrored(draft.plain_path[k])));
    draft.cold_last.push_back(draft.cold_last[k] != 0 ? 0 : 1);
  }
}

}  // namespace slabwright::routing
