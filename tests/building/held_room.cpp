// Room and slab in balance.
#include <rapidcheck.h>

#include <algorithm>

#include "slabwright/building.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// A 5 in slab on foam over a room that loses like one nobody has described.
SlabHold usual_hold() {
  SlabHold hold;
  hold.section.spacing_m = 0.3048;
  hold.section.outside_diameter_m = 0.015875;
  hold.section.cover_above_m = hold.section.cover_below_m = 0.0635;
  hold.section.concrete_W_per_mK = 1.75;
  hold.section.underside_W_per_m2K = 0.4;
  hold.section.below_degC = 3.0;
  hold.loss_W_per_m2K = 1.7;
  return hold;
}

double between(double least, double most) {
  return least + (most - least) * static_cast<double>(*rc::gen::inRange(0, 1001)) / 1000.0;
}

SlabHold any_hold() {
  SlabHold hold = usual_hold();
  hold.section.spacing_m = between(0.1, 0.5);
  hold.section.covering_m2K_per_W = between(0.0, 0.15);
  hold.section.underside_W_per_m2K = between(0.05, 1.0);
  hold.loss_W_per_m2K = between(0.2, 6.0);
  hold.gains_W_per_m2 = between(0.0, 30.0);
  return hold;
}

}  // namespace

TEST_CASE("a room takes from its floor what it loses, less its gains") {
  CHECK(rc::check("balance", [] {
    const SlabHold hold = any_hold();
    const double outdoor_degC = between(-45.0, 10.0);
    const HeldRoom held = room_held_by(hold, between(2.0, 30.0), outdoor_degC);
    const double lost_W_per_m2 = hold.loss_W_per_m2K * (held.room_degC - outdoor_degC);
    RC_ASSERT(std::abs(held.up_W_per_m2 + hold.gains_W_per_m2 - lost_W_per_m2) < 1e-9);
  }));
}

TEST_CASE("the room over a slab and the slab under a room are each other's inverse") {
  CHECK(rc::check("inverse", [] {
    const SlabHold hold = any_hold();
    const double outdoor_degC = between(-45.0, 10.0), room_degC = between(-10.0, 25.0);
    const double sensor_degC = held_at(hold, room_degC, outdoor_degC).sensor_degC;
    RC_ASSERT(std::abs(room_held_by(hold, sensor_degC, outdoor_degC).room_degC - room_degC) < 1e-6);
  }));
}

TEST_CASE("with the film that the law gives, the two ways of asking agree") {
  CHECK(rc::check("film", [] {
    const SlabHold hold = any_hold();
    const double outdoor_degC = between(-45.0, 10.0), sensor_degC = between(2.0, 30.0);
    const HeldRoom by_law = room_held_by(hold, sensor_degC, outdoor_degC);
    const HeldRoom by_film = room_held_by(hold, sensor_degC, outdoor_degC, by_law.film_W_per_m2K);
    RC_ASSERT(std::abs(by_film.room_degC - by_law.room_degC) < 1e-6);
    RC_ASSERT(std::abs(by_film.up_W_per_m2 - by_law.up_W_per_m2) < 1e-4);
    RC_ASSERT(std::abs(by_film.down_W_per_m2 - by_law.down_W_per_m2) < 1e-4);
    RC_ASSERT(std::abs(by_film.floor_over_tube_degC - by_law.floor_over_tube_degC) < 1e-5);
  }));
}

TEST_CASE("the room lies below its slab in the cold, and falls with the weather") {
  double last_degC = 100.0;
  for (const double outdoor_degC : {0.0, -10.0, -20.0, -30.0, -40.0}) {
    const HeldRoom held = room_held_by(usual_hold(), 12.0, outdoor_degC);
    CHECK(held.room_degC < held.floor_over_tube_degC);
    CHECK(held.floor_over_tube_degC < 13.0);
    CHECK(held.room_degC < last_degC);
    last_degC = held.room_degC;
  }
}

TEST_CASE("a sensor midway between wide rows reads below its plane's mean") {
  SlabHold hold = usual_hold();
  const double wide = held_at(hold, 10.0, -20.0).sensor_degC;
  hold.section.spacing_m = 0.05;
  const double dense = held_at(hold, 10.0, -20.0).sensor_degC;
  CHECK(wide < dense);
  CHECK(dense - wide < 1.5);
}

TEST_CASE("gains warm a room that its floor has stopped warming") {
  SlabHold hold = usual_hold();
  hold.gains_W_per_m2 = 100.0;
  const HeldRoom held = room_held_by(hold, 10.0, -20.0);
  CHECK(held.room_degC > 10.0);
  CHECK(held.up_W_per_m2 < 0.0);
  hold.gains_W_per_m2 = 1e4;  // the most a file can hold, in a small shop
  CHECK(room_held_by(hold, 10.0, -20.0).room_degC > 100.0);
}

TEST_CASE("under a thick covering a room stands near the weather, however far its slab is from any setting") {
  SlabHold hold = usual_hold();
  hold.section.covering_m2K_per_W = 2.0;
  for (const double sensor_degC : {-121.0, 29.0, 179.0}) {
    for (const double outdoor_degC : {-40.0, 5.0}) {
      const HeldRoom held = room_held_by(hold, sensor_degC, outdoor_degC);
      CHECK(std::abs(held.room_degC - outdoor_degC) < 0.5 * std::abs(sensor_degC - outdoor_degC));
      CHECK(held.sensor_degC == Approx(sensor_degC).margin(1e-6));
    }
  }
}

TEST_CASE("loss and gains are spread over the floor that has tubes") {
  RoomLoss room;
  room.floor_m2 = 100.0;
  room.total_W_per_K = 170.0;
  room.gains_W = 800.0;
  const SlabHold hold = slab_hold(usual_hold().section, room, 80.0);
  CHECK(hold.loss_W_per_m2K == Approx(170.0 / 80.0));
  CHECK(hold.gains_W_per_m2 == Approx(10.0));
  CHECK_THROWS_AS(slab_hold(usual_hold().section, room, 0.0), std::logic_error);
}
