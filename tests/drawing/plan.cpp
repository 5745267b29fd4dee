// The plan of a floor: nothing on anything, everything once, to scale.
#include <cmath>

#include "drawing/patches.hpp"
#include "floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

std::size_t texts(const Picture& picture, const std::string& text, double least_size_m = 0.0) {
  std::size_t number = 0;
  for (const Layer& layer : picture.layer) {
    for (const SheetShape& shape : layer.shape) {
      const auto* found = std::get_if<Lettering>(&shape);
      number += found && found->text == text && found->size_m >= least_size_m && layer.name != "beside";
    }
  }
  return number;
}

const Layer& layer_of(const Picture& picture, const std::string& name) {
  for (const Layer& layer : picture.layer) {
    if (layer.name == name) return layer;
  }
  throw std::logic_error("no layer of that name");
}

void check_labels(const PlanSheet& sheet) {
  const std::vector<Box> boxes = text_boxes(sheet.picture);
  const Box paper{{0.0, 0.0}, {sheet.picture.width_m, sheet.picture.height_m}};
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    INFO(boxes[i].low.x_m << ' ' << boxes[i].low.y_m << ' ' << boxes[i].high.x_m << ' ' << boxes[i].high.y_m);
    CHECK(within(boxes[i], paper));
    for (std::size_t j = i + 1; j < boxes.size(); ++j) CHECK_FALSE(overlap(boxes[i], boxes[j]));
  }
}

std::vector<DrawnFloor> halls() {
  std::vector<DrawnFloor> all{floors::hall(3, 36, 30), floors::hall(12, 120, 70), floors::hall(1, 12, 8),
                              floors::hall(5, 30, 60, System::si), floors::hall(30, 200, 110)};
  all[0].room = {{{"paint", ""}, rectangle(5.0, 5.0)},
                 {{"a room with a name that is longer than the room", ""}, rectangle(2.0, 2.0)}};
  all[1].no_tube.push_back({{{1, 1}, {4, 1}, {4, 4}, {1, 4}}, {"<lift> & \"hoist\"", ""}});
  all[2].title = {{"A title that will not fit on one line of the column by far", ""}};
  all[3].notes = {{{"One sentence.", ""}},
                  {{"And another one that is long enough to be broken into two lines or more.", ""}}};
  all[4].floor.outline = {{0, 0}, {61, 0}, {61, 20}, {50, 33.5}, {0, 33.5}};
  all[4].dimension.push_back({DrawnSide::slanting, false, {61, 20}, {50, 33.5}, {"57 ft 1 1/2 in", "length_m"}});
  return all;
}

}  // namespace

TEST_CASE("no label touches another, and all lie on the sheet") {
  for (const DrawnFloor& floor : halls()) {
    const PlanSheet sheet = draw_plan(floor);
    check_labels(sheet);
    CHECK(floors::xml_fault(svg_of(sheet.picture)) == "");
  }
}

TEST_CASE("the end of each U-turn has a bar, and ends side by side one name") {
  DrawnFloor floor = floors::hall(1, 36, 30);
  const double s = floor.spacing_m;
  // Two side by side on one line, one far off on it, one on another; the last half way between two runs of tube.
  floor.tip = {{{3.0, 5.0}, {0.0, 1.0}, {"B7", "line"}},
               {{3.0 + 2.0 * s, 5.0}, {0.0, 1.0}, {"B7", "line"}},
               {{8.0, 5.0}, {0.0, 1.0}, {"B7", "line"}},
               {{5.0, 6.096}, {1.0, 0.0}, {"A4", "line"}}};
  const PlanSheet sheet = draw_plan(floor);
  CHECK(layer_of(sheet.picture, "turn-ends").shape.size() == 4);
  CHECK(texts(sheet.picture, "B7") == 2);
  CHECK(texts(sheet.picture, "A4") == 1);
  CHECK(sheet.left_out.empty());
  check_labels(sheet);
  // The key speaks of them only where there are any.
  CHECK(floors::count(svg_of(sheet.picture), "U-turns") == 1);
  CHECK(floors::count(svg_of(draw_plan(floors::hall(1, 36, 30)).picture), "U-turns") == 0);
}

