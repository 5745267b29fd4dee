// Loops whose lengths stand in the file, and what is said of them.
#include "routing/designs.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Design with_loops(std::vector<LoopEntry> loops) {
  Design design = shop();
  design.loop = std::move(loops);
  return design;
}

}  // namespace

TEST_CASE("given lengths stand, leaders within them") {
  Design design = with_loops({entry(85.0), entry(88.0), entry(90.0), entry(91.0)});
  design.loop[1].name = "along the north wall";
  const Checked<LoopPlan> checked = plan_loops(design);
  CHECK(checked.said.empty());
  const LoopPlan& plan = checked.value.value();
  REQUIRE(plan.loop.size() == 4);
  CHECK(plan.loop[0].name == "loop 1");
  CHECK(plan.loop[1].name == "along the north wall");
  CHECK(plan.loop[0].from == LengthFrom::file);
  CHECK(plan.loop[0].length_m == Approx(85.0));
  CHECK(plan.loop[0].patch_m2 == Approx((85.0 - 2 * 3.048) * 0.3048));
  CHECK(plan.loop[3].port == 4);
  CHECK(plan.tube_m == Approx(354.0));
  CHECK(plan.room_tube_m.at(0) == Approx(354.0 - 8 * 3.048));
}

TEST_CASE("a loop says how its leaders count") {
  Design design = with_loops({entry(80.0), entry(80.0), entry(80.0)});
  design.loop[1].leaders = Leaders{true, 0.0};
  design.loop[2].leaders = Leaders{false, 5.0};
  const LoopPlan plan = plan_loops(design).value.value();
  CHECK(plan.loop[0].length_m == Approx(80.0));
  CHECK(plan.loop[1].length_m == Approx(80.0));
  CHECK(plan.loop[1].along.front().length_m == Approx(3.048));
  CHECK(plan.loop[2].length_m == Approx(90.0));
  CHECK(plan.loop[2].along.front().length_m == Approx(5.0));
  CHECK(plan.loop[2].patch_m2 == Approx(80.0 * 0.3048));
}

TEST_CASE("loops are told to their rooms and manifolds by name") {
  Design design = with_loops({entry(70.0, "office", "east"), entry(75.0, "shop", "west"), entry(72.0, {}, "east")});
  design.room = {room("shop", 45.0), room("office", 20.0)};
  design.manifold.resize(2);
  design.manifold[0].name = "west";
  design.manifold[1].name = "east";
  const LoopPlan plan = plan_loops(design).value.value();
  CHECK(plan.loop[0].manifold == 1);
  CHECK(plan.loop[0].port == 1);
  CHECK(plan.loop[0].along[1].room == 1);
  CHECK(plan.loop[1].manifold == 0);
  CHECK(plan.loop[1].port == 1);
  CHECK(plan.loop[2].manifold == 1);
  CHECK(plan.loop[2].port == 2);
  CHECK(plan.loop[2].along[1].room == 0);
}

TEST_CASE("lengths alone are enough, without any floor") {
  Design design = with_loops({entry(57.0), entry(60.0)});
  design.slab.size.reset();
  const Checked<LoopPlan> checked = plan_loops(design);
  REQUIRE(checked);
  CHECK(checked.said.empty());
  CHECK(checked.value->loop.size() == 2);
}

TEST_CASE("names that the design does not have are problems") {
  const Checked<LoopPlan> checked = plan_loops(with_loops({entry(70.0, "attic"), entry(70.0, {}, "south")}));
  CHECK_FALSE(checked);
  REQUIRE(checked.said.size() == 2);
  CHECK(checked.said[0].code == "loop.unknown-room");
  CHECK(checked.said[0].about == "loop[1].room");
  CHECK(say(checked.said[0], System::us) == "the design has no room \"attic\"");
  CHECK(checked.said[1].code == "loop.unknown-manifold");
  CHECK(checked.said[1].about == "loop[2].manifold");
}

TEST_CASE("a loop in a room that is said not to be heated is a contradiction") {
  Design design = with_loops({entry(70.0, "store")});
  design.room = {room("shop", 60.0), room("store", 20.0, false)};
  const Checked<LoopPlan> checked = plan_loops(design);
  CHECK_FALSE(checked);
  CHECK(find(checked.said, "loop.in-unheated-room"));
}

