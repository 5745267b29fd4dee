// The lowest setting and what it is made of.
#include <cmath>

#include "freeze/holds.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("the setting keeps every place that decides, and one of them just so") {
  const Freeze freeze = hold_of(bare_shop());
  CHECK(freeze.verdict == FreezeVerdict::found);
  CHECK(freeze.outdoor_degC == -27.0);
  REQUIRE(freeze.place.size() == 8);
  CHECK(freeze.place[0].name == freeze.decides);
  CHECK(freeze.place[0].coldest_degC == Approx(freeze.place[0].limit_degC).margin(1e-4));
  for (const PlaceAtSetting& place : freeze.place) {
    if (place.decides) CHECK(place.coldest_degC >= place.limit_degC - 1e-9);
    CHECK(place.spare_K == Approx(place.coldest_degC - place.freezes_degC));
    CHECK(place.running_degC >= place.coldest_degC);
  }
  CHECK(*freeze.place[0].asks_slab_degC == Approx(freeze.slab_degC));
  CHECK(*freeze.place[0].asks_air_degC == Approx(freeze.air_degC).margin(1e-5));
  CHECK(*freeze.place[1].asks_slab_degC < freeze.slab_degC);
}

TEST_CASE("a dial holds the sensor's error, rounded up to what it shows") {
  Design d = bare_shop();
  Freeze freeze = hold_of(d);
  CHECK(freeze.slab_dial_degC == std::ceil(2.0 * (freeze.slab_degC + 1.0)) / 2.0);
  CHECK(freeze.air_dial_degC == std::ceil(2.0 * (freeze.air_degC + 1.0)) / 2.0);
  d.units = System::us;
  freeze = hold_of(d);
  const double dial_degF = freeze.slab_dial_degC * 1.8 + 32.0;
  CHECK(dial_degF == Approx(std::round(dial_degF)).margin(1e-9));
  CHECK(freeze.slab_dial_degC >= freeze.slab_degC + 1.0);
  CHECK(freeze.slab_dial_degC < freeze.slab_degC + 1.0 + 1.0 / 1.8);

  const double slab_degC = freeze.slab_degC, dial_degC = freeze.slab_dial_degC;
  d.frost_hold.sensor_error_K = 3.0;
  freeze = hold_of(d);
  CHECK(freeze.slab_degC == slab_degC);
  CHECK(freeze.slab_dial_degC > dial_degC + 1.4);
}

TEST_CASE("the slab must be warmer than the air it holds, and both sensors are named with their places") {
  const Freeze freeze = hold_of(bare_shop());
  CHECK(freeze.slab_degC > freeze.air_degC + 2.0);
  CHECK(freeze.slab_sensor == "in the concrete at tube depth, midway between two tubes");
  CHECK(freeze.air_sensor == "on an inside wall, 1.5 m up");
  CHECK(has_code(checked_hold(line_of(bare_shop())).said, "freeze.two-dials"));
  CHECK(has_code(checked_hold(line_of(bare_shop())).said, "freeze.steady"));
}

TEST_CASE("a hair below the setting is refused, the dial itself holds") {
  const Freeze freeze = hold_of(bare_shop());
  CHECK(judged(bare_shop(), freeze.slab_dial_degC).holds);
  const double error_K = bare_shop().frost_hold.sensor_error_K;
  CHECK(judged(bare_shop(), freeze.slab_degC + error_K + 0.01).holds);
  const Judged below = judged(bare_shop(), freeze.slab_degC + error_K - 0.01);
  CHECK_FALSE(below.holds);
  CHECK(below.reason.find(freeze.decides) != std::string::npos);
}

TEST_CASE("a strip across the slab lowers what a bare door asks for") {
  Design d = door_shop();
  const Freeze bare = hold_of(d);
  CHECK(bare.decides == "tube 200 mm inside the big door");
  d.opening[0].strip = Insulation{1.8};
  const Freeze broken = hold_of(d);
  CHECK(broken.verdict == FreezeVerdict::found);
  CHECK(broken.air_degC < bare.air_degC - 2.0);
  CHECK(broken.slab_dial_degC < bare.slab_dial_degC);
}