TEST_CASE("the same floor gives the same bytes") {
  const DrawnFloor floor = floors::hall(6, 60, 40);
  CHECK(svg_of(draw_plan(floor).picture) == svg_of(draw_plan(floor).picture));
}

TEST_CASE("every loop has its number once, large, and a square at the manifold") {
  for (const DrawnFloor& floor : halls()) {
    const PlanSheet sheet = draw_plan(floor);
    CHECK(sheet.left_out.empty());
    CHECK(layer_of(sheet.picture, "loop-numbers").shape.size() == floor.loop.size());
    for (const DrawnLoop& loop : floor.loop) CHECK(texts(sheet.picture, loop.number.text, 0.0036) == 1);
    CHECK(sheet.ports_number == static_cast<int>(floor.loop.size()));
  }
}

TEST_CASE("names, widths and lengths stand on the plan") {
  const PlanSheet sheet = draw_plan(floors::hall(3, 36, 30));
  for (const char* text :
       {"south wall", "north wall", "big door, 9 ft 10 in", "column", "wall manifold", "joint", "36 ft", "30 ft"}) {
    INFO(text);
    CHECK(texts(sheet.picture, text) == 1);
  }
}

TEST_CASE("a chevron every 10 ft or 3 m, and a number at every fifth") {
  for (const System units : {System::us, System::si}) {
    DrawnFloor floor = floors::hall(1, 30, 30, units);
    const double step = units == System::us ? 10 * floors::foot_m : 3.0;
    const int number = static_cast<int>(std::floor(length_m(floor.loop[0].path) / step));
    const PlanSheet sheet = draw_plan(floor);
    CHECK(sheet.chevrons_number == number);
    CHECK(layer_of(sheet.picture, "flow").shape.size() == static_cast<std::size_t>(number));
    for (int k = 5; k <= number; k += 5) {
      CHECK(texts(sheet.picture, std::to_string(k * (units == System::us ? 10 : 3))) == 1);
    }
  }
}

TEST_CASE("chevrons point along the flow") {
  DrawnFloor floor;
  floor.floor.outline = rectangle(10.0, 2.0);
  floor.spacing_m = 0.3;
  floor.loop = {{{"1", ""}, 0, {"1", ""}, {line({9.0, 1.0}, {1.0, 1.0})}}};
  const PlanSheet sheet = draw_plan(floor);
  const auto& chevron = std::get<Trace>(layer_of(sheet.picture, "flow").shape.at(0)).path;
  CHECK(chevron[0].to.x_m < chevron[0].from.x_m);
  CHECK(chevron[1].to.x_m > chevron[1].from.x_m);
}

TEST_CASE("the first half of a loop is solid, the second hollow, at one scale") {
  const DrawnFloor floor = floors::hall(2, 24, 20);
  const PlanSheet sheet = draw_plan(floor);
  const auto &hollow = layer_of(sheet.picture, "tube-cool").shape, &solid = layer_of(sheet.picture, "tube-warm").shape;
  REQUIRE(hollow.size() == 4);
  REQUIRE(solid.size() == 2);
  for (std::size_t k = 0; k < 2; ++k) {
    const auto &cool = std::get<Trace>(hollow[2 * k]), &core = std::get<Trace>(hollow[2 * k + 1]);
    const auto& warm = std::get<Trace>(solid[k]);
    const double half = 0.5 * sheet.scale_ratio * length_m(floor.loop[k].path);
    CHECK(length_m(warm.path) == Approx(half));
    CHECK(length_m(cool.path) == Approx(half));
    CHECK(core.pen.width_m < cool.pen.width_m);
    CHECK(core.pen.colour == Colour{255, 255, 255});
    CHECK(distance_m(warm.path.back().to, cool.path.front().from) < 1.0e-6);
  }
}

