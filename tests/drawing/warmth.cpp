// Contours run where the temperature is the level's, and the sheet's labels do not collide.
#include <cmath>

#include "floors.hpp"
#include "slabwright/drawing_warmth.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

template <class At>
DrawnWarmth warmth_over(double width_m, double height_m, double cell_m, At at) {
  DrawnWarmth warmth{
      {0.0, 0.0}, cell_m, static_cast<std::size_t>(width_m / cell_m), static_cast<std::size_t>(height_m / cell_m),
      {},         {}};
  for (std::size_t j = 0; j < warmth.rows; ++j) {
    for (std::size_t i = 0; i < warmth.columns; ++i) {
      warmth.degC.push_back(
          at(Point{cell_m * (static_cast<double>(i) + 0.5), cell_m * (static_cast<double>(j) + 0.5)}));
      warmth.on_floor.push_back(true);
    }
  }
  return warmth;
}

double area_of(const std::vector<Polygon>& rings) {
  double area = 0.0;
  for (const Polygon& ring : rings) area += signed_area_m2(ring);
  return area;
}

}  // namespace

TEST_CASE("a level of a cone is a circle, its warm side to the left") {
  const auto cone = [](Point p) { return 30.0 - 2.0 * distance_m(p, {5.0, 4.0}); };
  const auto rings = warmer_than(warmth_over(10.0, 8.0, 0.1, cone), 25.0);
  REQUIRE(rings.size() == 1);
  CHECK(area_of(rings) == Approx(3.14159265 * 2.5 * 2.5).epsilon(1e-3));
  for (const Point p : rings[0]) CHECK(distance_m(p, {5.0, 4.0}) == Approx(2.5).margin(0.002));
  const auto pit = [&](Point p) { return -cone(p); };
  const auto around = warmer_than(warmth_over(10.0, 8.0, 0.1, pit), -25.0);
  REQUIRE(around.size() == 2);  // the floor's rim, and the pit as a hole in it
  CHECK(std::min(signed_area_m2(around[0]), signed_area_m2(around[1])) ==
        Approx(-3.14159265 * 2.5 * 2.5).epsilon(1e-3));
}

TEST_CASE("levels hold one another, and reach beyond the floor's rim") {
  const auto slope = [](Point p) { return 15.0 + p.x_m; };
  const DrawnWarmth warmth = warmth_over(6.0, 4.0, 0.1, slope);
  double before = 1e9;
  for (const double level : {14.0, 16.0, 18.0, 20.5}) {
    const auto rings = warmer_than(warmth, level);
    REQUIRE(rings.size() == 1);
    CHECK(area_of(rings) < before);
    before = area_of(rings);
    double top = 0.0;
    for (const Point p : rings[0]) top = std::max(top, p.y_m);
    CHECK(top > 4.1);
  }
  CHECK(warmer_than(warmth, 22.0).empty());
}

TEST_CASE("a saddle gives whole rings either way") {
  const auto saddle = [](Point p) { return 20.0 + (p.x_m - 3.0) * (p.y_m - 2.0); };
  for (const double level : {19.99, 20.0, 20.01}) {
    double all = area_of(warmer_than(warmth_over(6.0, 4.0, 0.25, saddle), level));
    CHECK(all > 8.0);
    CHECK(all < 18.0);
  }
}

TEST_CASE("levels are round in the reader's scale, eight at most") {
  const DrawnWarmth warmth = warmth_over(6.0, 4.0, 0.1, [](Point p) { return 15.2 + p.x_m; });
  for (const System system : {System::us, System::si}) {
    const auto levels = contour_levels_degC(warmth, system);
    REQUIRE(levels.size() >= 3);
    CHECK(levels.size() <= 8);
    for (const double level : levels) {
      const double own = system == System::us ? 1.8 * level + 32.0 : 2.0 * level;
      CHECK(own == Approx(std::round(own)).margin(1e-9));
    }
  }
  CHECK(contour_levels_degC(warmth_over(2.0, 2.0, 0.1, [](Point) { return 20.2; }), System::si).empty());
}

TEST_CASE("no label of a warmth sheet touches another, and all lie on the sheet") {
  for (const std::size_t loops : {1u, 3u, 12u}) {
    DrawnFloor plan = floors::hall(loops, 20.0 + 8.0 * static_cast<double>(loops), 30);
    plan.notes = {{{"A sentence.", ""}},
                  {{"And one more that is long enough for two lines or even for three of them.", ""}}};
    const double w = plan.floor.outline[2].x_m, h = plan.floor.outline[2].y_m;
    const auto hills = [&](Point p) { return 20.0 + 6.0 * std::sin(3.0 * p.x_m) * std::cos(2.0 * p.y_m); };
    const WarmthSheet sheet =
        draw_warmth(plan, warmth_over(w, h, 0.1, hills), {{{1.0, 1.0}, {"coldest, 57 F", "degC"}}});
    CHECK(sheet.left_out.empty());
    CHECK(floors::xml_fault(svg_of(sheet.picture)) == "");
    const std::vector<Box> boxes = text_boxes(sheet.picture);
    CHECK(boxes.size() > 20);
    const Box paper{{0.0, 0.0}, {sheet.picture.width_m, sheet.picture.height_m}};
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      CHECK(within(boxes[i], paper));
      for (std::size_t j = i + 1; j < boxes.size(); ++j) CHECK_FALSE(overlap(boxes[i], boxes[j]));
    }
  }
}
