// What a layout is worth. It shares no step with how layouts are made, only what counts as floor: paths are flattened
// and measured against each other, against the walls and against a raster of the floor.
#include <algorithm>
#include <cmath>
#include <cstddef>

#include "bands.hpp"
#include "density.hpp"
#include "marks.hpp"
#include "open_floor.hpp"
#include "ports.hpp"
#include "segments.hpp"
#include "slabwright/routing_layout.hpp"

namespace slabwright {
namespace {

using routing::boxes_apart;
using routing::fine_sag_m;
using routing::least_bulb_separation;
using routing::least_separation;
using routing::Near;
using routing::Segment;
using routing::Segments;
using routing::slack_m;

constexpr double coarse_sag_m = 0.002;
constexpr double raster = 0.25;  ///< of the spacing
constexpr double foot_m = 0.3048;
/// More than rounding makes of a distance between boxes.
constexpr double hair_m = 1e-9;
constexpr double pi = 3.14159265358979323846;

/// Crossings and distances between tubes.
void check_apart(const LayoutTask& task, const std::vector<Segment>& all, LayoutCheck& check) {
  if (all.empty()) return;
  const double reach_m = 1.1 * task.spacing_m;
  const double own_m = routing::one_bend * task.spacing_m;
  Near near(all, task.spacing_m);
  const std::vector<routing::BandStrip> strips = routing::strips_of(task);
  const auto local_m = [&](const Segment& a, const Segment& b) {
    if (strips.empty()) return task.spacing_m;
    return std::min(routing::spacing_here_m(task, strips, a.a), routing::spacing_here_m(task, strips, b.a));
  };
  double least = HUGE_VAL, apron_m = HUGE_VAL, bulb = HUGE_VAL;
  for (std::size_t k = 0; k < all.size(); ++k) {
    const Segment& s = all[k];
    near.each(s.a, s.b, reach_m, [&](const std::vector<int>& list) {
      // Lists are in order, and of two segments the later one is looked at.
      for (auto other = list.rbegin(); other != list.rend() && *other > static_cast<int>(k); ++other) {
        const Segment& o = all[static_cast<std::size_t>(*other)];
        const bool follows = o.loop == s.loop && (s.b == o.a || o.b == s.a);
        if (follows) continue;
        const bool in_apron = s.in_apron || o.in_apron;
        double& ratio = s.in_bulb || o.in_bulb ? bulb : least;
        // What is one bend is looked at for crossings only.
        const bool same_bend = o.loop == s.loop && std::abs(o.at_m - s.at_m) < own_m;
        if (boxes_apart(s, o, same_bend ? 0.0 : in_apron ? apron_m : ratio * task.spacing_m)) continue;
        const double gap_m = distance_of_edges_m(s.a, s.b, o.a, o.b);
        if (gap_m == 0.0) ++check.crossings_number;
        if (same_bend) continue;
        if (in_apron) apron_m = std::min(apron_m, gap_m);
        if (!in_apron && gap_m < ratio * task.spacing_m) ratio = std::min(ratio, gap_m / local_m(s, o));
      }
    });
  }
  check.separation_ratio = std::min(least, reach_m / task.spacing_m);
  check.bulb_separation_ratio = std::min(bulb, reach_m / task.spacing_m);
  check.apron_separation_m = std::min(apron_m, reach_m);
}

void check_ends(const LayoutTask& task, const TubeLayout& layout, LayoutCheck& check) {
  std::vector<int> before(task.manifold.size(), 0);
  for (const LaidLoop& loop : layout.loop) {
    if (loop.port != ++before[loop.manifold]) ++check.wrong_ends_number;
  }
  for (const routing::WantedEnds& wanted : routing::wanted_ends(task, layout)) {
    const LaidLoop& loop = layout.loop[wanted.loop];
    if (loop.path.empty()) {
      check.wrong_ends_number += 2;
      continue;
    }
    if (distance_m(loop.path.front().from, wanted.supply) > wanted.slack_m + slack_m) ++check.wrong_ends_number;
    if (distance_m(loop.path.back().to, wanted.back) > wanted.slack_m + slack_m) ++check.wrong_ends_number;
  }
}

Point heading(const Piece& piece, bool at_end) {
  if (piece.radius_m <= 0.0) return {piece.to.x_m - piece.from.x_m, piece.to.y_m - piece.from.y_m};
  const Point p = at_end ? piece.to : piece.from;
  const double sign = piece.turn == Side::left ? 1.0 : -1.0;
  return {-sign * (p.y_m - piece.centre.y_m), sign * (p.x_m - piece.centre.x_m)};
}

void check_pieces(const LayoutTask& task, const TubeLayout& layout, LayoutCheck& check) {
  double turned_rad = 0.0, sum_m = 0.0, least_m = HUGE_VAL;
  for (const LaidLoop& loop : layout.loop) {
    for (std::size_t i = 0; i < loop.path.size(); ++i) {
      const Piece& piece = loop.path[i];
      turned_rad += sweep_rad(piece);
      if (piece.radius_m > 0.0 && piece.radius_m < task.bend_radius_m - slack_m) ++check.tight_bends_number;
      if (i == 0) continue;
      const Piece& before = loop.path[i - 1];
      const double kink_rad = angle_between_rad(heading(before, true), heading(piece, false));
      if (distance_m(before.to, piece.from) > slack_m || kink_rad > 0.01) ++check.broken_number;
    }
    const double length = length_m(loop.path);
    if (length > task.longest_loop_m) ++check.over_limit_number;
    if (std::abs(length - loop.length_m) > slack_m) ++check.broken_number;
    check.longest_m = std::max(check.longest_m, length);
    least_m = std::min(least_m, length);
    sum_m += length;
  }
  check.tube_m = sum_m;
  if (sum_m <= 0.0) return;
  check.spread_ratio = (check.longest_m - least_m) * static_cast<double>(layout.loop.size()) / sum_m;
  check.bends_per_100ft_ratio = turned_rad / (0.5 * pi) * 100.0 * foot_m / sum_m;
}

void check_heat(const LayoutTask& task, const TubeLayout& layout, const std::vector<Segment>& all, LayoutCheck& check) {
  check.heat_spread_ratio = check.spread_ratio;
  if (task.loss.empty() || layout.loop.empty()) return;
  std::vector<double> heat(layout.loop.size(), 0.0);
  for (const Segment& s : all) {
    const Point middle{0.5 * (s.a.x_m + s.b.x_m), 0.5 * (s.a.y_m + s.b.y_m)};
    double ratio = 0.0;
    for (const LossArea& area : task.loss) {
      if (where_is(middle, area.outline) != Where::outside) ratio = std::max(ratio, area.loss_ratio);
    }
    heat[static_cast<std::size_t>(s.loop)] += distance_m(s.a, s.b) * (ratio > 0.0 ? ratio : 1.0);
  }
  double sum = 0.0;
  for (const double h : heat) sum += h;
  const auto [least, most] = std::minmax_element(heat.begin(), heat.end());
  check.heat_spread_ratio = (*most - *least) * static_cast<double>(heat.size()) / sum;
}

void check_clear(const LayoutTask& task, const std::vector<Segment>& all, LayoutCheck& check) {
  std::vector<routing::Box> box;
  for (const NoTubeArea& area : task.no_tube) box.push_back(routing::box_of(area.outline));
  // Least distance over what is asked of each edge: the clearance where all ask the same. Of no interest where it is
  // more than `least_m`.
  const auto spare = [](const Segment& s, const Polygon& polygon, const auto& asked_m, double least_m) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point from = polygon[i], to = polygon[i + 1 < polygon.size() ? i + 1 : 0];
      if (boxes_apart(s, {from, to}, least_m + asked_m(i) + hair_m)) continue;
      least_m = std::min(least_m, distance_of_edges_m(s.a, s.b, from, to) - asked_m(i));
    }
    return least_m;
  };
  const auto of_wall_m = [&](std::size_t i) { return routing::wall_clearance_m(task, i); };
  double least_spare_m = HUGE_VAL;
  for (const Segment& s : all) {
    if (!s.in_apron) {
      const double least_m = std::max(-slack_m, least_spare_m);
      const bool is_outside = where_is(s.a, task.outline) == Where::outside;
      const double spare_m = is_outside ? -1.0 : spare(s, task.outline, of_wall_m, least_m);
      least_spare_m = std::min(least_spare_m, spare_m);
      if (spare_m < -slack_m) ++check.too_near_number;
    }
    for (std::size_t k = 0; k < box.size(); ++k) {
      const NoTubeArea& area = task.no_tube[k];
      // Nothing of a line is nearer to an area than its end, less its length.
      if (!routing::in_box(box[k], s.a, area.clearance_m + distance_m(s.a, s.b))) continue;
      const auto asked_m = [&](std::size_t) { return area.clearance_m; };
      if (where_is(s.a, area.outline) != Where::outside || spare(s, area.outline, asked_m, -slack_m) < -slack_m) {
        ++check.too_near_number;
      }
    }
  }
  check.clearance_m = task.wall_clearance_m + least_spare_m;
}

