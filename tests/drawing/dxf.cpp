// The text of a drawing for programs that draw: groups that pair, true lengths, lines once. A reader of other hands
// reads whole plans back in tests/tools/plan_read_back.py.
#include "slabwright/drawing_dxf.hpp"

#include <cmath>
#include <cstdlib>
#include <map>
#include <sstream>

#include "floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

struct Entity {
  std::string kind;
  std::multimap<int, std::string> group;

  std::string text(int code) const {
    const auto found = group.find(code);
    return found == group.end() ? "" : found->second;
  }
  double number(int code) const { return std::strtod(text(code).c_str(), nullptr); }
};

/// What stands after "ENTITIES", entity by entity; throws where a code is no number.
std::vector<Entity> entities_of(const std::string& dxf) {
  std::istringstream lines(dxf);
  std::vector<Entity> all;
  bool in_entities = false;
  for (std::string code, value; std::getline(lines, code) && std::getline(lines, value);) {
    const int number = std::stoi(code);
    if (number == 2 && value == "ENTITIES") in_entities = true;
    if (number == 0 && in_entities) all.push_back({value, {}});
    if (number != 0 && !all.empty()) all.back().group.emplace(number, value);
  }
  return all;
}

std::vector<Entity> of_kind(const std::vector<Entity>& all, const std::string& kind) {
  std::vector<Entity> found;
  for (const Entity& one : all) {
    if (one.kind == kind) found.push_back(one);
  }
  return found;
}

Picture picture_of(std::vector<SheetShape> shapes, std::vector<Polygon> clip = {}) {
  Picture picture;
  picture.width_m = 0.1;
  picture.height_m = 0.05;
  picture.title = "A 10\xE2\x80\xB2 shed";
  picture.layer.push_back({"one", std::move(shapes), std::move(clip)});
  return picture;
}

constexpr Pen pen{0.001, {0, 0, 0}, Dash::solid};
constexpr Colour white{255, 255, 255};
const DxfFloor hundredth{{0.01, 0.02}, 0.01, System::si};

}  // namespace

TEST_CASE("a line on the floor has its true length and place in either system") {
  const Picture picture = picture_of({Trace{{line({0.01, 0.02}, {0.04, 0.06})}, pen}});
  const auto si = entities_of(dxf_of(picture, hundredth));
  REQUIRE(of_kind(si, "LINE").size() == 1);
  CHECK(si[0].number(10) == 0.0);
  CHECK(si[0].number(11) == Approx(3000.0));  // 30 mm at 1:100
  CHECK(si[0].number(21) == Approx(4000.0));
  const auto us = entities_of(dxf_of(picture, {{0.01, 0.02}, 0.01, System::us}));
  CHECK(us[0].number(11) == Approx(3.0 / 0.0254).margin(1.0e-6));
  CHECK(dxf_of(picture, hundredth).find("$INSUNITS\n 70\n     4\n") != std::string::npos);
}

TEST_CASE("arcs are bulges: the tangent of a quarter of their turn, to the left above zero") {
  const Piece quarter = arc({0.02, 0.01}, {0.01, 0.02}, {0.01, 0.01}, Side::left);
  const Piece back = arc({0.01, 0.02}, {0.01, 0.0}, {0.01, 0.01}, Side::right);
  const Piece large = arc({0.02, 0.01}, {0.01, 0.0}, {0.01, 0.01}, Side::left);
  const auto bulge = [](const Piece& piece) {
    const auto vertices = of_kind(entities_of(dxf_of(picture_of({Trace{{piece}, pen}}), hundredth)), "VERTEX");
    REQUIRE(vertices.size() == 2);
    return vertices[0].number(42);
  };
  constexpr double pi = 3.14159265358979;
  CHECK(bulge(quarter) == Approx(std::tan(pi / 8.0)).margin(1.0e-6));
  CHECK(bulge(back) == Approx(-1.0).margin(1.0e-6));
  CHECK(bulge(large) == Approx(std::tan(3.0 * pi / 8.0)).margin(1.0e-6));
}

TEST_CASE("rings and paths that come back are closed, others are not") {
  const Polygon ring{{0.0, 0.0}, {0.02, 0.0}, {0.02, 0.02}};
  const Path round{line({0, 0}, {0.01, 0}), line({0.01, 0}, {0, 0.01}), line({0, 0.01}, {0, 0})};
  const Path open{line({0, 0}, {0.01, 0}), line({0.01, 0}, {0, 0.01})};
  const Path broken{line({0, 0}, {0.01, 0}), line({0.02, 0}, {0, 0.01})};
  const auto all = entities_of(
      dxf_of(picture_of({Area{{ring}, std::nullopt, pen}, Trace{round, pen}, Trace{open, pen}, Trace{broken, pen}}),
             hundredth));
  const auto lines = of_kind(all, "POLYLINE");
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].number(70) == 1.0);
  CHECK(lines[1].number(70) == 1.0);
  CHECK(lines[2].number(70) == 0.0);
  CHECK(of_kind(all, "VERTEX").size() == 3 + 3 + 3);
  CHECK(of_kind(all, "SEQEND").size() == 3);
  CHECK(of_kind(all, "LINE").size() == 2);
}

