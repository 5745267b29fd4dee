// The check of layouts finds what is wrong with one.
#include "drawn_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace floors;

namespace {

const LayoutTask task = task_on(in_feet({{0, 0}, {24, 0}, {24, 20}, {0, 20}}), {12, 0}, {0, 1});

TubeLayout sound() {
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  REQUIRE(check_layout(task, *laid.value).sound());
  REQUIRE(laid.value->loop.size() == 2);
  return *laid.value;
}

/// A path moved aside, its ends left where they are.
void shift(Path& path, double x_m, double y_m) {
  const Point from = path.front().from, to = path.back().to;
  for (Piece& piece : path) {
    for (Point* p : {&piece.from, &piece.to, &piece.centre}) *p = {p->x_m + x_m, p->y_m + y_m};
  }
  path.insert(path.begin(), line(from, path.front().from));
  path.push_back(line(path.back().to, to));
}

}  // namespace

TEST_CASE("a sound layout has nothing wrong with it, and its figures are those of its paths") {
  const TubeLayout layout = sound();
  const LayoutCheck check = check_layout(task, layout);
  double sum_m = 0.0;
  for (const LaidLoop& loop : layout.loop) sum_m += length_m(loop.path);
  CHECK(check.tube_m == Approx(sum_m).epsilon(1e-12));
  CHECK(check.clearance_m == Approx(task.wall_clearance_m).epsilon(0.01));
  // 480 ft2 at 12 in, less what corners and the apron save.
  CHECK(sum_m / foot_m == Approx(480.0).epsilon(0.05));
}

TEST_CASE("crossings are found") {
  TubeLayout layout = sound();
  shift(layout.loop[0].path, 6.0 * foot_m, 0.3 * foot_m);
  CHECK(check_layout(task, layout).crossings_number > 0);
}

TEST_CASE("tube too near to tube and to walls is found") {
  TubeLayout layout = sound();
  shift(layout.loop[0].path, 0.2 * foot_m, 0.0);
  const LayoutCheck check = check_layout(task, layout);
  CHECK(check.separation_ratio < 0.93);
  CHECK_FALSE(check.sound());
  layout = sound();
  shift(layout.loop[0].path, 0.0, 0.2 * foot_m);
  CHECK(check_layout(task, layout).too_near_number > 0);
}

TEST_CASE("ends at the wrong ports are found") {
  TubeLayout layout = sound();
  std::swap(layout.loop[0].path, layout.loop[1].path);
  std::swap(layout.loop[0].length_m, layout.loop[1].length_m);
  CHECK(check_layout(task, layout).wrong_ends_number > 0);
  layout = sound();
  layout.loop[0].left_first = !layout.loop[0].left_first;
  CHECK(check_layout(task, layout).wrong_ends_number == 2);
}

TEST_CASE("tight bends, kinks, gaps, wrong lengths and long loops are found") {
  LayoutTask stiff = task;
  stiff.bend_radius_m = 7.0 * inch_m;
  const TubeLayout layout = sound();
  CHECK(check_layout(stiff, layout).tight_bends_number > 0);
  LayoutTask shorter = task;
  shorter.longest_loop_m = layout.loop[0].length_m - 0.01;
  CHECK(check_layout(shorter, layout).over_limit_number >= 1);
  TubeLayout broken = layout;
  broken.loop[0].path.erase(broken.loop[0].path.begin() + 4);
  CHECK(check_layout(task, broken).broken_number > 0);
  broken = layout;
  broken.loop[1].length_m += 0.01;
  CHECK(check_layout(task, broken).broken_number == 1);
}

TEST_CASE("floor without tube is found") {
  TubeLayout layout = sound();
  layout.loop.pop_back();
  const LayoutCheck check = check_layout(task, layout);
  CHECK(check.far_floor_ratio > 0.3);
  CHECK(check.farthest_ratio > 4.0);
}

TEST_CASE("the densest square of an apron is found") {
  // 30 straight tubes, 0.1 m apart, under an apron 3 m wide: 10 m of tube on a square metre.
  TubeLayout layout;
  for (int k = 0; k < 30; ++k) {
    LaidLoop loop;
    const double x_m = 0.05 + 0.1 * k;
    loop.path = {line({x_m, -1.0}, {x_m, 5.0})};
    layout.loop.push_back(loop);
  }
  layout.apron = {{{0.0, 0.0}, {3.0, 0.0}, {3.0, 2.0}, {0.0, 2.0}}};
  LayoutTask dense = task;
  dense.spacing_m = 0.4;
  CHECK(check_layout(dense, layout).apron_m_per_m2 == Approx(10.0).epsilon(0.02));
}