/// Tube that passes over joints, and tube that lies along them.
void check_joints(const LayoutTask& task, const std::vector<Segment>& all, LayoutCheck& check) {
  constexpr double sine_of_10_deg = 0.17365, off_joint_m = 0.05;
  std::vector<int> of_loop;
  for (const JointLine& joint : task.joint) {
    const auto off = [&](Point p) {
      return (joint.to.x_m - joint.from.x_m) * (p.y_m - joint.from.y_m) -
             (joint.to.y_m - joint.from.y_m) * (p.x_m - joint.from.x_m);
    };
    const Point along{joint.to.x_m - joint.from.x_m, joint.to.y_m - joint.from.y_m};
    for (const Segment& s : all) {
      const Point d{s.b.x_m - s.a.x_m, s.b.y_m - s.a.y_m};
      const double lengths = distance_m(s.a, s.b) * distance_m(joint.from, joint.to);
      const double cosine = std::abs(d.x_m * along.x_m + d.y_m * along.y_m) / lengths;
      const double sine = std::abs(d.x_m * along.y_m - d.y_m * along.x_m) / lengths;
      // What lies on the line counts as left of it, so that a joint between two segments is passed once.
      const bool same_side = (off(s.a) >= 0.0) == (off(s.b) >= 0.0);
      if (same_side && sine >= sine_of_10_deg) continue;
      const double gap_m = distance_of_edges_m(s.a, s.b, joint.from, joint.to);
      if (sine < sine_of_10_deg && gap_m < off_joint_m) check.along_joint_m += distance_m(s.a, s.b);
      if (same_side || gap_m > 0.0) continue;
      ++check.joint_crossings_number;
      if (cosine > sine_of_10_deg) ++check.slanted_crossings_number;
      of_loop.resize(std::max(of_loop.size(), static_cast<std::size_t>(s.loop) + 1), 0);
      check.most_crossings_number = std::max(check.most_crossings_number, ++of_loop[static_cast<std::size_t>(s.loop)]);
    }
  }
}

