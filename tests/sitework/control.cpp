// Points by which tube is found again, and bands along it.
#include <algorithm>
#include <cmath>
#include <map>

#include "slabwright/sitework_control.hpp"
#include "slabwright/sitework_drill.hpp"
#include "slabwright/tube.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

LoopPlan laid(const Design& design) {
  LaidBefore before;
  auto plan = plan_loops(design, &before);
  REQUIRE(plan.value);
  return *plan.value;
}

/// The place at these distances from A and B, to the left of the way from one to the other.
Point from_both(const ControlPoints& control, const ControlPoint& point) {
  const Point a{control.a.x_m, control.a.y_m}, b{control.b.x_m, control.b.y_m};
  const double base = distance_m(a, b);
  const double along = (point.from_a_m * point.from_a_m - point.from_b_m * point.from_b_m + base * base) / (2.0 * base);
  const double off = std::sqrt(std::max(point.from_a_m * point.from_a_m - along * along, 0.0));
  const Point ahead{(b.x_m - a.x_m) / base, (b.y_m - a.y_m) / base};
  return {a.x_m + along * ahead.x_m - off * ahead.y_m, a.y_m + along * ahead.y_m + off * ahead.x_m};
}

}  // namespace

TEST_CASE("two lengths from the corners give each control point back") {
  for (const test::Layout& layout : test::layouts()) {
    INFO(layout.name);
    const LoopPlan plan = laid(layout.file.design);
    const auto control = control_points(layout.file.design, plan);
    CHECK(control.has_value() == plan.drawing.has_value());
    if (!control) continue;
    std::map<std::string, int> of_loop;
    for (const ControlPoint& point : control->point) {
      INFO(point.name);
      const Point back = from_both(*control, point);
      CHECK(distance_m(back, {point.x_m, point.y_m}) < 0.001);
      ++of_loop[point.loop];
    }
    for (const Loop& loop : plan.loop) CHECK(of_loop[loop.name] == 3);
  }
}

TEST_CASE("a control point lies on its loop's tube, as far along as it says") {
  const auto file = test::layout("frame-shop").file;
  const LoopPlan plan = laid(file.design);
  const auto control = control_points(file.design, plan);
  REQUIRE(control);
  for (const ControlPoint& point : control->point) {
    for (const Loop& loop : plan.loop) {
      if (loop.name != point.loop) continue;
      const Point at = point_at(*loop.path, point.along_m);
      CHECK(distance_m(at, {point.x_m, point.y_m}) < 1e-6);
    }
  }
}

TEST_CASE("no wall's corners let tapes cross better, where they cross worst") {
  const auto sine = [](Point p, Point a, Point b) {
    const double cross = (a.x_m - p.x_m) * (b.y_m - p.y_m) - (a.y_m - p.y_m) * (b.x_m - p.x_m);
    return std::abs(cross) / distance_m(a, p) / distance_m(b, p);
  };
  for (const test::Layout& layout : test::layouts()) {
    INFO(layout.name);
    const auto control = control_points(layout.file.design, laid(layout.file.design));
    if (!control) continue;
    const auto outline = floor_shape(layout.file.design.slab).outline;
    double here = 1.0;
    std::map<std::string, double> there;
    for (const ControlPoint& point : control->point) {
      const Point p{point.x_m, point.y_m};
      here = std::min(here, sine(p, {control->a.x_m, control->a.y_m}, {control->b.x_m, control->b.y_m}));
      for (std::size_t i = 0; i < outline.size(); ++i) {
        const Place from = outline[i], to = outline[(i + 1) % outline.size()];
        const bool one_side = std::all_of(outline.begin(), outline.end(), [&](const Place& q) {
          return (to.x_m - from.x_m) * (q.y_m - from.y_m) - (to.y_m - from.y_m) * (q.x_m - from.x_m) > -0.01;
        });
        if (!one_side) continue;
        double& least = there.try_emplace(std::to_string(i), 1.0).first->second;
        least = std::min(least, sine(p, {from.x_m, from.y_m}, {to.x_m, to.y_m}));
      }
    }
    for (const auto& [edge, least] : there) CHECK(here > least - 1e-5);
  }
}

TEST_CASE("what the bands leave clear is likely clear, and what they leave in doubt is not forbidden") {
  for (const test::Layout& layout : test::layouts()) {
    INFO(layout.name);
    const Design& design = layout.file.design;
    const LoopPlan plan = laid(design);
    const auto bands = drill_bands(design, plan);
    CHECK(bands.has_value() == plan.drawing.has_value());
    if (!bands) continue;
    CHECK(bands->doubt_m > bands->do_not_m);
    const double outside_m = find_tube(design.tube.size.name)->outside_diameter_m;
    DrawnTube tube{{}, outside_m, bands->concrete_above_m};
    for (const Loop& loop : plan.loop) tube.loop.push_back(*loop.path);
    TubeDoubt doubt;
    doubt.usual = usual_placing(design.units);
    std::map<Drilling, int> clear, between;
    const Place far = floor_shape(design.slab).outline[0];
    for (double x = 0.217; x < 7.0; x += 0.313) {
      for (double y = 0.151; y < 7.0; y += 0.279) {
        // So deep that over tube is struck.
        const HoleReading read = read_hole(tube, doubt, {{far.x_m + x, far.y_m + y}, bands->diameter_m, 0.5});
        if (read.distance_m > bands->doubt_m)
          ++clear[read.word];
        else if (read.distance_m > bands->do_not_m)
          ++between[read.word];
      }
    }
    CHECK(clear[Drilling::likely_clear] > 20);
    CHECK(clear.size() == 1);
    CHECK(between[Drilling::do_not_drill] == 0);
    CHECK(between[Drilling::in_doubt] > 2);
    for (const Anchor& anchor : design.anchor) CHECK(bands->diameter_m >= anchor.diameter_m);
  }
}

TEST_CASE("a wider hole keeps farther off") {
  const Placing placing = usual_placing(System::us);
  const ClearDistances thin = clear_distances(0.02, placing, 0.006), wide = clear_distances(0.02, placing, 0.05);
  CHECK(wide.do_not_m - thin.do_not_m == Approx(0.022).margin(0.002));
  CHECK(wide.doubt_m > thin.doubt_m);
  // Tube that lies where it is drawn: no doubt beyond its own width and the hole's.
  const ClearDistances known = clear_distances(0.02, {1e-6, 0.0}, 0.01);
  CHECK(known.do_not_m == Approx(0.015).margin(1e-4));
  CHECK(known.doubt_m == Approx(0.015).margin(1e-4));
  // As wide as it is not clear: half of either chance at these distances from one pass, all of it midway between two.
  const DrawnTube straight{{{line({-10.0, 0.0}, {10.0, 0.0})}}, 0.02, 0.05};
  TubeDoubt doubt;
  doubt.usual = placing;
  const auto over = [&](double distance_m) {
    return read_hole(straight, doubt, {{0.0, distance_m}, 0.006, 0.5}).over_share;
  };
  CHECK(over(thin.do_not_m) == Approx(0.5 * do_not_drill_share).margin(1e-4));
  CHECK(over(thin.doubt_m) == Approx(0.5 * likely_clear_share).margin(1e-4));
}

TEST_CASE("a poured slab whose loops are only counted has no points") {
  const auto file = test::layout("old-pour").file;
  CHECK_FALSE(control_points(file.design, laid(file.design)));
  CHECK_FALSE(drill_bands(file.design, laid(file.design)));
}
