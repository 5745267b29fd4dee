// The floor's surface in plan: the drawn frame shop and a floor laid by hand, against the section and the coupled
// point.
#include "slabwright/plant_floor_field.hpp"

#include <cmath>

#include "plant/plants.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Shop {
  Piped piped;
  LaidFloor laid;
};

Shop drawn_shop() {
  const Design design = layout("frame-shop").file.design;
  LaidBefore laid_before;
  const LoopPlan loops = plan_loops(design, &laid_before).value.value();
  const Envelope envelope = envelope_of(design).value.value();
  const FloorPlan floor = floor_of(design, loops, envelope).value.value();
  Shop shop{{loops, envelope, floor, pipe_up(design, loops, &floor).value.value(), {}, {}}, {}};
  for (const RoomLoss& room : envelope.room) shop.piped.conditions.room_degC.push_back(room.indoor_degC);
  for (const Loop& loop : loops.loop) shop.laid.tube.push_back({loop.path.value()});
  shop.laid.apron = loops.drawing.value().apron;
  return shop;
}

/// One room, each loop to and fro on a strip of it, lines a spacing apart and half of one from the walls.
Shop hand_laid(const std::vector<std::pair<std::string, std::string>>& more = {}) {
  std::vector<std::pair<std::string, std::string>> keys{
      {"slab.size", "10 x 6 m"}, {"tube.spacing", "0.25 m"}, {"climate.outdoor", "-15 C"}, {"climate.indoor", "18 C"}};
  keys.insert(keys.end(), more.begin(), more.end());
  Shop shop{piped(from_keys(keys).design), {}};
  const std::size_t loops = shop.piped.loops.loop.size(), lines = 24;
  for (std::size_t loop = 0, line_row = 0; loop < loops; ++loop) {
    std::vector<Point> corners;
    bool right = true;
    for (; line_row < lines * (loop + 1) / loops; ++line_row, right = !right) {
      const double y = 0.25 * (static_cast<double>(line_row) + 0.5);
      corners.push_back({right ? 0.125 : 9.875, y});
      corners.push_back({right ? 9.875 : 0.125, y});
    }
    shop.laid.tube.push_back({rounded(corners, 0.12)});
  }
  return shop;
}

Checked<FloorField> field_of(const Shop& shop, double supply_degC) {
  const OperatingPoint point = operate(shop.piped.plant, shop.piped.conditions, supply_degC);
  return floor_field(shop.piped.plant, shop.piped.conditions, point, shop.laid);
}

}  // namespace

TEST_CASE("the drawn shop's field keeps its heat and its tube") {
  const Shop shop = drawn_shop();
  const FloorField field = field_of(shop, 42.0).value.value();
  CHECK(field.left_share <= 1e-9);
  CHECK(field.up_W + field.down_W == Approx(field.water_W).epsilon(1e-6));
  double up_W = 0.0, tube_m = 0.0, tube_W = 0.0, floor_m2 = 0.0, paths_m = 0.0;
  for (const RoomField& room : field.room) {
    up_W += room.up_W, tube_m += room.tube_m, tube_W += room.tube_W, floor_m2 += room.floor_m2;
    CHECK(room.coldest.surface_degC < room.mean_degC);
    CHECK(room.warmest.surface_degC > room.mean_degC);
    CHECK(room.evenness.wide_spread_K < room.evenness.spread_K);
    CHECK(room.evenness.wide_span_K < room.evenness.span_K);
    CHECK(room.evenness.spread_K < room.evenness.span_K);
  }
  for (const TubeOnFloor& tube : shop.laid.tube) paths_m += length_m(tube.path);
  CHECK(up_W == Approx(field.up_W));
  CHECK(tube_W == Approx(field.water_W));
  CHECK(tube_m == Approx(paths_m).epsilon(2e-3));  // a chord is shorter than its arc
  CHECK(floor_m2 == Approx(floor_shape(shop.piped.plant.design.slab).area_m2).epsilon(0.01));
}

// A second opinion on the coupled point, which heats a strip a spacing wide beside each metre of tube.
TEST_CASE("field and operating point agree about heat and returns") {
  const Shop shop = hand_laid();
  const OperatingPoint point = operate(shop.piped.plant, shop.piped.conditions, 42.0);
  const FloorField field = floor_field(shop.piped.plant, shop.piped.conditions, point, shop.laid).value.value();
  CHECK(field.up_W == Approx(point.up_W).epsilon(0.02));
  CHECK(field.down_W == Approx(point.down_W).epsilon(0.03));
  CHECK(field.room[0].mean_degC == Approx(point.room_floor_degC[0]).margin(0.15));
  for (std::size_t i = 0; i < field.loop.size(); ++i) {
    CHECK(field.loop[i].return_degC == Approx(point.loop[i].return_degC).margin(0.6));
    CHECK(field.loop[i].return_degC < point.supply_degC);
  }
}

