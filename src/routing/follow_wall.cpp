// Tube along walls that the lattice only meets in steps, and leaders along the wall behind the manifold.
#include <algorithm>
#include <cmath>
#include <optional>

#include "lying.hpp"
#include "marks.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

std::ptrdiff_t offset(std::size_t i) { return static_cast<std::ptrdiff_t>(i); }

/// Tube and walls farther than this from bare floor are left alone, in spacings; tube is not carried on farther.
constexpr double near_enough = 2.5, near_wall = 1.5, farthest = 6.0;
/// Corners between two runs that a line along a wall may replace.
constexpr std::size_t most_spanned = 7;
constexpr std::size_t most_tried = 12;
/// Leaders that go round keep this far from others, in port pitches.
constexpr double leader_gap = 0.95;
/// So far from its port, in radii, it turns along the wall.
constexpr double port_bend = 2.5;

class Follower {
 public:
  Follower(Lying& lying, const Bare& bare) : lying_(lying), bare_(bare), s_(lying.spacing_m()) {}

  /// A line that tube may follow along a wall: at its clearance, from a to b with the floor on the left.
  struct WallLine {
    Point a, b;
  };
  /// Lines of neighbouring walls, each ending where the next one begins.
  using Chain = std::vector<WallLine>;

  std::vector<Chain> chains_near() const {
    std::vector<Chain> all;
    const LayoutTask& task = lying_.task();
    add_chains(
        task.outline, [&](std::size_t i) { return wall_clearance_m(task, i); }, 1.0, all);
    for (const NoTubeArea& area : task.no_tube) {
      add_chains(
          area.outline, [&](std::size_t) { return area.clearance_m; }, -1.0, all);
    }
    return all;
  }

