// Labels of every page that an answer has: pairwise apart, all on the sheet, none without a place.
#include <random>

#include "answered.hpp"
#include "sheets/temperatures.hpp"
#include "slabwright/sheets.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using test::answered;

namespace {

void check_labels(const Picture& picture) {
  const std::vector<Box> boxes = text_boxes(picture);
  const Box paper{{0.0, 0.0}, {picture.width_m, picture.height_m}};
  std::size_t outside = 0, meeting = 0;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    outside += !within(boxes[i], paper);
    for (std::size_t j = i + 1; j < boxes.size(); ++j) meeting += overlap(boxes[i], boxes[j]);
  }
  CHECK(boxes.size() > 10);
  CHECK(outside == 0);
  CHECK(meeting == 0);
}

/// In hundredths, so that the same numbers are drawn everywhere.
class Drawn {
 public:
  explicit Drawn(unsigned seed) : engine_(seed) {}
  int whole(int low, int high) { return low + static_cast<int>(engine_() % static_cast<unsigned>(high - low + 1)); }
  bool chance(int percent) { return whole(1, 100) <= percent; }

 private:
  std::mt19937 engine_;
};

using test::Keys;

/// A rectangle with a door, a manifold on another wall, up to four no-tube areas, a joint, an anchor, in either system.
Keys random_slab(Drawn& drawn) {
  const int w = drawn.whole(16, 80), d = drawn.whole(14, 50);
  const auto ft = [](int value) { return std::to_string(value) + " ft"; };
  Keys keys{{"slab.size", std::to_string(w) + " x " + std::to_string(d) + " ft"},
            {"tube.spacing", std::to_string(drawn.whole(8, 14)) + " in"},
            {"units", drawn.chance(50) ? "US" : "SI"},
            {"manifold[1].name", "manifold by the stairs"},
            {"manifold[1].place", ft(drawn.whole(3, w - 3)) + ", " + ft(d)},
            {"opening[1].name", "big door"},
            {"opening[1].kind", "big door"},
            {"opening[1].size", "8 x 8 ft"},
            {"opening[1].place", ft(drawn.whole(5, w - 5)) + ", 0 ft"}};
  for (int k = 1; k <= drawn.whole(0, 4); ++k) {
    const std::string row = "no_tube[" + std::to_string(k) + "].";
    keys.push_back({row + "name", k % 2 == 1 ? "column " + std::to_string(k) : "pit for hoist " + std::to_string(k)});
    keys.push_back({row + "place", ft(drawn.whole(3, w - 3)) + ", " + ft(drawn.whole(4, d - 6))});
    keys.push_back({row + "diameter", drawn.chance(50) ? "1 ft" : "3 ft"});
  }
  if (drawn.chance(60)) {
    const std::string x = ft(drawn.whole(w / 3, 2 * w / 3));
    keys.push_back({"joint[1].name", "control joint"});
    keys.push_back({"joint[1].from", x + ", 0 ft"});
    keys.push_back({"joint[1].to", x + ", " + ft(d)});
  }
  if (drawn.chance(60)) {
    keys.push_back({"anchor[1].name", "lathe feet"});
    keys.push_back({"anchor[1].place", ft(drawn.whole(4, w - 4)) + ", " + ft(drawn.whole(4, d - 4))});
    keys.push_back({"anchor[1].diameter", "1/2 in"});
    keys.push_back({"anchor[1].depth", "3 in"});
  }
  return keys;
}

}  // namespace

TEST_CASE("labels of every layout's plan lie apart and on the sheet") {
  for (const auto& one : test::layouts()) {
    INFO(one.name);
    const auto floor = drawn_floor(answered(one.file, Question::route));
    if (!floor || floor->loop.empty()) continue;
    const PlanSheet sheet = draw_plan(*floor);
    for (const KeyedText& words : sheet.left_out) UNSCOPED_INFO(words.text);
    CHECK(sheet.left_out.empty());
    check_labels(sheet.picture);
  }
}

TEST_CASE("labels of drawn slabs lie apart and on the sheet") {
  Drawn drawn(20261126);
  int plans = 0;
  for (int k = 0; k < 30; ++k) {
    INFO("slab " << k);
    const auto floor = drawn_floor(answered(test::from_keys(random_slab(drawn)), Question::route));
    REQUIRE(floor);
    if (floor->loop.empty()) continue;  // tube that cannot be laid has no plan
    const PlanSheet sheet = draw_plan(*floor);
    for (const KeyedText& words : sheet.left_out) UNSCOPED_INFO(words.text);
    CHECK(sheet.left_out.empty());
    check_labels(sheet.picture);
    ++plans;
  }
  CHECK(plans >= 24);
}

TEST_CASE("a design has a sheet of temperatures, with its doors' cold in it") {
  const Answer shop = answered(test::layout("frame-shop").file, Question::design);
  REQUIRE(shop.field);
  const auto sheets = sheets_of(shop);
  REQUIRE(sheets.size() == 3);
  CHECK(sheets[2].name == "temperatures.svg");
  const WarmthSheet sheet = draw_warmth(warm_floor(*drawn_floor(shop), shop), warmth_of(*shop.field), spots_of(shop));
  CHECK(sheet.left_out.empty());
  CHECK(sheet.level_degC.size() >= 3);
  check_labels(sheet.picture);
  // At the big door: x from 7 to 17 ft, y = 0.
  CHECK(shop.field->coldest.y_m < 0.15);
  CHECK(shop.field->coldest.x_m > 7.0 * 0.3048);
  CHECK(shop.field->coldest.x_m < 17.0 * 0.3048);
}

TEST_CASE("anchors stand on the plan with what the guide says of them") {
  const Answer garage = answered(test::layout("county-garage").file, Question::route);
  REQUIRE(garage.drill);
  const auto floor = drawn_floor(garage);
  REQUIRE(floor);
  REQUIRE(floor->anchor.size() == 1);
  CHECK(floor->anchor[0].hole.size() == 4);
  const std::string page = sheets_of(garage).at(0).content;
  CHECK(page.find(floor->anchor[0].words.text) != std::string::npos);
  CHECK(floor->anchor[0].words.text.find("lift posts: ") == 0);
}
