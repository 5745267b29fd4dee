// Corners to arcs. A U-turn as narrow as the spacing has a radius of half of it; where the tube does not bend so far,
// its legs swing outward by an angle f, cos f = (w / 2 + R) / (2 R) with the width w, and an arc of pi + 2 f joins
// them.
#include <algorithm>
#include <cmath>

#include "cells.hpp"
#include "finish.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// Rounding makes a U-turn a hair narrower than two radii; that is no reason for a bulb.
constexpr double hair_m = 1e-6;
/// Bulbs may come this near to each other, in spacings.
constexpr double bulb_gap = 0.65;
constexpr double sag_m = 1e-4;

Point unit(Point from, Point to) {
  const double length = distance_m(from, to);
  return {(to.x_m - from.x_m) / length, (to.y_m - from.y_m) / length};
}

struct Bulb {
  double width_m = 0.0, radius_m = 0.0;
  double cosine = 1.0, sine = 0.0;
  Bulb(double width, double radius) : width_m(width), radius_m(radius) {
    cosine = (0.5 * width + radius) / (2.0 * radius);
    sine = std::sqrt(std::max(0.0, 1.0 - cosine * cosine));
  }
  /// From where the legs begin to swing to the farthest tube.
  double height_m() const { return radius_m * (1.0 + 2.0 * sine); }
};

bool narrow(const std::vector<Point>& c, std::size_t i, double radius_m) {
  return turns_back(c, i) && distance_m(c[i], c[i + 1]) < 2.0 * radius_m - hair_m;
}

/// Where a U-turn needs a bulb and its legs are long enough for it and for what bends at their other ends.
bool wants_bulb(const std::vector<Point>& c, std::size_t i, double radius_m) {
  if (i < leader_corners || i + 1 + leader_corners >= c.size() || !narrow(c, i, radius_m)) return false;
  const double height_m = Bulb(distance_m(c[i], c[i + 1]), radius_m).height_m();
  const double before_m = narrow(c, i - 2, radius_m) ? height_m : radius_m;
  const double after_m = i + 3 < c.size() - 1 && narrow(c, i + 2, radius_m) ? height_m : radius_m;
  return distance_m(c[i - 1], c[i]) >= height_m + before_m && distance_m(c[i + 1], c[i + 2]) >= height_m + after_m;
}

/// The three arcs of a bulb whose farthest tube lies where corners a and b stood; the leg comes along `ahead`.
Path bulb(Point a, Point b, Point ahead, double radius_m) {
  const Bulb shape(distance_m(a, b), radius_m);
  const Point across = unit(a, b);
  const bool right = side_of(a, moved(a, ahead, 1.0), b) == Side::right;
  const Side inward = right ? Side::right : Side::left, outward = right ? Side::left : Side::right;
  const Point from = moved(a, ahead, -shape.height_m()), to = moved(b, ahead, -shape.height_m());
  const Point first_centre = moved(from, across, -radius_m), last_centre = moved(to, across, radius_m);
  const Point centre = moved(moved(from, across, 0.5 * shape.width_m), ahead, 2.0 * radius_m * shape.sine);
  const auto swung = [&](Point arc_centre, double sign) {
    return moved(moved(arc_centre, across, sign * radius_m * shape.cosine), ahead, radius_m * shape.sine);
  };
  const Point up = swung(first_centre, 1.0), down = swung(last_centre, -1.0);
  return {{from, up, radius_m, first_centre, outward},
          {up, down, radius_m, centre, inward},
          {down, to, radius_m, last_centre, outward}};
}

bool clear(const LayoutTask& task, const Path& path) {
  for (const Piece& piece : path) {
    if (piece.radius_m <= 0.0) continue;
    const std::vector<Point> chord = flattened(std::span<const Piece>(&piece, 1), sag_m);
    for (std::size_t i = 0; i + 1 < chord.size(); ++i) {
      if (!keeps_clear(task, chord[i], chord[i + 1])) return false;
    }
  }
  return true;
}