TEST_CASE("what only covers has the paper's colour, and is not written") {
  const Polygon ring = rectangle(0.01, 0.01);
  const Pen cover{0.0005, white, Dash::solid};
  const auto all = entities_of(
      dxf_of(picture_of({Trace{{line({0, 0}, {0.01, 0})}, cover}, Area{{ring}, Fill{white, Pattern::plain, {}}, {}},
                         Disc{{0.01, 0.01}, 0.001, white, {}}, Area{{ring}, std::nullopt, {}},
                         Disc{{0.01, 0.01}, 0.001, std::nullopt, pen}}),
             hundredth));
  CHECK(of_kind(all, "LINE").empty());
  CHECK(of_kind(all, "POLYLINE").empty());
  REQUIRE(of_kind(all, "CIRCLE").size() == 1);
  CHECK(of_kind(all, "CIRCLE")[0].number(40) == Approx(100.0));
}

TEST_CASE("a ring ends where its layer's clip ends it") {
  const Polygon wide{{-0.01, 0.01}, {0.03, 0.01}, {0.03, 0.03}, {-0.01, 0.03}};
  const auto cut = entities_of(
      dxf_of(picture_of({Area{{wide}, std::nullopt, pen}}, {rectangle(0.02, 0.02)}), {{0.0, 0.0}, 1.0, System::si}));
  const auto vertices = of_kind(cut, "VERTEX");
  REQUIRE(vertices.size() == 2);  // only its lower side runs through the window
  CHECK(vertices[0].number(10) == Approx(0.0).margin(1.0e-6));
  CHECK(vertices[1].number(10) == Approx(20.0));
  CHECK(of_kind(cut, "POLYLINE")[0].number(70) == 0.0);
  // One that lies within is whole, from whichever corner it begins; one whose first corner lies within is in one part.
  const Polygon small{{0.005, 0.005}, {0.01, 0.005}, {0.01, 0.01}};
  const auto whole = entities_of(dxf_of(picture_of({Area{{small}, std::nullopt, pen}}, {rectangle(0.02, 0.02)}), {}));
  CHECK(of_kind(whole, "POLYLINE")[0].number(70) == 1.0);
  CHECK(of_kind(whole, "VERTEX").size() == 3);
  const Polygon half{{0.01, 0.01}, {0.03, 0.005}, {0.03, 0.015}};
  const auto part = entities_of(dxf_of(picture_of({Area{{half}, std::nullopt, pen}}, {rectangle(0.02, 0.02)}), {}));
  CHECK(of_kind(part, "POLYLINE").size() == 1);
  CHECK(of_kind(part, "VERTEX").size() == 3);
}

TEST_CASE("text has a capital's height, its turn and no commands") {
  const Lettering wall{{0.05, 0.02}, "50 %% \\P ^J \xC3\xBC\xFF\xF0\x9F\x98\x80\n\x01", 0.003, {}, false, true};
  const auto text = of_kind(entities_of(dxf_of(picture_of({wall}), hundredth)), "TEXT");
  REQUIRE(text.size() == 1);
  CHECK(text[0].text(1) == "50 %%%%%% \\U+005CP ^ J \\U+00FC??  ");
  CHECK(text[0].number(40) == Approx(0.73 * 300.0));
  CHECK(text[0].number(50) == 90.0);
  CHECK(text[0].number(10) == Approx(4000.0));
  CHECK(text[0].number(20) == Approx(0.0).margin(1.0e-6));
}

TEST_CASE("a plan's file is plain ASCII, pairs throughout, and the same every time") {
  const DrawnFloor floor = floors::hall(4, 40, 30);
  const PlanSheet sheet = draw_plan(floor);
  const DxfFloor onto{sheet.zero, sheet.scale_ratio, floor.units};
  const std::string dxf = dxf_of(sheet.picture, onto);
  CHECK(dxf == dxf_of(draw_plan(floor).picture, onto));
  for (const char c : dxf) CHECK(((c >= 32 && c < 127) || c == '\n'));
  CHECK(floors::count(dxf, "\n") % 2 == 0);
  CHECK(floors::count(dxf, "nan") + floors::count(dxf, "inf\n") == 0);
  CHECK(dxf.substr(dxf.size() - 8) == "  0\nEOF\n");
  // One line of tube for each half of a loop, and no white core.
  std::map<std::string, int> tubes;
  for (const Entity& one : of_kind(entities_of(dxf), "POLYLINE")) ++tubes[one.text(8)];
  CHECK(tubes["tube-warm"] == 4);
  CHECK(tubes["tube-cool"] == 4);
  CHECK_THROWS_AS(dxf_of(sheet.picture, {{}, 0.0, System::us}), std::logic_error);
}
