// What the user may ask of a layout: how many loops, exact spacings, a better place for a manifold.
#include <algorithm>

#include "drawn_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace floors;

namespace {

Polygon rect(double w, double d) { return in_feet({{0, 0}, {w, 0}, {w, d}, {0, d}}); }

LayoutTask two_manifolds() {
  LayoutTask task = task_on(rect(80, 28), {20, 0}, {0, 1});
  task.manifold.push_back({{60.0 * foot_m, 0.0}, {0, 1}, 30, 2.0 * inch_m});
  return task;
}

std::vector<int> loops_by_manifold(const LayoutTask& task, const TubeLayout& layout) {
  std::vector<int> count(task.manifold.size(), 0);
  for (const LaidLoop& loop : layout.loop) ++count[loop.manifold];
  return count;
}

bool says(const std::vector<Diagnostic>& said, const std::string& code) {
  return std::any_of(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
}

}  // namespace

TEST_CASE("a manifold lays as many loops as are asked of it") {
  LayoutTask task = task_on(rect(40, 28), {20, 0}, {0, 1});
  for (const int wanted : {5, 6, 7}) {
    CAPTURE(wanted);
    task.manifold.front().loops_wanted_number = wanted;
    const auto laid = lay_tube(task);
    REQUIRE(laid);
    CHECK(static_cast<int>(laid.value->loop.size()) == wanted);
    CHECK(check_layout(task, *laid.value).sound());
  }
  // Too few for the limit: laid so, and said.
  task.manifold.front().loops_wanted_number = 3;
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  CHECK(laid.value->loop.size() == 3);
  CHECK(says(laid.said, "layout.too-long"));
}

TEST_CASE("loops asked of one manifold of two: the other takes what is left") {
  LayoutTask task = two_manifolds();
  task.manifold[0].loops_wanted_number = 3;
  const auto one = lay_tube(task);
  REQUIRE(one);
  CHECK(loops_by_manifold(task, *one.value) == std::vector<int>{3, 5});
  CHECK(check_layout(task, *one.value).spread_ratio <= 0.06);
  task.manifold[1].loops_wanted_number = 6;
  const auto both = lay_tube(task);
  REQUIRE(both);
  CHECK(loops_by_manifold(task, *both.value) == std::vector<int>{3, 6});
  CHECK(check_layout(task, *both.value).sound());
}

TEST_CASE("exact spacings: tube lies on lines a spacing apart, and what is left over is said") {
  LayoutTask task = task_on(rect(39.3, 28), {20, 0}, {0, 1});
  task.exact_spacing = true;
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  CHECK(says(laid.said, "layout.floor-left-over"));
  const LayoutCheck check = check_layout(task, *laid.value);
  CHECK(check.sound());
  // Most of the tube lies on the lines from the wall on, whatever was slid into the strip.
  double on_m = 0.0, all_m = 0.0;
  for (const LaidLoop& loop : laid.value->loop) {
    for (const Piece& piece : loop.path) {
      if (piece.radius_m > 0.0 || length_m(piece) < task.spacing_m) continue;
      const bool upright = piece.from.x_m == piece.to.x_m;
      if (!upright && std::abs(piece.from.y_m - piece.to.y_m) > 1e-6) continue;
      const double at = (upright ? piece.from.x_m : piece.from.y_m) / task.spacing_m - 0.5;
      all_m += length_m(piece);
      on_m += std::abs(at - std::floor(at + 0.5)) < 1e-4 ? length_m(piece) : 0.0;
    }
  }
  CHECK(on_m > 0.9 * all_m);
  task.exact_spacing = false;
  CHECK_FALSE(says(lay_tube(task).said, "layout.floor-left-over"));
  task = task_on(rect(40, 28), {20, 0}, {0, 1});
  task.exact_spacing = true;
  CHECK_FALSE(says(lay_tube(task).said, "layout.floor-left-over"));
}

TEST_CASE("a manifold at the end of a long floor would serve better nearer its middle") {
  const LayoutTask task = task_on(rect(60, 30), {4, 0}, {0, 1});
  const auto place = better_place(task), again = better_place(task);
  REQUIRE(place);
  CHECK(place->place == again->place);
  CHECK(std::abs(place->place.x_m / foot_m - 30.0) < 12.0);
  CHECK(distance_to_boundary_m(place->place, task.outline) < 1e-9);
  CHECK(place->loops_number == task.manifold.front().loops_number);
  LayoutTask moved = task;
  moved.manifold.front() = *place;
  const auto laid = lay_tube(moved);
  REQUIRE(laid);
  CHECK(check_layout(moved, *laid.value).sound());
  // Nothing is clearly better than that.
  CHECK_FALSE(better_place(moved));
}

TEST_CASE("a manifold without room for its leaders gets a place where there is some") {
  LayoutTask task = task_on(in_feet({{0, 0}, {40, 0}, {40, 28}, {4, 28}, {4, 40}, {0, 40}}), {2, 40}, {0, -1});
  CHECK_FALSE(lay_tube(task));
  const auto place = better_place(task);
  REQUIRE(place);
  task.manifold.front() = *place;
  CHECK(lay_tube(task));
}