/// Whether a point is sure to lie farther from a segment than this.
bool beyond(Point p, const Segment& s, double by_m) {
  const double far_m = by_m + hair_m;
  return p.x_m + far_m < std::min(s.a.x_m, s.b.x_m) || p.x_m - far_m > std::max(s.a.x_m, s.b.x_m) ||
         p.y_m + far_m < std::min(s.a.y_m, s.b.y_m) || p.y_m - far_m > std::max(s.a.y_m, s.b.y_m);
}

/// Floor by distance to the nearest tube, on points a quarter of a spacing apart. No-tube areas with their clearance
/// are no floor to heat.
void check_cover(const LayoutTask& task, const std::vector<Segment>& all, LayoutCheck& check) {
  if (all.empty()) return;
  const double step_m = raster * task.spacing_m;
  Near near(all, task.spacing_m);
  const routing::Box box = routing::box_of(task.outline);
  const routing::OpenFloor open(task);
  std::vector<double> away;
  for (double y = box.least.y_m + 0.5 * step_m; y < box.most.y_m; y += step_m) {
    for (double x = box.least.x_m + 0.5 * step_m; x < box.most.x_m; x += step_m) {
      const Point p{x, y};
      if (!open.holds(p)) continue;
      double gap_m = HUGE_VAL;
      for (double reach_m = 0.6 * task.spacing_m; gap_m > reach_m && reach_m < 16.0 * task.spacing_m; reach_m *= 2.0) {
        near.each(p, p, reach_m, [&](const std::vector<int>& list) {
          for (const int k : list) {
            const Segment& s = all[static_cast<std::size_t>(k)];
            if (!beyond(p, s, gap_m)) gap_m = std::min(gap_m, distance_to_edge_m(p, s.a, s.b));
          }
        });
      }
      // Floor that loops drawn by hand leave may lie far from all of them.
      if (gap_m == HUGE_VAL) {
        for (const Segment& s : all) gap_m = std::min(gap_m, distance_to_edge_m(p, s.a, s.b));
      }
      away.push_back(gap_m / (task.band.empty() ? task.spacing_m : routing::spacing_asked_m(task, p)));
    }
  }
  if (away.empty()) return;
  check.farthest_ratio = *std::max_element(away.begin(), away.end());
  const auto far = std::count_if(away.begin(), away.end(), [](double ratio) { return ratio > 1.0; });
  const auto near_all = away.begin() + static_cast<std::ptrdiff_t>(0.99 * static_cast<double>(away.size() - 1));
  std::nth_element(away.begin(), near_all, away.end());
  check.near_ratio = *near_all;
  check.far_floor_ratio = static_cast<double>(far) / static_cast<double>(away.size());
}

}  // namespace

bool LayoutCheck::sound() const {
  return crossings_number == 0 && wrong_ends_number == 0 && broken_number == 0 && tight_bends_number == 0 &&
         over_limit_number == 0 && too_near_number == 0 && separation_ratio >= least_separation &&
         bulb_separation_ratio >= least_bulb_separation;
}

LayoutCheck check_layout(const LayoutTask& task, const TubeLayout& layout) {
  LayoutCheck check;
  const Segments segments(layout, fine_sag_m, 0.5 * task.spacing_m);
  const Segments coarse(layout, coarse_sag_m, 2.0 * task.spacing_m);
  check_apart(task, segments.all(), check);
  check_ends(task, layout, check);
  check_pieces(task, layout, check);
  check_heat(task, layout, segments.all(), check);
  check_clear(task, segments.all(), check);
  check_joints(task, segments.all(), check);
  check_cover(task, coarse.all(), check);
  check.apron_m_per_m2 = routing::densest_apron(task, layout);
  return check;
}

}  // namespace slabwright
