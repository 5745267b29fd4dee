// Whether necks of the floor hold loops up: the second opinion on loops that differ.
#pragma once
#include "necessity.hpp"

namespace floors {

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

}  // namespace floors
