// What rooms lose, against sums done by hand.
#include "slabwright/envelope.hpp"

#include "envelope/shops.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Envelope of(const Design& design) {
  const auto checked = envelope_of(design);
  REQUIRE(checked);
  return *checked.value;
}

double parts_W_per_K(const RoomLoss& room) {
  return room.walls_W_per_K + room.roof_W_per_K + room.openings_W_per_K + room.air_W_per_K + room.by_area_W_per_K +
         room.unheated_floor_W_per_K + room.exhaust_counted_W_per_K;
}

}  // namespace

TEST_CASE("a described shop loses by walls, roof, door and leaks") {
  const RoomLoss room = of(described_shop()).room[0];
  CHECK(room.walls_W_per_K == Approx((42.0 * 3.6 - 9.0) / 2.3));
  CHECK(room.roof_W_per_K == Approx(108.0 / 5.3));
  CHECK(room.openings_W_per_K == Approx(9.0 / 1.05));
  CHECK(room.air_W_per_K == Approx(0.34 * 108.0 * 3.6 * 0.6));
  CHECK(room.total_W_per_K == Approx(170.090).epsilon(1e-5));
  CHECK(room.loss_W == Approx(170.090 * 36.0).epsilon(1e-5));
  CHECK(room.wanted_W == room.loss_W);
  CHECK(room.by_area_W_per_K == 0.0);
  CHECK(room.unheated_floor_W_per_K == 0.0);
}

TEST_CASE("doors and windows without a word on their insulation are R-5 and R-2") {
  Design d = described_shop();
  Opening door, window;
  door.kind = OpeningKind::door;
  door.size = {1.0, 2.0};
  window.kind = OpeningKind::window;
  window.size = {2.0, 1.0};
  d.opening.insert(d.opening.end(), {door, window});
  const RoomLoss room = of(d).room[0];
  CHECK(room.openings_W_per_K == Approx(9.0 / 1.05 + 2.0 / 0.88 + 2.0 / 0.35));
  CHECK(room.walls_W_per_K == Approx((42.0 * 3.6 - 13.0) / 2.3));
  d.opening[2].insulation = Insulation{0.7};
  CHECK(of(d).room[0].openings_W_per_K == Approx(9.0 / 1.05 + 2.0 / 0.88 + 2.0 / 0.7));
}

TEST_CASE("a bare sheet still has its two films") {
  Design d = described_shop();
  d.building.wall_insulation = {0.0};
  CHECK(of(d).room[0].walls_W_per_K == Approx((42.0 * 3.6 - 9.0) / 0.17));
}

TEST_CASE("a building that is not described loses by its floor") {
  Design d = bare_shop();
  for (const auto& [quality, W_per_m2K] :
       {std::pair{Quality::tight, 1.136}, std::pair{Quality::usual, 1.703}, std::pair{Quality::poor, 2.555}}) {
    d.building.quality = quality;
    const RoomLoss room = of(d).room[0];
    CHECK(room.total_W_per_K == Approx(W_per_m2K * 108.0));
    CHECK(room.walls_W_per_K + room.roof_W_per_K + room.openings_W_per_K + room.air_W_per_K == 0.0);
  }
}

TEST_CASE("a heat loss that is given replaces everything, shared by area") {
  Design d = shop_with_store();
  d.building.heat_loss_W = 7200.0;
  Envelope envelope = of(d);
  CHECK(envelope.loss_W == Approx(7200.0));
  CHECK(envelope.room[0].loss_W == Approx(5400.0));
  CHECK(envelope.room[1].loss_W == Approx(1800.0));
  CHECK(envelope.room[0].walls_W_per_K == 0.0);
  d.room[1].indoor_degC = 7.0;  // cooler: it loses less, the whole stays what was given
  envelope = of(d);
  CHECK(envelope.loss_W == Approx(7200.0));
  CHECK(envelope.room[1].loss_W == Approx(7200.0 * 27.0 * 27.0 / (81.0 * 36.0 + 27.0 * 27.0)));
}

TEST_CASE("thin air carries less heat out") {
  Design d = described_shop();
  const double at_sea = of(d).room[0].air_W_per_K;
  d.climate.altitude_m = 1500.0;
  CHECK(of(d).room[0].air_W_per_K == Approx(at_sea * 0.8345).epsilon(2e-4));
  CHECK(of(d).room[0].walls_W_per_K == of(described_shop()).room[0].walls_W_per_K);
}

