// Slabs drawn at random: many shapes, walls that slant and bend, holes, what tube may not lie on, a manifold on any
// wall. A slab is a row of numbers, so that rapidcheck draws it and makes it smaller: all zeros is the plainest.
#pragma once
#include <rapidcheck.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "drawn_floors.hpp"

namespace floors {

struct Slab {
  slabwright::LayoutTask task;
  int shape = 0;                                             ///< row of `shape_names`
  bool turned = false;                                       ///< its walls lie on no axis
  bool at_corner = false, in_arm = false, at_slant = false;  ///< where its manifold is
  int holes_number = 0;
};

constexpr std::array<const char*, 10> shape_names{
    "rectangle",    "L",         "T", "U", "cut corner", "slanted side", "cut slanted", "round side",
    "round corner", "odd angles"};
constexpr std::size_t numbers_of_slab = 64;

/// The numbers of a slab.
inline rc::Gen<std::vector<int>> slab_numbers() {
  return rc::gen::container<std::vector<int>>(numbers_of_slab, rc::gen::inRange(0, 10000));
}

class SlabDrawer {
 public:
  explicit SlabDrawer(std::vector<int> numbers) : numbers_(std::move(numbers)) {}

  Slab slab() {
    Slab made;
    const double w = number(24, 72), d = number(22, 50);
    constexpr int shapes[] = {0, 0, 1, 1, 2, 3, 4, 5, 6, 7};
    made.shape = shapes[number(0, 9)];
    if (made.shape == 7) made.shape = number(7, 9);
    constexpr double spacings[] = {12.0, 6.0, 8.0, 9.0, 10.0, 12.0, 12.0, 12.0, 15.0, 18.0};
    constexpr double limits_ft[] = {300.0, 250.0, 400.0};
    const double spacing_in = spacings[number(0, 9)];
    made.task = task_on(shape(made.shape, w, d), {0, 0}, {0, 1}, spacing_in);
    made.task.longest_loop_m = limits_ft[number(0, 2)] * foot_m;
    // Tight spacing is laid in small rooms: tube for much floor would not fit one manifold.
    const double scale = spacing_in < 8.0 ? 0.5 : spacing_in < 10.0 ? 0.75 : 1.0;
    for (auto& p : made.task.outline) p = {scale * p.x_m, scale * p.y_m};
    made.task.wall_clearance_m = std::clamp(0.5 * spacing_in, 4.0, 6.0) * inch_m;
    put_manifold(made);
    for (int k = number(0, 6); k > 0; --k) add_area(made, scale);
    turn(made, number(0, 7));
    return made;
  }

 private:
  int number(int from, int to) {
    const int drawn = next_ < numbers_.size() ? numbers_[next_++] : 0;
    return from + drawn % (to - from + 1);
  }

  slabwright::Polygon shape(int which, double w, double d) {
    const double a = std::floor(w * number(30, 70) / 100.0), b = std::floor(d * number(40, 70) / 100.0);
    const double l = std::floor(w * number(20, 35) / 100.0), r = std::floor(w * number(65, 80) / 100.0);
    switch (which) {
      case 1: return in_feet({{0, 0}, {w, 0}, {w, b}, {a, b}, {a, d}, {0, d}});
      case 2: return in_feet({{0, 0}, {w, 0}, {w, b}, {r, b}, {r, d}, {l, d}, {l, b}, {0, b}});
      case 3: return in_feet({{0, 0}, {w, 0}, {w, d}, {r, d}, {r, b}, {l, b}, {l, d}, {0, d}});
      case 4: return in_feet({{0, 0}, {w, 0}, {w, d - 8}, {w - 10, d - 8}, {w - 10, d}, {0, d}});
      case 5: return in_feet({{0, 0}, {w, 0}, {w, b}, {r, d}, {0, d}});
      case 6: return in_feet({{0, 0}, {w, 0}, {w, d}, {l, d}, {0, d - 7}});
      case 7: return bow(w, d, b);
      case 8: return round_corner(w, d);
      case 9: return in_feet({{0, 0}, {w, 0}, {w + 3, b}, {r, d}, {l, d - 4}, {0, b + 2}});
      default: return in_feet({{0, 0}, {w, 0}, {w, d}, {0, d}});
    }
  }

  /// The far wall bends out over eight corners.
  slabwright::Polygon bow(double w, double d, double b) {
    slabwright::Polygon made = in_feet({{0, 0}, {w, 0}});
    for (int k = 0; k <= 8; ++k) {
      const double x = 1.0 - k / 4.0;
      made.push_back({0.5 * w * (1.0 + x) * foot_m, (d - 0.5 * (d - b) * x * x) * foot_m});
    }
    return made;
  }

  /// A corner rounded to a quarter of a circle in six steps.
  slabwright::Polygon round_corner(double w, double d) {
    slabwright::Polygon made = in_feet({{0, 0}, {w, 0}});
    const double r = number(6, 14);
    for (int k = 0; k <= 6; ++k) {
      const double t = k / 6.0, c = (1.0 - t * t) / (1.0 + t * t), s = 2.0 * t / (1.0 + t * t);
      made.push_back({(w - r + r * c) * foot_m, (d - r + r * s) * foot_m});
    }
    made.push_back({0.0, d * foot_m});
    return made;
  }

