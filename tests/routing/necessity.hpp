// Whether what a layout lacks could be had at all: an opinion from the floor alone, that knows no cells and no method.
#pragma once
#include <algorithm>
#include <cmath>

#include "slabwright/routing_layout.hpp"

namespace floors {

/// The floor as points a quarter of a spacing apart, in the frame of the manifold's wall.
struct Dots {
  int columns = 0, rows = 0;
  double step_m = 0.0;
  slabwright::Point from;
  std::vector<char> floor;     ///< 1 where a point is floor and in no no-tube area
  std::vector<double> away_m;  ///< from walls and no-tube areas
  std::vector<char> barred;    ///< 1 in the clearance of a no-tube area: no floor to heat
  int at(int i, int j) const { return j * columns + i; }
};

inline slabwright::LayoutTask in_frame(slabwright::LayoutTask task) {
  const slabwright::Point at = task.manifold.front().place, f = task.manifold.front().facing;
  const double length = std::sqrt(f.x_m * f.x_m + f.y_m * f.y_m);
  const auto seen = [&](slabwright::Point p) {
    const slabwright::Point d{p.x_m - at.x_m, p.y_m - at.y_m};
    return slabwright::Point{(d.x_m * f.y_m - d.y_m * f.x_m) / length, (d.x_m * f.x_m + d.y_m * f.y_m) / length};
  };
  for (auto& p : task.outline) p = seen(p);
  for (auto& area : task.no_tube) {
    for (auto& p : area.outline) p = seen(p);
  }
  return task;
}

inline Dots dots_of(const slabwright::LayoutTask& task) {
  using namespace slabwright;
  Dots dots;
  dots.step_m = 0.25 * task.spacing_m;
  Point low{HUGE_VAL, HUGE_VAL}, high{-HUGE_VAL, -HUGE_VAL};
  for (const Point p : task.outline) {
    low = {std::min(low.x_m, p.x_m), std::min(low.y_m, p.y_m)};
    high = {std::max(high.x_m, p.x_m), std::max(high.y_m, p.y_m)};
  }
  dots.from = low;
  dots.columns = static_cast<int>((high.x_m - low.x_m) / dots.step_m) + 1;
  dots.rows = static_cast<int>((high.y_m - low.y_m) / dots.step_m) + 1;
  for (int j = 0; j < dots.rows; ++j) {
    for (int i = 0; i < dots.columns; ++i) {
      const Point p{low.x_m + (i + 0.5) * dots.step_m, low.y_m + (j + 0.5) * dots.step_m};
      bool floor = where_is(p, task.outline) != Where::outside;
      bool barred = false;
      double away = distance_to_boundary_m(p, task.outline);
      for (const NoTubeArea& area : task.no_tube) {
        floor = floor && where_is(p, area.outline) == Where::outside;
        away = std::min(away, distance_to_boundary_m(p, area.outline));
        barred = barred || distance_to_boundary_m(p, area.outline) < area.clearance_m;
      }
      dots.floor.push_back(floor ? 1 : 0);
      dots.barred.push_back(barred ? 1 : 0);
      dots.away_m.push_back(floor ? away : 0.0);
    }
  }
  return dots;
}

/// The points that can be reached from the one nearest to the manifold, over points that are allowed.
template <class Allowed>
std::vector<char> reached_from_manifold(const Dots& dots, const Allowed& allowed) {
  std::vector<char> seen(dots.floor.size(), 0);
  int first = -1;
  double least = HUGE_VAL;
  for (int j = 0; j < dots.rows; ++j) {
    for (int i = 0; i < dots.columns; ++i) {
      const double x = dots.from.x_m + (i + 0.5) * dots.step_m, y = dots.from.y_m + (j + 0.5) * dots.step_m;
      if (allowed(i, j) && x * x + y * y < least) {
        least = x * x + y * y;
        first = dots.at(i, j);
      }
    }
  }
  if (first < 0) return seen;
  std::vector<int> open{first};
  seen[static_cast<std::size_t>(first)] = 1;
  while (!open.empty()) {
    const int i = open.back() % dots.columns, j = open.back() / dots.columns;
    open.pop_back();
    const int to[4][2] = {{i + 1, j}, {i - 1, j}, {i, j + 1}, {i, j - 1}};
    for (const auto& [x, y] : to) {
      if (x < 0 || y < 0 || x >= dots.columns || y >= dots.rows || !allowed(x, y)) continue;
      if (seen[static_cast<std::size_t>(dots.at(x, y))] != 0) continue;
      seen[static_cast<std::size_t>(dots.at(x, y))] = 1;
      open.push_back(dots.at(x, y));
    }
  }
  return seen;
}

/// The share of the floor that tube cannot heat: discs a spacing in radius that touch no wall and no no-tube area,
/// moved from the manifold on, stand for openings two spacings wide. Tube lies within half a spacing of their middles,
/// two lines a spacing apart, and heats what is a spacing from it.
inline double floor_out_of_reach_ratio(const slabwright::LayoutTask& given) {
  const Dots dots = dots_of(in_frame(given));
  const double half_m = given.spacing_m - 0.5 * dots.step_m;
  const auto wide = [&](int i, int j) { return dots.away_m[static_cast<std::size_t>(dots.at(i, j))] >= half_m; };
  const std::vector<char> seen = reached_from_manifold(dots, wide);
  double out = 0.0, all = 0.0;
  constexpr int by = 6;  // a spacing and a half, in quarters
  for (int j = 0; j < dots.rows; ++j) {
    for (int i = 0; i < dots.columns; ++i) {
      if (dots.floor[static_cast<std::size_t>(dots.at(i, j))] == 0) continue;
      if (dots.barred[static_cast<std::size_t>(dots.at(i, j))] != 0) continue;
      all += 1.0;
      bool near = false;
      for (int y = std::max(0, j - by); y <= std::min(dots.rows - 1, j + by) && !near; ++y) {
        for (int x = std::max(0, i - by); x <= std::min(dots.columns - 1, i + by) && !near; ++x) {
          const bool within = (x - i) * (x - i) + (y - j) * (y - j) <= by * by;
          near = within && seen[static_cast<std::size_t>(dots.at(x, y))] != 0;
        }
      }
      out += near ? 0.0 : 1.0;
    }
  }
  return all > 0.0 ? out / all : 0.0;
}

/// More tube than the ports allow, a radius too wide for the spacing, or no way from the manifold.
inline bool refusal_must_be(const slabwright::LayoutTask& task) {
  const Dots dots = dots_of(in_frame(task));
  const double area_m2 =
      dots.step_m * dots.step_m * static_cast<double>(std::count(dots.floor.begin(), dots.floor.end(), 1));
  return task.bend_radius_m > 0.9 * task.spacing_m ||
         area_m2 / task.spacing_m > task.manifold.front().loops_number * task.longest_loop_m ||
         floor_out_of_reach_ratio(task) > 0.5;
}

}  // namespace floors
