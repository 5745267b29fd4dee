// One floor laid several ways; the best is kept.
#include <algorithm>
#include <cmath>

#include "bands.hpp"
#include "draft.hpp"
#include "joints.hpp"
#include "lay_zone.hpp"
#include "mirror.hpp"
#include "remarks_layout.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::routing {
namespace {

/// How far a bulb swings out beside its legs.
double swing_m(const LayoutTask& task) { return std::max(0.0, task.bend_radius_m - 0.48 * least_spacing_m(task)); }

}  // namespace

double clearance_with_bends_m(const LayoutTask& task, double clearance_m, bool bulbs) {
  constexpr double root2 = 1.4142135623730951;
  const double bend_m = (clearance_m + (root2 - 1.0) * task.bend_radius_m) / root2;
  return std::max({clearance_m, bend_m, bulbs ? clearance_m + swing_m(task) : 0.0});
}

namespace {

/// Tube besides the cells' own: leaders in the apron, and what balance costs.
constexpr double leaders_and_balance = 1.04;
constexpr int most_laid = 4, enough_laid = 2;
/// Floors of more loops take long to lay, and are not laid anew for a little bare floor.
constexpr std::size_t few_loops = 5;
/// With more loops than this, floors that so many ways of cutting do not share out are given up: each takes long.
constexpr int many_loops = 30, most_failed = 4;
/// Search for cuts ends after so many steps, half a second or so. Floors that are shared out well take a tenth.
constexpr long most_steps = 40000000;
/// Corners of lines that are moved towards bare floor with one number of loops, over all ways of laying them. Floors
/// that are laid well take a tenth; one that partitions cut up would be filled for half a minute, way after way, and
/// none is accepted.
constexpr long most_corners = 100000;
/// Tube laid wider than it was asked for heats less: a tenth more is as bad as a bend more in 100 ft.
constexpr double stretch_price = 10.0;
/// Loops in mirrored pairs are worth as much as so many bends less in 100 ft.
constexpr double symmetry_worth = 2.0;
/// A bulb swings out by so little, in spacings, that all tube may keep off the wall by as much.
constexpr double little_swing = 0.15;
/// Loops of even heat where little is lost are long ones: with this much over the limit more loops are needed.
constexpr double little_over = 1.03;
/// A strip left over is worth a word where it is wider, in spacings.
constexpr double least_strip = 0.1;
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
      loop.turned_deg += sweep_rad(piece) * 180.0 / pi;
      loop.path.push_back(piece_outside(piece, task));
    }
    loop.crossing = crossings_of(loop.path, task.joint);
    layout.loop.push_back(std::move(loop));
  }
  return layout;
}

bool accepted(const LayoutCheck& check, std::size_t loops) {
  const double bare = loops > few_loops ? 0.002 : 0.0005;
  return check.sound() && check.heat_spread_ratio <= 0.05 && check.far_floor_ratio <= bare;
}

/// Floor that is still bare after two ways is bare in others too, as a rule: gaps beside no-tube areas are too narrow.
bool good_enough(const LayoutCheck& check) { return check.sound() && check.heat_spread_ratio <= 0.03; }

/// The clearances that cells keep, so that bends keep the ones asked for. A bend round a corner that juts out comes
/// nearer to it than its legs by up to 0.41 (R - c). Beside no-tube areas there is room for bulbs. Along walls there is
/// where it is little, or where it is asked for: trees that have no ends along walls do without and heat the edge
/// better. Tube on the other side of a border is as near as any other: nothing is added there.
LayoutTask with_room_for_bends(LayoutTask task, const std::vector<char>& is_border, bool bulbs_at_walls) {
  const auto kept_m = [&](double clearance_m, bool with_bulbs) {
    return clearance_with_bends_m(task, clearance_m, with_bulbs);
  };
  const bool is_little = swing_m(task) <= little_swing * task.spacing_m;
  const bool bulbs = bulbs_at_walls || is_little;
  task.wall_clearance_m = kept_m(task.wall_clearance_m, bulbs);
  for (std::size_t k = 0; k < task.edge_clearance_m.size(); ++k) {
    if (is_border.empty() || is_border[k] == 0) task.edge_clearance_m[k] = kept_m(task.edge_clearance_m[k], bulbs);
  }
  for (NoTubeArea& area : task.no_tube) area.clearance_m = kept_m(area.clearance_m, true);
  return task;
}

