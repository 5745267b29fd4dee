// One task laid several ways; the best is kept.
#include <algorithm>
#include <cmath>

#include "finish.hpp"
#include "slabwright/contract.hpp"
#include "trade.hpp"
#include "tree.hpp"

namespace slabwright {
namespace routing {
namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// Tube besides the cells' own: leaders in the apron, and what balance costs.
constexpr double leaders_and_balance = 1.04;
/// Neighbours are traded to within this, of the mean; one cell is about as much at 12 in and 250 ft.
constexpr double trade_ratio = 0.02;
constexpr int trade_rounds = 2;

/// One way to lay it.
struct Attempt {
  int loops = 1;
  int depth = 1;
  CutOptions cut;
};

struct Draft {
  Cells cells;
  Apron apron;
  std::vector<int> owner;
  std::vector<Strand> strand;
  std::vector<Path> path;
  std::vector<double> leader_m;  ///< both, in the apron
  std::vector<char> left_first;
};

std::vector<int> cells_of_part(const std::vector<int>& owner, int part) {
  std::vector<int> cells;
  for (std::size_t c = 0; c < owner.size(); ++c) {
    if (owner[c] == part) cells.push_back(static_cast<int>(c));
  }
  return cells;
}

double sharp_m(const Cells& cells, const std::vector<int>& part) {
  double sum = 0.0;
  for (const int cell : part) sum += cells.tube_m(cell);
  return sum;
}

/// A leader arrives at its gate on a slant; a tree that sends it back over its shoulder leaves no room for the bend.
std::array<int, 4> gate_prices(const Cells& cells, const Gate& gate, Point left_from, Point right_from) {
  constexpr int price = 60;
  std::array<int, 4> prices{};
  for (const bool left : {true, false}) {
    const Way way = (gate.side + (left ? 3 : 1)) % 4;
    const Point from = left ? left_from : right_from, to = gate_end(cells, gate, left);
    const double ahead = (way == 0   ? 1.0
                          : way == 2 ? -1.0
                                     : 0.0) *
                             (to.x_m - from.x_m) +
                         (way == 1   ? 1.0
                          : way == 3 ? -1.0
                                     : 0.0) *
                             (to.y_m - from.y_m);
    if (ahead < 0.1 * distance_m(from, to)) prices[index(way)] = price;
  }
  return prices;
}

void lay_part(const LayoutTask& task, Draft& draft, int part) {
  const auto turns = leader_turns(task, draft.cells, draft.apron);
  const auto ports = ports_of(task, static_cast<int>(draft.apron.gate.size()));
  const Gate gate = draft.apron.gate[index(part)];
  const std::size_t left = index(2 * part), right = left + 1;
  std::mt19937_64 random(task.seed * 1000003 + static_cast<std::uint64_t>(part));
  Part made{cells_of_part(draft.owner, part), gate, gate_prices(draft.cells, gate, turns[left], turns[right])};
  const auto tree = few_turn_tree(draft.cells, made, TreeOptions{}, random);
  Strand& strand = draft.strand[index(part)];
  strand.corner = {ports[right], turns[right]};
  const auto walk = walk_round(draft.cells, gate, tree);
  strand.corner.insert(strand.corner.end(), walk.begin(), walk.end());
  strand.corner.push_back(turns[left]);
  strand.corner.push_back(ports[left]);
}

void lay_all(const LayoutTask& task, Draft& draft, const std::vector<char>& changed) {
  for (std::size_t part = 0; part < changed.size(); ++part) {
    if (changed[part] != 0) lay_part(task, draft, static_cast<int>(part));
  }
  std::vector<Strand> strands = draft.strand;
  slide_out(task, strands);
  stagger_bulbs(task, strands);
  for (std::size_t part = 0; part < changed.size(); ++part) {
    draft.path[part] = bent(task, strands[part]);
  }
}

std::optional<Draft> draft_of(const LayoutTask& task, const Attempt& attempt) {
  Draft draft;
  draft.cells = cells_of(task);
  const auto apron = place_apron(draft.cells, attempt.loops, attempt.depth);
  if (!apron) return std::nullopt;
  draft.apron = *apron;
  const std::size_t loops = index(attempt.loops);
  const auto turns = leader_turns(task, draft.cells, draft.apron);
  std::vector<double> extra_m(loops, 0.0);
  for (std::size_t k = 0; k < 2 * loops; ++k) {
    extra_m[k / 2] += turns[k].y_m + distance_m(turns[k], gate_end(draft.cells, apron->gate[k / 2], k % 2 == 0));
  }
  draft.leader_m = extra_m;
  Parts parts = cut_floor(draft.cells, apron->gate, extra_m, attempt.cut);
  if (parts.owner.empty()) return std::nullopt;
  draft.owner = std::move(parts.owner);
  draft.strand.resize(loops);
  draft.path.resize(loops);
  std::vector<char> changed(loops, 1);
  for (int round = 0; round < trade_rounds; ++round) {
    double mean_m = 0.0;
    const std::vector<int> before = draft.owner;
    for (std::size_t k = 0; k < loops; ++k) {
      const double cells_m = sharp_m(draft.cells, cells_of_part(draft.owner, static_cast<int>(k)));
      if (round > 0) extra_m[k] = length_m(draft.path[k]) - cells_m;
      mean_m += (cells_m + extra_m[k]) / static_cast<double>(loops);
    }
    trade_cells(draft.cells, apron->gate, extra_m, trade_ratio * mean_m, draft.owner);
    for (std::size_t c = 0; round > 0 && c < before.size(); ++c) {
      if (before[c] == draft.owner[c]) continue;
      changed[index(before[c])] = changed[index(draft.owner[c])] = 1;
    }
    lay_all(task, draft, changed);
    std::fill(changed.begin(), changed.end(), char{0});
  }
  return draft;
}

Piece piece_outside(Piece piece, const LayoutTask& task) {
  piece.from = seen_from_outside(piece.from, task);
  piece.to = seen_from_outside(piece.to, task);
  piece.centre = seen_from_outside(piece.centre, task);
  return piece;
}

TubeLayout layout_of(const LayoutTask& task, const Draft& draft) {
  TubeLayout layout;
  for (const Point& corner : apron_floor(draft.cells, draft.apron, task.spacing_m)) {
    layout.apron.push_back(seen_from_outside(corner, task));
  }
  layout.spacing_x_m = (draft.cells.x_m.back() - draft.cells.x_m.front()) / (2.0 * draft.cells.columns);
  layout.spacing_y_m = (draft.cells.y_m.back() - draft.cells.y_m.front()) / (2.0 * draft.cells.rows);
  for (std::size_t k = 0; k < draft.path.size(); ++k) {
    LaidLoop loop;
    loop.port = static_cast<int>(k) + 1;
    loop.length_m = length_m(draft.path[k]);
    loop.apron_m = draft.leader_m[k];
    for (Piece piece : draft.path[k]) {
      loop.turned_deg += sweep_rad(piece) * 180.0 / 3.14159265358979323846;
      loop.path.push_back(piece_outside(piece, task));
    }
    layout.loop.push_back(std::move(loop));
  }
  return layout;
}

double price_of(const LayoutCheck& check) {
  return check.bends_per_100ft_ratio + 50.0 * check.spread_ratio + 1500.0 * check.far_floor_ratio +
         5.0 * std::max(0.0, check.farthest_ratio - 1.0) + 1.0 * check.tight_bends_number +
         10.0 * (check.crossings_number + check.over_limit_number + check.too_near_number) +
         (check.separation_ratio < 0.93 ? 20.0 : 0.0);
}

bool accepted(const LayoutCheck& check) {
  return check.sound() && check.spread_ratio <= 0.05 && check.far_floor_ratio <= 0.002;
}

std::vector<Attempt> attempts(int loops) {
  const int depth = std::max(1, (loops + 0) / 4);
  std::vector<Attempt> all;
  for (const int d : {depth, depth + 1, 1}) {
    if (d == 1 && depth == 1 && !all.empty()) continue;
    for (const double bends : {3.0, 1.0}) all.push_back({loops, d, CutOptions{bends, 0.12, true}});
  }
  return all;
}

}  // namespace
}  // namespace routing

Checked<TubeLayout> lay_tube(const LayoutTask& task) {
  using namespace routing;
  expects(task.outline.size() >= 3 && task.spacing_m > 0.0 && task.longest_loop_m > 0.0, "lay_tube: no floor");
  const LayoutTask seen = seen_from_manifold(task);
  const Cells cells = cells_of(seen);
  double tube_m = 0.0;
  for (int cell = 0; cell < cells.size(); ++cell) tube_m += cells.is(cell) == Kind::free ? cells.tube_m(cell) : 0.0;
  const int loops = static_cast<int>(std::ceil(leaders_and_balance * tube_m / task.longest_loop_m));
  Checked<TubeLayout> best;
  double least = HUGE_VAL;
  for (const Attempt& attempt : attempts(loops)) {
    const auto draft = draft_of(seen, attempt);
    if (!draft) continue;
    TubeLayout layout = layout_of(task, *draft);
    const LayoutCheck check = check_layout(task, layout);
    if (price_of(check) < least) {
      least = price_of(check);
      best.value = std::move(layout);
    }
    if (accepted(check)) break;
  }
  return best;
}

}  // namespace slabwright
