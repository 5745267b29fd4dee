// A task laid: the floor of each manifold by itself, then all of it checked.
#include <algorithm>
#include <cmath>

#include "as_drawn.hpp"
#include "bands.hpp"
#include "lay_zone.hpp"
#include "one_order.hpp"
#include "remarks_layout.hpp"
#include "slabwright/contract.hpp"
#include "slit.hpp"
#include "zones.hpp"

namespace slabwright {
namespace routing {
namespace {

/// Bulbs beside each other want this much room: R <= 0.9 s.
constexpr double widest_bend = 0.9;
/// Zones are cut again where loops of the whole floor differ more.
constexpr double even_spread = 0.05;
constexpr int zone_rounds = 3;
constexpr double more_room = 1.6;
/// Of the work of a round, what it takes to cut them.
constexpr double zones_share = 0.2;
/// Loops of one manifold that differ more have not found their ways.
constexpr double torn_spread = 0.15;

void expect_sense(const LayoutTask& task) {
  expects(task.outline.size() >= 3 && !task.manifold.empty() && task.spacing_m > 0.0 && task.longest_loop_m > 0.0,
          "lay_tube: no floor or spacing");
  expects(task.edge_clearance_m.empty() || task.edge_clearance_m.size() == task.outline.size(),
          "lay_tube: a clearance for each edge, or none");
  for (const PortRow& row : task.manifold) {
    expects(row.loops_wanted_number >= 0 && row.loops_wanted_number <= row.loops_number,
            "lay_tube: more loops wanted than the manifold serves");
    expects(row.facing.x_m != 0.0 || row.facing.y_m != 0.0, "lay_tube: a manifold that faces nowhere");
  }
}

/// Whether an area lies on the zone, or so near that tube there must keep its distance.
bool touches(const NoTubeArea& area, const Zone& zone) {
  const auto edges_near = [&](std::size_t i, std::size_t k) {
    const Point a = zone.corner[i], b = zone.corner[i + 1 < zone.corner.size() ? i + 1 : 0];
    const Point c = area.outline[k], d = area.outline[k + 1 < area.outline.size() ? k + 1 : 0];
    return distance_of_edges_m(a, b, c, d) <= area.clearance_m;
  };
  if (where_is(area.outline.front(), zone.corner) != Where::outside) return true;
  for (std::size_t i = 0; i < zone.corner.size(); ++i) {
    for (std::size_t k = 0; k < area.outline.size(); ++k) {
      if (edges_near(i, k)) return true;
    }
  }
  return false;
}

/// What of the task lies on the zone of one manifold.
ZoneTask zone_task(const InOrder& ordered, const ZoneShare& share) {
  const LayoutTask& task = ordered.task;
  const PortRow& manifold = task.manifold[share.manifold];
  const double about = signed_area_m2(share.zone.corner) / (task.spacing_m * task.longest_loop_m);
  const int loops = share.loops > 0 ? share.loops : static_cast<int>(std::ceil(1.04 * about));
  const Zone zone = stands_free(task, manifold) ? with_slit(share.zone, task, manifold, loops) : share.zone;
  ZoneTask made{on_zone(task, zone), {}, manifold_named(task, share.manifold), ordered.mirrored};
  made.task.manifold = {manifold};
  std::erase_if(made.task.no_tube, [&](const NoTubeArea& area) { return !touches(area, share.zone); });
  for (const Zone::Edge& edge : zone.edge) made.is_border.push_back(edge.is_border ? 1 : 0);
  return made;
}

void merge(TubeLayout& whole, TubeLayout part, std::size_t manifold) {
  for (LaidLoop& loop : part.loop) {
    loop.manifold = manifold;
    whole.loop.push_back(std::move(loop));
  }
  whole.apron.push_back(std::move(part.apron.front()));
}

struct Laid {
  std::optional<TubeLayout> layout;
  std::vector<Diagnostic> said;
  LayoutCheck check;
  double price = HUGE_VAL;
};

struct LaidZone {
  ZoneShare share;
  Checked<TubeLayout> part;
};

/// A zone that is cut out as before is not laid again.
Checked<TubeLayout> laid_once(const InOrder& ordered, const ZoneShare& share, std::vector<LaidZone>& known,
                              const Progress& progress) {
  for (const LaidZone& zone : known) {
    if (zone.share == share) return zone.part;
  }
  const int wanted = ordered.task.manifold[share.manifold].loops_wanted_number;
  const LoopsWish wish{wanted > 0 ? wanted : share.loops, wanted > 0};
  known.push_back({share, lay_zone(zone_task(ordered, share), wish, progress)});
  return known.back().part;
}

/// The zones one after the other. One that refuses wants more room another time.
Laid lay_all(const InOrder& ordered, const std::vector<ZoneShare>& shares, ZoneNotes& notes,
             std::vector<LaidZone>& known, const Progress& progress) {
  const LayoutTask& task = ordered.task;
  Laid laid;
  TubeLayout whole;
  bool refused = false;
  for (std::size_t k = 0; k < shares.size(); ++k) {
    const ZoneShare& share = shares[k];
    Checked<TubeLayout> part = laid_once(ordered, share, known, part_of(progress, k, shares.size()));
    tell(progress, static_cast<double>(k + 1) / static_cast<double>(shares.size()));
    laid.said.insert(laid.said.end(), part.said.begin(), part.said.end());
    if (!part) notes.room_ratio[share.manifold] *= more_room;
    if (!part) refused = true;
    if (part) merge(whole, std::move(*part.value), share.manifold);
  }
  if (refused) return laid;
  laid.check = check_layout(task, whole);
  laid.price = layout_price(laid.check);
  laid.layout = std::move(whole);
  return laid;
}

/// How much longer the loops of each manifold came out than those of all. True where loops of one manifold differ so
/// much that its zone is the wrong shape: it wants more room.
bool note_lengths(const TubeLayout& layout, ZoneNotes& notes) {
  const std::size_t manifolds = notes.tube_ratio.size();
  std::vector<double> sum_m(manifolds, 0.0), count(manifolds, 0.0), least_m(manifolds, HUGE_VAL),
      most_m(manifolds, 0.0);
  double all_m = 0.0;
  for (const LaidLoop& loop : layout.loop) {
    sum_m[loop.manifold] += loop.length_m;
    count[loop.manifold] += 1.0;
    least_m[loop.manifold] = std::min(least_m[loop.manifold], loop.length_m);
    most_m[loop.manifold] = std::max(most_m[loop.manifold], loop.length_m);
    all_m += loop.length_m / static_cast<double>(layout.loop.size());
  }
  bool any_torn = false;
  for (std::size_t k = 0; k < manifolds; ++k) {
    const bool torn = most_m[k] - least_m[k] > torn_spread * sum_m[k] / count[k];
    if (torn) notes.room_ratio[k] *= more_room;
    if (!torn) notes.tube_ratio[k] *= sum_m[k] / count[k] / all_m;
    any_torn = any_torn || torn;
  }
  return any_torn;
}

/// Zones are cut, laid, and cut once more by what came out, while loops differ much or a manifold has no room.
Laid lay_zones(const InOrder& ordered, const Progress& progress) {
  const LayoutTask& task = ordered.task;
  ZoneNotes notes(task.manifold.size());
  Laid best;
  std::vector<ZoneShare> before;
  std::vector<LaidZone> known;
  for (int round = 0; round < zone_rounds; ++round) {
    const Progress of_round = try_of(progress, round);
    auto shares = zones_of(task, notes);
    tell(of_round, zones_share);
    if (!shares && round == 0) best.said = shares.said;
    if (!shares || *shares.value == before) break;
    Laid made = lay_all(ordered, *shares.value, notes, known, part_of(of_round, zones_share, 1.0));
    const bool torn = !made.layout || note_lengths(*made.layout, notes);
    const bool done = !torn && made.check.spread_ratio <= even_spread;
    before = std::move(*shares.value);
    if (round == 0 || made.price < best.price) best = std::move(made);
    if (done) break;
  }
  return best;
}

Checked<TubeLayout> lay_in_order(const InOrder& ordered, const Progress& progress) {
  const LayoutTask& task = ordered.task;
  if (task.bend_radius_m > widest_bend * least_spacing_m(task)) return {std::nullopt, {bend_too_wide(task)}};
  ZoneNotes none(task.manifold.size());
  std::vector<LaidZone> known;
  Laid laid = task.manifold.size() > 1 ? lay_zones(ordered, progress)
                                       : lay_all(ordered, {{zone_of(task), 0, 0}}, none, known, progress);
  if (!laid.layout) return {std::nullopt, laid.said};
  Checked<TubeLayout> made{std::move(laid.layout), shortfalls(task, laid.check)};
  made.said.insert(made.said.end(), laid.said.begin(), laid.said.end());
  return made;
}

Checked<TubeLayout> lay_either_way(const LayoutTask& task, const Progress& progress) {
  const InOrder ordered = in_one_order(task);
  Checked<TubeLayout> laid = lay_in_order(ordered, progress);
  if (laid && ordered.mirrored) laid.value = mirrored(std::move(*laid.value));
  return laid;
}

}  // namespace
}  // namespace routing

Checked<TubeLayout> lay_tube(const LayoutTask& task, const Progress& progress) {
  routing::expect_sense(task);
  Checked<TubeLayout> laid =
      task.drawn.empty() ? routing::lay_either_way(task, progress) : routing::lay_with_drawn(task, progress);
  tell(progress, 1.0);
  return laid;
}

}  // namespace slabwright
