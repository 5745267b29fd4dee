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

Polygon image_of(const Polygon& polygon) {
  Polygon made;
  for (auto p = polygon.rbegin(); p != polygon.rend(); ++p) made.push_back(routing::image_of(*p));
  return made;
}

std::ptrdiff_t first_corner(const Polygon& polygon) {
  const auto before = [](Point a, Point b) { return a.x_m != b.x_m ? a.x_m < b.x_m : a.y_m < b.y_m; };
  return std::min_element(polygon.begin(), polygon.end(), before) - polygon.begin();
}

}  // namespace

LayoutTask image_of(const LayoutTask& seen) {
  LayoutTask made = seen;
  made.outline = image_of(seen.outline);
  const std::size_t n = seen.outline.size();
  // The edge from corner i on is, walked the other way, the one from what was corner i + 1.
  for (std::size_t i = 0; i < seen.edge_clearance_m.size(); ++i) {
    made.edge_clearance_m[i] = seen.edge_clearance_m[(2 * n - 2 - i) % n];
  }
  for (NoTubeArea& area : made.no_tube) area.outline = image_of(area.outline);
  for (JointLine& joint : made.joint) joint = {image_of(joint.from), image_of(joint.to)};
  for (EdgeBand& band : made.band) band.outline = image_of(band.outline);
  for (LossArea& area : made.loss) area.outline = image_of(area.outline);
  return made;
}

Path image_of(Path path) {
  for (Piece& piece : path) {
    piece = {image_of(piece.from), image_of(piece.to), piece.radius_m, image_of(piece.centre), piece.turn};
    if (piece.turn != Side::on) piece.turn = piece.turn == Side::left ? Side::right : Side::left;
  }
  return path;
}

TubeLayout image_of(TubeLayout layout) {
  const int loops = static_cast<int>(layout.loop.size());
  for (LaidLoop& loop : layout.loop) {
    loop.port = loops + 1 - loop.port;
    loop.left_first = !loop.left_first;
    loop.path = image_of(std::move(loop.path));
    for (JointCrossing& crossing : loop.crossing) crossing.place = image_of(crossing.place);
  }
  std::reverse(layout.loop.begin(), layout.loop.end());
  for (Polygon& apron : layout.apron) apron = image_of(apron);
  return layout;
}

bool better_mirrored(const LayoutTask& seen) { return Key(-1.0).of(seen) < Key(1.0).of(seen); }
bool is_symmetric(const LayoutTask& seen) { return Key(-1.0).of(seen) == Key(1.0).of(seen); }

LayoutTask in_order(LayoutTask seen) {
  const auto first = first_corner(seen.outline);
  std::rotate(seen.outline.begin(), seen.outline.begin() + first, seen.outline.end());
  if (!seen.edge_clearance_m.empty()) {
    std::rotate(seen.edge_clearance_m.begin(), seen.edge_clearance_m.begin() + first, seen.edge_clearance_m.end());
  }
  for (NoTubeArea& area : seen.no_tube) {
    std::rotate(area.outline.begin(), area.outline.begin() + first_corner(area.outline), area.outline.end());
  }
  const Key key(1.0);
  std::stable_sort(seen.no_tube.begin(), seen.no_tube.end(), [&](const NoTubeArea& a, const NoTubeArea& b) {
    return key.corners(a.outline) < key.corners(b.outline);
  });
  return seen;
}

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
