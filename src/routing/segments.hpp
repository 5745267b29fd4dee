// Tube as short straight segments, and those near to a place: for who measures a layout.
#pragma once
#include <algorithm>
#include <cmath>
#include <cstddef>

#include "open_floor.hpp"

namespace slabwright::routing {

/// How far chords of arcs may lie off them.
constexpr double fine_sag_m = 0.0001;
/// What placing a figure in metres and turning it twice leaves.
constexpr double slack_m = 2e-4;
/// Tubes no nearer to each other than this, in spacings of the place.
constexpr double least_separation = 0.93, least_bulb_separation = 0.6;
/// Places of one loop that lie this near along it, in spacings, are one bend, no neighbours: a half turn as narrow as
/// the spacing is 1.57 spacings long.
constexpr double one_bend = 2.0;

struct Segment {
  Point a, b;
  int loop = 0;
  double at_m = 0.0;  ///< of its middle along the loop
  bool in_apron = false;
  bool in_bulb = false;
};

/// A turn of more than half a turn, which swings out beside its legs.
inline bool is_bulb(const Piece& piece) { return sweep_rad(piece) > 3.14159265358979323846 + 0.01; }

/// Short ones, so that each has one place along its loop.
class Segments {
 public:
  Segments(const TubeLayout& layout, double sag_m, double longest_m) : longest_m_(longest_m), apron_(layout.apron) {
    for (const Polygon& apron : apron_) box_.push_back(box_of(apron));
    for (std::size_t k = 0; k < layout.loop.size(); ++k) {
      const Path& path = layout.loop[k].path;
      at_m_ = 0.0;
      for (std::size_t i = 0; i < path.size(); ++i) {
        const bool bulb =
            is_bulb(path[i]) || (i > 0 && is_bulb(path[i - 1])) || (i + 1 < path.size() && is_bulb(path[i + 1]));
        const std::vector<Point> corner = flattened(std::span<const Piece>(&path[i], 1), sag_m);
        for (std::size_t c = 0; c + 1 < corner.size(); ++c) add(corner[c], corner[c + 1], static_cast<int>(k), bulb);
      }
    }
  }
  const std::vector<Segment>& all() const { return all_; }

 private:
  bool in_apron(Point p) const {
    for (std::size_t k = 0; k < apron_.size(); ++k) {
      if (in_box(box_[k], p, 0.0) && where_is(p, apron_[k]) != Where::outside) return true;
    }
    return false;
  }
  void add(Point a, Point b, int loop, bool bulb) {
    const double length = distance_m(a, b);
    if (length == 0.0) return;
    const int parts = std::max(1, static_cast<int>(std::ceil(length / longest_m_)));
    Point from = a;
    for (int p = 1; p <= parts; ++p) {
      const double share = static_cast<double>(p) / parts;
      const Point to = p == parts ? b : Point{a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
      const bool in = in_apron(from) || in_apron(to);
      all_.push_back({from, to, loop, at_m_ + length / parts * (p - 0.5), in, bulb});
      from = to;
    }
    at_m_ += length;
  }

  double longest_m_, at_m_ = 0.0;
  const std::vector<Polygon>& apron_;
  std::vector<Box> box_;
  std::vector<Segment> all_;
};

/// Segments by squares of the floor, so that only near ones are looked at.
class Near {
 public:
  Near(const std::vector<Segment>& segments, double square_m) : square_m_(square_m) {
    Point least{HUGE_VAL, HUGE_VAL}, most{-HUGE_VAL, -HUGE_VAL};
    for (const Segment& s : segments) {
      for (const Point p : {s.a, s.b}) {
        least = {std::min(least.x_m, p.x_m), std::min(least.y_m, p.y_m)};
        most = {std::max(most.x_m, p.x_m), std::max(most.y_m, p.y_m)};
      }
    }
    from_ = least;
    columns_ = static_cast<int>((most.x_m - least.x_m) / square_m) + 1;
    rows_ = static_cast<int>((most.y_m - least.y_m) / square_m) + 1;
    square_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
    for (std::size_t k = 0; k < segments.size(); ++k) {
      each(segments[k].a, segments[k].b, 0.0, [&](std::vector<int>& list) { list.push_back(static_cast<int>(k)); });
    }
  }

  template <class Do>
  void each(Point a, Point b, double by_m, Do what) {
    const auto square = [&](double at, double from, int count) {
      return std::clamp(static_cast<int>(std::floor((at - from) / square_m_)), 0, count - 1);
    };
    const int i0 = square(std::min(a.x_m, b.x_m) - by_m, from_.x_m, columns_);
    const int i1 = square(std::max(a.x_m, b.x_m) + by_m, from_.x_m, columns_);
    const int j0 = square(std::min(a.y_m, b.y_m) - by_m, from_.y_m, rows_);
    const int j1 = square(std::max(a.y_m, b.y_m) + by_m, from_.y_m, rows_);
    for (int j = j0; j <= j1; ++j) {
      for (int i = i0; i <= i1; ++i) what(square_[static_cast<std::size_t>(j * columns_ + i)]);
    }
  }

 private:
  double square_m_;
  Point from_;
  int columns_ = 0, rows_ = 0;
  std::vector<std::vector<int>> square_;
};

/// Whether the distance of two segments cannot be less than this.
inline bool boxes_apart(const Segment& s, const Segment& o, double by_m) {
  const auto apart = [by_m](double a, double b, double c, double d) {
    return std::max(a, b) + by_m < std::min(c, d) || std::max(c, d) + by_m < std::min(a, b);
  };
  return apart(s.a.x_m, s.b.x_m, o.a.x_m, o.b.x_m) || apart(s.a.y_m, s.b.y_m, o.a.y_m, o.b.y_m);
}

}  // namespace slabwright::routing
