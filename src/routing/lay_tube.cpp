// One task laid several ways; the best is kept.
#include <algorithm>
#include <cmath>

#include "draft.hpp"
#include "one_order.hpp"
#include "remarks_layout.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace routing {
namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// Tube besides the cells' own: leaders in the apron, and what balance costs.
constexpr double leaders_and_balance = 1.04;
/// Bulbs beside each other want this much room: R <= 0.9 s.
constexpr double widest_bend = 0.9;
/// A share-out that cells say is this uneven is laid only where none is better.
constexpr double fair_spread = 0.06;
constexpr int most_laid = 4, enough_laid = 2;
/// Cuts that follow walls are looked for among no more loops than this: seconds go by with more.
constexpr int most_followed = 16;
/// A manifold stands no farther from a wall than this, in spacings.
constexpr double most_off_wall = 1.0;
/// Tube laid wider than it was asked for heats less: a tenth more is as bad as a bend more in 100 ft.
constexpr double stretch_price = 10.0;
/// A bulb swings out by so little, in spacings, that all tube may keep off the wall by as much.
constexpr double little_swing = 0.15;
/// Numbers of loops tried above the least, where some come out over the limit.
constexpr int most_added = 2;

Piece piece_outside(Piece piece, const LayoutTask& task) {
  piece.from = seen_from_outside(piece.from, task);
  piece.to = seen_from_outside(piece.to, task);
  piece.centre = seen_from_outside(piece.centre, task);
  return piece;
}

double patch_m2(const Draft& draft, int part) {
  double area = 0.0;
  for (int cell = 0; cell < draft.cells.size(); ++cell) {
    if (draft.owner[index(cell)] == part) area += draft.cells.width_m(cell) * draft.cells.depth_m(cell);
  }
  return area;
}

TubeLayout layout_of(const LayoutTask& task, const Draft& draft) {
  TubeLayout layout;
  layout.apron.emplace_back();
  for (const Point& corner : apron_floor(draft.cells, draft.apron, task.spacing_m)) {
    layout.apron.back().push_back(seen_from_outside(corner, task));
  }
  for (std::size_t k = 0; k < draft.path.size(); ++k) {
    LaidLoop loop;
    loop.port = static_cast<int>(k) + 1;
    loop.length_m = length_m(draft.path[k]);
    loop.apron_m = draft.leader_m[k];
    loop.patch_m2 = patch_m2(draft, static_cast<int>(k));
    loop.left_first = draft.cold_last[k] != 0;
    for (Piece piece : loop.left_first ? reversed(draft.path[k]) : draft.path[k]) {
      loop.turned_deg += sweep_rad(piece) * 180.0 / 3.14159265358979323846;
      loop.path.push_back(piece_outside(piece, task));
    }
    layout.loop.push_back(std::move(loop));
  }
  return layout;
}

/// In bends: what must not be is dear, what is only worse than it might be is weighed.
double price_of(const LayoutCheck& check) {
  return check.bends_per_100ft_ratio + 50.0 * check.spread_ratio + 1500.0 * check.far_floor_ratio +
         5.0 * std::max(0.0, check.farthest_ratio - 1.0) + 5.0 * check.tight_bends_number +
         20.0 * (check.crossings_number + check.over_limit_number) + (check.sound() ? 0.0 : 200.0);
}

bool accepted(const LayoutCheck& check) {
  return check.sound() && check.spread_ratio <= 0.05 && check.far_floor_ratio <= 0.002;
}

/// Floor that is still bare after two ways is bare in others too, as a rule: gaps beside no-tube areas are too narrow.
bool good_enough(const LayoutCheck& check) { return check.sound() && check.spread_ratio <= 0.03; }

/// How far a bulb swings out beside its legs.
double swing_m(const LayoutTask& task) { return std::max(0.0, task.bend_radius_m - 0.48 * task.spacing_m); }