  /// Anywhere on any wall that holds its row of ports.
  void put_manifold(Slab& made) {
    const slabwright::Polygon& o = made.task.outline;
    const double loops = slabwright::signed_area_m2(o) / made.task.spacing_m / made.task.longest_loop_m + 2.0;
    const double margin_m = loops * 2.0 * inch_m + 8.0 * inch_m;
    const int first = number(0, 99);
    const bool any_wall = number(0, 9) == 9;
    for (std::size_t k = 0; k < o.size(); ++k) {
      const std::size_t i = (static_cast<std::size_t>(first) + k) % o.size();
      const slabwright::Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
      const double length_m = slabwright::distance_m(a, b);
      if (length_m < std::max(2.0 * margin_m, 6.0 * made.task.spacing_m)) continue;
      if (!any_wall && a.x_m != b.x_m && a.y_m != b.y_m) continue;  // seldom on a wall that slants
      const double at_m = margin_m + (length_m - 2.0 * margin_m) * number(0, 100) / 100.0;
      const slabwright::Point along{(b.x_m - a.x_m) / length_m, (b.y_m - a.y_m) / length_m};
      made.at_corner = std::min(at_m, length_m - at_m) < 4.0 * made.task.spacing_m;
      made.in_arm = length_m < 12.0 * made.task.spacing_m;
      made.at_slant = a.x_m != b.x_m && a.y_m != b.y_m;
      made.task.manifold.front().place = {a.x_m + at_m * along.x_m, a.y_m + at_m * along.y_m};
      made.task.manifold.front().facing = {-along.y_m, along.x_m};
      return;
    }
  }

  /// A column, a drain, a machine pad, a pad at an angle or a hole in the slab; none right before the manifold.
  void add_area(Slab& made, double scale) {
    slabwright::Point most{0.0, 0.0};
    for (const auto& p : made.task.outline) most = {std::max(most.x_m, p.x_m), std::max(most.y_m, p.y_m)};
    const int kind = number(0, 4);
    const double x = most.x_m / foot_m * number(5, 95) / 100.0, y = most.y_m / foot_m * number(5, 95) / 100.0;
    const double size = 0.5 + 0.25 * number(0, 4), wide = scale * number(2, 6), deep = scale * number(2, 4);
    auto area = column(x, y, size);
    if (kind == 1) area = {slabwright::Polygon(), 4.0 * inch_m};
    for (int k = 0; k < 8 && kind == 1; ++k) {
      constexpr double c[] = {1.0, 0.70710678, 0.0, -0.70710678, -1.0, -0.70710678, 0.0, 0.70710678};
      area.outline.push_back({(x + 0.5 * size * c[k]) * foot_m, (y + 0.5 * size * c[(k + 6) % 8]) * foot_m});
    }
    if (kind == 2) area.outline = in_feet({{x, y}, {x + wide, y}, {x + wide, y + deep}, {x, y + deep}});
    if (kind == 3) area.outline = in_feet({{x, y - deep / 2}, {x + deep / 2, y}, {x, y + deep / 2}, {x - deep / 2, y}});
    if (kind == 4) {
      area = {in_feet({{x, y}, {x + wide, y}, {x + wide, y + 2 * deep}, {x, y + 2 * deep}}),
              made.task.wall_clearance_m};
      ++made.holes_number;
    }
    double nearest_m = HUGE_VAL;
    for (std::size_t i = 0; i < area.outline.size(); ++i) {
      const slabwright::Point a = area.outline[i], b = area.outline[i + 1 < area.outline.size() ? i + 1 : 0];
      nearest_m = std::min(nearest_m, slabwright::distance_to_edge_m(made.task.manifold.front().place, a, b));
    }
    // Its leaders spread there: a spacing to each side for every loop.
    const double loops = slabwright::signed_area_m2(made.task.outline) / made.task.spacing_m / made.task.longest_loop_m;
    if (nearest_m > std::max(10.0, 7.0 + loops) * made.task.spacing_m) made.task.no_tube.push_back(area);
  }

  void turn(Slab& made, int how) {
    constexpr double cosines[] = {0.8, 15.0 / 17.0}, sines[] = {0.6, 8.0 / 17.0};
    if (how > 1) return;
    made.turned = true;
    const double c = cosines[how], s = sines[how];
    const auto turned = [&](slabwright::Point p) {
      return slabwright::Point{c * p.x_m - s * p.y_m + 3.0, s * p.x_m + c * p.y_m - 7.0};
    };
    for (auto& p : made.task.outline) p = turned(p);
    for (auto& area : made.task.no_tube) {
      for (auto& p : area.outline) p = turned(p);
    }
    const slabwright::Point f = made.task.manifold.front().facing;
    made.task.manifold.front().place = turned(made.task.manifold.front().place);
    made.task.manifold.front().facing = {c * f.x_m - s * f.y_m, s * f.x_m + c * f.y_m};
  }

  std::vector<int> numbers_;
  std::size_t next_ = 0;
};

/// The slab of this number, the same in every run.
inline Slab slab_number(std::uint64_t number) {
  return SlabDrawer(slab_numbers()(rc::Random(number), rc::kNominalSize).value()).slab();
}

}  // namespace floors
