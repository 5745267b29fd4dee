// A section: lines where the temperatures are, materials once, labels apart.
#include "slabwright/drawing_section.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "drawing/section_sheet.hpp"
#include "floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

const double cell_m = 0.02;

struct Plane {
  double at_zero_degC, per_in, per_up;
  double operator()(Point p) const { return at_zero_degC + per_in * p.x_m + per_up * p.y_m; }
};

/// Ground and a slab with a tube, a wall on it, and temperatures of a plane.
DrawnSection wall_section(const Plane& plane, System units = System::us) {
  DrawnSection section;
  section.title = {"The edge", ""};
  section.units = units;
  section.window = {{-0.6, -0.8}, {0.9, 0.0}};
  section.material = {{{{-0.6, -0.8}, {0.9, 0.0}}, SectionInk::ground, {}},
                      {{{-0.2, -0.15}, {4.0, 0.0}}, SectionInk::concrete, {}},
                      {{{-0.2, -0.2}, {4.0, -0.15}}, SectionInk::foam, {"foam under the slab, 2 in", "part"}}};
  section.standing = {0.2, false, {"wall", ""}};
  section.tube = {{0.15, -0.08}, {0.45, -0.08}, {0.75, -0.08}};
  section.tube_diameter_m = 0.016;
  section.room_words = {"room 50 F", "room"};
  section.outdoor_words = {"outdoors -12 F", "outdoors"};
  section.size = {{{0.0, 0.07}, {0.15, 0.07}, {0.0, 0.07}, {0.15, -0.08}, {"6 in", "tube"}}};
  section.watched = {{{0.15, -0.08}, {"A 45 F", "place"}}};
  section.note = {{{"A sentence with ", ""}, {"12 F", "a.key"}, {" in it.", ""}}};
  section.warmth = {{-0.61, -0.81}, cell_m, 76, 41, {}, {}};
  for (std::size_t k = 0; k < 76 * 41; ++k) {
    const Point at{-0.6 + cell_m * static_cast<double>(k % 76), -0.8 + cell_m * static_cast<double>(k / 76)};
    section.warmth.degC.push_back(plane(at));
    section.warmth.on_floor.push_back(true);
  }
  return section;
}

const Layer& layer_of(const Picture& picture, const std::string& name) {
  for (const Layer& layer : picture.layer) {
    if (layer.name == name) return layer;
  }
  throw std::logic_error("no layer of that name");
}

std::vector<Lettering> letterings(const Picture& picture) {
  std::vector<Lettering> all;
  for (const Layer& layer : picture.layer) {
    for (const SheetShape& shape : layer.shape) {
      if (const auto* text = std::get_if<Lettering>(&shape)) all.push_back(*text);
    }
  }
  return all;
}

void check_labels(const SectionSheet& sheet) {
  const std::vector<Box> boxes = text_boxes(sheet.picture);
  const Box paper{{0.0, 0.0}, {sheet.picture.width_m, sheet.picture.height_m}};
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    CHECK(within(boxes[i], paper));
    for (std::size_t j = i + 1; j < boxes.size(); ++j) CHECK_FALSE(overlap(boxes[i], boxes[j]));
  }
}

}  // namespace

TEST_CASE("a line of a plane of temperatures is straight and at its place") {
  for (const Plane plane : {Plane{5.0, 20.0, 0.0}, Plane{-2.0, 0.0, 30.0}, Plane{4.0, 17.0, -11.0}}) {
    const DrawnSection section = wall_section(plane);
    const SectionSheet sheet = draw_section(section);
    const auto& shapes = layer_of(sheet.picture, "isotherms").shape;
    REQUIRE(shapes.size() == sheet.level_degC.size());
    for (std::size_t k = 0; k < shapes.size(); ++k) {
      std::size_t seen = 0;
      for (const Polygon& ring : std::get<Area>(shapes[k]).ring) {
        for (const Point& p : ring) {
          const Point at{(p.x_m - sheet.zero.x_m) / sheet.scale_ratio, (p.y_m - sheet.zero.y_m) / sheet.scale_ratio};
          if (!within({at, at}, grown(section.window, 1e-9))) continue;
          ++seen;
          CHECK(plane(at) == Approx(sheet.level_degC[k]).margin(1e-9));
        }
      }
      CHECK(seen > 1);
    }
    check_labels(sheet);
    CHECK(floors::xml_fault(svg_of(sheet.picture)) == "");
  }
}

