// The lowest setting and what it is made of.
#include <cmath>

#include "freeze/holds.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("the setting keeps every place that decides, and one of them just so") {
  const Freeze freeze = hold_of(bare_shop());
  CHECK(freeze.verdict == FreezeVerdict::found);
  CHECK(freeze.outdoor_degC == -27.0);
  CHECK(freeze.place[0].name == freeze.air->decides);
  REQUIRE(freeze.place[0].asks_air_degC);
  CHECK(freeze.air->best_degC == Approx(*freeze.place[0].asks_air_degC + freeze.air->control_K));
  for (const PlaceAtSetting& place : freeze.place) {
    CAPTURE(place.name);
    CHECK(place.spare_K == Approx(place.coldest_degC - place.freezes_degC));
    if (!place.decides) continue;
    CHECK(place.coldest_degC == Approx(coldest_degC(place.air, freeze.air->best_degC)));
    CHECK(place.coldest_degC >= place.limit_degC - 1e-9);
    REQUIRE((place.asks_air_degC && place.asks_slab_degC));
    CHECK(coldest_degC(place.air, *place.asks_air_degC) == Approx(place.limit_degC).margin(1e-6));
    CHECK(coldest_degC(place.slab, *place.asks_slab_degC) == Approx(place.limit_degC).margin(1e-6));
    CHECK(*place.asks_air_degC <= *freeze.place[0].asks_air_degC);
  }
}

TEST_CASE("a dial holds the sensor's error, rounded up to what it shows") {
  Design d = bare_shop();
  Freeze freeze = hold_of(d);
  CHECK(freeze.slab->dial_degC == std::ceil(2.0 * (freeze.slab->best_degC + 1.0)) / 2.0);
  CHECK(freeze.air->dial_degC == std::ceil(2.0 * (freeze.air->best_degC + 1.0)) / 2.0);
  d.units = System::us;
  freeze = hold_of(d);
  const double dial_degF = freeze.slab->dial_degC * 1.8 + 32.0;
  CHECK(dial_degF == Approx(std::round(dial_degF)).margin(1e-9));
  CHECK(freeze.slab->dial_degC >= freeze.slab->best_degC + 1.0);
  CHECK(freeze.slab->dial_degC < freeze.slab->best_degC + 1.0 + 1.0 / 1.8);

  const double slab_degC = freeze.slab->best_degC, dial_degC = freeze.slab->dial_degC;
  d.frost_hold.sensor_error_K = 3.0;
  freeze = hold_of(d);
  CHECK(freeze.slab->best_degC == slab_degC);
  CHECK(freeze.slab->dial_degC > dial_degC + 1.4);
}

TEST_CASE("the slab must be warmer than the air it holds, and both sensors are named with their places") {
  const Freeze freeze = hold_of(bare_shop());
  CHECK(freeze.slab->best_degC > freeze.air->best_degC + 2.0);
  CHECK(freeze.slab_sensor == "in the concrete at tube depth, midway between two tubes");
  CHECK(freeze.air_sensor == "on an inside wall, 1.5 m up");
  CHECK(has_code(checked_hold(line_of(bare_shop())).said, "freeze.two-dials"));
  CHECK(has_code(checked_hold(line_of(bare_shop())).said, "freeze.shut"));
}

TEST_CASE("a real thermostat adds what its deadband lets the room fall by") {
  Design d = bare_shop();
  const Freeze usual = hold_of(d, 12000.0);
  CHECK(usual.air->control_K > 0.0);
  CHECK(usual.air->control_K < 4.0);
  d.frost_hold.deadband_K = 4.0;
  const Freeze wide = hold_of(d, 12000.0);
  CHECK(wide.air->control_K > usual.air->control_K + 1.0);
  CHECK(wide.air->best_degC - wide.air->control_K == Approx(usual.air->best_degC - usual.air->control_K));
  // The setting is what the switching itself keeps.
  const Line line = line_of(d);
  const auto zone = heated_zone(d, line.envelope, line.floor, line.places, coarse_fields());
  const RealControl control{DialKind::air, wide.air->best_degC, 4.0, 12000.0 / tubes_m2(*zone)};
  for (const ZoneRow& row : controlled_snap(*zone, snap_case(d, line.snap, 0), control))
    for (std::size_t i = 0; i < line.places.place.size(); ++i)
      if (line.places.place[i].decides) CHECK(row.place_degC[i] > line.places.place[i].limit_degC - 0.05);
}

