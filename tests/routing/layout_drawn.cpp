// Loops drawn by hand: their tube, what they break and where, and the floor they leave laid round them.
#include <algorithm>

#include "drawn_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace floors;

namespace {

constexpr double pi = 3.14159265358979323846;

/// 24 x 20 ft, a manifold in the middle of the south wall.
LayoutTask floor_task() { return task_on(in_feet({{0, 0}, {24, 0}, {24, 20}, {0, 20}}), {12, 0}, {0, 1}); }

GivenLoop drawn(std::initializer_list<Point> corners_ft) { return {0, in_feet(corners_ft), true}; }

/// One loop on the port pair in the middle: up, along three runs and back down.
LayoutTask one_loop() {
  LayoutTask task = floor_task();
  const double half_ft = 1.0 / 12.0;
  task.drawn = {drawn({{12 - half_ft, 0},
                       {12 - half_ft, 2},
                       {3, 2},
                       {3, 10},
                       {20, 10},
                       {20, 9},
                       {4, 9},
                       {4, 3},
                       {12 + half_ft, 3},
                       {12 + half_ft, 0}})};
  task.rest_is_laid = false;
  return task;
}

TubeLayout taken(const LayoutTask& task) {
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  return *laid.value;
}

std::vector<BrokenPlace> of_kind(const LayoutTask& task, Broken what) {
  std::vector<BrokenPlace> some;
  for (const BrokenPlace& one : broken_places(task, taken(task))) {
    if (one.what == what) some.push_back(one);
  }
  return some;
}

/// Corners that a path rounds: where the lines before and after each bend meet.
std::vector<Point> corners_of(const Path& path) {
  std::vector<Point> corner{path.front().from};
  for (const Piece& piece : path) {
    if (piece.radius_m <= 0.0) continue;
    const double sign = piece.turn == Side::left ? 1.0 : -1.0, by = std::tan(0.5 * sweep_rad(piece));
    corner.push_back({piece.from.x_m - sign * by * (piece.from.y_m - piece.centre.y_m),
                      piece.from.y_m + sign * by * (piece.from.x_m - piece.centre.x_m)});
  }
  corner.push_back(path.back().to);
  return corner;
}

}  // namespace

TEST_CASE("a drawn loop's length is that of its lines and bends") {
  LayoutTask task = floor_task();
  const double half_ft = 1.0 / 12.0;
  task.drawn = {
      drawn({{12 - half_ft, 0}, {12 - half_ft, 15}, {20, 15}, {20, 4}, {12 + half_ft, 4}, {12 + half_ft, 0}})};
  task.rest_is_laid = false;
  const TubeLayout layout = taken(task);
  REQUIRE(layout.loop.size() == 1);
  const LaidLoop& loop = layout.loop.front();
  // Sharp: 15 + 8 1/12 + 11 + 7 11/12 + 4 ft; each of four right angles saves (2 - pi / 2) radii of half a spacing.
  const double sharp_m = (15 + 8 + half_ft + 11 + 8 - half_ft + 4) * foot_m;
  CHECK(loop.length_m == Approx(sharp_m - 4.0 * (2.0 - pi / 2.0) * 6.0 * inch_m).epsilon(1e-9));
  CHECK(loop.turned_deg == Approx(360.0));
  CHECK(loop.left_first);
  CHECK(loop.port == 1);
  CHECK(loop.apron_m > 0.0);
}

TEST_CASE("a sound drawn loop breaks nothing") {
  const LayoutTask task = one_loop();
  const TubeLayout layout = taken(task);
  CHECK(check_layout(task, layout).sound());
  CHECK(broken_places(task, layout).empty());
}

