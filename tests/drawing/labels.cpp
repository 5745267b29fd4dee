// Labels find free places, or say that they found none.
#include <random>

#include "slabwright/drawing_labels.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr double mm = 0.001;
const Box sheet{{0.0, 0.0}, {0.2, 0.1}};

LabelWish wish_at(Point target, std::vector<LabelSpot> spots, double leader_m = 0.0) {
  LabelWish wish;
  wish.width_m = 10.0 * mm;
  wish.height_m = 3.0 * mm;
  wish.spot = std::move(spots);
  wish.target = target;
  wish.leader_m = leader_m;
  return wish;
}

Box box_of_label(const LabelWish& wish, const PlacedLabel& placed) {
  return placed.spot.upright ? box_about(placed.spot.middle, wish.height_m, wish.width_m)
                             : box_about(placed.spot.middle, wish.width_m, wish.height_m);
}

}  // namespace

TEST_CASE("the first free spot is taken") {
  const std::vector<Obstacle> obstacles{{{0.05, 0.0}, {0.05, 0.1}, 1.0 * mm, Hardness::solid}};
  const auto plan = place_labels(sheet, obstacles, {wish_at({0.05, 0.05}, {{{0.05, 0.05}}, {{0.06, 0.05}}})}, 0.0);
  REQUIRE(plan.placed[0]);
  CHECK(plan.placed[0]->spot.middle == Point{0.06, 0.05});
  CHECK(plan.left_out.empty());
}

TEST_CASE("a neighbour gives way where it has another spot") {
  const LabelWish first = wish_at({0.05, 0.05}, {{{0.05, 0.05}}, {{0.05, 0.06}}});
  const LabelWish second = wish_at({0.05, 0.05}, {{{0.052, 0.05}}});
  const auto plan = place_labels(sheet, {}, {first, second}, 0.3 * mm);
  REQUIRE((plan.placed[0] && plan.placed[1]));
  CHECK(plan.placed[0]->spot.middle == Point{0.05, 0.06});
  CHECK(plan.placed[1]->spot.middle == Point{0.052, 0.05});
}

TEST_CASE("a leader runs from the rim of the label to its target") {
  const auto plan = place_labels(sheet, {{{0.05, 0.05}, {0.05, 0.05}, 4.0 * mm, Hardness::solid}},
                                 {wish_at({0.05, 0.05}, {{{0.05, 0.05}}}, 30.0 * mm)}, 0.0);
  REQUIRE(plan.placed[0]);
  REQUIRE(plan.placed[0]->leader.size() == 1);
  const Piece& leader = plan.placed[0]->leader[0];
  CHECK(leader.to == Point{0.05, 0.05});
  const Box box = box_of_label(wish_at({}, {}), *plan.placed[0]);
  CHECK(distance_to_boundary_m(leader.from, ring_of(box)) < 1.0e-9);
}

TEST_CASE("lines are covered only by labels that may, and marks by none of them") {
  const std::vector<Obstacle> line{{{0.0, 0.05}, {0.2, 0.05}, 1.0 * mm, Hardness::line}};
  LabelWish wish = wish_at({0.05, 0.05}, {{{0.05, 0.05}}});
  CHECK(place_labels(sheet, line, {wish}, 0.0).left_out.size() == 1);
  wish.on_lines = OnLines::if_needed;
  const auto covered = place_labels(sheet, line, {wish}, 0.0);
  REQUIRE(covered.placed[0]);
  CHECK(covered.placed[0]->covers);
  const std::vector<Obstacle> mark{{{0.05, 0.05}, {0.05, 0.05}, 1.0 * mm, Hardness::mark}};
  CHECK(place_labels(sheet, mark, {wish}, 0.0).left_out.size() == 1);
  wish.on_lines = OnLines::freely;
  const auto free = place_labels(sheet, mark, {wish}, 0.0);
  REQUIRE(free.placed[0]);
  CHECK_FALSE(free.placed[0]->covers);
}

TEST_CASE("what finds no place is told") {
  const std::vector<LabelWish> wishes(40, wish_at({0.1, 0.05}, {{{0.1, 0.05}}}, 12.0 * mm));
  const auto plan = place_labels(sheet, {}, wishes, 0.3 * mm);
  std::size_t placed = 0;
  for (const auto& one : plan.placed) placed += one.has_value();
  CHECK(placed + plan.left_out.size() == wishes.size());
  CHECK_FALSE(plan.left_out.empty());
}

TEST_CASE("crowded labels never touch each other, solid things, foreign leaders or the rim") {
  std::mt19937 random(7);
  const auto number = [&](double most) { return most * static_cast<double>(random() % 1000U) / 1000.0; };
  for (int run = 0; run < 20; ++run) {
    std::vector<Obstacle> obstacles;
    for (int k = 0; k < 25; ++k) {
      const Point a{number(0.2), number(0.1)};
      obstacles.push_back({a, {a.x_m + number(0.02), a.y_m}, 0.5 * mm, k % 2 == 0 ? Hardness::solid : Hardness::line});
    }
    std::vector<LabelWish> wishes;
    for (int k = 0; k < 60; ++k) {
      const Point at{number(0.2), number(0.1)};
      wishes.push_back(wish_at(at, {{at}, {{at.x_m, at.y_m + 3.0 * mm}, true}}, 25.0 * mm));
      wishes.back().on_lines = k % 3 == 0 ? OnLines::if_needed : OnLines::never;
    }
    const auto plan = place_labels(sheet, obstacles, wishes, 0.3 * mm);
    CHECK(plan.left_out.size() < wishes.size() / 2);
    for (std::size_t i = 0; i < wishes.size(); ++i) {
      if (!plan.placed[i]) continue;
      const Box box = box_of_label(wishes[i], *plan.placed[i]);
      CHECK(within(box, sheet));
      for (const Obstacle& one : obstacles) {
        if (one.hardness == Hardness::line) continue;
        CHECK(clipped(one.from, {one.to.x_m + 1.0e-7, one.to.y_m}, {ring_of(box), {}}).empty());
      }
      for (std::size_t j = 0; j < wishes.size(); ++j) {
        if (j == i || !plan.placed[j]) continue;
        CHECK_FALSE(overlap(box, box_of_label(wishes[j], *plan.placed[j])));
        if (plan.placed[j]->leader.empty()) continue;
        const Piece& leader = plan.placed[j]->leader[0];
        const Polygon ring = ring_of(box);
        for (std::size_t k = 0; k < 4; ++k) CHECK_FALSE(meet(leader.from, leader.to, ring[k], ring[(k + 1) % 4]));
      }
    }
  }
}