/// The clearances that cells keep, so that bends keep the ones asked for. A bend round a corner that juts out comes
/// nearer to it than its legs by up to 0.41 (R - c). Beside no-tube areas there is room for bulbs. Along walls there is
/// where it is little, or where it is asked for: trees that have no ends along walls do without and heat the edge
/// better.
LayoutTask with_room_for_bends(LayoutTask task, bool bulbs_at_walls) {
  constexpr double root2 = 1.4142135623730951;
  const auto kept_m = [&](double clearance_m, bool bulbs) {
    const double bend_m = (clearance_m + (root2 - 1.0) * task.bend_radius_m) / root2;
    return std::max({clearance_m, bend_m, bulbs ? clearance_m + swing_m(task) : 0.0});
  };
  const bool is_little = swing_m(task) <= little_swing * task.spacing_m;
  task.wall_clearance_m = kept_m(task.wall_clearance_m, bulbs_at_walls || is_little);
  for (NoTubeArea& area : task.no_tube) area.clearance_m = kept_m(area.clearance_m, true);
  return task;
}

/// In the order they are tried: wide aprons before deep ones, gates all round before those on one side, cells near
/// their size before ones stretched to fit between walls, straight cuts before ones that follow walls.
std::vector<Attempt> attempts(const LayoutTask& seen, int loops) {
  const int depth = std::max(1, loops / 4);
  std::vector<Fit> fits{Fit{0.96, 1.08}, Fit{0.95, 1.22}};
  const Cells first = cells_of(seen, fits[0]), second = cells_of(seen, fits[1]);
  if (first.x_m == second.x_m && first.y_m == second.y_m) fits.pop_back();
  std::vector<Attempt> all;
  for (const bool follow_walls : {false, true}) {
    if (follow_walls && loops > most_followed) break;
    for (const ApronShape& shape :
         {ApronShape{depth, depth, depth}, ApronShape{depth + 1, depth + 1, depth + 1}, ApronShape{depth, depth, 0},
          ApronShape{depth, 0, depth}, ApronShape{depth + 1, depth + 1, 0}, ApronShape{depth + 1, 0, depth + 1}}) {
      for (const Fit& fit : fits) all.push_back({loops, shape, fit, CutOptions{3.0, 0.12, follow_walls}});
    }
  }
  return all;
}

struct Best {
  std::optional<TubeLayout> layout;
  LayoutCheck check;
  double price = HUGE_VAL;
  double unreached_m2 = 0.0;
};

/// The widest distance of tube lines, in spacings.
double widest_ratio(const Cells& cells, double spacing_m) {
  double widest = 0.0;
  for (std::size_t i = 0; i + 1 < cells.x_m.size(); ++i) widest = std::max(widest, cells.x_m[i + 1] - cells.x_m[i]);
  for (std::size_t j = 0; j + 1 < cells.y_m.size(); ++j) widest = std::max(widest, cells.y_m[j + 1] - cells.y_m[j]);
  return 0.5 * widest / spacing_m;
}

double unreached_m2(const Draft& draft) {
  double area = 0.0;
  for (int cell = 0; cell < draft.cells.size(); ++cell) {
    if (draft.cells.is(cell) != Kind::free || draft.owner[index(cell)] >= 0) continue;
    area += draft.cells.width_m(cell) * draft.cells.depth_m(cell);
  }
  return area;
}

class Layer {
 public:
  Layer(const LayoutTask& task, const LayoutTask& seen) : task_(task), seen_(seen), exact_(seen_from_manifold(task)) {}

  /// Fair share-outs are laid as they come, until one is accepted; if there is none, the least unfair one.
  Best best_of(int loops) {
    best_ = {};
    laid_ = 0;
    std::optional<Draft> unfair;
    for (const Attempt& attempt : attempts(seen_, loops)) {
      if (laid_ == most_laid || (laid_ > 0 && attempt.cut.follow_walls)) break;
      auto draft = share_out(seen_, attempt);
      if (!draft) continue;
      if (draft->spread_ratio <= fair_spread) {
        if (try_out(*draft) || (laid_ >= enough_laid && good_enough(best_.check))) return std::move(best_);
      } else if (!unfair || draft->spread_ratio < unfair->spread_ratio) {
        unfair = std::move(draft);
      }
    }
    if (!best_.layout && unfair) try_out(*unfair);
    return std::move(best_);
  }

