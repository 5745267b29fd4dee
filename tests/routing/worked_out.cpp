// Loops from area and spacing, and from a count.
#include <rapidcheck.h>

#include <cmath>
#include <stdexcept>

#include "routing/designs.hpp"
#include "slabwright/tube.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double foot = 0.3048;

/// The stretches follow each other from the supply end and make up the loop.
void check_along(const Loop& loop, double spacing_m) {
  double at_m = 0.0, patch_m = 0.0;
  for (const Stretch& stretch : loop.along) {
    CHECK(stretch.start_m == Approx(at_m).margin(1e-9));
    CHECK(stretch.length_m > 0.0);
    at_m += stretch.length_m;
    if (!stretch.leader) patch_m += stretch.length_m;
  }
  CHECK(at_m == Approx(loop.length_m).epsilon(1e-12));
  CHECK(loop.patch_m2 == Approx(patch_m * spacing_m).epsilon(1e-12));
}

}  // namespace

TEST_CASE("1,080 ft of tube with 280 ft to a loop are four loops") {
  const Checked<LoopPlan> checked = plan_loops(shop());
  CHECK(checked.said.empty());
  const LoopPlan& plan = checked.value.value();
  REQUIRE(plan.loop.size() == 4);
  CHECK(plan.limit_m == Approx(300.0 * foot));
  CHECK(plan.tube_m == Approx((1080.0 + 4 * 20.0) * foot));
  CHECK(plan.room_tube_m.at(0) == Approx(1080.0 * foot));
  for (std::size_t i = 0; i < 4; ++i) {
    const Loop& loop = plan.loop[i];
    CHECK(loop.name == "loop " + std::to_string(i + 1));
    CHECK(loop.manifold == 0);
    CHECK(loop.port == static_cast<int>(i) + 1);
    CHECK(loop.from == LengthFrom::area_and_spacing);
    CHECK(loop.length_m == Approx(290.0 * foot));
    CHECK(loop.patch_m2 == Approx(270.0 * foot * foot));
    REQUIRE(loop.along.size() == 3);
    CHECK(loop.along[0].leader);
    CHECK_FALSE(loop.along[1].leader);
    CHECK(loop.along[2].leader);
    CHECK(loop.along[0].length_m == Approx(10.0 * foot));
    check_along(loop, 0.3048);
  }
}

TEST_CASE("a floor that fills its loops exactly needs no further one") {
  Design design = shop();
  design.slab.size.reset();
  design.slab.area_m2 = 2 * 280.0 * foot * foot;
  CHECK(plan_loops(design).value->loop.size() == 2);
  design.slab.area_m2 = *design.slab.area_m2 + 0.01;
  CHECK(plan_loops(design).value->loop.size() == 3);
}

TEST_CASE("the file's own longest loop wins over the tube's") {
  Design design = shop();
  design.tube.longest_loop_m = 60.0;
  const LoopPlan plan = plan_loops(design).value.value();
  CHECK(plan.limit_m == 60.0);
  CHECK(plan.loop.size() == 7);
}

TEST_CASE("no loop is longer than allowed and all floor is covered") {
  CHECK(rc::check([] {
    Design design = shop();
    design.slab.size = Size{*rc::gen::inRange(30, 400) / 10.0, *rc::gen::inRange(30, 400) / 10.0};
    design.tube.spacing_m = *rc::gen::inRange(100, 600) / 1000.0;
    design.tube.leader_m = *rc::gen::inRange(0, 400) / 10.0;
    const double area_m2 = design.slab.size->width_m * design.slab.size->depth_m;
    const LoopPlan plan = plan_loops(design).value.value();
    double patch_m2 = 0.0;
    for (const Loop& loop : plan.loop) {
      RC_ASSERT(loop.length_m <= plan.limit_m + 1e-6);
      patch_m2 += loop.patch_m2;
    }
    RC_ASSERT(std::abs(patch_m2 / area_m2 - 1.0) < 1e-9);
    const double fewer = static_cast<double>(plan.loop.size()) - 1.0;
    const double most_m = plan.limit_m - 2.0 * design.tube.leader_m;
    RC_ASSERT(fewer * most_m < area_m2 / design.tube.spacing_m);
  }));
}

TEST_CASE("each heated room has its own loops, and the rooms without a size share the rest") {
  Design design = shop();
  design.room = {room("store", 10.0, false), room("shop", 0.0), room("washroom", 4.0)};
  design.room[1].area_m2.reset();
  const LoopPlan plan = plan_loops(design).value.value();
  const double slab_m2 = 10.9728 * 9.144;
  CHECK(plan.room_tube_m.at(0) == 0.0);
  CHECK(plan.room_tube_m.at(1) * 0.3048 == Approx(slab_m2 - 14.0));
  CHECK(plan.room_tube_m.at(2) * 0.3048 == Approx(4.0));
  CHECK(plan.loop.front().name == "shop 1");
  CHECK(plan.loop.back().name == "washroom 1");
  CHECK(plan.loop.back().along[1].room == 2);
  CHECK(plan.loop.back().along[0].room == 1);  // the manifold stands in the first heated room
}

