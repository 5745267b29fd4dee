#include "mirror.hpp"

#include <algorithm>
#include <cmath>

#include "marks.hpp"

namespace slabwright::routing {
namespace {

/// Numbers that tell a task from others, rounded so that typed lengths agree; the same for its mirror image where
/// `sign` is turned.
class Key {
 public:
  explicit Key(double sign) : sign_(sign) {}

  std::vector<double> corners(const Polygon& polygon) const {
    std::vector<std::vector<double>> all;
    for (const Point p : polygon) all.push_back(place(p));
    return joined(std::move(all));
  }
  std::vector<double> place(Point p) const { return {rounded_off(sign_ * p.x_m), rounded_off(p.y_m)}; }

  std::vector<double> of(const LayoutTask& task) const {
    std::vector<double> key = corners(task.outline);
    const auto add = [&](std::vector<std::vector<double>> all) {
      const std::vector<double> more = joined(std::move(all));
      key.insert(key.end(), more.begin(), more.end());
    };
    std::vector<std::vector<double>> edges, areas, joints, bands, losses;
    for (std::size_t i = 0; i < task.edge_clearance_m.size(); ++i) {
      const Point a = task.outline[i], b = task.outline[i + 1 < task.outline.size() ? i + 1 : 0];
      edges.push_back(with(place({0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)}), task.edge_clearance_m[i]));
    }
    for (const NoTubeArea& area : task.no_tube) areas.push_back(with(corners(area.outline), area.clearance_m));
    for (const JointLine& joint : task.joint) joints.push_back(joined({place(joint.from), place(joint.to)}));
    for (const EdgeBand& band : task.band) bands.push_back(with(corners(band.outline), band.spacing_m));
    for (const LossArea& area : task.loss) losses.push_back(with(corners(area.outline), area.loss_ratio));
    for (auto* all : {&edges, &areas, &joints, &bands, &losses}) add(std::move(*all));
    for (const Polygon& floor : task.own_floor) add({corners(floor)});
    return key;
  }

 private:
  static double rounded_off(double m) {
    constexpr double parts = 8192.0;
    return (m < 0.0 ? -1.0 : 1.0) * std::floor(std::abs(m) * parts + 0.5);
  }
  static std::vector<double> with(std::vector<double> all, double more) {
    all.push_back(more);
    return all;
  }
  static std::vector<double> joined(std::vector<std::vector<double>> all) {
    std::sort(all.begin(), all.end());
    std::vector<double> made;
    for (const auto& one : all) made.insert(made.end(), one.begin(), one.end());
    return made;
  }

  double sign_;
};

}  // namespace

Polygon mirrored(const Polygon& polygon) {
  Polygon made;
  for (auto p = polygon.rbegin(); p != polygon.rend(); ++p) made.push_back(mirrored(*p));
  return made;
}

Path mirrored(Path path) {
  for (Piece& piece : path) {
    piece = {mirrored(piece.from), mirrored(piece.to), piece.radius_m, mirrored(piece.centre), piece.turn};
    if (piece.turn != Side::on) piece.turn = piece.turn == Side::left ? Side::right : Side::left;
  }
  return path;
}

bool is_symmetric(const LayoutTask& seen) { return Key(-1.0).of(seen) == Key(1.0).of(seen); }

LayoutTask left_half(const LayoutTask& seen, double axis_clearance_m) {
  LayoutTask half = seen;
  half.outline.clear();
  half.edge_clearance_m.clear();
  const auto add = [&](Point p, double clearance_m) {
    half.outline.push_back(p);
    half.edge_clearance_m.push_back(clearance_m);
  };
  for (std::size_t i = 0; i < seen.outline.size(); ++i) {
    const Point a = seen.outline[i], b = seen.outline[i + 1 < seen.outline.size() ? i + 1 : 0];
    const double clearance_m = wall_clearance_m(seen, i);
    const bool from = a.x_m <= 0.0, to = b.x_m <= 0.0;
    const Point on{0.0, from == to ? 0.0 : a.y_m + (b.y_m - a.y_m) * a.x_m / (a.x_m - b.x_m)};
    if (from) add(a, from && to && a.x_m == 0.0 && b.x_m == 0.0 ? axis_clearance_m : clearance_m);
    if (from && !to) add(on, axis_clearance_m);
    if (!from && to) add(on, clearance_m);
  }
  return half;
}

}  // namespace slabwright::routing