/// In the order they are tried: wide aprons before deep ones, gates all round before those on one side, cells near
/// their size before ones stretched to fit between walls.
std::vector<Attempt> attempts(const LayoutTask& seen, int loops) {
  const int depth = std::max(1, loops / 4);
  std::vector<Fit> fits{Fit{0.96, 1.08}, Fit{0.95, 1.22}};
  const Cells first = cells_of(seen, fits[0]), second = cells_of(seen, fits[1]);
  if (first.x_m == second.x_m && first.y_m == second.y_m) fits.pop_back();
  std::vector<Attempt> all;
  if (loops % 2 == 0 && is_symmetric(seen)) {
    Fit fit;
    fit.about_axis = true;
    for (const int deep : {depth, depth + 1}) all.push_back({loops, {deep, deep, deep}, fit, CutOptions{}, true});
  }
  for (const ApronShape& shape :
       {ApronShape{depth, depth, depth}, ApronShape{depth + 1, depth + 1, depth + 1}, ApronShape{depth, depth, 0},
        ApronShape{depth, 0, depth}, ApronShape{depth + 1, depth + 1, 0}, ApronShape{depth + 1, 0, depth + 1}}) {
    for (const Fit& fit : fits) all.push_back({loops, shape, fit, CutOptions{}, false});
  }
  return all;
}

struct Best {
  std::optional<TubeLayout> layout;
  LayoutCheck check;
  double price = HUGE_VAL;
  double unreached_m2 = 0.0;
  std::optional<Neck> neck;  ///< looked for where loops come out uneven or too long
  std::vector<Opening> closed;
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
  Layer(const LayoutTask& task, const LayoutTask& seen)
      : task_(task), seen_(seen), exact_(seen_from_manifold(task)), filling_{most_corners} {}

  /// Fair share-outs are laid as they come, until one is accepted; if there is none, the least unfair one.
  Best best_of(int loops, const Progress& progress) {
    best_ = {};
    laid_ = 0;
    int tried = 0;
    std::optional<Draft> unfair;
    int failed = 0;
    const std::vector<Attempt> all = attempts(seen_, loops);
    for (const Attempt& attempt : all) {
      if (laid_ == most_laid) break;
      const double of_all = static_cast<double>(tried++) / static_cast<double>(all.size());
      tell(progress, std::max(of_all, static_cast<double>(laid_) / most_laid));
      auto draft = share_out(seen_, attempt, work_);
      if (!draft && loops > many_loops && ++failed == most_failed) break;
      if (!draft) continue;
      if (!seen_.loss.empty() && draft->longest_m > little_over * task_.longest_loop_m) {
        unfair = std::move(draft);
        break;
      }
      if (draft->spread_ratio <= fair_spread) {
        if (try_out(*draft) || (laid_ >= enough_laid && good_enough(best_.check))) return std::move(best_);
        continue;
      }
      if (!unfair || draft->spread_ratio < unfair->spread_ratio) {
        unfair = std::move(draft);
      }
    }
    if (!best_.layout && unfair) try_out(*unfair);
    return std::move(best_);
  }

 private:
  bool try_out(Draft& draft) {
    const double worth = draft.whole ? symmetry_worth : 0.0;
    lay({seen_, exact_, filling_}, draft);
    ++laid_;
    const LayoutCheck check = weigh(draft, worth);
    if (check.sound()) return accepted(check, draft.path.size());
    std::swap(draft.path, draft.plain_path);
    return accepted(weigh(draft, worth), draft.path.size());
  }

  LayoutCheck weigh(const Draft& draft, double worth) {
    TubeLayout layout = layout_of(task_, draft);
    const LayoutCheck check = check_layout(task_, layout);
    // Tube that crosses tube is never handed on.
    const bool whole = check.crossings_number == 0 && check.wrong_ends_number == 0 && check.broken_number == 0;
    const double stretched = widest_ratio(draft.cells, seen_.spacing_m) - 1.0;
    const double price = layout_price(check) + stretch_price * stretched - worth;
    if (whole && price < best_.price) {
      best_ = {std::move(layout), check, price, unreached_m2(draft), {}, {}};
      if (!accepted(check, draft.path.size())) best_.neck = neck_of(draft);
      best_.closed = closed_openings(draft.cells, openings_of(seen_));
    }
    return check;
  }

  std::optional<Neck> neck_of(const Draft& draft) const {
    return worst_neck(draft.cells, draft.apron.gate, openings_of(seen_), task_.longest_loop_m);
  }

  const LayoutTask& task_;
  const LayoutTask& seen_;
  const ExactTask exact_;
  Best best_;
  int laid_ = 0;
  Work work_{most_steps}, filling_;
};

/// With the fewest loops that come out within the limit; a few more are tried.
Best best_from(const LayoutTask& task, const LayoutTask& seen, const LoopsWish& wish, const Progress& progress) {
  // Loops of even heat: the longest may be all the floor's ratios apart from the mean.
  double added = 1.0;
  for (const LossArea& area : task.loss) added = std::max(added, area.loss_ratio);
  const int tried = wish.exactly ? wish.loops : static_cast<int>(added * (wish.loops + most_added));
  const int most = std::min(tried, task.manifold.front().loops_number);
  Best best;
  for (int loops = wish.loops; loops <= most; ++loops) {
    Best made = Layer(task, seen).best_of(loops, try_of(progress, loops - wish.loops));
    if (made.layout && made.price < best.price) best = std::move(made);
    if (best.layout && (best.check.over_limit_number == 0 || best.neck)) break;
  }
  return best;
}

