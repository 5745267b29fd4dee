// Loops drawn on a design's plan: their lengths, the rooms they cross, what codes and saws say.
#include <algorithm>

#include "slabwright/routing.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double foot_m = 0.3048;

Checked<LoopPlan> drawn(const Design& design) {
  LaidBefore laid;
  return plan_loops(design, &laid);
}

bool says(const std::vector<Diagnostic>& said, std::string_view code) {
  return std::any_of(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
}

}  // namespace

TEST_CASE("a slab's size is enough to draw its loops") {
  const auto plan = drawn(layout("ten-lines").file.design);
  REQUIRE(plan);
  REQUIRE(plan.value->drawing);
  CHECK(plan.value->drawing->check.sound());
  // 1080 ft2 at a foot from tube to tube.
  CHECK(plan.value->tube_m == Approx(1080.0 * foot_m).epsilon(0.03));
  for (const Loop& loop : plan.value->loop) {
    CHECK(loop.from == LengthFrom::drawing);
    CHECK(loop.length_m <= plan.value->limit_m);
    CHECK(loop.length_m == Approx(length_m(*loop.path)));
  }
}

TEST_CASE("stretches of a drawn loop follow one another and are the whole of it") {
  for (const std::string_view name : {"ten-lines", "frame-shop", "cold-door"}) {
    CAPTURE(name);
    const Design design = layout(std::string(name)).file.design;
    const auto plan = drawn(design);
    REQUIRE((plan && plan.value->drawing));
    double heating_all_m = 0.0, floor_m2 = 0.0;
    for (const Loop& loop : plan.value->loop) {
      double at_m = 0.0;
      for (const Stretch& s : loop.along) {
        CHECK(s.start_m == Approx(at_m).margin(1e-9));
        CHECK(s.room < design.room.size());
        CHECK(s.heating_share <= 1.0);
        at_m += s.length_m;
        heating_all_m += heating_m(s);
      }
      // Arcs are walked along their chords.
      CHECK(at_m == Approx(loop.length_m).epsilon(2e-3));
      CHECK(loop.along.front().leader);
      CHECK(loop.along.back().leader);
    }
    for (const double m2 : room_floors_m2(design)) floor_m2 += m2;
    // All floor is heated, but for what walls, doors and no-tube areas keep free.
    CHECK(heating_all_m * design.tube.spacing_m < 1.02 * floor_m2);
    CHECK(heating_all_m * design.tube.spacing_m > 0.80 * floor_m2);
  }
}

TEST_CASE("a floor is drawn once, however often it is asked for") {
  LaidBefore laid;
  const auto task = layout_task(layout("ten-lines").file.design);
  REQUIRE(task);
  const auto* first = &laid.laid(*task);
  CHECK(first == &laid.laid(*task));
}

TEST_CASE("what is not known well enough is not drawn") {
  const auto task = [](const std::vector<std::pair<std::string, std::string>>& keys) {
    return layout_task(from_keys(keys).design).has_value();
  };
  CHECK(task({{"slab.size", "36 x 30 ft"}}));
  CHECK_FALSE(task({{"slab.area", "1080 ft2"}}));
  CHECK_FALSE(task({{"slab.size", "36 x 30 ft"}, {"manifold[1].loops", "4"}}));
  CHECK(task({{"slab.size", "36 x 30 ft"}, {"manifold[1].loops", "4"}, {"manifold[1].place", "18 ft, 0 ft"}}));
  CHECK_FALSE(task({{"slab.size", "36 x 30 ft"}, {"loop[1].length", "250 ft"}}));
  CHECK_FALSE(layout_task(layout("old-pour").file.design));
}

TEST_CASE("a saw keeps off the tube") {
  const auto said = [](std::string depth) {
    const Design design = from_keys({{"slab.size", "36 x 30 ft"},
                                     {"slab.thickness", "5 in"},
                                     {"slab.concrete_above_tube", "2 in"},
                                     {"joint[1].from", "18 ft, 0 ft"},
                                     {"joint[1].to", "18 ft, 30 ft"},
                                     {"joint[1].saw_depth", depth}})
                              .design;
    return says(plan_loops(design).said, "joint.saw-near-tube");
  };
  CHECK_FALSE(said("1.25 in"));
  CHECK_FALSE(said("1.5 in"));
  CHECK(said("1.75 in"));
}

// Source: California Mechanical Code 1217.5: cover 2 in, outside diameter at most a third of the slab, centres at least
// three diameters apart.
TEST_CASE("limits of a code are said with their source") {
  const auto said = [](const std::vector<std::pair<std::string, std::string>>& keys, std::string_view code) {
    return says(plan_loops(from_keys(keys).design).said, code);
  };
  CHECK_FALSE(said({{"slab.size", "36 x 30 ft"}, {"slab.thickness", "5 in"}}, "code.cover"));
  CHECK(said({{"slab.size", "36 x 30 ft"}, {"slab.thickness", "4 in"}}, "code.cover"));
  CHECK_FALSE(said({{"slab.size", "36 x 30 ft"}, {"slab.thickness", "4 in"}, {"codes", "none"}}, "code.cover"));
  CHECK(said({{"slab.size", "36 x 30 ft"}, {"slab.thickness", "3 in"}, {"tube.size", "1 in"}}, "code.tube-size"));
  CHECK(said({{"slab.size", "20 x 10 ft"}, {"tube.spacing", "2 in"}, {"tube.size", "3/4 in"}}, "code.spacing"));
}
