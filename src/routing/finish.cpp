#include "finish.hpp"

#include <algorithm>
#include <cmath>

#include "cells.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// Tube may be slid as near as this to other tube, in spacings.
constexpr double nearest = 0.95;
constexpr double step = 0.125, most_tip = 2.0, most_run = 0.6;
constexpr double most_slant = 1.5;
/// The cosine of the sharpest turn at a slanted wall, 120 degrees.
constexpr double sharpest = -0.5;
/// A run of less than this is a tip: it may leave its place altogether.
constexpr double tip_width = 1.35;

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

  /// Corners stretched towards slanted walls, so that the tube between them runs along the wall.
  void slants() {
    for (std::size_t k = 0; k < strands_.size(); ++k) {
      for (std::size_t i = leader_corners; i + leader_corners < strands_[k].corner.size(); ++i) {
        if (!faces_slant(strands_[k].corner[i])) continue;
        stretch(k, i, i - 1);
        stretch(k, i, i + 1);
      }
    }
  }

 private:
  /// Whether the nearest wall is near and parallel to neither axis.
  bool faces_slant(Point p) const {
    const Polygon& o = task_.outline;
    double least_m = most_slant * s_ + task_.wall_clearance_m;
    bool slanted = false;
    for (std::size_t i = 0; i < o.size(); ++i) {
      const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
      const double away_m = distance_to_edge_m(p, a, b);
      if (away_m >= least_m) continue;
      least_m = away_m;
      slanted = std::min(std::abs(a.x_m - b.x_m), std::abs(a.y_m - b.y_m)) > 0.02 * distance_m(a, b);
    }
    return slanted;
  }

  /// Whether the corners round i have room for their bends.
  bool bends_fit(const std::vector<Point>& c, std::size_t i) const {
    const double radius_m = std::max(0.5 * s_, task_.bend_radius_m);
    const auto take_m = [&](std::size_t k) {
      const Point in = unit(minus(c[k], c[k - 1])), out = unit(minus(c[k + 1], c[k]));
      const double along = dot(in, out), across = std::abs(in.x_m * out.y_m - in.y_m * out.x_m);
      return along < sharpest ? HUGE_VAL : radius_m * across / (1.0 + along);
    };
    for (std::size_t k = i - 2; k <= i + 1; ++k) {
      if (take_m(k) + take_m(k + 1) > distance_m(c[k], c[k + 1]) + 1e-9) return false;
    }
    return true;
  }

  /// Corner i moved on along the line from its neighbour `from`; the line to the other neighbour slants then.
  void stretch(std::size_t k, std::size_t i, std::size_t from) {
    auto& c = strands_[k].corner;
    const std::size_t other = from < i ? i + 1 : i - 1;
    const Point was = c[i], out = unit(minus(was, c[from]));
    Point best = was;
    for (double by = step * s_; by <= most_slant * s_; by += step * s_) {
      c[i] = moved(was, out, by);
      const bool clear = keeps_clear(task_, c[i], c[other]) && keeps_clear(task_, was, c[i]);
      if (!clear || !apart(k, std::min(i, other), c[i], c[other]) || !apart(k, std::min(i, from), was, c[i])) break;
      if (bends_fit(c, i)) best = c[i];
    }
    c[i] = best;
  }

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
        if (nearer(a, b, c[i], c[i + 1], least)) return false;
      }
    }
    return true;
  }

  /// Whether an end moved from a, b to these places keeps the clearances: square corners do, or at least the arcs that
  /// are laid in their stead, which reach less far.
  bool end_fits(std::size_t k, std::size_t i, Point to_a, Point to_b) const {
    const auto& c = strands_[k].corner;
    const double width_m = distance_m(to_a, to_b);
    const bool wide = width_m >= 2.0 * task_.bend_radius_m;
    if (wide && keeps_clear(task_, to_a, to_b) && keeps_clear(task_, c[i], to_a) &&
        keeps_clear(task_, c[i + 1], to_b)) {
      return true;
    }
    const double arc_m = std::min(distance_m(c[i - 1], to_a), 0.5 * width_m);
    const Point back = unit(minus(c[i - 1], c[i]));
    const Point leg_a = moved(to_a, back, arc_m), leg_b = moved(to_b, back, arc_m);
    return width_m <= tip_width * s_ && keeps_clear(task_, c[i - 1], leg_a) && keeps_clear(task_, c[i + 2], leg_b) &&
           end_keeps_clear(task_, c[i - 1], to_a, to_b, c[i + 2]);
  }

  /// Outward in steps while all is well, then this share of the way.
  void push(std::size_t k, std::size_t i, double most_m, double share) {
    auto& c = strands_[k].corner;
    const Point out = unit(minus(c[i], c[i - 1])), a = c[i], b = c[i + 1];
    double free_m = 0.0;
    const double limit_m = most_m / share;
    for (double by = step * s_; by <= limit_m + 1e-9; by += step * s_) {
      const Point to_a = moved(a, out, by), to_b = moved(b, out, by);
      if (!end_fits(k, i, to_a, to_b)) break;
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
  slider.slants();
}

bool turns_back(const std::vector<Point>& c, std::size_t i) {
  const Point in = minus(c[i], c[i - 1]), across = minus(c[i + 1], c[i]), out = minus(c[i + 2], c[i + 1]);
  return dot(in, across) == 0.0 && dot(across, out) == 0.0 && dot(in, out) < 0.0;
}

}  // namespace slabwright::routing
