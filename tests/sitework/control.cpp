// Points by which tube is found again, and bands along it.
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

TEST_CASE("the bands along tube change words where a single hole does") {
  const auto file = test::layout("frame-shop").file;
  const LoopPlan plan = laid(file.design);
  const auto bands = drill_bands(file.design, plan);
  REQUIRE(bands);
  CHECK(bands->doubt_m > bands->do_not_m);
  const double outside_m = find_tube(file.design.tube.size.name)->outside_diameter_m;
  const DrawnTube straight{
      {{line({-10.0, 0.0}, {10.0, 0.0})}}, outside_m, tube_axis_depth_m(file.design) - 0.5 * outside_m};
  TubeDoubt doubt;
  doubt.usual = usual_placing(file.design.units);
  const auto word = [&](double distance_m) {
    return read_hole(straight, doubt, {{0.0, distance_m}, bands->diameter_m, bands->depth_m}).word;
  };
  constexpr double step_m = 0.0005;
  CHECK(word(bands->do_not_m - step_m) == Drilling::do_not_drill);
  CHECK(word(bands->do_not_m + step_m) == Drilling::in_doubt);
  CHECK(word(bands->doubt_m - step_m) == Drilling::in_doubt);
  CHECK(word(bands->doubt_m + step_m) == Drilling::likely_clear);
}

TEST_CASE("a poured slab whose loops are only counted has no points") {
  const auto file = test::layout("old-pour").file;
  CHECK_FALSE(control_points(file.design, laid(file.design)));
  CHECK_FALSE(drill_bands(file.design, laid(file.design)));
}
