#include "zone_cut.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::routing {
namespace {

/// A side of a cut is no floor below this, square metres.
constexpr double least_floor_m2 = 0.01;

double across(Point p, bool upright) { return upright ? p.x_m : p.y_m; }
double along(Point p, bool upright) { return upright ? p.y_m : p.x_m; }

/// Where the line meets the outline, in order along it. Corners on the line lie on one side of it.
std::vector<ChordEnd> crossings(const Zone& zone, bool upright, double at_m, bool beyond) {
  std::vector<ChordEnd> all;
  const std::size_t n = zone.corner.size();
  const auto before = [&](Point p) { return beyond ? across(p, upright) <= at_m : across(p, upright) < at_m; };
  for (std::size_t i = 0; i < n; ++i) {
    const Point a = zone.corner[i], b = zone.corner[i + 1 < n ? i + 1 : 0];
    if (before(a) == before(b)) continue;
    const double share = (at_m - across(a, upright)) / (across(b, upright) - across(a, upright));
    double place = along(a, upright) + share * (along(b, upright) - along(a, upright));
    if (across(a, upright) == at_m) place = along(a, upright);
    if (across(b, upright) == at_m) place = along(b, upright);
    all.push_back({i, upright ? Point{at_m, place} : Point{place, at_m}});
  }
  std::stable_sort(all.begin(), all.end(),
                   [&](const ChordEnd& a, const ChordEnd& b) { return along(a.at, upright) < along(b.at, upright); });
  return all;
}

/// Whether a corner lies on the line strictly between two places of it.
bool touches_corner(const Zone& zone, bool upright, Point a, Point b) {
  const double least = std::min(along(a, upright), along(b, upright));
  const double most = std::max(along(a, upright), along(b, upright));
  return std::any_of(zone.corner.begin(), zone.corner.end(), [&](Point p) {
    return across(p, upright) == across(a, upright) && along(p, upright) > least && along(p, upright) < most;
  });
}

std::optional<ChordEnd> arm(const Zone& zone, Point from, bool upright, bool forward) {
  for (const bool beyond : {false, true}) {
    std::vector<ChordEnd> all = crossings(zone, upright, across(from, upright), beyond);
    if (!forward) std::reverse(all.begin(), all.end());
    for (const ChordEnd& end : all) {
      const double by = along(end.at, upright) - along(from, upright);
      if (forward ? by <= 0.0 : by >= 0.0) continue;
      if (!touches_corner(zone, upright, from, end.at)) return end;
      break;
    }
  }
  return std::nullopt;
}

void add(Zone& zone, Point corner, Zone::Edge edge) {
  if (!zone.corner.empty() && zone.corner.back() == corner) {
    zone.edge.back() = edge;
    return;
  }
  zone.corner.push_back(corner);
  zone.edge.push_back(edge);
}

/// The floor to the left of the line, which runs from `from` to `to`.
Zone side(const Zone& zone, const Chord& chord, const std::vector<double>& clearance_m) {
  const ChordEnd &from = chord.from, &to = chord.to;
  const std::size_t n = zone.corner.size();
  Zone made;
  add(made, from.at, {clearance_m.front(), true});
  for (const Point& p : chord.bend) add(made, p, {clearance_m.back(), true});
  add(made, to.at, zone.edge[to.edge]);
  for (std::size_t k = (to.edge + 1) % n;; k = (k + 1) % n) {
    add(made, zone.corner[k], zone.edge[k]);
    if (k == from.edge) break;
  }
  if (made.corner.back() == made.corner.front()) {
    made.corner.pop_back();
    made.edge.pop_back();
  }
  return made;
}

}  // namespace

std::vector<Point> Chord::corners() const {
  std::vector<Point> all{from.at};
  all.insert(all.end(), bend.begin(), bend.end());
  all.push_back(to.at);
  return all;
}

Zone zone_of(const LayoutTask& task) {
  Zone zone;
  const std::size_t n = task.outline.size();
  const auto clearance_m = [&](std::size_t edge) {
    return task.edge_clearance_m.empty() ? task.wall_clearance_m : task.edge_clearance_m[edge];
  };
  const bool reversed = signed_area_m2(task.outline) < 0.0;
  for (std::size_t k = 0; k < n; ++k) {
    const std::size_t corner = reversed ? n - 1 - k : k;
    // Walked the other way, the edge from a corner is the one that led to it.
    const std::size_t edge = reversed ? (corner + n - 1) % n : corner;
    add(zone, task.outline[corner], {clearance_m(edge), false});
  }
  if (zone.corner.size() > 1 && zone.corner.back() == zone.corner.front()) {
    zone.corner.pop_back();
    zone.edge.pop_back();
  }
  return zone;
}

LayoutTask on_zone(const LayoutTask& task, const Zone& zone) {
  LayoutTask made = task;
  made.outline = zone.corner;
  made.edge_clearance_m.clear();
  for (const Zone::Edge& edge : zone.edge) made.edge_clearance_m.push_back(edge.clearance_m);
  return made;
}

std::vector<Chord> chords_on(const Zone& zone, bool upright, double at_m, bool beyond) {
  const std::vector<ChordEnd> ends = crossings(zone, upright, at_m, beyond);
  std::vector<Chord> chords;
  for (std::size_t k = 0; k + 1 < ends.size(); k += 2) {
    if (!touches_corner(zone, upright, ends[k].at, ends[k + 1].at)) chords.push_back({ends[k], ends[k + 1], {}});
  }
  return chords;
}

std::optional<Chord> bent_chord(const Zone& zone, Point bend, bool east, bool north) {
  if (where_is(bend, zone.corner) != Where::inside) return std::nullopt;
  const auto level = arm(zone, bend, false, east), upright = arm(zone, bend, true, north);
  if (!level || !upright) return std::nullopt;
  return Chord{*level, *upright, {bend}};
}

std::optional<std::pair<Zone, Zone>> cut(const Zone& zone, const Chord& chord, const std::vector<double>& clearance_m) {
  if (chord.from.edge == chord.to.edge) return std::nullopt;
  const Chord back{chord.to, chord.from, chord.bend};
  std::pair<Zone, Zone> sides{side(zone, chord, clearance_m),
                              side(zone, back, {clearance_m.rbegin(), clearance_m.rend()})};
  for (const Zone* z : {&sides.first, &sides.second}) {
    if (z->corner.size() < 3 || signed_area_m2(z->corner) < least_floor_m2) return std::nullopt;
  }
  return sides;
}

}  // namespace slabwright::routing