TEST_CASE("the floor's heat is its film's, also under a covering") {
  for (const Shop& shop : {hand_laid(), hand_laid({{"slab.covering", "0.08 m2K/W"}})}) {
    const FloorField field = field_of(shop, 42.0).value.value();
    const RoomField& room = field.room[0];
    const double rise_K = room.mean_degC - shop.piped.conditions.room_degC[0];
    CHECK(room.up_W / room.floor_m2 == Approx(floor_film(rise_K).heat_W_per_m2).epsilon(0.005));
  }
}

TEST_CASE("mats hold heat back, and warm what lies between them") {
  const FloorField bare = field_of(hand_laid(), 42.0).value.value();
  const FloorField matted =
      field_of(hand_laid({{"slab.mats", "40 %"}, {"slab.mat_insulation", "0.2 m2K/W"}}), 42.0).value.value();
  CHECK(matted.up_W < 0.95 * bare.up_W);
  CHECK(matted.room[0].mean_degC > bare.room[0].mean_degC + 0.05);
}

TEST_CASE("colder water is a colder floor in every place, less flow a less even one") {
  const Shop shop = hand_laid();
  OperatingPoint point = operate(shop.piped.plant, shop.piped.conditions, 42.0);
  const auto field = [&] {
    return floor_field(shop.piped.plant, shop.piped.conditions, point, shop.laid).value.value();
  };
  const FloorField warm = field();
  point.supply_degC = 38.0;
  const FloorField cool = field();
  for (std::size_t i = 0; i < warm.surface_degC.size(); ++i) {
    if (warm.raster.room[i] >= 0) CHECK(cool.surface_degC[i] < warm.surface_degC[i]);
  }
  point.supply_degC = 42.0;
  for (LoopState& loop : point.loop) loop.flow_m3_per_s *= 0.5;
  CHECK(field().room[0].evenness.wide_spread_K > 1.3 * warm.room[0].evenness.wide_spread_K);
}

TEST_CASE("sleeves that are proposed keep the apron cool, and shorter ones do not") {
  Shop shop = drawn_shop();
  const Checked<FloorField> field = field_of(shop, 46.0);
  const ApronField apron = field.value.value().apron.at(0);
  REQUIRE(apron.warmest.surface_degC > apron.limit_degC);
  REQUIRE(apron.sleeve_m);
  CHECK(field.said.front().code == "field.apron-too-warm");
  const auto warmest_with = [&](double sleeve_m) {
    for (TubeOnFloor& tube : shop.laid.tube) {
      tube.sleeved_supply_m = sleeve_m;
      tube.sleeved_return_m = apron.sleeve_both ? sleeve_m : 0.0;
    }
    return field_of(shop, 46.0).value.value().apron.at(0).warmest.surface_degC;
  };
  // Trials leave a hundredth of a kelvin; the length is sought under the bare leaders' films, a little off.
  CHECK(*apron.sleeved_degC <= apron.limit_degC);
  CHECK(*apron.sleeved_degC == Approx(warmest_with(*apron.sleeve_m)).margin(0.03));
  CHECK(warmest_with(*apron.sleeve_m - 0.25) > apron.limit_degC - 0.2);
}

TEST_CASE("cool aprons need no sleeve") {
  const Checked<FloorField> field = field_of(drawn_shop(), 30.0);
  CHECK_FALSE(field.value.value().apron.at(0).sleeve_m);
  CHECK(field.said.empty());
}

TEST_CASE("a field far from the operating point says so") {
  Shop shop = hand_laid();
  CHECK(field_of(shop, 30.0).said.empty());
  // Half of each loop is not there, though the operating point counts it.
  for (TubeOnFloor& tube : shop.laid.tube) tube.path.resize(tube.path.size() / 2);
  const Checked<FloorField> field = field_of(shop, 30.0);
  REQUIRE(field.said.size() == 1);
  CHECK(field.said.front().code == "field.heat-differs");
}

TEST_CASE("a floor of known area alone has no field") {
  Shop shop = hand_laid();
  shop.piped.plant.design.slab.size.reset();
  shop.piped.plant.design.slab.area_m2 = 60.0;
  for (Room& room : shop.piped.plant.design.room) room.size.reset(), room.outline.clear();
  const Checked<FloorField> field = field_of(shop, 40.0);
  CHECK_FALSE(field);
  CHECK(field.said.front().code == "field.no-outline");
}

TEST_CASE("a sleeve of foam is a cylinder's resistance") {
  // derived: ln(33.875 / 15.875) / (2 pi 0.04)
  CHECK(leader_sleeve_mK_per_W(0.015875) == Approx(3.0158).epsilon(1e-3));
}
