// Dimensions round the plan: on each side a chain from stop to stop, and beyond it the whole.
#include <algorithm>
#include <cmath>

#include "plan_parts.hpp"

namespace slabwright::drawn {
namespace {

constexpr Pen thin{0.16 * mm, dark, Dash::solid};
constexpr double slanting_m = 24.0 * mm;  // from a slanting wall to its line: level names stand between
constexpr double same_place_m = 0.02;     // on the floor

/// A side of the floor: along x where it lies below or above, along y at the left or right.
struct SideLine {
  bool along_x = true;
  double out = -1.0;  ///< towards smaller or larger coordinates
};

SideLine line_of(DrawnSide side) {
  const bool along_x = side == DrawnSide::below || side == DrawnSide::above;
  return {along_x, side == DrawnSide::below || side == DrawnSide::left ? -1.0 : 1.0};
}

double along(const SideLine& side, Point p) { return side.along_x ? p.x_m : p.y_m; }
double depth(const SideLine& side, Point p) { return side.along_x ? p.y_m : p.x_m; }
Point place(const SideLine& side, double along_m, double depth_m) {
  return side.along_x ? Point{along_m, depth_m} : Point{depth_m, along_m};
}

/// Whether the ports' numbers of a manifold stand between a place of the rim and the line.
bool at_ports(const DrawnFloor& plan, const SideLine& side, Point p) {
  return std::any_of(plan.manifold.begin(), plan.manifold.end(), [&](const DrawnManifold& one) {
    const bool behind = std::abs(depth(side, unit({}, one.facing)) + side.out) < 0.05;
    return behind && std::abs(along(side, one.place) - along(side, p)) < same_place_m;
  });
}

/// The text over the middle of its line, under it, or led away.
Label dimension_label(const KeyedText& text, Point a, Point b, Point out) {
  Label label = label_of(text, text_m, {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)});
  const bool upright = std::abs(b.y_m - a.y_m) > std::abs(b.x_m - a.x_m);
  const double away = 0.5 * label.wish.height_m + 0.5 * mm, room = distance_m(a, b) - label.wish.width_m - 1.0 * mm;
  if (room > 0.0) {
    for (const double shift : {0.0, 0.3 * room, -0.3 * room, 0.48 * room, -0.48 * room}) {
      const Point on = shifted(label.wish.target, unit(a, b), shift);
      label.wish.spot.push_back({shifted(on, out, away), upright});
      label.wish.spot.push_back({shifted(on, out, -away), upright});
    }
  }
  label.wish.leader_m = 40.0 * mm;
  return label;
}

/// A dimension on paper between two places, its line `at` out from them.
Part one(Point a, Point b, Point out, const KeyedText& text) {
  Part part;
  part.shape.push_back(stroke(a, b, thin));
  part.obstacle.push_back(keep_off(a, b, 0.25 * mm));
  const Point along_line = unit(a, b), tick{0.7 * (along_line.x_m + out.x_m), 0.7 * (along_line.y_m + out.y_m)};
  for (const Point end : {a, b}) {
    part.shape.push_back(
        stroke(shifted(end, tick, -1.0 * mm), shifted(end, tick, 1.0 * mm), {0.35 * mm, dark, Dash::solid}));
    part.obstacle.push_back(keep_off(end, end, 0.9 * mm));
  }
  part.label.push_back(dimension_label(text, a, b, out));
  return part;
}

class SideChain {
 public:
  SideChain(const DrawnFloor& plan, const Onto& onto, DrawnSide side)
      : plan_(plan), onto_(onto), side_(line_of(side)), floor_(box_round(plan.floor.outline)) {
    for (const DrawnDimension& one : plan.dimension) {
      if (one.side == side) (one.whole ? whole_ : chain_).push_back(&one);
    }
    rim_ = depth(side_, onto_(side_.out < 0.0 ? floor_.low : floor_.high));
  }

