#include "draft.hpp"

#include <algorithm>
#include <cmath>

#include "bands.hpp"
#include "even_out.hpp"
#include "halves.hpp"
#include "heat.hpp"
#include "mirror.hpp"
#include "own_floor.hpp"
#include "trade.hpp"
#include "tree.hpp"

namespace slabwright::routing {
namespace {

/// Neighbours are traded to within this part of the mean; one cell is about as much at 12 in and 250 ft.
constexpr double trade_ratio = 0.02;
/// Times that cells are traded by lengths that came out.
constexpr int lay_rounds = 2;

/// Tube that does not bend into half a spacing swings out at every end of its tree: ends are dear, and one cell is too
/// short for it.
TreeOptions tree_options(const LayoutTask& task) {
  TreeOptions options;
  if (task.bend_radius_m <= 0.5 * least_spacing_m(task) * (1.0 + 1e-9)) return options;
  options.end_price = 50;
  options.stub_price = 80;
  options.swaps_per_cell *= 2;
  return options;
}

std::vector<int> cells_of_part(const std::vector<int>& owner, int part) {
  std::vector<int> cells;
  for (std::size_t c = 0; c < owner.size(); ++c) {
    if (owner[c] == part) cells.push_back(static_cast<int>(c));
  }
  return cells;
}

/// Tube as it counts: by length, or by heat.
double sharp_m(const Cells& cells, const std::vector<int>& part) {
  double sum = 0.0;
  for (const int cell : part) sum += cells.share_m(cell);
  return sum;
}

/// The longest loop, as far as cells tell.
double longest_m(const Draft& draft) {
  double most = 0.0;
  for (std::size_t k = 0; k < draft.leader_m.size(); ++k) {
    double sum = draft.leader_m[k];
    for (const int cell : cells_of_part(draft.owner, static_cast<int>(k))) sum += draft.cells.tube_m(cell);
    most = std::max(most, sum);
  }
  return most;
}

/// A leader arrives at its gate on a slant; a tree that sends it back over its shoulder leaves no room for the bend.
std::array<int, 4> gate_prices(const Cells& cells, const Gate& gate, Point left_from, Point right_from) {
  constexpr int price = 250;
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

void lay_part(const LayoutTask& task, Draft& draft, std::vector<Strand>& strands, int part) {
  const auto turns = leader_turns(task, draft.cells, draft.apron);
  const auto ports = ports_of(task, static_cast<int>(draft.apron.gate.size()));
  const Gate gate = draft.apron.gate[index(part)];
  const std::size_t left = index(2 * part), right = left + 1;
  std::mt19937_64 random(task.seed * 1000003 + static_cast<std::uint64_t>(part));
  Part made{cells_of_part(draft.owner, part), gate, gate_prices(draft.cells, gate, turns[left], turns[right])};
  const auto tree = few_turn_tree(draft.cells, made, tree_options(task), random);
  draft.cold_last[index(part)] = wall_place(draft.cells, gate, tree) > 0.5;
  Strand& strand = strands[index(part)];
  strand.corner = {ports[right], turns[right]};
  const auto walk = walk_round(draft.cells, gate, tree);
  strand.corner.insert(strand.corner.end(), walk.begin(), walk.end());
  strand.corner.push_back(turns[left]);
  strand.corner.push_back(ports[left]);
}

/// The parts that changed get new trees; then all are finished together.
void lay_parts(const Tasks& tasks, Draft& draft, std::vector<Strand>& strands, const std::vector<char>& changed) {
  const LayoutTask& task = tasks.roomy;
  for (std::size_t part = 0; part < changed.size(); ++part) {
    if (changed[part] != 0) lay_part(task, draft, strands, static_cast<int>(part));
  }
  std::vector<Strand> finished = strands;
  slide_out(task, finished);
  drop_short_ends(task, finished);
  stagger_bulbs(task, finished);
  for (std::size_t part = 0; part < changed.size(); ++part) draft.path[part] = bent(tasks.exact.task, finished[part]);
  draft.plain_path = draft.path;
  fill_bare_floor(tasks.exact, finished, draft.path, tasks.filling);
}

/// Trades by what each loop has besides its cells; true for the parts that changed.
std::vector<char> traded(Draft& draft, const std::vector<double>& extra_m) {
  const std::size_t loops = extra_m.size();
  std::vector<char> changed(loops, 0);
  std::vector<double> tube_m(loops, 0.0);
  const auto measure = [&] {
    for (std::size_t k = 0; k < loops; ++k) {
      tube_m[k] = extra_m[k] + sharp_m(draft.cells, cells_of_part(draft.owner, static_cast<int>(k)));
    }
  };
  measure();
  double mean_m = 0.0;
  for (const double m : tube_m) mean_m += m / static_cast<double>(loops);
  const std::vector<int> before = draft.owner;
  trade_cells(draft.cells, draft.apron.gate, extra_m, trade_ratio * mean_m, draft.owner);
  for (std::size_t c = 0; c < before.size(); ++c) {
    if (before[c] != draft.owner[c]) changed[index(before[c])] = changed[index(draft.owner[c])] = 1;
  }
  measure();
  const auto [least, most] = std::minmax_element(tube_m.begin(), tube_m.end());
  draft.spread_ratio = (*most - *least) / mean_m;
  return changed;
}

}  // namespace

std::optional<Draft> share_out(const LayoutTask& task, const Attempt& attempt, Work& work) {
  Draft draft;
  draft.cells = cells_of(task, attempt.fit);
  ApronShape shape = attempt.apron;
  shape.lowest_m = lowest_gate_m(task);
  const auto apron = place_apron(draft.cells, attempt.loops, shape);
  if (!apron) return std::nullopt;
  draft.apron = *apron;
  if (attempt.halves && !task.own_floor.empty()) return std::nullopt;
  if (attempt.halves && !make_symmetric(draft.cells, draft.apron)) return std::nullopt;
  if (!leaders_fit(task, draft.cells, draft.apron)) return std::nullopt;
  const std::size_t loops = index(attempt.loops);
  const auto turns = leader_turns(task, draft.cells, draft.apron);
  draft.leader_m.assign(loops, 0.0);
  std::vector<double> leader_heat_m(loops, 0.0);
  for (std::size_t k = 0; k < 2 * loops; ++k) {
    const Point end = gate_end(draft.cells, draft.apron.gate[k / 2], k % 2 == 0);
    const double leader_m = turns[k].y_m + distance_m(turns[k], end);
    draft.leader_m[k / 2] += leader_m;
    leader_heat_m[k / 2] += leader_m * 0.5 * (loss_ratio_at(task, turns[k]) + loss_ratio_at(task, end));
  }
  std::vector<Gate> gates = draft.apron.gate;
  if (attempt.halves) {
    gates.resize(loops / 2);
    leader_heat_m.resize(loops / 2);
    fold(draft);
  }
  auto parts = cut_floor_apart(task, draft.cells, gates, leader_heat_m, attempt.cut, work);
  if (!parts || parts->owner.empty()) return std::nullopt;
  draft.owner = std::move(parts->owner);
  traded(draft, leader_heat_m);
  if (draft.spread_ratio > fair_spread) {
    std::mt19937_64 random(task.seed);
    even_out(draft.cells, gates, leader_heat_m, random, draft.owner);
    traded(draft, leader_heat_m);
  }
  draft.longest_m = longest_m(draft);
  return draft;
}

namespace {

void lay_all_parts(const Tasks& tasks, Draft& draft) {
  const std::size_t loops = draft.leader_m.size();
  std::vector<Strand> strands(loops);
  draft.path.assign(loops, {});
  draft.cold_last.assign(loops, 0);
  std::vector<char> changed(loops, 1);
  // Cells of a band tell less of their tube than square ones.
  const int rounds = tasks.exact.task.band.empty() ? lay_rounds : lay_rounds + 1;
  for (int round = 0; round < rounds; ++round) {
    lay_parts(tasks, draft, strands, changed);
    std::vector<double> extra_m(loops);
    for (std::size_t k = 0; k < loops; ++k) {
      extra_m[k] = heat_m(tasks.exact.task, draft.path[k]) -
                   sharp_m(draft.cells, cells_of_part(draft.owner, static_cast<int>(k)));
    }
    changed = traded(draft, extra_m);
    if (std::count(changed.begin(), changed.end(), 1) == 0) return;
  }
  lay_parts(tasks, draft, strands, changed);
}

}  // namespace

void lay(const Tasks& tasks, Draft& draft) {
  if (!draft.whole) return lay_all_parts(tasks, draft);
  const double axis_m = -draft.cells.tube_x_m[index(draft.cells.columns - 1)];
  const LayoutTask roomy = left_half(tasks.roomy, axis_m);
  const ExactTask exact(left_half(tasks.exact.task, axis_m));
  lay_all_parts({roomy, exact, tasks.filling}, draft);
  unfold(draft);
}

}  // namespace slabwright::routing
