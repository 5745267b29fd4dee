// Floors drawn at random: rectangles, L, T, U, cut and slanted corners, columns, a manifold on any wall; turned too.
#pragma once
#include <cmath>
#include <random>

#include "slabwright/routing_layout.hpp"

namespace floors {

constexpr double foot_m = 0.3048, inch_m = 0.0254;

inline slabwright::Polygon in_feet(std::initializer_list<slabwright::Point> corners) {
  slabwright::Polygon polygon;
  for (const auto& p : corners) polygon.push_back({p.x_m * foot_m, p.y_m * foot_m});
  return polygon;
}

/// Half-inch tube (least radius 5 in) at this spacing, ports 2 in apart.
inline slabwright::LayoutTask task_on(slabwright::Polygon outline, slabwright::Point manifold_ft,
                                      slabwright::Point facing, double spacing_in = 12.0) {
  slabwright::LayoutTask task;
  task.outline = std::move(outline);
  task.wall_clearance_m = 6.0 * inch_m;
  task.spacing_m = spacing_in * inch_m;
  task.bend_radius_m = 5.0 * inch_m;
  task.longest_loop_m = 300.0 * foot_m;
  task.manifold = {{{manifold_ft.x_m * foot_m, manifold_ft.y_m * foot_m}, facing, 30, 2.0 * inch_m}};
  return task;
}

inline slabwright::NoTubeArea column(double x_ft, double y_ft, double size_ft) {
  const double h = 0.5 * size_ft;
  return {in_feet({{x_ft - h, y_ft - h}, {x_ft + h, y_ft - h}, {x_ft + h, y_ft + h}, {x_ft - h, y_ft + h}}),
          4.0 * inch_m};
}

class Drawer {
 public:
  explicit Drawer(std::uint64_t seed) : random_(seed) {}

  slabwright::LayoutTask task() {
    const double w = number(24, 72), d = number(22, 50);
    kind = number(0, 5);
    slabwright::Polygon outline = shape(kind, w, d);
    const auto [place, facing] = on_wall(outline);
    constexpr double spacings[] = {6.0, 9.0, 12.0, 12.0, 12.0, 18.0};
    constexpr double limits_ft[] = {250.0, 300.0, 400.0};
    auto made = task_on(outline, place, facing, spacings[number(0, 5)]);
    made.longest_loop_m = limits_ft[number(0, 2)] * foot_m;
    // Tight spacing is laid in small rooms, and tube of that much floor would not fit one manifold.
    if (made.spacing_m < 8.0 * inch_m) {
      for (auto& p : made.outline) p = {0.5 * p.x_m, 0.5 * p.y_m};
      made.manifold.front().place = {0.5 * made.manifold.front().place.x_m, 0.5 * made.manifold.front().place.y_m};
    }
    add_columns(made, number(0, 5));
    if (number(0, 3) == 0) turn(made);
    return made;
  }
  int kind = 0;

 private:
  int number(int from, int to) { return from + static_cast<int>(random_() % static_cast<unsigned>(to - from + 1)); }

  slabwright::Polygon shape(int which, double w, double d) {
    const double a = std::floor(w * number(30, 70) / 100.0), b = std::floor(d * number(40, 70) / 100.0);
    const double l = std::floor(w * number(20, 35) / 100.0), r = std::floor(w * number(65, 80) / 100.0);
    switch (which) {
      case 1: return in_feet({{0, 0}, {w, 0}, {w, b}, {a, b}, {a, d}, {0, d}});
      case 2: return in_feet({{0, 0}, {w, 0}, {w, b}, {r, b}, {r, d}, {l, d}, {l, b}, {0, b}});
      case 3: return in_feet({{0, 0}, {w, 0}, {w, d}, {r, d}, {r, b}, {l, b}, {l, d}, {0, d}});
      case 4: return in_feet({{0, 0}, {w, 0}, {w, d - 8}, {w - 10, d - 8}, {w - 10, d}, {0, d}});
      case 5: return in_feet({{0, 0}, {w, 0}, {w, b}, {r, d}, {0, d}});
      default: return in_feet({{0, 0}, {w, 0}, {w, d}, {0, d}});
    }
  }

  /// A place on a wall of 12 ft or more along an axis, in feet, 4 ft or more from its ends.
  std::pair<slabwright::Point, slabwright::Point> on_wall(const slabwright::Polygon& o) {
    while (true) {
      const auto i = static_cast<std::size_t>(number(0, static_cast<int>(o.size()) - 1));
      const slabwright::Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
      const double length_m = slabwright::distance_m(a, b);
      if (length_m < 12.0 * foot_m || (a.x_m != b.x_m && a.y_m != b.y_m)) continue;
      const double at_ft = 4.0 + (length_m / foot_m - 8.0) * number(0, 100) / 100.0;
      const slabwright::Point along{(b.x_m - a.x_m) / length_m, (b.y_m - a.y_m) / length_m};
      return {{a.x_m / foot_m + at_ft * along.x_m, a.y_m / foot_m + at_ft * along.y_m}, {-along.y_m, along.x_m}};
    }
  }

  void add_columns(slabwright::LayoutTask& task, int count) {
    double x = 0.0, y = 0.0;
    for (const auto& p : task.outline) {
      x = std::max(x, p.x_m / foot_m);
      y = std::max(y, p.y_m / foot_m);
    }
    for (int k = 0; k < count; ++k) {
      const auto made = column(x * number(5, 95) / 100.0, y * number(5, 95) / 100.0, 0.5 + 0.25 * number(0, 4));
      const slabwright::Point at{made.outline[0].x_m, made.outline[0].y_m};
      if (slabwright::distance_m(at, task.manifold.front().place) > 14.0 * foot_m) task.no_tube.push_back(made);
    }
  }

  void turn(slabwright::LayoutTask& task) {
    const double c = 0.8, s = 0.6;
    const auto turned = [&](slabwright::Point p) {
      return slabwright::Point{c * p.x_m - s * p.y_m + 3.0, s * p.x_m + c * p.y_m - 7.0};
    };
    for (auto& p : task.outline) p = turned(p);
    for (auto& area : task.no_tube) {
      for (auto& p : area.outline) p = turned(p);
    }
    const slabwright::Point f = task.manifold.front().facing;
    task.manifold.front().place = turned(task.manifold.front().place);
    task.manifold.front().facing = {c * f.x_m - s * f.y_m, s * f.x_m + c * f.y_m};
  }

  std::mt19937_64 random_;
};

}  // namespace floors