TEST_CASE("tube is drawn at its true width where that can be seen, and else the sheet says that it is not") {
  DrawnFloor floor = floors::hall(1, 8, 8);
  floor.tube_diameter_m = 0.032;
  const PlanSheet wide = draw_plan(floor);
  CHECK(std::get<Trace>(layer_of(wide.picture, "tube-warm").shape[0]).pen.width_m == Approx(0.032 * wide.scale_ratio));
  const std::string thin = svg_of(draw_plan(floors::hall(12, 120, 70)).picture);
  CHECK(thin.find("drawn wider than it is") != std::string::npos);
  CHECK(svg_of(wide.picture).find("drawn wider than it is") == std::string::npos);
}

TEST_CASE("patches of neighbours have unlike patterns") {
  for (const DrawnFloor& floor : halls()) {
    const PlanSheet sheet = draw_plan(floor);
    REQUIRE(sheet.pattern.size() == floor.loop.size());
    for (const auto& [a, b] : neighbours(nearest_loops(floor, 0.1, 0.5))) {
      CHECK(sheet.pattern[static_cast<std::size_t>(a)] != sheet.pattern[static_cast<std::size_t>(b)]);
    }
    for (const int pattern : sheet.pattern) CHECK((pattern >= 0 && pattern < light_patterns_number));
  }
}

TEST_CASE("each place of the floor belongs to the nearest tube") {
  DrawnFloor floor;
  floor.floor.outline = rectangle(8.0, 5.0);
  for (const double x : {1.0, 3.0, 5.0, 7.0}) floor.loop.push_back({{}, 0, {}, {line({x, 0.0}, {x, 5.0})}});
  const Raster raster = cut_to(floor.floor, nearest_loops(floor, 0.05, 2.0));
  for (int k = 0; k < 4; ++k) {
    double ring = 0.0;
    for (const Polygon& one : patch_rings(raster, k)) ring += signed_area_m2(one);
    CHECK(ring == Approx(2.0 * 5.0).margin(5.0 * 0.05 + 2.0 * 0.05));  // borders lie within a cell
    const auto places = wide_places(raster, 4, 0.8)[static_cast<std::size_t>(k)];
    REQUIRE_FALSE(places.empty());
    CHECK(distance_m(places[0].middle, {1.0 + 2.0 * k, 2.5}) < 0.1);
  }
}

TEST_CASE("five patterns do for a map that four would do for, and a loop is never like its neighbour") {
  std::vector<std::pair<int, int>> wheel;
  for (int k = 1; k <= 7; ++k) {
    wheel.emplace_back(0, k);
    wheel.emplace_back(std::min(k, k % 7 + 1), std::max(k, k % 7 + 1));
  }
  const auto colours = unlike(8, wheel, 4);
  for (const auto& [a, b] : wheel) CHECK(colours[static_cast<std::size_t>(a)] != colours[static_cast<std::size_t>(b)]);
}

TEST_CASE("dimensions read as a tape does") {
  CHECK(length_words(12.0 * 0.3048, System::us) == "12 ft");
  CHECK(length_words(0.3048 * 12 + 0.0254 * 4.25, System::us) == "12 ft 4 1/4 in");
  CHECK(length_words(0.0254 * 0.5, System::us) == "1/2 in");
  CHECK(length_words(0.0254 * 11.9, System::us) == "1 ft");
  CHECK(length_words(0.0, System::us) == "0 in");
  CHECK(length_words(3.45, System::si) == "3.45 m");
  CHECK(length_words(3.0480, System::si) == "3.048 m");
}

TEST_CASE("a floor without loops is a plan too, and one without an outline is a fault") {
  DrawnFloor floor;
  floor.floor.outline = rectangle(10.0, 8.0);
  const PlanSheet sheet = draw_plan(floor);
  check_labels(sheet);
  CHECK(sheet.ports_number == 0);
  CHECK_THROWS_AS(draw_plan({}), std::logic_error);
}
