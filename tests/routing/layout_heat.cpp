// Loops balanced by the heat that the floor above them loses.
#include "drawn_floors.hpp"
#include "routing/heat.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

LossArea area(double x0, double y0, double x1, double y1, double ratio) {
  return {in_feet({{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}), ratio};
}

LayoutTask task_40x28() { return task_on(in_feet({{0, 0}, {40, 0}, {40, 28}, {0, 28}}), {20, 0}, {0, 1}); }

}  // namespace

TEST_CASE("the highest ratio counts where areas overlap, one outside them") {
  LayoutTask task = task_40x28();
  task.loss = {area(0, 0, 10, 28, 1.5), area(0, 20, 40, 28, 2.0)};
  CHECK(loss_ratio_at(task, {20 * foot_m, 10 * foot_m}) == 1.0);
  CHECK(loss_ratio_at(task, {5 * foot_m, 10 * foot_m}) == 1.5);
  CHECK(loss_ratio_at(task, {5 * foot_m, 25 * foot_m}) == 2.0);
  // 10 ft at 1.5 and 30 ft at 1.
  CHECK(heat_m(task, {line({0, foot_m}, {40 * foot_m, foot_m})}) == Approx(45 * foot_m).epsilon(0.01));
}

TEST_CASE("loops share the heat, not the length; none is over the limit") {
  LayoutTask edges = task_40x28(), front = edges, side = edges, door = edges;
  edges.loss = {area(0, 0, 4, 28, 2.0), area(0, 24, 40, 28, 2.0)};
  front.loss = {area(0, 0, 40, 6, 2.0)};
  side.loss = {area(0, 0, 12, 28, 1.5)};
  door.loss = {area(28, 0, 40, 10, 3.0)};
  for (const LayoutTask& task : {edges, front, side, door}) {
    const auto laid = lay_tube(task);
    REQUIRE(laid);
    const LayoutCheck check = check_layout(task, *laid.value);
    CHECK(check.sound());
    CHECK(check.over_limit_number == 0);
    CHECK(check.heat_spread_ratio <= 0.05);
    CHECK(check.spread_ratio > 3.0 * check.heat_spread_ratio);
    // The two ways to weigh tube agree: along the final path, and in the check's segments.
    double least = HUGE_VAL, most = 0.0, sum = 0.0;
    for (const LaidLoop& loop : laid.value->loop) {
      const double heat = heat_m(task, loop.path);
      least = std::min(least, heat);
      most = std::max(most, heat);
      sum += heat / static_cast<double>(laid.value->loop.size());
    }
    CHECK((most - least) / sum == Approx(check.heat_spread_ratio).margin(0.01));
  }
}

TEST_CASE("a loop that lies where twice the heat is lost is about half as long as one that does not") {
  LayoutTask task = task_40x28();
  task.loss = {area(0, 0, 20, 28, 2.0)};
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  double shortest = HUGE_VAL, longest = 0.0;
  for (const LaidLoop& loop : laid.value->loop) {
    const double ratio = heat_m(task, loop.path) / loop.length_m;
    if (ratio > 1.95) shortest = std::min(shortest, loop.length_m);
    if (ratio < 1.05) longest = std::max(longest, loop.length_m);
  }
  CHECK(longest / shortest == Approx(2.0).epsilon(0.06));
}

TEST_CASE("floor alike everywhere is balanced by length, whatever its ratio") {
  LayoutTask task = task_40x28();
  const auto plain = lay_tube(task);
  task.loss = {area(-1, -1, 41, 29, 1.7)};
  const auto laid = lay_tube(task);
  REQUIRE((plain && laid));
  const LayoutCheck check = check_layout(task, *laid.value);
  // One is measured on arcs, the other on their chords, 0.1 mm off.
  CHECK(check.heat_spread_ratio == Approx(check.spread_ratio).margin(1e-4));
  CHECK(check.spread_ratio <= 0.05);
  CHECK(laid.value->loop.size() == plain.value->loop.size());
  CHECK(check_layout(task_40x28(), *plain.value).heat_spread_ratio ==
        check_layout(task_40x28(), *plain.value).spread_ratio);
}