TEST_CASE("an exhaust fan is shown with its heat and counted only where its air comes in cold") {
  Design d = described_shop();
  d.climate.indoor_degC = *d.climate.outdoor_degC + 70.0 / 1.8;
  Exhaust fan;
  fan.room = "shop";
  fan.flow_m3_per_s = 1200.0 * 0.3048 * 0.3048 * 0.3048 / 60.0;
  const double without_W = of(d).loss_W;
  d.exhaust = {fan};
  auto checked = envelope_of(d);
  CHECK(checked.value->exhaust_W == Approx(27000.0).margin(500.0));
  CHECK(checked.value->loss_W == Approx(without_W));
  CHECK(has_code(checked.said, "envelope.exhaust"));
  CHECK_FALSE(any(checked.said, Severity::warning));

  d.exhaust[0].makeup = Makeup::untempered;
  checked = envelope_of(d);
  CHECK(checked.value->loss_W == Approx(without_W + checked.value->exhaust_W));
  CHECK(checked.value->room[0].wanted_W == Approx(without_W + checked.value->exhaust_W));
  REQUIRE(checked.said.size() == 1);
  CHECK(checked.said[0].severity == Severity::warning);
  CHECK(say(checked.said[0], System::si)
            .find("the floor cannot follow this; temper the make-up air, or recirculate "
                  "through a filter where codes allow") != std::string::npos);

  d.climate.altitude_m = 1500.0;
  CHECK(of(d).exhaust_W < 0.85 * checked.value->exhaust_W);
}

TEST_CASE("gains take from what the floor must give, never below nothing") {
  Design d = described_shop();
  const double loss_W = of(d).loss_W;
  d.gains = {{"shop", 1000.0}};
  CHECK(of(d).loss_W == Approx(loss_W));
  CHECK(of(d).room[0].wanted_W == Approx(loss_W - 1000.0));
  d.gains = {{"shop", 1e6}};
  CHECK(of(d).room[0].wanted_W == 0.0);
}

TEST_CASE("outer wall is shared by floor area, but for rooms that have their own") {
  Design d = shop_with_store();
  CHECK(of(d).room[1].walls_W_per_K == Approx(42.0 * 0.25 * 3.6 / 2.3));
  d.room[1].outer_wall_m = 15.0;
  CHECK(of(d).room[1].walls_W_per_K == Approx(15.0 * 3.6 / 2.3));
  CHECK(of(d).room[0].walls_W_per_K == Approx((27.0 * 3.6 - 9.0) / 2.3));
  d.room[1].height_m = 2.4;
  CHECK(of(d).room[1].walls_W_per_K == Approx(15.0 * 2.4 / 2.3));
  CHECK(of(d).room[1].air_W_per_K == Approx(0.34 * 27.0 * 2.4 * 0.6));
}

TEST_CASE("a room without a size is what the others leave of the slab") {
  Design d = shop_with_store();
  d.room[1].size.reset();
  CHECK(of(d).room[1].floor_m2 == Approx(27.0));
}

TEST_CASE("a floor without tube loses to the ground, and its room is not the floor's to heat") {
  Design d = shop_with_store();
  d.room[1].heated_floor = false;
  const auto checked = envelope_of(d);
  const RoomLoss& store = checked.value->room[1];
  CHECK(store.unheated_floor_W_per_K > 0.0);
  // Film, half the slab, and from the tube plane on the slab's own way down: 27 m2, the room at 16 degC, -20 outdoors.
  const GroundPath& ground = checked.value->ground;
  const double down_m2K_per_W = 1.0 / 6.5 + 0.06 / 1.75 + 1.0 / ground.plane_W_per_m2K;
  CHECK(store.unheated_floor_W_per_K * 36.0 == Approx(27.0 / down_m2K_per_W * (16.0 - ground.effective_degC)));
  CHECK(store.wanted_W == 0.0);
  CHECK(store.loss_W > 0.0);
  CHECK(has_code(checked.said, "envelope.unheated-room"));
  CHECK(checked.value->room[0].unheated_floor_W_per_K == 0.0);
}

TEST_CASE("every watt of a room stands in one row, and every room in the whole") {
  Design d = shop_with_store();
  d.room[1].heated_floor = false;
  d.exhaust = {{"shop", 0.1, Makeup::untempered}, {"store", 0.05, Makeup::tempered}};
  const Envelope envelope = of(d);
  double total_W_per_K = 0.0, loss_W = 0.0;
  for (const RoomLoss& room : envelope.room) {
    CHECK(room.total_W_per_K == Approx(parts_W_per_K(room)));
    CHECK(room.loss_W == Approx(room.total_W_per_K * (room.indoor_degC - envelope.outdoor_degC)));
    total_W_per_K += room.total_W_per_K;
    loss_W += room.loss_W;
  }
  CHECK(envelope.total_W_per_K == Approx(total_W_per_K));
  CHECK(envelope.loss_W == Approx(loss_W));
}

TEST_CASE("without weather or floor there is no heat loss, and the reason says what to give") {
  Design d = bare_shop();
  d.climate.outdoor_degC.reset();
  auto checked = envelope_of(d);
  CHECK_FALSE(checked);
  CHECK(has_code(checked.said, "envelope.no-outdoor"));
  d = bare_shop();
  d.slab.size.reset();
  d.room[0].size.reset();
  checked = envelope_of(d);
  CHECK_FALSE(checked);
  CHECK(has_code(checked.said, "envelope.no-floor"));
}

TEST_CASE("weather as warm as the room asks for nothing") {
  Design d = described_shop();
  d.climate.outdoor_degC = 20.0;
  d.room[0].heated_floor = true;
  const Envelope envelope = of(d);
  CHECK(envelope.room[0].wanted_W == 0.0);
  CHECK(envelope.loss_W < 0.0);
}