  Part part() const {
    Part all;
    const double at = rim_ + side_.out * zone_m, far = chain_.empty() ? at : at + side_.out * chain_m;
    for (std::size_t k = 0; k < chain_.size(); ++k) {
      const DrawnDimension& dimension = *chain_[k];
      if (k == 0) add(all, extension(dimension.from, at));
      add(all, extension(dimension.to, at));
      add(all, one(on_paper(along(side_, dimension.from), at), on_paper(along(side_, dimension.to), at), out(),
                   dimension.length));
    }
    for (const DrawnDimension* dimension : whole_) add(all, whole(*dimension, far));
    return all;
  }

 private:
  Point out() const { return place(side_, 0.0, side_.out); }
  Point on_paper(double along_m, double depth_m) const {
    return place(side_, along(side_, onto_(place(side_, along_m, 0.0))), depth_m);
  }

  /// From a stop at the rim to the chain.
  Part extension(Point stop, double at) const {
    const double past = at_ports(plan_, side_, stop) ? zone_m - 2.2 * mm : 1.3 * mm;
    const double from = depth(side_, onto_(stop)) + side_.out * past;
    const Point a = on_paper(along(side_, stop), from), b = on_paper(along(side_, stop), at + side_.out * 1.2 * mm);
    return {{}, {stroke(a, b, thin)}, {keep_off(a, b, 0.15 * mm)}, {}};
  }

  Part whole(const DrawnDimension& dimension, double far) const {
    Part part;
    const double low = along(side_, dimension.from), high = along(side_, dimension.to);
    for (const double end : {low, high}) {
      part.shape.push_back(
          stroke(on_paper(end, rim_ + side_.out * 1.3 * mm), on_paper(end, far + side_.out * 1.2 * mm), thin));
    }
    add(part, one(on_paper(low, far), on_paper(high, far), out(), dimension.length));
    return part;
  }

  const DrawnFloor& plan_;
  const Onto& onto_;
  SideLine side_;
  Box floor_;
  double rim_ = 0.0;
  std::vector<const DrawnDimension*> chain_, whole_;
};

/// A wall that lies along neither axis has its own line, beyond its name; letters lie level.
Part slanting_part(const DrawnFloor& plan, const Onto& onto, const DrawnDimension& dimension) {
  Point out = across(unit(dimension.from, dimension.to));
  const Point middle{0.5 * (dimension.from.x_m + dimension.to.x_m), 0.5 * (dimension.from.y_m + dimension.to.y_m)};
  if (where_is(shifted(middle, out, 0.05), plan.floor.outline) != Where::outside) out = {-out.x_m, -out.y_m};
  const Point a = shifted(onto(dimension.from), out, slanting_m), b = shifted(onto(dimension.to), out, slanting_m);
  Part part = one(a, b, out, dimension.length);
  for (const auto& [wall, end] : {std::pair{onto(dimension.from), a}, {onto(dimension.to), b}})
    part.shape.push_back(stroke(shifted(wall, out, 1.3 * mm), shifted(end, out, 1.2 * mm), thin));
  LabelWish& wish = part.label[0].wish;
  wish.spot.clear();
  const double reach = 0.5 * (std::abs(out.x_m) * wish.width_m + std::abs(out.y_m) * wish.height_m) + 0.8 * mm;
  for (const double share : {0.5, 0.35, 0.65}) {
    const Point on = shifted(a, unit(a, b), share * distance_m(a, b));
    for (const double side : {1.0, -1.0}) wish.spot.push_back({shifted(on, out, side * reach), false});
  }
  return part;
}

}  // namespace

Part dimension_part(const DrawnFloor& plan, const Onto& onto) {
  Part part;
  for (const DrawnSide side : {DrawnSide::below, DrawnSide::left, DrawnSide::above, DrawnSide::right})
    add(part, SideChain(plan, onto, side).part());
  for (const DrawnDimension& dimension : plan.dimension) {
    if (dimension.side == DrawnSide::slanting) add(part, slanting_part(plan, onto, dimension));
  }
  return part;
}

}  // namespace slabwright::drawn