TEST_CASE("glycol helps the tubes and leaves the pipes") {
  Design d = door_shop();
  d.watch = {{"tap", WatchKind::room_pipe, "shop", std::nullopt, 0.0}};
  const Freeze water = hold_of(d);
  d.fluid.kind = FluidKind::propylene_glycol;
  d.fluid.glycol = {0.3, false};
  const Freeze glycol = hold_of(d);
  CHECK(glycol.decides == "tap");
  CHECK(glycol.air_degC == Approx(4.4).margin(1e-4));
  CHECK(glycol.slab_degC < water.slab_degC);
}

TEST_CASE("with the pump kept running lower settings do, but never below what the air needs") {
  const Freeze freeze = hold_of(door_shop());
  CHECK(freeze.pump_kept_slab_dial_degC < freeze.slab_dial_degC);
  CHECK(freeze.pump_kept_air_dial_degC < freeze.air_dial_degC);
  CHECK(freeze.pump_kept_air_dial_degC >= 4.4 + 1.0);
}

TEST_CASE("ice at the door line is reported and decides nothing") {
  const Freeze freeze = hold_of(door_shop());
  const PlaceAtSetting& line = row(freeze, "floor line at the big door");
  CHECK_FALSE(line.decides);
  CHECK(line.coldest_degC < 0.0);
  REQUIRE(line.ice_below_degC);
  CHECK(*line.ice_below_degC > freeze.outdoor_degC);
  // In that weather, over the same slab, the line is at its freezing point.
  Design mild = door_shop();
  mild.climate.coldest_degC = *line.ice_below_degC;
  const Judged same = judged(mild, freeze.slab_degC + mild.frost_hold.sensor_error_K);
  for (const PlaceAtSetting& place : same.place) {
    if (place.name == line.name) CHECK(place.coldest_degC == Approx(0.0).margin(1e-3));
  }
  CHECK(freeze.place.back().decides == false);
  CHECK(freeze.place.front().decides == true);
}

TEST_CASE("one slab under all rooms: the leakier room decides, the air dial is the first room's") {
  Design d = shop_with_store();
  d.edge.insulation = {1.8};
  d.opening.clear();
  d.room[1].height_m = 12.0;
  d.watch = {{"store line", WatchKind::room_pipe, "store", std::nullopt, 0.0}};
  const Freeze freeze = hold_of(d);
  CHECK((freeze.decides == "store line" || freeze.decides == "tube at the corners of the outer wall of the store"));
  const Judged at = judged(d, freeze.slab_degC + d.frost_hold.sensor_error_K);
  CHECK(at.room_degC < freeze.air_degC - 1.0);
  CHECK(freeze.slab_sensor.find("in the shop") != std::string::npos);
}

TEST_CASE("the heat of the hold is what rooms lose and what goes down, each watt once") {
  Design d = shop_with_store();
  d.gains = {{"shop", 500.0}};
  const Line line = line_of(d);
  const Freeze freeze = *checked_hold(line).value;
  double up_W = 0.0, down_W = 0.0, lost_W = 0.0;
  for (std::size_t i = 0; i < 2; ++i) {
    const double heated_m2 = line.floor.room[i].heated_m2;
    const SlabHold hold = slab_hold(line.floor.section, line.envelope.room[i], heated_m2);
    const HeldRoom room = room_held_by(hold, freeze.slab_dial_degC, -27.0);
    up_W += room.up_W_per_m2 * heated_m2;
    down_W += room.down_W_per_m2 * heated_m2;
    lost_W += line.envelope.room[i].total_W_per_K * (room.room_degC + 27.0);
    // Below the tubes lies the ground's own path, seen from the plane; no room has a share in it.
    CHECK(line.envelope.room[i].unheated_floor_W_per_K == 0.0);
    const double plane_degC = room.room_degC + room.up_W_per_m2 * (1.0 / room.film_W_per_m2K + 0.06 / 1.75);
    const GroundPath& ground = line.envelope.ground;
    // The mean of a plane that tubes cross is not quite what layers would have there: 2e-4 of the heat.
    const double plain_W_per_m2 = ground.plane_W_per_m2K * (plane_degC - ground.effective_degC);
    CHECK(room.down_W_per_m2 == Approx(plain_W_per_m2).epsilon(1e-3));
  }
  CHECK(freeze.hold_W == Approx(up_W + down_W));
  CHECK(up_W + 500.0 == Approx(lost_W));
  CHECK(down_W > 0.0);
}