/// The wider of the strips that cells of an exact size leave along the last walls.
double left_over_m(const LayoutTask& seen, const Cells& cells) {
  Point most{-HUGE_VAL, -HUGE_VAL};
  for (const Point& p : seen.outline) most = {std::max(most.x_m, p.x_m), std::max(most.y_m, p.y_m)};
  const double kept_m = seen.wall_clearance_m - 0.5 * seen.spacing_m;
  return std::max(most.x_m - cells.x_m.back(), most.y_m - cells.y_m.back()) - kept_m;
}

/// Whether leaders would have room, so that it is the floor behind them that cannot be shared out.
bool has_apron(const LayoutTask& seen, int loops) {
  const std::vector<Attempt> all = attempts(seen, loops);
  return std::any_of(all.begin(), all.end(), [&](const Attempt& attempt) {
    Cells cells = cells_of(seen, attempt.fit);
    ApronShape shape = attempt.apron;
    shape.lowest_m = lowest_gate_m(seen);
    const auto apron = place_apron(cells, loops, shape);
    return apron && leaders_fit(seen, cells, *apron);
  });
}

}  // namespace

double layout_price(const LayoutCheck& check) {
  return check.bends_per_100ft_ratio + 50.0 * check.heat_spread_ratio + 1500.0 * check.far_floor_ratio +
         0.05 * check.joint_crossings_number + 0.5 * check.slanted_crossings_number +
         5.0 * std::max(0.0, check.farthest_ratio - 1.0) + 5.0 * check.tight_bends_number +
         20.0 * (check.crossings_number + check.over_limit_number) + (check.sound() ? 0.0 : 200.0);
}

Checked<TubeLayout> lay_zone(const ZoneTask& zone, const LoopsWish& wish, const Progress& progress) {
  const LayoutTask& task = zone.task;
  const LayoutTask seen = with_room_for_bends(seen_from_manifold(task), zone.is_border, false);
  const Cells cells = cells_of(seen, Fit{});
  double tube_m = 0.0;
  for (int cell = 0; cell < cells.size(); ++cell) tube_m += cells.is(cell) == Kind::free ? cells.tube_m(cell) : 0.0;
  if (tube_m <= 0.0) return {std::nullopt, {no_floor_at_manifold(zone.name)}};
  const int least = std::max(1, static_cast<int>(std::ceil(leaders_and_balance * tube_m / task.longest_loop_m)));
  LoopsWish made_wish = wish;
  if (wish.loops == 0) made_wish.loops = least;
  const int ports = task.manifold.front().loops_number;
  if (made_wish.loops > ports) return {std::nullopt, {too_few_ports(task, least, ports, tube_m)}};

  Best best = best_from(task, seen, made_wish, try_of(progress, 0));
  if (best.layout && !best.check.sound() && swing_m(task) > little_swing * task.spacing_m) {
    made_wish.loops = static_cast<int>(best.layout->loop.size());
    const LayoutTask roomier = with_room_for_bends(seen_from_manifold(task), zone.is_border, true);
    Best made = best_from(task, roomier, made_wish, try_of(progress, 1));
    if (made.layout && made.price < best.price) best = std::move(made);
  }
  if (!best.layout && !task.own_floor.empty()) return {std::nullopt, {own_floor_not_reached(made_wish.loops)}};
  if (!best.layout && has_apron(seen, made_wish.loops)) {
    return {std::nullopt, {floor_not_shared_out(zone.name, made_wish.loops)}};
  }
  if (!best.layout) return {std::nullopt, {no_room_for_apron(zone.name, made_wish.loops)}};
  Checked<TubeLayout> laid{std::move(best.layout), {}};
  const double strip_m = task.exact_spacing ? left_over_m(seen, cells) : 0.0;
  if (strip_m > least_strip * task.spacing_m) laid.said.push_back(floor_left_over(task, zone.name, strip_m));
  if (best.unreached_m2 > 0.0) laid.said.push_back(floor_out_of_reach(zone.name, best.unreached_m2));
  const auto given = [&](Point p) {
    const Point outside = seen_from_outside(p, task);
    return Point{zone.mirrored ? -outside.x_m : outside.x_m, outside.y_m};
  };
  if (best.neck) laid.said.push_back(neck_too_narrow(*best.neck, given(best.neck->place)));
  for (const Opening& opening : best.closed) {
    const Point middle{0.5 * (opening.from.x_m + opening.to.x_m), 0.5 * (opening.from.y_m + opening.to.y_m)};
    laid.said.push_back(opening_closed(opening, given(middle), task.spacing_m));
  }
  return laid;
}

}  // namespace slabwright::routing
