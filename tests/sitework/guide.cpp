// The drilling guide, materials and stake-out of whole designs.
#include <algorithm>
#include <cmath>

#include "slabwright/sitework.hpp"
#include "slabwright/sitework_guide.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double inch = 0.0254;

struct Shop {
  Design design;
  LoopPlan plan;
};

/// A shop of 36 x 30 ft with one manifold, its loops drawn once for all tests.
const Shop& shop() {
  static const Shop one = [] {
    Design design = from_keys({{"slab.size", "36 x 30 ft"}, {"slab.concrete_above_tube", "2 in"}}).design;
    LaidBefore laid;
    const auto plan = plan_loops(design, &laid);
    REQUIRE(plan);
    REQUIRE(plan.value->drawing);
    return Shop{design, *plan.value};
  }();
  return one;
}

PlanPlace at(Point point) { return {{point.x_m, point.y_m}, {}, {}, 0.0, 0.0}; }

DrillAsked asked_at(Point point) {
  DrillAsked asked;
  asked.at = at(point);
  return asked;
}

/// The middle of the longest straight piece of a loop.
Point on_tube(std::size_t loop) {
  const Path& path = *shop().plan.loop[loop].path;
  const auto longest = std::max_element(path.begin(), path.end(), [](const Piece& a, const Piece& b) {
    return (a.radius_m > 0.0 ? 0.0 : length_m(a)) < (b.radius_m > 0.0 ? 0.0 : length_m(b));
  });
  return {0.5 * (longest->from.x_m + longest->to.x_m), 0.5 * (longest->from.y_m + longest->to.y_m)};
}

std::string refusal(const Design& design, const LoopPlan& plan, const DrillAsked& asked) {
  const auto guide = drill_at(design, plan, asked);
  CHECK_FALSE(guide);
  REQUIRE_FALSE(guide.said.empty());
  return guide.said[0].code;
}

}  // namespace

TEST_CASE("a hole right over tube is not to be drilled, and a place beside it is named") {
  for (std::size_t loop = 0; loop < shop().plan.loop.size(); ++loop) {
    const auto guide = drill_at(shop().design, shop().plan, asked_at(on_tube(loop)));
    REQUIRE(guide);
    const GuideAnchor& anchor = guide.value->anchor.at(0);
    CHECK(anchor.word == Drilling::do_not_drill);
    CHECK(anchor.hole[0].loop == shop().plan.loop[loop].name);
    CHECK(anchor.hole[0].distance_m == Approx(0.0).margin(1e-9));
    CHECK(any(guide.said, Severity::failure));
    REQUIRE(anchor.move.size() == 1);
    CHECK(anchor.move[0].clear);
    const GuidePlace& there = anchor.move[0].hole[0];
    const auto again = drill_at(shop().design, shop().plan, asked_at({there.x_m, there.y_m}));
    CHECK(again.value->anchor[0].word == Drilling::likely_clear);
    CHECK(again.said.empty());
  }
}

TEST_CASE("places are told from the walls that the question names") {
  DrillAsked asked;
  asked.at = PlanPlace{{}, "east wall", "south wall", 3.0, 2.0};
  const auto guide = drill_at(shop().design, shop().plan, asked);
  REQUIRE(guide);
  CHECK(guide.value->first_wall == "east wall");
  const GuidePlace& place = guide.value->anchor[0].hole[0].place;
  CHECK(place.from_first_m == Approx(3.0));
  CHECK(place.from_second_m == Approx(2.0));
  CHECK(place.x_m == Approx(36.0 * 0.3048 - 3.0));
  CHECK(guide.value->hole_is_ours);
  CHECK(guide.value->anchor[0].diameter_m == Approx(0.5 * inch));
}

TEST_CASE("what cannot be said is said to be so") {
  const Shop& one = shop();
  CHECK(refusal(one.design, one.plan, {}) == "drill.no-hole");
  CHECK(refusal(one.design, one.plan, asked_at({-1.0, 2.0})) == "drill.off-slab");
  DrillAsked asked;
  asked.at = PlanPlace{{}, "moon wall", "south wall", 3.0, 2.0};
  CHECK(refusal(one.design, one.plan, asked) == "drill.no-wall");
  LoopPlan undrawn = one.plan;
  undrawn.loop[0].path.reset();
  CHECK(refusal(one.design, undrawn, asked_at({1.0, 1.0})) == "drill.no-drawing");
}

TEST_CASE("anchors of the file are read together, each hole from the anchor's place") {
  Design design = shop().design;
  const Point tube = on_tube(0);
  design.anchor = {{"press", at(tube), {{0.1, 0.0}, {-0.1, 0.0}}, 0.5 * inch, 4.0 * inch},
                   {"bracket", at({5.0, 5.0}), {}, 0.25 * inch, 0.5 * inch}};
  const auto guide = drill_at(design, shop().plan, {});
  REQUIRE(guide);
  REQUIRE(guide.value->anchor.size() == 2);
  REQUIRE(guide.value->anchor[0].hole.size() == 2);
  CHECK(guide.value->anchor[0].hole[0].place.x_m == Approx(tube.x_m + 0.1));
  // A short hole ends well above the tube.
  CHECK(guide.value->anchor[1].hole[0].depth_margin_m == Approx(1.5 * inch));
  CHECK(guide.value->anchor[1].word == Drilling::likely_clear);
}

