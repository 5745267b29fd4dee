// Places, walls and openings of a plan.
#include "design/support.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double foot_m = 0.3048, inch_m = 0.0254;

constexpr std::string_view shop = R"(
[slab]
outline = ["0, 0 ft", "40, 0 ft", "40, 18 ft", "26, 18 ft", "26, 28 ft", "0, 28 ft"]
[[opening]]
kind  = "big door"
size  = "10 x 9 ft"
place = "12 ft, 0 ft"
[[wall]]
name = "bench wall"
from = "26 ft, 18 ft"
to   = "40 ft, 18 ft"
)";

Point place_of(const Design& design, std::string_view text) {
  PlanPlace place;
  REQUIRE(read_words(text, place).empty());
  const auto point = point_on_plan(plan_walls(design), place);
  REQUIRE(point);
  return {point->x_m / foot_m, point->y_m / foot_m};
}

}  // namespace

TEST_CASE("a place is the same by coordinates and from any two walls") {
  const Design design = must_read(shop).design;
  for (const std::string_view text :
       {"12 ft 4 in, 7 ft", "12 ft 4 in from west wall, 7 ft from door wall",
        "7 ft from south wall and 12.333333 ft from left wall", "27 ft 8 in from the east wall, 21 ft from north",
        "11 ft from bench wall, 27 ft 8 in from right wall"}) {
    CAPTURE(text);
    const Point at = place_of(design, text);
    CHECK(at.x_m == Approx(12.0 + 4.0 / 12.0));
    CHECK(at.y_m == Approx(7.0));
  }
}

TEST_CASE("worded places and openings are written as they read") {
  for (const std::string_view text : {"12.5 ft from west wall, 7 ft from door wall", "26 ft, 14 ft"}) {
    PlanPlace place, again;
    REQUIRE(read_words(text, place).empty());
    REQUIRE(read_words(write_words(place, System::us), again).empty());
    CHECK(place == again);
  }
  Gap gap, again;
  REQUIRE(read_words("3 ft 6 in at 10 ft", gap).empty());
  CHECK(gap.width_m == Approx(3.5 * foot_m));
  REQUIRE(read_words(write_words(gap, System::si), again).empty());
  CHECK(gap == again);
}

TEST_CASE("an opening lies on the outline, as wide as it is, and looks into the floor") {
  const Design design = must_read(shop).design;
  const auto openings = openings_on_plan(design);
  REQUIRE(openings.size() == 1);
  CHECK(openings[0].from.x_m == Approx(7.0 * foot_m));
  CHECK(openings[0].to.x_m == Approx(17.0 * foot_m));
  CHECK(openings[0].inward.y_m == Approx(1.0));
}

TEST_CASE("a partition is solid but for its openings") {
  Partition wall;
  wall.from = {0.0, 3.0};
  wall.to = {10.0, 3.0};
  wall.thickness_m = 0.1;
  wall.openings = {{1.0, 8.0}, {1.2, 2.0}};
  const auto parts = solid_parts(wall);
  REQUIRE(parts.size() == 3);
  double area_m2 = 0.0;
  for (const Polygon& part : parts) area_m2 += std::abs(signed_area_m2(part));
  CHECK(area_m2 == Approx(0.1 * (10.0 - 2.2)));
  CHECK(where_is({2.5, 3.0}, parts[0]) == Where::outside);
  wall.openings = {{20.0, 0.0}};
  CHECK(solid_parts(wall).empty());
}

TEST_CASE("a round no-tube area is no smaller than it is") {
  NoTubeEntry area;
  area.place = PlanPlace{{3.0, 2.0}, {}, {}, 0.0, 0.0};
  area.diameter_m = 1.0;
  const Polygon outline = outline_of(area, {});
  for (std::size_t i = 0; i < outline.size(); ++i) {
    CHECK(distance_to_edge_m({3.0, 2.0}, outline[i], outline[(i + 1) % outline.size()]) >= 0.5 - 1e-12);
  }
  CHECK(std::abs(signed_area_m2(outline)) < 1.02 * 3.14159265 * 0.25);
}

TEST_CASE("one manifold without a place stands at the longest wall that has no big door") {
  const DesignFile file = must_read(shop);
  CHECK(guess(file, "manifold[1].place") == "0 ft, 14 ft");
  CHECK(guess(must_read(shop, {{"manifold[1].place", "26 ft, 23 ft", ""}}), "manifold[1].place") == "-");
  CHECK(guess(must_read(shop, {{"manifold[1].loops", "5", ""}}), "manifold[1].place") == "-");
  CHECK_FALSE(must_read(shop, {{"manifold[1].loops", "5", ""}}).design.manifold[0].place);
  const auto longer = with_key(file, "slab.size", "60 ft x 20 ft");
  REQUIRE(longer);
  CHECK(guess(*longer, "manifold[1].place") == "30 ft, 20 ft");
}

TEST_CASE("bands of closer tube have a width") {
  const DesignFile file = must_read(std::string(shop) + "tube_spacing = \"8 in\"\n");
  CHECK(guess(file, "wall[1].band_width") == "4 ft");
  CHECK(*file.design.wall[0].tube_spacing_m == Approx(8.0 * inch_m));
}
