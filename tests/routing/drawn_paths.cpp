// Loops that a design lists with a path: lengths, rooms, what is said of them, and the rest of the floor.
#include <algorithm>

#include "slabwright/routing.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double foot_m = 0.3048;
/// From the left one of four pairs of ports.
const std::string left_loop =
    "17 ft 5 in, 0 ft; 17 ft 5 in, 2 ft; 2 ft, 2 ft; 2 ft, 20 ft; 12 ft, 20 ft; 12 ft, 19 ft; 3 ft, 19 ft; 3 ft, 3 ft; "
    "17 ft 7 in, 3 ft; 17 ft 7 in, 0 ft";

Keys one_loop() {
  return {{"slab.size", "36 x 30 ft"}, {"manifold[1].place", "18 ft, 0 ft"}, {"loop[1].path", left_loop}};
}

Checked<LoopPlan> planned(Keys keys, const Keys& more = {}) {
  keys.insert(keys.end(), more.begin(), more.end());
  LaidBefore laid;
  return plan_loops(from_keys(keys).design, &laid);
}

double sum_of(const Loop& loop) {
  double sum_m = 0.0;
  for (const Stretch& s : loop.along) sum_m += s.length_m;
  return sum_m;
}

}  // namespace

TEST_CASE("a path gives its loop's length") {
  const auto plan = planned(one_loop());
  REQUIRE((plan && plan.value->drawing));
  REQUIRE(plan.value->loop.size() == 1);
  const Loop& loop = plan.value->loop.front();
  CHECK(loop.from == LengthFrom::path);
  CHECK(loop.length_m == Approx(length_m(*loop.path)));
  CHECK(sum_of(loop) == Approx(loop.length_m).epsilon(2e-3));
  // Sharp corners: 2 + 15 5/12 + 18 + 10 + 1 + 9 + 16 + 14 7/12 + 3 ft, less eight bends.
  CHECK(loop.length_m == Approx((89.0 - 8.0 * 0.4292 * 0.5) * foot_m).epsilon(1e-3));
  // Without a drawing asked for it is the same: a path is no guess.
  const auto again = plan_loops(from_keys(one_loop()).design);
  CHECK(again.value->loop.front().length_m == loop.length_m);
}

TEST_CASE("leaders that are to be added make a drawn loop longer") {
  const auto plan = planned(one_loop(), {{"loop[1].leaders", "15 ft each way"}});
  REQUIRE(plan);
  const Loop& loop = plan.value->loop.front();
  CHECK(loop.length_m == Approx(length_m(*loop.path) + 30.0 * foot_m));
  CHECK(loop.along.front().leader);
  CHECK(loop.along.front().length_m == Approx(15.0 * foot_m));
  CHECK(sum_of(loop) == Approx(loop.length_m).epsilon(2e-3));
}

TEST_CASE("what a path breaks is said with its place from two walls") {
  Keys keys = one_loop();
  keys.back().second.replace(keys.back().second.find("2 ft, 2 ft; 2 ft, 20 ft"), 23, "4 in, 2 ft; 4 in, 20 ft");
  const auto plan = planned(keys);
  const auto said = std::find_if(plan.said.begin(), plan.said.end(),
                                 [](const Diagnostic& d) { return d.code == "layout.drawn-near"; });
  REQUIRE(said != plan.said.end());
  CHECK(said->severity == Severity::failure);
  CHECK(said->about == "loop[1].path");
  const std::string sentence = say(*said, System::us);
  CHECK(sentence.find("from the left wall") != std::string::npos);
  CHECK(sentence.find("from the bottom wall") != std::string::npos);
}

TEST_CASE("loops known by their lengths stay beside drawn ones and are not drawn") {
  const auto plan = planned(one_loop(), {{"loop[2].length", "200 ft"}});
  REQUIRE(plan);
  CHECK_FALSE(plan.value->drawing);
  REQUIRE(plan.value->loop.size() == 2);
  CHECK(plan.value->loop[0].path);
  CHECK_FALSE(plan.value->loop[1].path);
  CHECK(plan.value->loop[1].length_m == Approx(200.0 * foot_m));
}

TEST_CASE("stretches of a drawn loop tell its rooms") {
  const auto plan = planned(one_loop(), {{"room[1].name", "west"},
                                         {"room[1].outline", "0 ft, 0 ft; 10 ft, 0 ft; 10 ft, 30 ft; 0 ft, 30 ft"},
                                         {"room[2].name", "east"},
                                         {"room[2].outline", "10 ft, 0 ft; 36 ft, 0 ft; 36 ft, 30 ft; 10 ft, 30 ft"}});
  REQUIRE(plan);
  double west_m = 0.0;
  for (const Stretch& s : plan.value->loop.front().along) west_m += s.room == 0 ? s.length_m : 0.0;
  // 8 + 18 + 8 + 7 + 16 + 7 ft lie west of x = 10 ft, less four bends.
  CHECK(west_m == Approx(64.0 * foot_m).epsilon(0.03));
}

TEST_CASE("the rest of the floor is laid where the file says so") {
  const auto plan = planned(one_loop(), {{"tube.lay_rest", "true"}});
  REQUIRE((plan && plan.value->drawing));
  CHECK(plan.value->loop.size() >= 4);
  const auto stays = std::count_if(plan.value->loop.begin(), plan.value->loop.end(),
                                   [](const Loop& l) { return l.from == LengthFrom::path; });
  CHECK(stays == 1);
  CHECK(plan.value->drawing->check.crossings_number == 0);
  CHECK(plan.value->drawing->check.wrong_ends_number == 0);
}

TEST_CASE("no loop crosses a border, and tube runs the way it is told to") {
  const auto crosses = [](const Loop& loop, double x_m) {
    for (const Piece& piece : *loop.path) {
      if ((piece.from.x_m - x_m) * (piece.to.x_m - x_m) < 0.0 && std::min(piece.from.y_m, piece.to.y_m) > 10.0 * foot_m)
        return true;
    }
    return false;
  };
  const auto plan =
      planned({{"slab.size", "36 x 30 ft"}, {"border[1].from", "14 ft, 10 ft"}, {"border[1].to", "14 ft, 30 ft"}});
  REQUIRE((plan && plan.value->drawing));
  CHECK(plan.value->drawing->check.sound());
  for (const Loop& loop : plan.value->loop) CHECK_FALSE(crosses(loop, 14.0 * foot_m));

  const auto along_x = [](const std::string& runs) {
    const auto made = planned({{"slab.size", "36 x 30 ft"}, {"tube.runs", runs}});
    double x_m = 0.0, all_m = 0.0;
    for (const Loop& loop : made.value->loop) {
      for (const Piece& piece : *loop.path) {
        x_m += std::abs(piece.to.x_m - piece.from.x_m);
        all_m += std::abs(piece.to.x_m - piece.from.x_m) + std::abs(piece.to.y_m - piece.from.y_m);
      }
    }
    return x_m / all_m;
  };
  CHECK(along_x("lengthwise") > 0.65);
  CHECK(along_x("crosswise") < 0.35);
}
