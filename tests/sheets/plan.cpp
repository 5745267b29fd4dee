// The plan sheet of an answer: what the design says stands on it.
#include <algorithm>
#include <set>

#include "slabwright/sheets.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

Answer routed(const DesignFile& file) {
  Wishes wishes;
  wishes.question = Question::route;
  wishes.sensitivities = false;
  return answer(file, wishes);
}

const Answer& shop() {
  static const Answer made = routed(test::layout("frame-shop").file);
  return made;
}

}  // namespace

TEST_CASE("the shop's plan has its walls, doors, rooms, pads and loops") {
  const auto floor = drawn_floor(shop());
  REQUIRE(floor);
  CHECK(joined(floor->title).text == "Frame shop");
  CHECK(floor->floor.outline.size() == 6);
  CHECK(floor->room.size() == 3);
  CHECK(floor->partition.size() == 6);  // four walls inside, two of them with an opening
  REQUIRE(floor->door.size() == 1);     // the side door and the windows have no place
  CHECK(distance_m(floor->door[0].from, floor->door[0].to) == Approx(10.0 * 0.3048));
  REQUIRE(floor->no_tube.size() == 1);
  CHECK(floor->no_tube[0].name.text == "mill pad");
  CHECK(floor->wall.size() == 4);
  REQUIRE(shop().loops);
  CHECK(floor->loop.size() == shop().loops->loop.size());
  std::set<std::string> numbers;
  for (const DrawnLoop& loop : floor->loop) numbers.insert(loop.number.text);
  CHECK(numbers.size() == floor->loop.size());
}

TEST_CASE("the plan is a page of its own, with all that it should show") {
  const auto floor = drawn_floor(shop());
  REQUIRE(floor);
  const PlanSheet sheet = draw_plan(*floor);
  CHECK(sheet.left_out.empty());
  CHECK(sheet.ports_number == static_cast<int>(floor->loop.size()));
  const auto sheets = sheets_of(shop());
  REQUIRE(sheets.size() == 2);
  CHECK(sheets[0].name == "plan.svg");
  CHECK(sheets[1].name == "plan.dxf");
  CHECK(sheets[0].content == svg_of(sheet.picture));
  CHECK(sheets[0].content.find("big door, 10 ft") != std::string::npos);
  const auto letters = floor_in_letters(shop());
  REQUIRE(letters.size() > 5);
  CHECK(letters.size() <= 22);
}

TEST_CASE("without a shape there is no plan, and without drawn loops no page") {
  const Answer bare = routed(test::from_keys({{"slab.area", "1080 sq ft"}, {"tube.spacing", "12 in"}}));
  CHECK_FALSE(drawn_floor(bare));
  CHECK(sheets_of(bare).empty());
  CHECK(floor_in_letters(bare).empty());
}

TEST_CASE("north is where a wall of that name says, else up") {
  DesignFile file = test::layout("frame-shop").file;
  Answer asked;
  asked.file = file;
  const auto up = drawn_floor(asked);
  REQUIRE((up && up->north));
  CHECK(up->north->y_m > 0.0);
  CHECK(up->north->x_m == Approx(0.0).margin(1.0e-9));
  asked.file.design.wall = {
      {"east wall", {0.0, 0.0}, {12.192, 0.0}, {}, {}}};  // the lower one: north lies at the right
  const auto turned = drawn_floor(asked);
  REQUIRE((turned && turned->north));
  CHECK(turned->north->x_m > 0.0);
  CHECK(turned->north->y_m == Approx(0.0).margin(1.0e-9));
  CHECK(turned->north_words == "north");
}