TEST_CASE("loops are shared evenly among manifolds, neighbours together") {
  Design design = shop();
  design.manifold.resize(3);
  const LoopPlan plan = plan_loops(design).value.value();
  const std::vector<std::size_t> manifold{0, 0, 1, 2};
  const std::vector<int> port{1, 2, 1, 1};
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(plan.loop[i].manifold == manifold[i]);
    CHECK(plan.loop[i].port == port[i]);
  }
}

TEST_CASE("a manifold takes no more loops than it has ports") {
  Design design = shop();
  design.manifold.resize(2);
  design.manifold[0].ports_number = 1.0;
  const LoopPlan plan = plan_loops(design).value.value();
  CHECK(plan.loop[0].manifold == 0);
  for (std::size_t i = 1; i < 4; ++i) CHECK(plan.loop[i].manifold == 1);
}

TEST_CASE("a count shares the floor's tube evenly, through rooms") {
  Design design = shop();
  design.room = {room("shop", 60.0), room("store", 20.0, false), room("office", 20.0)};
  design.manifold.resize(2);
  design.manifold[0].loops_number = 3.0;
  design.manifold[1].loops_number = 1.0;
  const Checked<LoopPlan> checked = plan_loops(design);
  const LoopPlan& plan = checked.value.value();
  REQUIRE(plan.loop.size() == 4);
  for (const Loop& loop : plan.loop) {
    CHECK(loop.from == LengthFrom::count);
    CHECK(loop.length_m == Approx(80.0 / 0.3048 / 4.0 + 2 * 3.048));
    check_along(loop, 0.3048);
  }
  CHECK(plan.loop[2].along.size() == 3);
  CHECK(plan.loop[3].along[1].room == 2);
  CHECK(plan.loop[3].manifold == 1);
  CHECK(plan.room_tube_m.at(0) == Approx(60.0 / 0.3048));
  CHECK(plan.room_tube_m.at(1) == 0.0);
  CHECK(plan.room_tube_m.at(2) == Approx(20.0 / 0.3048));

  design.manifold[0].loops_number = 2.0;
  const LoopPlan three = plan_loops(design).value.value();
  REQUIRE(three.loop[2].along.size() == 4);  // leader, the last of the shop, the office, leader
  CHECK(three.loop[2].along[1].room == 0);
  CHECK(three.loop[2].along[2].room == 2);
  check_along(three.loop[2], 0.3048);
}

TEST_CASE("loops counted that would be too long are warned of once") {
  Design design = shop();
  design.manifold[0].loops_number = 2.0;
  const Checked<LoopPlan> checked = plan_loops(design);
  REQUIRE(checked);
  REQUIRE(checked.said.size() == 1);
  CHECK(checked.said[0].code == "loop.too-long");
  CHECK(checked.said[0].severity == Severity::warning);
  CHECK(checked.said[0].about == "manifold[1].loops");
  CHECK(say(checked.said[0], System::us) ==
        "loop 1 is 560.0 ft long, leaders included; the limit for this tube is 300.0 ft");
}

TEST_CASE("no floor, no loops, and the reason") {
  Design design = shop();
  design.slab.size.reset();
  CHECK_FALSE(plan_loops(design));
  CHECK(find(plan_loops(design).said, "loops.no-floor"));
  design = shop();
  design.room[0].heated_floor = false;
  const Checked<LoopPlan> unheated = plan_loops(design);
  REQUIRE(find(unheated.said, "loops.no-floor"));
  CHECK(unheated.said[0].about == "room[1].heated_floor");
}

TEST_CASE("leaders that leave nothing for the floor are refused") {
  Design design = shop();
  design.tube.leader_m = 45.72;  // 2 x 150 ft
  const Checked<LoopPlan> checked = plan_loops(design);
  CHECK_FALSE(checked);
  REQUIRE(find(checked.said, "tube.leader-too-long"));
  CHECK(find(checked.said, "tube.leader-too-long")->severity == Severity::problem);
}

TEST_CASE("a design that nobody has settled is a bug") {
  Design design = shop();
  design.room.clear();
  CHECK_THROWS_AS(plan_loops(design), std::logic_error);
  design = shop();
  design.manifold.clear();
  CHECK_THROWS_AS(plan_loops(design), std::logic_error);
  design = shop();
  design.tube.size.name = "7/16 in";
  CHECK_THROWS_AS(plan_loops(design), std::logic_error);
}
