#include "lying.hpp"

#include <algorithm>
#include <cmath>

#include "vectors.hpp"

namespace slabwright::routing {
namespace {

constexpr double sag_m = 1e-4;
/// Places of one loop that lie this near along it, in spacings, are one bend.
constexpr double one_bend = 1.9;
/// Parts of lines and of arcs whose distances are measured, in spacings: chords of arcs must lie near them.
constexpr double part = 0.5, arc_part = 0.15;
/// The sine of a kink between two pieces that would be a bend without a radius.
constexpr double kink = 0.005;

Point heading(const Piece& piece, bool at_end) {
  if (piece.radius_m <= 0.0) return unit(minus(piece.to, piece.from));
  const Point arm = minus(at_end ? piece.to : piece.from, piece.centre);
  const double sign = piece.turn == Side::left ? 1.0 : -1.0;
  return unit({-sign * arm.y_m, sign * arm.x_m});
}

/// Whether a line touches a no-tube area, or lies within one: distances to its sides do not tell where they may be
/// none.
bool on_area(const LayoutTask& task, Point a, Point b) {
  return std::any_of(task.no_tube.begin(), task.no_tube.end(), [&](const NoTubeArea& area) {
    const Polygon& o = area.outline;
    if (where_is(a, o) != Where::outside) return true;
    for (std::size_t i = 0; i < o.size(); ++i) {
      if (nearer(a, b, o[i], o[i + 1 < o.size() ? i + 1 : 0], 1e-9)) return true;
    }
    return false;
  });
}

/// Of an arc that of its whole circle.
Box box_of(const Piece& piece) {
  if (piece.radius_m <= 0.0) return routing::box_of(piece.from, piece.to);
  const Point c = piece.centre;
  return {{c.x_m - piece.radius_m, c.y_m - piece.radius_m}, {c.x_m + piece.radius_m, c.y_m + piece.radius_m}};
}

int tight(const LayoutTask& task, const Path& path) {
  return static_cast<int>(std::count_if(path.begin(), path.end(), [&](const Piece& piece) {
    return piece.radius_m > 0.0 && piece.radius_m < task.bend_radius_m - 1e-6;
  }));
}

}  // namespace

Lying::Lying(const LayoutTask& task, TubeMap without_tube, std::vector<Strand>& strands, std::vector<Path>& paths)
    : task_(task), strands_(strands), paths_(paths), map_(std::move(without_tube)) {
  for (std::size_t k = 0; k < paths.size(); ++k) map_.set(k, paths[k]);
}

bool Lying::take(std::size_t loop, Strand strand, const Rule& rule, int most_far) {
  tried_number_ += static_cast<long>(strand.corner.size());
  Path path = bent(task_, strand);
  if (!holds(loop, path, rule)) return false;
  map_.set(loop, path);
  if (map_.far_number() > most_far) {
    map_.set(loop, paths_[loop]);
    return false;
  }
  paths_[loop] = std::move(path);
  strands_[loop] = std::move(strand);
  return true;
}

bool Lying::holds(std::size_t loop, const Path& path, const Rule& rule) const {
  const Path& old = paths_[loop];
  if (tight(task_, path) > tight(task_, old)) return false;
  const auto same = [](const Piece& a, const Piece& b) {
    return a.from == b.from && a.to == b.to && a.radius_m == b.radius_m;
  };
  std::size_t first = 0, last = path.size(), old_last = old.size();
  while (first < path.size() && first < old.size() && same(path[first], old[first])) ++first;
  while (last > first && old_last > first && same(path[last - 1], old[old_last - 1])) --last, --old_last;
  for (std::size_t n = std::max<std::size_t>(first, 1); n < path.size() && n <= last; ++n) {
    const Point in = heading(path[n - 1], true), out = heading(path[n], false);
    if (std::abs(cross(in, out)) > kink || dot(in, out) < 0.0) return false;
  }
  for (std::size_t n = first; n < last; ++n) {
    if (!clear(loop, path[n], rule)) return false;
  }
  Measured measured{path, {0.0}};
  for (const Piece& piece : path) measured.at_m.push_back(measured.at_m.back() + length_m(piece));
  for (std::size_t n = first; n < last; ++n) {
    if (!own_apart(loop, measured, n, rule)) return false;
  }
  return true;
}

/// Whether a piece keeps the clearances and its distance to other loops.
bool Lying::clear(std::size_t loop, const Piece& piece, const Rule& rule) const {
  const std::vector<Point> corner =
      piece.radius_m > 0.0 ? flattened(std::span<const Piece>(&piece, 1), sag_m) : parts_of(piece);
  for (std::size_t c = 0; c + 1 < corner.size(); ++c) {
    const Point a = corner[c], b = corner[c + 1];
    if (was_there(loop, a, b)) continue;
    const bool spared = distance_m(a, rule.port) < rule.beside_wall_m;
    const double least_m = gap_m(a, rule);
    if (!spared && (where_is(a, task_.outline) == Where::outside || !keeps_clear(task_, a, b))) return false;
    if (on_area(task_, a, b)) return false;
    bool apart = true;
    map_.each_near(a, b, task_.spacing_m, [&](const TubeEdge& edge) {
      apart = edge.loop == static_cast<int>(loop) || !nearer(a, b, edge.a, edge.b, least_m);
      return apart;
    });
    if (!apart) return false;
  }
  return true;
}

/// Whether the loop's tube already lies along a line.
bool Lying::was_there(std::size_t loop, Point a, Point b) const {
  const Point middle{0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
  bool at_a = false, at_b = false, between = false;
  map_.each_near(a, b, 0.0, [&](const TubeEdge& edge) {
    if (edge.loop != static_cast<int>(loop)) return true;
    at_a = at_a || within(a, edge.a, edge.b, 1e-7);
    at_b = at_b || within(b, edge.a, edge.b, 1e-7);
    between = between || within(middle, edge.a, edge.b, sag_m);
    return !at_a || !at_b || !between;
  });
  return at_a && at_b && between;
}

/// Whether a piece keeps its distance from what of its loop is no part of the same bend.
bool Lying::own_apart(std::size_t loop, const Measured& measured, std::size_t n, const Rule& rule) const {
  const Path& path = measured.path;
  const Box box = box_of(path[n]);
  const std::vector<Point> here = parts_of(path[n]);
  const double here_m = length_m(path[n]) / static_cast<double>(here.size() - 1);
  std::vector<char> old;
  for (std::size_t i = 0; i + 1 < here.size(); ++i) old.push_back(was_there(loop, here[i], here[i + 1]) ? 1 : 0);
  for (std::size_t m = 0; m < path.size(); ++m) {
    if (m == n || apart(box, box_of(path[m]), task_.spacing_m)) continue;
    const std::vector<Point> there = parts_of(path[m]);
    const double there_m = length_m(path[m]) / static_cast<double>(there.size() - 1);
    for (std::size_t i = 0; i + 1 < here.size(); ++i) {
      if (old[i] != 0) continue;
      for (std::size_t j = 0; j + 1 < there.size(); ++j) {
        const double along_m = measured.at_m[n] + (static_cast<double>(i) + 0.5) * here_m - measured.at_m[m] -
                               (static_cast<double>(j) + 0.5) * there_m;
        if (std::abs(along_m) < one_bend * task_.spacing_m) continue;
        if (nearer(here[i], here[i + 1], there[j], there[j + 1], gap_m(here[i], rule))) return false;
      }
    }
  }
  return true;
}

std::vector<Point> Lying::parts_of(const Piece& piece) const {
  const double most_m = (piece.radius_m > 0.0 ? arc_part : part) * task_.spacing_m;
  const int parts = std::max(1, static_cast<int>(std::ceil(length_m(piece) / most_m)));
  std::vector<Point> places{piece.from};
  const double each_m = length_m(piece) / parts;
  for (int p = 1; p < parts; ++p) places.push_back(point_at(std::span<const Piece>(&piece, 1), p * each_m));
  places.push_back(piece.to);
  return places;
}

}  // namespace slabwright::routing