TEST_CASE("what a drawn loop breaks is found at its place") {
  LayoutTask task = one_loop();
  task.drawn[0].corner[4] = {23.7 * foot_m, 10.0 * foot_m};
  task.drawn[0].corner[5] = {23.7 * foot_m, 9.0 * foot_m};
  const auto near_wall = of_kind(task, Broken::clearance);
  REQUIRE(near_wall.size() == 1);
  CHECK(near_wall[0].place.x_m == Approx(23.7 * foot_m).margin(0.1));
  CHECK(near_wall[0].is_m == Approx(0.3 * foot_m).margin(0.01));

  task = one_loop();
  task.drawn[0].corner[5].y_m = task.drawn[0].corner[6].y_m = 9.3 * foot_m;
  const auto close = of_kind(task, Broken::separation);
  REQUIRE_FALSE(close.empty());
  CHECK(close[0].is_m == Approx(0.7 * foot_m).epsilon(0.01));
  CHECK(close[0].place.y_m == Approx(9.65 * foot_m).margin(0.15));

  // A jog of 4 in leaves each of its bends 2 in.
  task = one_loop();
  auto& corner = task.drawn[0].corner;
  corner.insert(corner.begin() + 4, {{10.0 * foot_m, 10.0 * foot_m}, {10.0 * foot_m, 10.0 * foot_m + 4.0 * inch_m}});
  corner[6].y_m = 10.0 * foot_m + 4.0 * inch_m;
  const auto bends = of_kind(task, Broken::bend);
  REQUIRE(bends.size() == 1);
  CHECK(bends[0].is_m == Approx(2.0 * inch_m));
  CHECK(bends[0].place.x_m == Approx(10.0 * foot_m).margin(0.1));

  task = one_loop();
  task.drawn[0].corner[6] = {2.0 * foot_m, 9.0 * foot_m};
  task.drawn[0].corner[7] = {2.0 * foot_m, 3.0 * foot_m};
  const auto crossing = of_kind(task, Broken::crossing);
  REQUIRE(crossing.size() == 2);
  for (const BrokenPlace& one : crossing) CHECK(one.place.x_m == Approx(3.0 * foot_m).margin(0.1));
  CHECK_FALSE(check_layout(task, taken(task)).sound());

  task = one_loop();
  task.longest_loop_m = 20.0;
  CHECK(of_kind(task, Broken::limit).size() == 1);
}

TEST_CASE("ends of a drawn loop lie at ports, or where nobody knows of ports") {
  LayoutTask task = one_loop();
  task.drawn[0].corner.front().x_m -= 0.02;
  CHECK(of_kind(task, Broken::end).empty());
  task.drawn[0].corner.front().y_m = 4.0 * inch_m;
  const auto off = of_kind(task, Broken::end);
  REQUIRE(off.size() == 1);
  CHECK(off[0].is_m == Approx(std::hypot(0.02, 4.0 * inch_m)).epsilon(0.05));
  CHECK(check_layout(task, taken(task)).wrong_ends_number == 1);
  task.drawn[0].ends_at_ports = false;
  CHECK(of_kind(task, Broken::end).empty());
}

TEST_CASE("two drawn loops at one pair of ports are found") {
  LayoutTask task = one_loop();
  task.drawn.push_back(task.drawn.front());
  CHECK_FALSE(of_kind(task, Broken::end).empty());
}

TEST_CASE("places are found just where the check finds something") {
  Drawer drawer(7);
  for (int k = 0; k < 4; ++k) {
    LayoutTask task = drawer.task();
    const auto laid = lay_tube(task);
    if (!laid) continue;
    CHECK(check_layout(task, *laid.value).sound() == broken_places(task, *laid.value).empty());
    task.bend_radius_m *= 1.5;
    task.wall_clearance_m += 0.05;
    CHECK(check_layout(task, *laid.value).sound() == broken_places(task, *laid.value).empty());
  }
}

TEST_CASE("the rest of the floor is laid round loops that stay") {
  const LayoutTask plain = task_on(in_feet({{0, 0}, {36, 0}, {36, 30}, {0, 30}}), {18, 0}, {0, 1});
  const TubeLayout whole = taken(plain);
  REQUIRE(whole.loop.size() >= 3);
  for (const std::size_t kept : {std::size_t{0}, whole.loop.size() - 1}) {
    CAPTURE(kept);
    LayoutTask task = plain;
    task.drawn = {{0, corners_of(whole.loop[kept].path), true}};
    const auto laid = lay_tube(task);
    REQUIRE(laid);
    const TubeLayout& layout = *laid.value;
    CHECK(layout.loop.size() >= whole.loop.size());
    const auto stays = std::find_if(layout.loop.begin(), layout.loop.end(), [](const LaidLoop& l) { return l.drawn; });
    REQUIRE(stays != layout.loop.end());
    CHECK(stays->length_m == Approx(whole.loop[kept].length_m).epsilon(1e-3));
    const LayoutCheck check = check_layout(task, layout);
    CHECK(check.crossings_number == 0);
    CHECK(check.wrong_ends_number == 0);
    CHECK(check.over_limit_number == 0);
    CHECK(check.separation_ratio >= 0.93);
    CHECK(check.far_floor_ratio < 0.02);
  }
}
