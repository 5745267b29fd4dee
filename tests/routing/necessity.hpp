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

/// A straight way across floor between two walls or areas, where they come near to each other.
struct Gap {
  slabwright::Point from, to;
};

/// Loops that lie side by side across a gap: each takes two spacings, as in an opening.
inline int loops_through(const Gap& gap, double spacing_m) {
  return static_cast<int>(std::floor(slabwright::distance_m(gap.from, gap.to) / (2.0 * spacing_m) + 1e-9));
}

/// The straight way from a place to the nearest one on an edge.
inline Gap gap_to_edge(slabwright::Point from, slabwright::Point a, slabwright::Point b) {
  const slabwright::Point along{b.x_m - a.x_m, b.y_m - a.y_m}, by{from.x_m - a.x_m, from.y_m - a.y_m};
  const double share = (by.x_m * along.x_m + by.y_m * along.y_m) / (along.x_m * along.x_m + along.y_m * along.y_m);
  const double t = std::clamp(share, 0.0, 1.0);
  return {from, {a.x_m + t * along.x_m, a.y_m + t * along.y_m}};
}

inline double width_m(const Gap& gap) { return slabwright::distance_m(gap.from, gap.to); }

/// For each edge and each corner of walls, the narrowest gap to an area; none wider than is worth a look.
inline std::vector<Gap> gaps_between(const slabwright::Polygon& walls, const slabwright::Polygon& area,
                                     double widest_m) {
  std::vector<Gap> gaps;
  const auto keep = [&](const std::vector<Gap>& all) {
    const auto least =
        std::min_element(all.begin(), all.end(), [](const Gap& a, const Gap& b) { return width_m(a) < width_m(b); });
    if (width_m(*least) > 1e-6 && width_m(*least) <= widest_m) gaps.push_back(*least);
  };
  const auto next = [](const slabwright::Polygon& p, std::size_t k) { return p[k + 1 < p.size() ? k + 1 : 0]; };
  for (std::size_t k = 0; k < walls.size(); ++k) {
    std::vector<Gap> of_edge, of_corner;
    for (const slabwright::Point corner : area) of_edge.push_back(gap_to_edge(corner, walls[k], next(walls, k)));
    for (std::size_t j = 0; j < area.size(); ++j) of_corner.push_back(gap_to_edge(walls[k], area[j], next(area, j)));
    keep(of_edge);
    keep(of_corner);
  }
  return gaps;
}

/// From each corner of the walls to each edge.
inline std::vector<Gap> gaps_of_walls(const slabwright::Polygon& walls, double widest_m) {
  std::vector<Gap> gaps;
  for (const slabwright::Point corner : walls) {
    for (std::size_t k = 0; k < walls.size(); ++k) {
      const Gap gap = gap_to_edge(corner, walls[k], walls[k + 1 < walls.size() ? k + 1 : 0]);
      if (width_m(gap) > 1e-6 && width_m(gap) <= widest_m) gaps.push_back(gap);
    }
  }
  return gaps;
}

class Necks {
 public:
  Necks(const slabwright::LayoutTask& given, int loops, double spread_ratio)
      : task_(in_frame(given)), dots_(dots_of(task_)), loops_(loops), spread_ratio_(spread_ratio) {
    all_ = static_cast<double>(std::count(dots_.floor.begin(), dots_.floor.end(), 1));
    widest_m_ = 2.0 * loops * task_.spacing_m;
  }

  /// Whether gaps in a row, from wall to wall, cut off floor that needs more loops than pass.
  bool hold_up() const {
    const std::vector<Gap> walls = gaps_of_walls(task_.outline, widest_m_);
    if (std::any_of(walls.begin(), walls.end(), [&](const Gap& gap) { return hold_up_at({gap}); })) return true;
    for (std::size_t a = 0; a < task_.no_tube.size(); ++a) {
      if (hold_up_beside(a)) return true;
    }
    return false;
  }

 private:
  /// By gaps from wall to wall past one area, or past it and another.
  bool hold_up_beside(std::size_t one) const {
    const slabwright::Polygon& area = task_.no_tube[one].outline;
    const std::vector<Gap> to_wall = gaps_between(task_.outline, area, widest_m_);
    for (std::size_t i = 0; i < to_wall.size(); ++i) {
      for (std::size_t j = i + 1; j < to_wall.size(); ++j) {
        if (hold_up_at({to_wall[i], to_wall[j]})) return true;
      }
    }
    for (std::size_t other = one + 1; other < task_.no_tube.size(); ++other) {
      const slabwright::Polygon& next = task_.no_tube[other].outline;
      const std::vector<Gap> between = gaps_between(area, next, widest_m_);
      if (between.empty()) continue;
      const Gap middle = *std::min_element(between.begin(), between.end(),
                                           [](const Gap& a, const Gap& b) { return width_m(a) < width_m(b); });
      for (const Gap& from : to_wall) {
        for (const Gap& to : gaps_between(task_.outline, next, widest_m_)) {
          if (hold_up_at({from, middle, to})) return true;
        }
      }
    }
    return false;
  }

  bool hold_up_at(const std::vector<Gap>& gaps) const {
    int passing = 0;
    for (const Gap& gap : gaps) passing += loops_through(gap, task_.spacing_m);
    if (passing >= loops_) return false;
    const std::vector<char> near = reached_from_manifold(dots_, [&](int i, int j) {
      const slabwright::Point p{dots_.from.x_m + (i + 0.5) * dots_.step_m, dots_.from.y_m + (j + 0.5) * dots_.step_m};
      return dots_.floor[static_cast<std::size_t>(dots_.at(i, j))] != 0 &&
             std::none_of(gaps.begin(), gaps.end(), [&](const Gap& gap) {
               return slabwright::distance_to_edge_m(p, gap.from, gap.to) <= 0.72 * dots_.step_m;
             });
    });
    const double here = static_cast<double>(std::count(near.begin(), near.end(), 1));
    double barred_m = 0.0;
    for (const Gap& gap : gaps) barred_m += slabwright::distance_m(gap.from, gap.to) + dots_.step_m;
    // Dots on the gaps themselves count for the side where they help: no loop is held up by rounding.
    const double beside = 1.5 * barred_m / dots_.step_m;
    // Loops that do not pass lie on this side alone, none of them shorter than the mean less the spread.
    const double kept = (here + beside) / all_ * loops_ / (1.0 - spread_ratio_);
    return here + beside < all_ && std::floor(kept) + passing < loops_;
  }

  slabwright::LayoutTask task_;
  Dots dots_;
  int loops_;
  double spread_ratio_, all_ = 0.0, widest_m_ = 0.0;
};

/// Whether loops must differ by more than this, however they are laid.
inline bool uneven_must_be_so(const slabwright::LayoutTask& given, int loops, double spread_ratio) {
  return Necks(given, loops, spread_ratio).hold_up();
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