  /// The best of the ways round bare floor along a wall that holds.
  bool follow() {
    std::vector<Way> ways;
    const auto chains = chains_near();
    for (std::size_t k = 0; k < lying_.size(); ++k) {
      const std::vector<std::size_t> near = runs_near(k);
      for (const Chain& chain : chains) add_ways(k, near, chain, ways);
    }
    std::stable_sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) { return a.worth > b.worth; });
    for (std::size_t n = 0; n < ways.size() && n < most_tried; ++n) {
      Strand led{lying_.corners(ways[n].loop)};
      auto& d = led.corner;
      d.erase(d.begin() + offset(ways[n].i) + 1, d.begin() + offset(ways[n].j) + 1);
      d.insert(d.begin() + offset(ways[n].i) + 1, ways[n].corner.begin(), ways[n].corner.end());
      if (lying_.take(ways[n].loop, std::move(led), lying_.rule())) return true;
    }
    return false;
  }

 private:
  /// Corners along a wall in place of those between two runs, i and j.
  struct Way {
    std::size_t loop = 0, i = 0, j = 0;
    std::vector<Point> corner;
    int worth = 0;
  };

  template <class Clearance>
  void add_chains(const Polygon& o, const Clearance& clearance_m, double sign, std::vector<Chain>& all) const {
    const std::size_t n = o.size();
    const auto line_at = [&](std::size_t i) {
      const Point a = o[i % n], b = o[(i + 1) % n], along = unit(minus(b, a));
      const Point in{-sign * along.y_m, sign * along.x_m};
      return WallLine{moved(a, in, clearance_m(i % n) + 1e-6), moved(b, in, clearance_m(i % n) + 1e-6)};
    };
    const auto is_near = [&](std::size_t i) {
      return std::any_of(bare_.spot.begin(), bare_.spot.end(), [&](int spot) {
        return within(lying_.map().spots()[index(spot)].place, o[i % n], o[(i + 1) % n], near_wall * s_);
      });
    };
    std::vector<char> near;
    for (std::size_t i = 0; i < n; ++i) near.push_back(is_near(i) ? 1 : 0);
    if (std::count(near.begin(), near.end(), 1) == 0) return;
    // From a wall that is not near, so that no chain is cut in two.
    const std::size_t first = static_cast<std::size_t>(std::find(near.begin(), near.end(), 0) - near.begin()) % n;
    Chain chain;
    for (std::size_t k = first; k < first + n; ++k) {
      if (near[k % n] != 0) chain.push_back(line_at(k));
      const bool ends = near[k % n] == 0 || k + 1 == first + n;
      if (ends && !chain.empty()) {
        all.push_back(joined(std::move(chain)));
        chain.clear();
      }
    }
  }

  static Chain joined(Chain chain) {
    for (std::size_t k = 0; k + 1 < chain.size(); ++k) {
      const Point u = minus(chain[k].b, chain[k].a), v = minus(chain[k + 1].b, chain[k + 1].a);
      const double det = cross(u, v);
      if (std::abs(det) < 1e-9) continue;
      const Point meet = moved(chain[k].a, u, cross(minus(chain[k + 1].a, chain[k].a), v) / det);
      chain[k].b = chain[k + 1].a = meet;
    }
    return chain;
  }

  std::vector<std::size_t> runs_near(std::size_t k) const {
    std::vector<std::size_t> near;
    const auto& c = lying_.corners(k);
    for (std::size_t i = leader_corners - 1; i + leader_corners < c.size(); ++i) {
      const auto is_near = [&](int spot) {
        return within(lying_.map().spots()[index(spot)].place, c[i], c[i + 1], near_enough * s_);
      };
      if (std::any_of(bare_.spot.begin(), bare_.spot.end(), is_near)) near.push_back(i);
    }
    return near;
  }

  void add_ways(std::size_t k, const std::vector<std::size_t>& near, const Chain& chain, std::vector<Way>& ways) const {
    const auto& c = lying_.corners(k);
    for (const std::size_t i : near) {
      for (std::size_t p = 0; p < chain.size(); ++p) {
        const auto a = crossing(c[i], c[i + 1], chain[p]);
        if (!a || distance_m(*a, c[i + 1]) > farthest * s_) continue;
        for (const std::size_t j : near) {
          if (j <= i || j > i + most_spanned) continue;
          for (std::size_t q = 0; q < chain.size(); ++q) add_way({k, i, j, {*a}, 0}, chain, {p, q}, ways);
        }
      }
    }
  }

  struct Between {
    std::size_t from = 0, to = 0;
  };
  void add_way(Way way, const Chain& chain, Between lines, std::vector<Way>& ways) const {
    const auto& c = lying_.corners(way.loop);
    const auto b = crossing(c[way.j + 1], c[way.j], chain[lines.to]);
    if (!b || distance_m(*b, c[way.j]) > farthest * s_) return;
    for (std::size_t n = lines.from; n < lines.to; ++n) way.corner.push_back(chain[n].b);
    for (std::size_t n = lines.from; n > lines.to; --n) way.corner.push_back(chain[n].a);
    way.corner.push_back(*b);
    double length = 0.0;
    for (std::size_t n = 0; n + 1 < way.corner.size(); ++n) length += distance_m(way.corner[n], way.corner[n + 1]);
    if (length < 0.5 * s_) return;
    for (const int spot : bare_.spot) {
      bool heated = false;
      for (std::size_t n = 0; n + 1 < way.corner.size() && !heated; ++n) {
        heated = within(lying_.map().spots()[index(spot)].place, way.corner[n], way.corner[n + 1], s_);
      }
      way.worth += heated ? 1 : 0;
    }
    if (way.worth > 0 && clear(way)) ways.push_back(std::move(way));
  }

  bool clear(const Way& way) const {
    const auto& c = lying_.corners(way.loop);
    const auto& line = way.corner;
    if (!keeps_clear(lying_.task(), c[way.i], line.front()) || !keeps_clear(lying_.task(), line.back(), c[way.j + 1])) {
      return false;
    }
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
      if (!keeps_clear(lying_.task(), line[n], line[n + 1])) return false;
    }
    return true;
  }

  /// Where the line from a through b meets the wall's, ahead of a.
  static std::optional<Point> crossing(Point a, Point b, const WallLine& wall) {
    const Point along = unit(minus(b, a)), w = minus(wall.b, wall.a), to = minus(wall.a, a);
    const double det = along.x_m * w.y_m - along.y_m * w.x_m;
    if (std::abs(det) < 1e-6) return std::nullopt;
    const double t = (to.x_m * w.y_m - to.y_m * w.x_m) / det;
    const Point p = moved(a, along, t);
    const double on = dot(minus(p, wall.a), w) / dot(w, w);
    if (t <= 0.0 || on < -0.05 || on > 1.05) return std::nullopt;
    return p;
  }

  Lying& lying_;
  const Bare& bare_;
  double s_;
};

}  // namespace

bool follow_wall(Lying& lying, const Bare& bare) { return Follower(lying, bare).follow(); }

/// The outermost leaders may go along the wall first.
bool lead_round(Lying& lying, const Bare& bare) {
  for (const bool left : {true, false}) {
    const std::size_t k = left ? 0 : lying.size() - 1;
    Strand bumped{lying.corners(k)};
    auto& c = bumped.corner;
    const std::size_t turn = left ? c.size() - 2 : 1, gate = left ? turn - 1 : 2;
    const Point corner{c[gate].x_m, c[turn].y_m};
    const double reach_m = farthest * lying.spacing_m();
    if (distance_m(corner, bare.middle) > reach_m || distance_m(corner, c[gate]) < lying.task().bend_radius_m ||
        distance_m(corner, c[turn]) < 2.0 * lying.task().bend_radius_m) {
      continue;
    }
    c.insert(c.begin() + offset(std::max(turn, gate)), corner);
    // Beside its port a leader comes nearer to the wall, as all of them do.
    const Point port = c[left ? c.size() - 1 : 0];
    Lying::Rule rule = lying.rule();
    rule.port = port;
    rule.port_gap_m = lying.task().manifold.front().port_pitch_m * leader_gap;
    rule.crowded_m = distance_m(port, corner);
    rule.beside_wall_m = port_bend * lying.task().bend_radius_m;
    if (lying.take(k, std::move(bumped), rule)) return true;
  }
  return false;
}

}  // namespace slabwright::routing