/// How much of its two lines the bend at corner i takes, for a radius of one.
double taken(std::span<const Point> c, std::size_t i) {
  const Point in = unit(c[i - 1], c[i]), out = unit(c[i], c[i + 1]);
  return std::abs(cross(in, out)) / std::max(1.0 + dot(in, out), 1e-6);
}

/// Whether a bend of this radius at corner i keeps clear.
bool bend_clear(const LayoutTask& task, std::span<const Point> c, std::size_t i, double radius_m) {
  const Point in = unit(c[i - 1], c[i]), out = unit(c[i], c[i + 1]);
  if (dot(in, out) > -0.5) {
    // The bend lies between its corner and where it begins and ends.
    const double take_m = radius_m * taken(c, i);
    const Point from = moved(c[i], in, -take_m), to = moved(c[i], out, take_m);
    const auto [left, right] = std::minmax({from.x_m, c[i].x_m, to.x_m});
    const auto [low, high] = std::minmax({from.y_m, c[i].y_m, to.y_m});
    if (is_far_from_all(task, {left - hair_m, low - hair_m}, {right + hair_m, high + hair_m})) return true;
  }
  return clear(task, rounded(c.subspan(i - 1, 3), radius_m));
}

/// Corners between two bulbs. A wide bend reaches farther into its corner than a narrow one, and takes more of its
/// lines: where that is barred, or two wide ones would leave each other too little, narrow ones are taken.
void add_rounded(const LayoutTask& task, std::span<const Point> corner, Path& path) {
  const double wide_m = std::max(0.5 * task.spacing_m, task.bend_radius_m);
  std::vector<double> radius_m(corner.size(), wide_m);
  for (std::size_t i = leader_corners; i + leader_corners < corner.size() && wide_m > task.bend_radius_m; ++i) {
    if (!bend_clear(task, corner, i, wide_m)) radius_m[i] = task.bend_radius_m;
  }
  for (std::size_t i = 1; i + 2 < corner.size() && wide_m > task.bend_radius_m; ++i) {
    const double a = taken(corner, i), b = taken(corner, i + 1), length = distance_m(corner[i], corner[i + 1]);
    // What the one that takes more gets, as `rounded` shares lines out.
    const double rest_m = std::max(0.5 * length, length - wide_m * std::min(a, b));
    if (rest_m < std::min(wide_m, task.bend_radius_m + hair_m) * std::max(a, b)) {
      radius_m[i] = radius_m[i + 1] = task.bend_radius_m;
    }
  }
  const Path made = rounded(corner, radius_m);
  path.insert(path.end(), made.begin(), made.end());
}

bool same_way(Point a, Point b, Point c) {
  return side_of(a, b, c) == Side::on && (b.x_m - a.x_m) * (c.x_m - b.x_m) + (b.y_m - a.y_m) * (c.y_m - b.y_m) > 0.0;
}

/// The end at corners i and i + 1 drawn back by its shorter leg; false where the tube would then double back on itself.
bool draw_back(std::vector<Point>& c, std::size_t i) {
  const double before_m = distance_m(c[i - 1], c[i]), after_m = distance_m(c[i + 1], c[i + 2]);
  const Point back = unit(c[i], c[i - 1]);
  const bool same = std::abs(before_m - after_m) < hair_m;
  const Point a = before_m <= after_m || same ? c[i - 1] : moved(c[i], back, after_m);
  const Point b = after_m <= before_m || same ? c[i + 2] : moved(c[i + 1], back, before_m);
  const bool first = a == c[i - 1], last = b == c[i + 2];
  if ((first && !same_way(c[i - 2], a, b)) || (last && !same_way(a, b, c[i + 3]))) return false;
  c[i] = a;
  c[i + 1] = b;
  const auto at = [&](std::size_t k) { return c.begin() + static_cast<std::ptrdiff_t>(k); };
  if (last) c.erase(at(i + 1), at(i + 3));
  if (first) c.erase(at(i - 1), at(i + 1));
  return true;
}

}  // namespace