 private:
  bool try_out(Draft& draft) {
    lay({seen_, exact_}, draft);
    ++laid_;
    const LayoutCheck check = weigh(draft);
    if (check.sound()) return accepted(check);
    std::swap(draft.path, draft.plain_path);
    return accepted(weigh(draft));
  }

  LayoutCheck weigh(const Draft& draft) {
    TubeLayout layout = layout_of(task_, draft);
    const LayoutCheck check = check_layout(task_, layout);
    // Tube that crosses tube is never handed on.
    const bool whole = check.crossings_number == 0 && check.wrong_ends_number == 0 && check.broken_number == 0;
    const double price = price_of(check) + stretch_price * (widest_ratio(draft.cells, seen_.spacing_m) - 1.0);
    if (whole && price < best_.price) best_ = {std::move(layout), check, price, unreached_m2(draft)};
    return check;
  }

  const LayoutTask& task_;
  const LayoutTask& seen_;
  const LayoutTask exact_;
  Best best_;
  int laid_ = 0;
};

/// With the fewest loops that come out within the limit; a few more are tried.
Best best_from(const LayoutTask& task, const LayoutTask& seen, int least) {
  Best best;
  for (int loops = least; loops <= std::min(least + most_added, task.manifold.front().loops_number); ++loops) {
    Best made = Layer(task, seen).best_of(loops);
    if (made.layout && made.price < best.price) best = std::move(made);
    if (best.layout && best.check.over_limit_number == 0) break;
  }
  return best;
}

Checked<TubeLayout> lay_in_order(const LayoutTask& task) {
  if (task.bend_radius_m > widest_bend * task.spacing_m) return {std::nullopt, {bend_too_wide(task)}};
  const double off_wall_m = distance_to_boundary_m(task.manifold.front().place, task.outline);
  if (off_wall_m > most_off_wall * task.spacing_m) return {std::nullopt, {manifold_off_wall(off_wall_m)}};
  const LayoutTask seen = with_room_for_bends(seen_from_manifold(task), false);
  const Cells cells = cells_of(seen, Fit{});
  double tube_m = 0.0;
  for (int cell = 0; cell < cells.size(); ++cell) tube_m += cells.is(cell) == Kind::free ? cells.tube_m(cell) : 0.0;
  if (tube_m <= 0.0) return {std::nullopt, {no_floor_at_manifold()}};
  const int least = std::max(1, static_cast<int>(std::ceil(leaders_and_balance * tube_m / task.longest_loop_m)));
  if (least > task.manifold.front().loops_number) return {std::nullopt, {too_few_ports(task, least, tube_m)}};

  Best best = best_from(task, seen, least);
  if (best.layout && !best.check.sound() && swing_m(task) > little_swing * task.spacing_m) {
    Best made = best_from(task, with_room_for_bends(seen_from_manifold(task), true),
                          static_cast<int>(best.layout->loop.size()));
    if (made.layout && made.price < best.price) best = std::move(made);
  }
  if (!best.layout) return {std::nullopt, {no_room_for_apron(least)}};
  Checked<TubeLayout> laid{std::move(best.layout), shortfalls(task, best.check)};
  if (best.unreached_m2 > 0.0) laid.said.push_back(floor_out_of_reach(best.unreached_m2));
  return laid;
}

}  // namespace
}  // namespace routing

Checked<TubeLayout> lay_tube(const LayoutTask& task) {
  expects(task.outline.size() >= 3 && !task.manifold.empty() && task.spacing_m > 0.0 && task.longest_loop_m > 0.0,
          "lay_tube: no floor or spacing");
  const Point facing = task.manifold.front().facing;
  expects(facing.x_m != 0.0 || facing.y_m != 0.0, "lay_tube: a manifold that faces nowhere");
  const routing::InOrder ordered = routing::in_one_order(task);
  Checked<TubeLayout> laid = routing::lay_in_order(ordered.task);
  if (laid && ordered.mirrored) laid.value = routing::mirrored(std::move(*laid.value));
  return laid;
}

}  // namespace slabwright