TEST_CASE("a loop no longer than its leaders heats no floor") {
  const Checked<LoopPlan> checked = plan_loops(with_loops({entry(6.0), entry(88.0), entry(88.0), entry(88.0)}));
  REQUIRE(find(checked.said, "loop.shorter-than-leaders"));
  CHECK(find(checked.said, "loop.shorter-than-leaders")->about == "loop[1].length");
  const Loop& loop = checked.value->loop[0];
  CHECK(loop.patch_m2 == 0.0);
  CHECK(loop.length_m == Approx(6.0));
  REQUIRE(loop.along.size() == 2);
  CHECK(loop.along[0].leader);
  CHECK(loop.along[1].leader);
}

TEST_CASE("leaders that are added can make a loop too long") {
  Design design = with_loops({entry(88.0), entry(88.0), entry(88.0), entry(88.0)});
  design.loop[2].leaders = Leaders{false, 3.0};
  const Checked<LoopPlan> checked = plan_loops(design);
  const auto said = find(checked.said, "loop.too-long");
  REQUIRE(said);
  CHECK(said->severity == Severity::failure);
  CHECK(said->about == "loop[3].length");
  CHECK(checked.said.size() == 1);
}

TEST_CASE("tube that covers only part of the floor, or more than it, is said with the spacing that would fit") {
  const Checked<LoopPlan> less = plan_loops(with_loops({entry(88.0), entry(88.0), entry(88.0)}));
  REQUIRE(less.said.size() == 1);
  CHECK(less.said[0].code == "loops.cover-part");
  CHECK(less.said[0].severity == Severity::warning);
  CHECK(say(less.said[0], System::us) ==
        "the loops listed cover only 75 % of the floor of shop at this spacing: one is missing, or the tubes lie 1.3 "
        "ft apart");
  const Checked<LoopPlan> more = plan_loops(with_loops(std::vector<LoopEntry>(5, entry(88.0))));
  REQUIRE(more.said.size() == 1);
  CHECK(more.said[0].code == "loops.cover-more");
}

TEST_CASE("a heated room that no listed loop lies in is said") {
  Design design = with_loops({entry(88.0), entry(88.0)});
  design.room = {room("shop", 50.0), room("office", 20.0)};
  const Checked<LoopPlan> checked = plan_loops(design);
  REQUIRE(checked.said.size() == 1);
  CHECK(checked.said[0].code == "room.no-loop");
  CHECK(checked.said[0].about == "room[2]");
}

TEST_CASE("loops that differ by more than a tenth are noted, a manifold at a time") {
  Design design = with_loops({entry(70.0), entry(91.0), entry(91.0), entry(91.0)});
  const Checked<LoopPlan> checked = plan_loops(design);
  REQUIRE(checked.said.size() == 1);
  CHECK(checked.said[0].code == "loops.uneven");
  CHECK(checked.said[0].severity == Severity::note);
  CHECK(say(checked.said[0], System::si) ==
        "the loops of manifold 1 run from 70.00 m to 91.00 m: within 10 % of each other they are easier to balance "
        "(practice)");
  design.manifold.resize(2);
  design.manifold[1].name = "east";
  design.loop[0].manifold = "east";
  CHECK_FALSE(find(plan_loops(design).said, "loops.uneven"));
}

TEST_CASE("a very short loop is noted by itself") {
  const Checked<LoopPlan> checked =
      plan_loops(with_loops({entry(20.0), entry(88.0), entry(88.0), entry(88.0), entry(86.0)}));
  REQUIRE(find(checked.said, "loop.very-short"));
  CHECK(find(checked.said, "loop.very-short")->about == "loop[1].length");
  CHECK_FALSE(find(checked.said, "loops.uneven"));
}

TEST_CASE("ports and counts are held against the loops listed") {
  Design design = with_loops({entry(88.0), entry(88.0), entry(88.0), entry(88.0)});
  design.manifold[0].ports_number = 3.0;
  const Checked<LoopPlan> ports = plan_loops(design);
  REQUIRE(ports.said.size() == 1);
  CHECK(ports.said[0].code == "manifold.too-few-ports");
  CHECK(ports.said[0].severity == Severity::failure);
  CHECK(say(ports.said[0], System::us) == "manifold 1 has 3 ports, and 4 loops leave it");

  design.manifold[0].ports_number = 5.0;
  design.manifold[0].loops_number = 5.0;
  CHECK(find(plan_loops(design).said, "manifold.count-differs"));
  design.manifold[0].loops_number = 4.0;
  CHECK(plan_loops(design).said.empty());

  design.manifold.resize(2);
  const auto idle = find(plan_loops(design).said, "manifold.no-loop");
  REQUIRE(idle);
  CHECK(idle->about == "manifold[2]");
}
