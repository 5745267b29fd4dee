#include "finish.hpp"

#include <algorithm>
#include <cmath>

#include "cells.hpp"

namespace slabwright::routing {
namespace {

/// Tube may be slid as near as this to other tube, in spacings.
constexpr double nearest = 0.95;
constexpr double step = 0.125, most_tip = 2.0, most_run = 0.6;
/// A run of less than this is a tip: it may leave its place altogether.
constexpr double tip_width = 1.35;

Point minus(Point a, Point b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }
double dot(Point a, Point b) { return a.x_m * b.x_m + a.y_m * b.y_m; }
Point moved(Point a, Point along, double by) { return {a.x_m + by * along.x_m, a.y_m + by * along.y_m}; }
Point unit(Point a) {
  const double length = std::sqrt(dot(a, a));
  return {a.x_m / length, a.y_m / length};
}

bool boxes_apart(Point a, Point b, Point c, Point d, double by) {
  return std::max(a.x_m, b.x_m) + by <= std::min(c.x_m, d.x_m) ||
         std::max(c.x_m, d.x_m) + by <= std::min(a.x_m, b.x_m) ||
         std::max(a.y_m, b.y_m) + by <= std::min(c.y_m, d.y_m) || std::max(c.y_m, d.y_m) + by <= std::min(a.y_m, b.y_m);
}

class Slider {
 public:
  Slider(const LayoutTask& task, std::vector<Strand>& strands) : task_(task), strands_(strands), s_(task.spacing_m) {}

  void tips() {
    each([&](std::size_t k, std::size_t i) {
      if (width(k, i) <= tip_width * s_) push(k, i, most_tip * s_, 1.0);
    });
  }
  void runs() {
    each([&](std::size_t k, std::size_t i) {
      if (width(k, i) > tip_width * s_) push(k, i, most_run * s_, 0.5);
    });
  }

 private:
  template <class Do>
  void each(Do what) {
    for (std::size_t k = 0; k < strands_.size(); ++k) {
      const std::size_t n = strands_[k].corner.size();
      for (std::size_t i = leader_corners; i + 1 + leader_corners < n; ++i) {
        if (turns_back(strands_[k].corner, i)) what(k, i);
      }
    }
  }

  double width(std::size_t k, std::size_t i) const {
    return distance_m(strands_[k].corner[i], strands_[k].corner[i + 1]);
  }

  bool apart(std::size_t strand, std::size_t segment, Point a, Point b) const {
    const double least = nearest * s_;
    for (std::size_t k = 0; k < strands_.size(); ++k) {
      const auto& c = strands_[k].corner;
      for (std::size_t i = 0; i + 1 < c.size(); ++i) {
        if (k == strand && i + 1 >= segment && i <= segment + 1) continue;
        if (boxes_apart(a, b, c[i], c[i + 1], least)) continue;
        if (distance_of_edges_m(a, b, c[i], c[i + 1]) < least) return false;
      }
    }
    return true;
  }

  /// Outward in steps while all is well, then this share of the way.
  void push(std::size_t k, std::size_t i, double most_m, double share) {
    auto& c = strands_[k].corner;
    const Point out = unit(minus(c[i], c[i - 1])), a = c[i], b = c[i + 1];
    double free_m = 0.0;
    const double limit_m = most_m / share;
    for (double by = step * s_; by <= limit_m + 1e-9; by += step * s_) {
      const Point to_a = moved(a, out, by), to_b = moved(b, out, by);
      if (!keeps_clear(task_, to_a, to_b) || !keeps_clear(task_, a, to_a) || !keeps_clear(task_, b, to_b)) break;
      if (!apart(k, i, to_a, to_b) || !apart(k, i, a, to_a) || !apart(k, i, b, to_b)) break;
      free_m = by;
    }
    const double by = std::min(most_m, share * free_m);
    if (by < step * s_) return;
    c[i] = moved(a, out, by);
    c[i + 1] = moved(b, out, by);
  }

  const LayoutTask& task_;
  std::vector<Strand>& strands_;
  double s_;
};

}  // namespace

void slide_out(const LayoutTask& task, std::vector<Strand>& strands) {
  Slider slider(task, strands);
  slider.tips();
  slider.runs();
  slider.tips();
}

bool turns_back(const std::vector<Point>& c, std::size_t i) {
  const Point in = minus(c[i], c[i - 1]), across = minus(c[i + 1], c[i]), out = minus(c[i + 2], c[i + 1]);
  return dot(in, across) == 0.0 && dot(across, out) == 0.0 && dot(in, out) < 0.0;
}

}  // namespace slabwright::routing
