// Tube along walls that the lattice only meets in steps, and leaders along the wall behind the manifold.
#include <algorithm>
#include <cmath>
#include <optional>

#include "lying.hpp"
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

std::ptrdiff_t offset(std::size_t i) { return static_cast<std::ptrdiff_t>(i); }

/// Tube and walls farther than this from bare floor are left alone, in spacings; tube is not carried on farther.
constexpr double near_enough = 2.5, near_wall = 1.5, farthest = 6.0;
/// Corners between two runs that a line along a wall may replace.
constexpr std::size_t most_spanned = 7;
/// Leaders that go round keep this far from others, in port pitches.
constexpr double leader_gap = 0.95;
/// So far from its port, in radii, it turns along the wall.
constexpr double port_bend = 2.5;

class Follower {
 public:
  Follower(Lying& lying, const Bare& bare) : lying_(lying), bare_(bare), s_(lying.spacing_m()) {}

  /// The line of tube along a wall: at its clearance, from a to b with the floor on the left.
  struct WallLine {
    Point a, b;
  };
  std::vector<WallLine> walls_near() const {
    std::vector<WallLine> all;
    const auto add = [&](const Polygon& o, const auto& clearance_m, double sign) {
      for (std::size_t i = 0; i < o.size(); ++i) {
        const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
        const bool near = std::any_of(bare_.spot.begin(), bare_.spot.end(), [&](int spot) {
          return distance_to_edge_m(lying_.map().spots()[index(spot)].place, a, b) < near_wall * s_;
        });
        if (!near) continue;
        const Point along = unit(minus(b, a)), in{-sign * along.y_m, sign * along.x_m};
        all.push_back({moved(a, in, clearance_m(i) + 1e-6), moved(b, in, clearance_m(i) + 1e-6)});
      }
    };
    const auto of_wall = [&](std::size_t i) {
      return lying_.task().edge_clearance_m.empty() ? lying_.task().wall_clearance_m
                                                    : lying_.task().edge_clearance_m[i];
    };
    add(lying_.task().outline, of_wall, 1.0);
    for (const NoTubeArea& area : lying_.task().no_tube) {
      add(
          area.outline, [&](std::size_t) { return area.clearance_m; }, -1.0);
    }
    return all;
  }

  /// Two runs of a loop carried on to a line along the wall, and that line in place of all tube between them.
  bool follow() {
    const auto walls = walls_near();
    const double reach_m = near_enough * s_;
    for (std::size_t k = 0; k < lying_.size(); ++k) {
      std::vector<std::size_t> near;
      const auto& c = lying_.corners(k);
      for (std::size_t i = leader_corners - 1; i + leader_corners < c.size(); ++i) {
        const auto is_near = [&](int spot) {
          return distance_to_edge_m(lying_.map().spots()[index(spot)].place, c[i], c[i + 1]) < reach_m;
        };
        if (std::any_of(bare_.spot.begin(), bare_.spot.end(), is_near)) near.push_back(i);
      }
      for (const WallLine& wall : walls) {
        for (const std::size_t i : near) {
          for (const std::size_t j : near) {
            if (j <= i || j > i + most_spanned) continue;
            if (spanned(k, i, j, wall)) return true;
          }
        }
      }
    }
    return false;
  }

  bool spanned(std::size_t k, std::size_t i, std::size_t j, const WallLine& wall) {
    const auto& c = lying_.corners(k);
    const auto a = crossing(c[i], c[i + 1], wall), b = crossing(c[j + 1], c[j], wall);
    if (!a || !b || distance_m(*a, *b) < 0.5 * s_) return false;
    if (distance_m(*a, c[i + 1]) > farthest * s_ || distance_m(*b, c[j]) > farthest * s_) return false;
    if (!keeps_clear(lying_.task(), *a, *b) || !keeps_clear(lying_.task(), c[i], *a) ||
        !keeps_clear(lying_.task(), *b, c[j + 1]))
      return false;
    Strand bumped{c};
    auto& d = bumped.corner;
    d.erase(d.begin() + offset(i) + 1, d.begin() + offset(j) + 1);
    d.insert(d.begin() + offset(i) + 1, {*a, *b});
    return lying_.take(k, std::move(bumped), lying_.rule());
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