TEST_CASE("a wider tolerance makes more doubt, a hole through the slab is said") {
  DrillAsked asked = asked_at({on_tube(0).x_m + 3.0 * inch, on_tube(0).y_m + 3.0 * inch});
  const double usual = drill_at(shop().design, shop().plan, asked).value->anchor[0].strike_share;
  asked.tolerance_m = 4.0 * inch;
  const auto wide = drill_at(shop().design, shop().plan, asked);
  CHECK(wide.value->anchor[0].strike_share > usual);
  CHECK_FALSE(wide.value->tolerance_is_ours);
  asked.depth_m = 6.0 * inch;
  const auto through = drill_at(shop().design, shop().plan, asked);
  CHECK(std::any_of(through.said.begin(), through.said.end(),
                    [](const Diagnostic& d) { return d.code == "drill.through"; }));
}

TEST_CASE("tube found nearby moves the drawing, and one strange place is named") {
  const Point tube = on_tube(0);
  const Path& path = *shop().plan.loop[0].path;
  const Piece* straight = nullptr;
  for (const Piece& piece : path)
    if (piece.radius_m <= 0.0 && distance_to_piece_m(tube, piece) < 1e-9) straight = &piece;
  REQUIRE(straight);
  const double length = length_m(*straight);
  const Point along{(straight->to.x_m - straight->from.x_m) / length, (straight->to.y_m - straight->from.y_m) / length};
  DrillAsked asked = asked_at(tube);
  for (const double m : {-0.6, -0.3, 0.0, 0.3, 0.6})
    asked.found.push_back(
        {at({tube.x_m + m * along.x_m - 0.03 * along.y_m, tube.y_m + m * along.y_m + 0.03 * along.x_m}), std::nullopt});
  const auto guide = drill_at(shop().design, shop().plan, asked);
  REQUIRE(guide);
  CHECK(guide.value->found.size() == 5);
  CHECK(guide.value->anchor[0].hole[0].distance_m == Approx(0.03).margin(0.006));
  CHECK(guide.value->anchor[0].hole[0].sideways_m < 0.5 * 1.5 * inch);
  asked.found[2].place.at.x_m -= 0.11 * along.y_m;
  asked.found[2].place.at.y_m += 0.11 * along.x_m;
  const auto strange = drill_at(shop().design, shop().plan, asked);
  CHECK(strange.value->found[2].left_out);
  CHECK(std::any_of(strange.said.begin(), strange.said.end(),
                    [](const Diagnostic& d) { return d.code == "drill.strange-place"; }));
}

TEST_CASE("materials of a drawn plan") {
  const auto materials = materials_of(shop().design, shop().plan);
  REQUIRE(materials);
  const auto loops = static_cast<double>(shop().plan.loop.size());
  CHECK(materials->drawn);
  CHECK(materials->tube_m == Approx(shop().plan.tube_m + 2.0 * loops * shop().design.tube.tail_m));
  CHECK(materials->bend_supports_number == 2 * materials->loops_number);
  CHECK(materials->ports_number == materials->loops_number + 1);
  // Every 2 ft, and some more at bends.
  CHECK(materials->ties_number > shop().plan.tube_m / 0.6096);
  CHECK(materials->ties_number < 2.0 * shop().plan.tube_m / 0.6096);
  Design bare = shop().design;
  bare.insulation.under = {0.0};
  bare.edge.insulation = {0.0};
  CHECK(materials_of(bare, shop().plan)->foam_m2 == 0.0);
  bare.insulation.under = {1.8};
  CHECK(materials_of(bare, shop().plan)->foam_m2 == Approx(1.08 * 1080.0 * 0.3048 * 0.3048));
}

TEST_CASE("the stake-out of a drawn plan has a walk for each loop, and none without drawn loops") {
  const auto stakes = stake_out(shop().design, shop().plan);
  REQUIRE(stakes);
  CHECK(stakes->first.wall == "left wall");
  CHECK(stakes->second.wall == "bottom wall");
  CHECK(stakes->step_m == Approx(0.25 * inch));
  REQUIRE(stakes->walk.size() == shop().plan.loop.size());
  for (std::size_t i = 0; i < stakes->walk.size(); ++i) {
    CHECK(stakes->walk[i].step.back().at_end_m == Approx(shop().plan.loop[i].length_m));
    CHECK(stakes->walk[i].step.size() < 60);
  }
  Design named = shop().design;
  named.wall = {{"bench wall", {0.0, 9.144}, {10.97, 9.144}, {}, {}}, {"yard wall", {0.0, 0.0}, {0.0, 9.144}, {}, {}}};
  CHECK(stake_out(named, shop().plan)->first.wall == "bench wall");
  LoopPlan undrawn = shop().plan;
  undrawn.loop[0].path.reset();
  CHECK_FALSE(stake_out(shop().design, undrawn));
}