bool end_keeps_clear(const LayoutTask& task, Point before, Point a, Point b, Point after) {
  const double radius_m = task.bend_radius_m;
  if (distance_m(a, b) < 2.0 * radius_m - hair_m) return clear(task, bulb(a, b, unit(before, a), radius_m));
  return clear(task, rounded(std::vector<Point>{before, a, b, after}, std::max(0.5 * task.spacing_m, radius_m)));
}

double bend_room_m(const LayoutTask& task, const std::vector<Point>& c, std::size_t i, bool after) {
  if (i == 0 || i + 1 >= c.size()) return 0.0;
  const double radius_m = task.bend_radius_m;
  const std::size_t first = after ? i - 1 : i;
  if (first > 0 && first + 2 < c.size() && narrow(c, first, radius_m)) {
    return Bulb(distance_m(c[first], c[first + 1]), radius_m).height_m();
  }
  return radius_m * taken(c, i);
}

void drop_short_ends(const LayoutTask& task, std::vector<Strand>& strands) {
  for (Strand& strand : strands) {
    std::vector<Point>& c = strand.corner;
    for (std::size_t i = leader_corners + 1; i + 2 + leader_corners < c.size(); ++i) {
      if (!narrow(c, i, task.bend_radius_m) || wants_bulb(c, i, task.bend_radius_m)) continue;
      if (draw_back(c, i)) i = leader_corners;
    }
  }
}

void stagger_bulbs(const LayoutTask& task, std::vector<Strand>& strands) {
  std::vector<Point> taken;
  const double apart_m = 2.0 * task.bend_radius_m + bulb_gap * task.spacing_m, step_m = 0.25 * task.spacing_m;
  for (Strand& strand : strands) {
    std::vector<Point>& c = strand.corner;
    for (std::size_t i = leader_corners; i + 1 + leader_corners < c.size(); ++i) {
      if (!wants_bulb(c, i, task.bend_radius_m)) continue;
      const Point back = unit(c[i], c[i - 1]);
      const auto too_near = [&](Point a, Point b) {
        const Point centre = moved({0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)}, back, task.bend_radius_m);
        return std::any_of(taken.begin(), taken.end(),
                           [&](Point other) { return distance_m(centre, other) < apart_m; });
      };
      Point a = c[i], b = c[i + 1];
      const double room_m = std::min(distance_m(c[i - 1], a), distance_m(b, c[i + 2])) - 2.0 * task.bend_radius_m -
                            Bulb(distance_m(a, b), task.bend_radius_m).height_m();
      const auto barred = [&](Point x, Point y) {
        return too_near(x, y) || !end_keeps_clear(task, c[i - 1], x, y, c[i + 2]);
      };
      for (double by_m = step_m; barred(a, b) && by_m <= room_m; by_m += step_m) {
        a = moved(c[i], back, by_m);
        b = moved(c[i + 1], back, by_m);
      }
      if (!barred(a, b)) {
        c[i] = a;
        c[i + 1] = b;
      }
      taken.push_back(
          moved({0.5 * (c[i].x_m + c[i + 1].x_m), 0.5 * (c[i].y_m + c[i + 1].y_m)}, back, task.bend_radius_m));
    }
  }
}

Path bent(const LayoutTask& task, const Strand& strand) {
  const std::vector<Point>& c = strand.corner;
  Path path;
  std::vector<Point> run{c.front()};
  for (std::size_t i = 1; i < c.size(); ++i) {
    if (!wants_bulb(c, i, task.bend_radius_m)) {
      run.push_back(c[i]);
      continue;
    }
    const Path turn = bulb(c[i], c[i + 1], unit(c[i - 1], c[i]), task.bend_radius_m);
    run.push_back(turn.front().from);
    add_rounded(task, run, path);
    path.insert(path.end(), turn.begin(), turn.end());
    run = {turn.back().to};
    ++i;
  }
  add_rounded(task, run, path);
  return path;
}

}  // namespace slabwright::routing