TEST_CASE("the line of freezing water is there, heavy, and says so in either system") {
  for (const System units : {System::us, System::si}) {
    const SectionSheet sheet = draw_section(wall_section({4.0, 17.0, -11.0}, units));
    double heavy = 0.0, others = 0.0;
    const auto& shapes = layer_of(sheet.picture, "isotherms").shape;
    for (std::size_t k = 0; k < shapes.size(); ++k) {
      const double width = std::get<Area>(shapes[k]).pen.width_m;
      (sheet.level_degC[k] == 0.0 ? heavy : others) = width;
    }
    CHECK(heavy > 2.0 * others);
    const std::string words = units == System::us ? "32 F, water freezes" : "0 C, water freezes";
    std::size_t found = 0;
    for (const Lettering& text : letterings(sheet.picture)) found += text.text == words && text.key == scale_mark;
    CHECK(found == 1);
    CHECK(std::is_sorted(sheet.level_degC.begin(), sheet.level_degC.end()));
  }
  const auto warm = draw_section(wall_section({20.0, 5.0, 0.0})).level_degC;
  CHECK(std::count(warm.begin(), warm.end(), 0.0) == 0);
}

TEST_CASE("every text with a digit has a key, and the figures that were given stand once with theirs") {
  const SectionSheet sheet = draw_section(wall_section({4.0, 17.0, -11.0}));
  CHECK(sheet.left_out.empty());
  std::multiset<std::string> keys;
  for (const Lettering& text : letterings(sheet.picture)) {
    INFO(text.text);
    const bool digit = text.text.find_first_of("0123456789") != std::string::npos;
    CHECK((!digit || !text.key.empty()));
    keys.insert(text.key);
  }
  for (const char* key : {"part", "room", "outdoors", "tube", "place", "a.key"}) CHECK(keys.count(key) == 1);
}

TEST_CASE("tube lies at its place and has its size, at one scale") {
  const DrawnSection section = wall_section({4.0, 17.0, -11.0});
  const SectionSheet sheet = draw_section(section);
  CHECK(1.0 / sheet.scale_ratio == Approx(std::round(1.0 / sheet.scale_ratio)));
  const auto& discs = layer_of(sheet.picture, "tube").shape;
  REQUIRE(discs.size() == 3);
  for (std::size_t k = 0; k < 3; ++k) {
    const auto& disc = std::get<Disc>(discs[k]);
    CHECK(disc.radius_m == Approx(0.008 * sheet.scale_ratio));
    CHECK(disc.centre.x_m - sheet.zero.x_m == Approx(section.tube[k].x_m * sheet.scale_ratio));
    CHECK(disc.centre.y_m - sheet.zero.y_m == Approx(section.tube[k].y_m * sheet.scale_ratio));
  }
}

TEST_CASE("rings of material hold each place of it once") {
  DrawnSection section = wall_section({4.0, 17.0, -11.0});
  section.material[0].box.high.y_m = -0.15;  // the ground outside lies lower
  section.material.push_back({{{-0.25, -0.6}, {-0.2, 0.0}}, SectionInk::foam, {}});
  const auto frame = drawn::section_frame(section);
  double area_m2 = 0.0;
  for (const Polygon& ring : drawn::material_rings(section, frame)) area_m2 += signed_area_m2(ring);
  const double ratio = frame.onto.ratio;
  CHECK(area_m2 / ratio / ratio == Approx(1.5 * 0.65 + 1.1 * 0.15 + 0.05 * 0.15));
}

TEST_CASE("a window that does not hold the foot of the wall is refused") {
  DrawnSection section = wall_section({4.0, 17.0, -11.0});
  section.window = {{0.1, -0.8}, {0.9, 0.0}};
  CHECK_THROWS_AS(draw_section(section), std::logic_error);
}
