#include "apron.hpp"

#include <algorithm>
#include <cmath>

#include "ports.hpp"

namespace slabwright::routing {
namespace {

/// A leader turns up to a right angle out of its port: the bend takes its radius, and a little is left to hold it.
constexpr double straight_before_turn = 1.1;

/// A leader may come down to its gate a little: it turns by not much more than a right angle then.
constexpr double come_down = 0.25;

double first_turn_m(const LayoutTask& task) {
  return std::max(straight_before_turn * task.bend_radius_m, task.wall_clearance_m);
}

/// Free cells with nothing between them: leaders lie across.
bool all_free(const Cells& cells, int left, int bottom, int width, int depth) {
  if (bottom + depth > cells.rows) return false;
  for (int i = left; i < left + width; ++i) {
    for (int j = bottom; j < bottom + depth; ++j) {
      const int cell = cells.at(i, j);
      if (cells.is(cell) != Kind::free) return false;
      if (i + 1 < left + width && !cells.passes(cell, 0)) return false;
      if (j + 1 < bottom + depth && !cells.passes(cell, 1)) return false;
    }
  }
  return true;
}

/// Gates that a side of the block has room for, in its farthest rows: each of those rows must be wide enough for all of
/// their loops side by side before the next wall.
int room_beside(const Cells& cells, const Apron& a, Way way) {
  int gates = 0, least = cells.columns;
  for (int j = a.bottom + a.depth - 1; j >= a.bottom; --j) {
    int cell = cells.at(way == 0 ? a.left + a.width - 1 : a.left, j), count = 0;
    while (cells.passes(cell, way)) {
      cell = cells.next(cell, way);
      ++count;
    }
    least = std::min(least, count);
    const int rows = a.bottom + a.depth - j;
    if (least >= rows) gates = rows;
  }
  return gates;
}

/// Gates from the left of the manifold round to its right. On a side those rows are taken that lie farthest ahead: a
/// loop must get past the gates that lie before its own.
std::vector<Gate> all_gates(const Cells& cells, const Apron& a, const ApronShape& shape) {
  std::vector<Gate> gates;
  const auto add = [&](int i, int j, Way side) {
    const int cell = cells.at(i, j);
    if (cells.is(cell) != Kind::free || !cells.passes(cell, side)) return;
    if (cells.quarter(cell, 0).y_m >= shape.lowest_m) gates.push_back({cell, side});
  };
  const int top = a.bottom + a.depth;
  const int left = std::min(shape.left, room_beside(cells, a, 2));
  const int right = std::min(shape.right, room_beside(cells, a, 0));
  for (int j = top - left; j < top; ++j) add(a.left - 1, j, 0);
  for (int i = a.left; i < a.left + a.width; ++i) add(i, top, 3);
  for (int j = top - 1; j >= top - right; --j) add(a.left + a.width, j, 2);
  return gates;
}

/// The first row of the column that has floor ahead of the ports. One that ends a hair ahead of them lies behind, and
/// so does one that the back of a manifold away from walls blocks.
int first_row_ahead(const Cells& cells, int column) {
  constexpr double hair = 0.1;
  for (int j = 0; j < cells.rows; ++j) {
    const double from_m = cells.y_m[index(j)], to_m = cells.y_m[index(j) + 1];
    if (to_m <= hair * (to_m - from_m)) continue;
    const Kind kind = cells.is(cells.at(column, j));
    if (kind != Kind::outside && (kind != Kind::blocked || from_m >= 0.0)) return j;
  }
  return cells.rows;
}

/// The block of this size whose middle lies nearest to the manifold.
std::optional<Apron> block(const Cells& cells, int width, int depth) {
  std::optional<Apron> best;
  double least_m = HUGE_VAL;
  for (int i = 0; i + width <= cells.columns; ++i) {
    const double x0 = cells.x_m[index(i)], x1 = cells.x_m[index(i + width)];
    if (x0 > 0.0 || x1 < 0.0) continue;
    const int under =
        x0 < 0.0 ? i +
                       static_cast<int>(std::upper_bound(cells.x_m.begin() + i, cells.x_m.begin() + i + width, 0.0) -
                                        cells.x_m.begin() - i) -
                       1
                 : i;
    const int bottom = first_row_ahead(cells, under);
    if (!all_free(cells, i, bottom, width, depth)) continue;
    const double off_m = std::abs(x0 + x1);
    if (off_m < least_m - 1e-9) {
      least_m = off_m;
      best = Apron{i, bottom, width, depth, {}};
    }
  }
  return best;
}

}  // namespace

std::optional<Apron> place_apron(Cells& cells, int loops, const ApronShape& shape) {
  std::optional<Apron> apron;
  // As narrow as the number of gates allows: at a wall or a corner of the floor fewer sides have any.
  for (int width = std::max(2, loops - 2 * shape.depth); width <= std::max(2, loops) && !apron; ++width) {
    apron = block(cells, width, shape.depth);
    if (!apron) continue;
    apron->gate = all_gates(cells, *apron, shape);
    if (static_cast<int>(apron->gate.size()) < loops) apron.reset();
  }
  if (!apron) return apron;
  std::vector<Gate> chosen;
  const int all = static_cast<int>(apron->gate.size());
  for (int k = 0; k < loops; ++k) chosen.push_back(apron->gate[index((2 * k + 1) * all / (2 * loops))]);
  apron->gate = chosen;
  for (int i = apron->left; i < apron->left + apron->width; ++i) {
    for (int j = apron->bottom; j < apron->bottom + apron->depth; ++j) {
      const int cell = cells.at(i, j);
      cells.kind[index(cell)] = Kind::apron;
      for (Way way = 0; way < 4; ++way) {
        const int other = cells.next(cell, way);
        if (other >= 0)
          cells.open[index(other)] = static_cast<std::uint8_t>(cells.open[index(other)] & ~(1 << opposite(way)));
      }
      cells.open[index(cell)] = 0;
    }
  }
  return apron;
}

Polygon apron_floor(const Cells& cells, const Apron& apron, double spacing_m) {
  const double by = spacing_m;
  const double left = cells.x_m[index(apron.left)] - by, right = cells.x_m[index(apron.left + apron.width)] + by;
  const double bottom = std::min(cells.y_m[index(apron.bottom)], 0.0) - by;
  const double top = cells.y_m[index(apron.bottom + apron.depth)] + by;
  return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

Point gate_end(const Cells& cells, const Gate& gate, bool left) {
  return cells.quarter(gate.cell, (gate.side + (left ? 1 : 2)) % 4);
}

double lowest_gate_m(const LayoutTask& task) { return first_turn_m(task) - come_down * task.bend_radius_m; }

std::vector<Point> ports_of(const LayoutTask& task, int loops) {
  const PortRow& row = task.manifold.front();
  std::vector<Point> ports;
  for (const double pair : free_pairs(row, loops)) {
    for (const double port : {pair - 0.5, pair + 0.5}) ports.push_back({port * row.port_pitch_m, 0.0});
  }
  return ports;
}

bool leaders_fit(const LayoutTask& task, const Cells& cells, const Apron& apron) {
  const std::vector<Point> turns = leader_turns(task, cells, apron);
  for (std::size_t k = 0; k < turns.size(); ++k) {
    const double end_m = gate_end(cells, apron.gate[k / 2], k % 2 == 0).y_m;
    if (turns[k].y_m > end_m + come_down * task.bend_radius_m) return false;
  }
  return true;
}

std::vector<Point> leader_turns(const LayoutTask& task, const Cells& cells, const Apron& apron) {
  const int loops = static_cast<int>(apron.gate.size());
  std::vector<Point> turns = ports_of(task, loops);
  const double first_m = first_turn_m(task);
  const double pitch_m = task.manifold.front().port_pitch_m;
  const auto end_of = [&](int k) { return gate_end(cells, apron.gate[index(k / 2)], k % 2 == 0); };
  // Each turns so much farther out than the one before that the slanting tubes lie no nearer than the ports: beside a
  // tube that rises by an angle f, a step to the side by the pitch p is worth p sin f, one outward by h is worth h cos
  // f.
  const auto stacked = [&](int from, int step) {
    double height_m = first_m;
    for (int k = from; k >= 0 && k < 2 * loops; k += step) {
      Point& turn = turns[index(k)];
      const double across_m = (turn.x_m - end_of(k).x_m) * step;
      if (across_m < 0.0 || (step < 0 && across_m == 0.0)) return;
      const double rise_m = std::max(0.0, end_of(k).y_m - height_m);
      const double slant_m = std::sqrt(across_m * across_m + rise_m * rise_m);
      if (k != from && across_m > 0.0) height_m += pitch_m * (slant_m - rise_m) / across_m;
      turn.y_m = height_m;
    }
  };
  stacked(0, 1);
  stacked(2 * loops - 1, -1);
  return turns;
}

}  // namespace slabwright::routing