TEST_CASE("had the coldest hour lasted it would take more, with a loop shut more still, or no setting would do") {
  Design d = door_shop();
  d.opening[0].tube_distance_m = 0.4;
  const Freeze freeze = hold_of(d);
  REQUIRE(freeze.lasting_air_dial_degC);
  CHECK(*freeze.lasting_air_dial_degC >= 4.4 + 1.0);
  if (freeze.shut_air_dial_degC) CHECK(*freeze.shut_air_dial_degC >= *freeze.lasting_air_dial_degC);
  for (const PlaceAtSetting& place : freeze.place)
    if (place.decides && place.kind == PlaceKind::tube) CHECK(place.shut_degC < place.coldest_degC);
  d.edge.insulation = {0.0};
  d.tube.from_walls_m = 0.05;
  CHECK_FALSE(hold_of(d).shut_air_dial_degC);  // the corners
}

TEST_CASE("something warm that keeps the floor off asks for more, and a second source for most") {
  Design d = door_shop();
  d.second_source.kind = SecondSourceKind::none;
  d.frost_hold.satisfied_s = 0.0;
  const Freeze never = hold_of(d);
  d.frost_hold.satisfied_s = 12.0 * 3600.0;
  const Freeze night = hold_of(d);
  d.second_source.kind = SecondSourceKind::heat_pump;
  const Freeze always = hold_of(d);
  const auto door = [](const Freeze& freeze) { return *row(freeze, "tube 200 mm inside the big door").asks_air_degC; };
  CHECK(door(night) > door(never) + 0.2);
  CHECK(door(always) > door(night) + 1.0);
  d.second_source.cut_out_degC = -15.0;
  CHECK(door(hold_of(d)) < door(always));
  CHECK(door(hold_of(d)) >= door(night));
}

TEST_CASE("the place that decides explains itself") {
  const Freeze freeze = hold_of(door_shop());
  REQUIRE(freeze.explained.size() == 1);
  const Explained& why = freeze.explained[0];
  CHECK(why.gain_share * why.asks_degC + why.base_degC == Approx(why.limit_degC));
  CHECK(why.asks_degC + why.control_K == Approx(freeze.air->best_degC));
  CHECK(why.dial_degC >= why.asks_degC + why.control_K + why.sensor_error_K);
  CHECK(why.dial_degC < why.asks_degC + why.control_K + why.sensor_error_K + 0.5);
  CHECK(why.outdoor_degC >= -27.0);
  CHECK(why.idle.indoor_share + why.idle.outdoor_share + why.idle.ground_share == Approx(1.0));
}

TEST_CASE("a strip across the slab lowers what a bare door asks for") {
  Design d = door_shop();
  const Freeze bare = hold_of(d);
  CHECK(bare.air->decides == "tube 200 mm inside the big door");
  d.opening[0].strip = Insulation{1.8};
  const Freeze broken = hold_of(d);
  CHECK(broken.verdict == FreezeVerdict::found);
  CHECK(broken.air->best_degC < bare.air->best_degC - 2.0);
  CHECK(broken.slab->dial_degC <= bare.slab->dial_degC);
}

TEST_CASE("glycol helps the tubes and leaves the pipes") {
  Design d = door_shop();
  d.watch = {{"tap", WatchKind::room_pipe, "shop", std::nullopt, 0.0}};
  const Freeze water = hold_of(d);
  d.fluid.kind = FluidKind::propylene_glycol;
  d.fluid.glycol = {0.3, false};
  const Freeze glycol = hold_of(d);
  CHECK(glycol.air->decides == "tap");
  CHECK(asked_air_degC(glycol) == Approx(4.4).margin(1e-4));
  CHECK(glycol.air->best_degC < water.air->best_degC);
}

TEST_CASE("ice at the door line is reported and decides nothing") {
  const Freeze freeze = hold_of(door_shop());
  const PlaceAtSetting& line = row(freeze, "floor line at the big door");
  CHECK_FALSE(line.decides);
  CHECK(line.coldest_degC < 0.0);
  REQUIRE(line.ice_below_degC);
  CHECK(*line.ice_below_degC > freeze.outdoor_degC);
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
  CHECK((freeze.air->decides == "store line" ||
         freeze.air->decides == "tube at the corners of the outer wall of the store"));
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
    const HeldRoom room = room_held_by(hold, freeze.slab->dial_degC, -27.0);
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
