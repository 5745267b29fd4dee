// Manifolds on the plan: a bar behind the ports, and the ports' numbers in squares behind the wall.
#include <algorithm>
#include <cmath>

#include "plan_parts.hpp"

namespace slabwright::drawn {
namespace {

constexpr double square_m = 3.8 * mm, bar_m = 1.8 * mm, fan_m = 3.4 * mm, behind_wall_m = 0.6 * mm;

struct Port {
  double along_m = 0.0;  ///< on paper, to the left of who looks out of the floor at the manifold; from its place
  KeyedText number;
};

struct Row {
  Point place, back, along;  ///< on paper; `back` out of the floor, `along` the wall
  bool square = true;        ///< the wall lies along an axis of the paper
  std::vector<Port> port;
};

Row row_of(const DrawnFloor& plan, const Onto& onto, std::size_t manifold) {
  const DrawnManifold& one = plan.manifold[manifold];
  const Point facing = unit({}, one.facing);
  Row row{onto(one.place), {-facing.x_m, -facing.y_m}, across(facing), true, {}};
  row.square = std::min(std::abs(facing.x_m), std::abs(facing.y_m)) < 0.02;
  // Along the paper's own axes, so that the row reads from left to right or from below upwards.
  if (row.along.x_m + row.along.y_m < 0.0) row.along = {-row.along.x_m, -row.along.y_m};
  for (const DrawnLoop& loop : plan.loop) {
    if (loop.manifold != manifold) continue;
    const Point a = onto(loop.path.front().from), b = onto(loop.path.back().to);
    const Point middle{0.5 * (a.x_m + b.x_m) - row.place.x_m, 0.5 * (a.y_m + b.y_m) - row.place.y_m};
    row.port.push_back({middle.x_m * row.along.x_m + middle.y_m * row.along.y_m, loop.port});
  }
  std::stable_sort(row.port.begin(), row.port.end(),
                   [](const Port& a, const Port& b) { return a.along_m < b.along_m; });
  return row;
}

/// The squares grow where a number needs more than the usual one.
double side_m(const Row& row) {
  double side = square_m;
  for (const Port& port : row.port) {
    side = std::max(side, text_size(port.number.text, small_text_m, false).width_m + 0.9 * mm);
  }
  return side;
}

double half_bar_m(const Row& row) {
  double half = 1.5 * mm;
  for (const Port& port : row.port) half = std::max(half, std::abs(port.along_m) + 0.8 * mm);
  return half;
}

Area bar_of(const Row& row) {
  const double half = half_bar_m(row);
  const Point near = shifted(row.place, row.back, behind_wall_m), far = shifted(near, row.back, bar_m);
  const Polygon ring{shifted(near, row.along, -half), shifted(near, row.along, half), shifted(far, row.along, half),
                     shifted(far, row.along, -half)};
  return {{ring}, Fill{{205, 207, 211}, Pattern::plain, dark}, {0.3 * mm, dark, Dash::solid}};
}

/// From the bar's back to the far rim of the squares.
double depth_m(const Row& row) { return fan_m + side_m(row); }

std::vector<LabelSpot> spots_behind(const Row& row) {
  std::vector<LabelSpot> spots;
  if (!row.square) return spots;
  const bool upright = std::abs(row.along.y_m) > std::abs(row.along.x_m);
  const Point middle = shifted(row.place, row.back, behind_wall_m + bar_m + 0.05 * mm + 0.5 * depth_m(row));
  for (const double by : {0.0, 2.0 * mm, -2.0 * mm, 5.0 * mm, -5.0 * mm, 9.0 * mm, -9.0 * mm}) {
    spots.push_back({shifted(middle, row.along, by), upright});
  }
  return spots;
}

}  // namespace

Part manifold_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  for (std::size_t k = 0; k < plan.manifold.size(); ++k) {
    const Row row = row_of(plan, onto, k);
    Area bar = bar_of(row);
    const Polygon ring = bar.ring[0];
    part.obstacle.push_back(keep_off(ring[0], ring[1], 0.1 * mm));
    part.obstacle.push_back(keep_off(ring[2], ring[3], 0.02 * mm));
    part.shape.emplace_back(std::move(bar));
    Label ports;
    for (const Port& port : row.port) ports.port.push_back(port.number);
    ports.manifold = k;
    ports.what = joined({{"ports of ", ""}, plan.manifold[k].name});
    ports.wish.width_m = side_m(row) * static_cast<double>(std::max<std::size_t>(row.port.size(), 1));
    ports.wish.height_m = depth_m(row);
    ports.wish.target = shifted(row.place, row.back, behind_wall_m + bar_m);
    ports.wish.spot = spots_behind(row);
    ports.wish.leader_m = 60.0 * mm;
    ports.wish.on_lines = OnLines::if_needed;
    if (!row.port.empty()) part.label.push_back(std::move(ports));
    Label name = label_of(plan.manifold[k].name, text_m, shifted(row.place, row.back, behind_wall_m + bar_m));
    const double beside = half_bar_m(row) + 2.0 * mm + 0.5 * name.wish.width_m;
    const bool upright = std::abs(row.along.y_m) > std::abs(row.along.x_m);
    for (const double more : {0.0, 6.0 * mm, 12.0 * mm, 18.0 * mm}) {
      for (const double side : {1.0, -1.0}) {
        const Point by = shifted(row.place, row.along, side * (beside + more));
        if (row.square) name.wish.spot.push_back({shifted(by, row.back, 2.4 * mm), upright});
      }
    }
    name.wish.leader_m = 120.0 * mm;
    name.wish.on_lines = OnLines::if_needed;
    if (!plan.manifold[k].name.text.empty()) part.label.push_back(std::move(name));
  }
  return part;
}

std::vector<SheetShape> port_row(const DrawnFloor& plan, const Onto& onto, std::size_t manifold,
                                 const PlacedLabel& placed) {
  const Row row = row_of(plan, onto, manifold);
  const double side = side_m(row);
  const bool upright = placed.spot.upright, at_home = placed.leader.empty() && row.square;
  const Point along = upright ? Point{0.0, 1.0} : Point{1.0, 0.0};
  // At its manifold the row lies at the far rim of its box, and lines lead to the ports; elsewhere the box is all its.
  const Point middle =
      at_home ? shifted(placed.spot.middle, row.back, 0.5 * (depth_m(row) - side)) : placed.spot.middle;
  std::vector<SheetShape> shapes;
  for (std::size_t k = 0; k < row.port.size(); ++k) {
    const double offset = (static_cast<double>(k) - 0.5 * static_cast<double>(row.port.size() - 1)) * side;
    const Point at = shifted(middle, along, offset);
    if (at_home) {
      const Point port = shifted(shifted(row.place, row.back, behind_wall_m + bar_m), row.along, row.port[k].along_m);
      shapes.emplace_back(stroke(shifted(at, row.back, -0.5 * side), port, {0.15 * mm, dark, Dash::solid}));
    }
    const Box box = box_about(at, side, side);
    shapes.emplace_back(Area{{ring_of(box)}, Fill{white, Pattern::plain, white}, {0.25 * mm, dark, Dash::solid}});
    const KeyedText& number = row.port[k].number;
    shapes.emplace_back(Lettering{at, number.text, small_text_m, dark, false, false, Align::middle, number.key});
  }
  return shapes;
}

}  // namespace slabwright::drawn
