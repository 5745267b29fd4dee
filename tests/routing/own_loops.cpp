// Rooms whose loops heat nothing else, and loops with a long way out.
#include <algorithm>

#include "drawn_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace floors;

namespace {

/// A partition 4 in thick from the north wall down, open at its lower end.
NoTubeArea wall(double x_ft, double from_ft, double to_ft) {
  return {in_feet({{x_ft - 0.17, from_ft}, {x_ft + 0.17, from_ft}, {x_ft + 0.17, to_ft}, {x_ft - 0.17, to_ft}}),
          4.0 * inch_m};
}

/// 40 x 24 ft; a room of 14 ft on the right behind a partition with an opening of 6 ft.
LayoutTask with_room() {
  LayoutTask task = task_on(in_feet({{0, 0}, {40, 0}, {40, 24}, {0, 24}}), {12, 0}, {0, 1});
  task.no_tube = {wall(26, 8, 24)};
  return task;
}

/// Tube of a loop in the room and elsewhere, its corridor left out where `from_ft` is above zero.
double in_room_m(const LaidLoop& loop) {
  double sum = 0.0;
  for (double at_m = 0.05; at_m < loop.length_m; at_m += 0.1)
    sum += point_at(loop.path, at_m).x_m > 26.0 * foot_m ? 0.1 : 0.0;
  return sum;
}

}  // namespace

TEST_CASE("a room that owns its loops shares none with other floor") {
  LayoutTask task = with_room();
  task.own_floor = {in_feet({{26, 0}, {40, 0}, {40, 24}, {26, 24}})};
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  CHECK(check_layout(task, *laid.value).crossings_number == 0);
  int own = 0;
  for (const LaidLoop& loop : laid.value->loop) {
    const double room_m = in_room_m(loop);
    CAPTURE(loop.port, room_m, loop.length_m);
    // All of its tube but a corridor, or none.
    CHECK((room_m < 1.0 || room_m > 0.5 * loop.length_m));
    own += room_m > 1.0 ? 1 : 0;
  }
  CHECK(own >= 1);
  CHECK(own < static_cast<int>(laid.value->loop.size()));
}

TEST_CASE("floor of its own that is all the floor asks for nothing") {
  LayoutTask task = with_room();
  const auto plain = lay_tube(task);
  task.own_floor = {in_feet({{0, 0}, {40, 0}, {40, 24}, {0, 24}})};
  const auto laid = lay_tube(task);
  REQUIRE((plain && laid));
  REQUIRE(laid.value->loop.size() == plain.value->loop.size());
  for (std::size_t k = 0; k < laid.value->loop.size(); ++k)
    CHECK(laid.value->loop[k].length_m == plain.value->loop[k].length_m);
}

TEST_CASE("a corridor is a way out, a compact patch before the manifold hardly has one") {
  const double s = foot_m;
  // 60 ft out, 60 ft back, a foot apart; 60 ft of them folded up at the end.
  std::vector<Point> far{{0, 0}, {0, 60 * s}};
  for (int k = 0; k < 3; ++k) {
    const double y = (60 + 2 * k) * s;
    far.insert(far.end(), {{-9 * s, y}, {-9 * s, y + s}, {0, y + s}, {0, y + 2 * s}});
  }
  far.insert(far.end(), {{s, 66 * s}, {s, 0}});
  const Path corridor = rounded(far, 0.5 * s);
  CHECK(way_out_m(corridor, s) > length_m(corridor) / 3.0);
  std::vector<Point> near{{0, 0}};
  for (int k = 0; k < 8; ++k)
    near.insert(near.end(),
                {{0, (2 * k + 1) * s}, {14 * s, (2 * k + 1) * s}, {14 * s, (2 * k + 2) * s}, {0, (2 * k + 2) * s}});
  near.insert(near.end(), {{-s, 16 * s}, {-s, 0}});
  const Path patch = rounded(near, 0.5 * s);
  CHECK(way_out_m(patch, s) < 0.2 * length_m(patch));
}
