// Where a layout breaks what must never be broken.
#include <algorithm>
#include <cmath>

#include "bands.hpp"
#include "marks.hpp"
#include "ports.hpp"
#include "segments.hpp"

namespace slabwright {
namespace routing {
namespace {

constexpr double one_place = 2.0;
constexpr std::size_t most = 100;

Point between(Point a, Point b) { return {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)}; }

class Places {
 public:
  Places(const LayoutTask& task, const TubeLayout& layout)
      : task_(task), layout_(layout), segments_(layout, fine_sag_m, 0.5 * task.spacing_m) {}

  std::vector<BrokenPlace> all() {
    if (!segments_.all().empty()) apart();
    ends();
    pieces();
    clear();
    std::stable_sort(all_.begin(), all_.end(), [](const BrokenPlace& a, const BrokenPlace& b) {
      return a.what != b.what ? a.what < b.what : a.loop < b.loop;
    });
    return std::move(all_);
  }

 private:
  void add(const BrokenPlace& one) {
    for (std::size_t k = 0; k < all_.size(); ++k) {
      BrokenPlace& known = all_[k];
      if (known.what != one.what || known.loop != one.loop || known.other != one.other) continue;
      if (distance_m(last_[k], one.place) > one_place * task_.spacing_m) continue;
      last_[k] = one.place;
      if (one.is_m < known.is_m) known = one;
      return;
    }
    if (all_.size() >= most) return;
    all_.push_back(one);
    last_.push_back(one.place);
  }

  void apart() {
    const std::vector<Segment>& all = segments_.all();
    const std::vector<BandStrip> strips = strips_of(task_);
    Near near(all, task_.spacing_m);
    for (std::size_t k = 0; k < all.size(); ++k) {
      near.each(all[k].a, all[k].b, task_.spacing_m, [&](const std::vector<int>& list) {
        for (const int other : list) {
          if (other > static_cast<int>(k)) pair(all[k], all[static_cast<std::size_t>(other)], strips);
        }
      });
    }
  }

  void pair(const Segment& s, const Segment& o, const std::vector<BandStrip>& strips) {
    if (o.loop == s.loop && (s.b == o.a || o.b == s.a)) return;
    const double ratio = s.in_bulb || o.in_bulb ? least_bulb_separation : least_separation;
    if (boxes_apart(s, o, ratio * task_.spacing_m)) return;
    const double gap_m = distance_of_edges_m(s.a, s.b, o.a, o.b);
    const auto loop = static_cast<std::size_t>(s.loop), other = static_cast<std::size_t>(o.loop);
    if (gap_m == 0.0) return add({Broken::crossing, between(s.a, s.b), loop, other, 0.0});
    if (s.in_apron || o.in_apron) return;
    if (o.loop == s.loop && std::abs(o.at_m - s.at_m) < one_bend * task_.spacing_m) return;
    const double local_m = strips.empty()
                               ? task_.spacing_m
                               : std::min(spacing_here_m(task_, strips, s.a), spacing_here_m(task_, strips, o.a));
    if (gap_m < ratio * local_m) add({Broken::separation, between(s.a, s.b), loop, other, gap_m});
  }

  void ends() {
    for (const WantedEnds& wanted : wanted_ends(task_, layout_)) {
      const Path& path = layout_.loop[wanted.loop].path;
      if (path.empty()) continue;
      for (const auto& [is, ought] : {std::pair{path.front().from, wanted.supply}, {path.back().to, wanted.back}}) {
        const double off_m = distance_m(is, ought);
        if (off_m > wanted.slack_m + slack_m) add({Broken::end, ought, wanted.loop, wanted.loop, off_m});
      }
    }
  }

  void pieces() {
    for (std::size_t k = 0; k < layout_.loop.size(); ++k) {
      const Path& path = layout_.loop[k].path;
      for (const Piece& piece : path) {
        if (piece.radius_m <= 0.0 || piece.radius_m >= task_.bend_radius_m - slack_m) continue;
        add({Broken::bend, point_at(std::span<const Piece>(&piece, 1), 0.5 * length_m(piece)), k, k, piece.radius_m});
      }
      const double length = length_m(path);
      if (length > task_.longest_loop_m) add({Broken::limit, path.front().from, k, k, length});
    }
  }

  void clear() {
    for (const Segment& s : segments_.all()) {
      if (!s.in_apron)
        near_to(s, task_.outline, where_is(s.a, task_.outline) == Where::outside,
                [&](std::size_t i) { return wall_clearance_m(task_, i); });
      for (const NoTubeArea& area : task_.no_tube) {
        near_to(s, area.outline, where_is(s.a, area.outline) != Where::outside,
                [&](std::size_t) { return area.clearance_m; });
      }
    }
  }

  template <class Asked>
  void near_to(const Segment& s, const Polygon& polygon, bool beyond, const Asked& asked_m) {
    const auto loop = static_cast<std::size_t>(s.loop);
    if (beyond) return add({Broken::clearance, between(s.a, s.b), loop, loop, 0.0});
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point from = polygon[i], to = polygon[i + 1 < polygon.size() ? i + 1 : 0];
      const double gap_m = distance_of_edges_m(s.a, s.b, from, to);
      if (gap_m < asked_m(i) - slack_m) add({Broken::clearance, between(s.a, s.b), loop, loop, gap_m});
    }
  }

  const LayoutTask& task_;
  const TubeLayout& layout_;
  const Segments segments_;
  std::vector<BrokenPlace> all_;
  std::vector<Point> last_;  ///< of each: the last place that belongs to it, so that a stretch along a wall is one
};

}  // namespace
}  // namespace routing

std::vector<BrokenPlace> broken_places(const LayoutTask& task, const TubeLayout& layout) {
  return routing::Places(task, layout).all();
}

}  // namespace slabwright
