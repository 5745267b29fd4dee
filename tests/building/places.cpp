// Which places are watched, against which limits.
#include "envelope/shops.hpp"
#include "slabwright/building.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

WatchedPlaces of(const Design& design) {
  static EdgeFields fields({.first_cell_m = 0.02, .growth = 1.4});
  const auto envelope = envelope_of(design);
  REQUIRE(envelope);
  return watched_places(design, *envelope.value, fields);
}

const WatchedPlace& named(const WatchedPlaces& places, const std::string& name) {
  for (const WatchedPlace& place : places.place) {
    if (place.name == name) return place;
  }
  throw std::logic_error("no such place: " + name);
}

WatchEntry watch(WatchKind kind, const std::string& name) {
  WatchEntry entry;
  entry.name = name;
  entry.kind = kind;
  entry.toward_outdoor_share = 0.1;
  return entry;
}

}  // namespace

TEST_CASE("wall, door, floor line and manifold are watched without being asked") {
  const WatchedPlaces places = of(bare_shop());
  CHECK(places.unknown.empty());
  REQUIRE(places.place.size() == 5);
  CHECK(places.place[0].name == "tube 150 mm inside the outer wall");
  CHECK(places.place[1].name == "tube 300 mm inside the big door");
  CHECK(places.place[2].name == "floor line at the big door");
  CHECK(places.place[3].name == "floor 25 mm inside the big door");
  CHECK(places.place[4].name == "air round manifold and boiler");
  CHECK(places.place[0].length_m == Approx(39.0));
  CHECK(places.place[1].length_m == Approx(3.0));
  for (const WatchedPlace& place : places.place) {
    CHECK(place.decides == (place.kind != PlaceKind::floor_line));
    CHECK(place.idle.indoor_share + place.idle.outdoor_share + place.idle.ground_share == Approx(1.0));
    CHECK(place.running.indoor_share + place.running.outdoor_share + place.running.ground_share == Approx(1.0));
  }
}

TEST_CASE("places are named in the reader's units") {
  Design d = bare_shop();
  d.units = System::us;
  d.tube.from_walls_m = 6 * 0.0254;
  d.tube.from_doors_m = 12 * 0.0254;
  const WatchedPlaces places = of(d);
  CHECK(places.place[0].name == "tube 6 in inside the outer wall");
  CHECK(places.place[1].name == "tube 12 in inside the big door");
  CHECK(places.place[3].name == "floor 1 in inside the big door");
}

TEST_CASE("limits are the freezing point and a margin, or the limit of practice in air") {
  const WatchedPlaces places = of(bare_shop());
  CHECK(places.place[0].freezes_degC == Approx(0.0).margin(1e-9));
  CHECK(places.place[0].limit_degC == Approx(2.0));
  CHECK(places.place[2].limit_degC == 0.0);
  CHECK(places.place[4].limit_degC == 4.4);
}

TEST_CASE("glycol lowers the tube's limit, and the air is then only reported") {
  Design d = bare_shop();
  d.fluid.kind = FluidKind::propylene_glycol;
  d.fluid.glycol = {0.3, false};
  const WatchedPlaces places = of(d);
  CHECK(places.place[0].freezes_degC == freezing_point_degC({FluidKind::propylene_glycol, 0.3}));
  CHECK(places.place[0].limit_degC < -9.0);
  CHECK_FALSE(places.place[4].decides);
  CHECK(places.place[4].limit_degC == 0.0);
  CHECK(places.place[2].freezes_degC == 0.0);  // what lies on the floor is water
}

TEST_CASE("the air on the first metre at a door stands part of the way to outdoor air") {
  Design d = bare_shop();
  const auto outdoor_share = [&](double door_air_share, std::size_t place) {
    d.frost_hold.door_air_share = door_air_share;
    return of(d).place[place].idle.outdoor_share;
  };
  for (const std::size_t at_door : {1, 2, 3}) {
    double last = outdoor_share(0.0, at_door);
    const double first = last;
    for (const double share : {0.05, 0.2, 0.5}) {
      CHECK(outdoor_share(share, at_door) > last);
      last = outdoor_share(share, at_door);
    }
    // What moves is a part of what the room's air weighs there, and goes with the share.
    CHECK(last - first == Approx(10.0 * (outdoor_share(0.05, at_door) - first)));
    CHECK(last - first < 0.5 * (1.0 - first));
  }
  for (const std::size_t elsewhere : {0, 4}) CHECK(outdoor_share(0.5, elsewhere) == outdoor_share(0.0, elsewhere));
}

TEST_CASE("wind makes the edge colder") {
  Design d = bare_shop();
  double last[2] = {0.0, 0.0};
  for (const double wind_m_per_s : {0.0, 2.0, 4.0, 10.0, 40.0}) {
    d.climate.wind_m_per_s = wind_m_per_s;
    for (const std::size_t tube : {0, 1}) {
      const double now = of(d).place[tube].idle.outdoor_share;
      CHECK(now > last[tube]);
      last[tube] = now;
    }
  }
}

TEST_CASE("cold comes in along the floor: line, step, tube") {
  const WatchedPlaces places = of(bare_shop());
  CHECK(places.place[2].idle.outdoor_share > places.place[3].idle.outdoor_share);
  CHECK(places.place[3].idle.outdoor_share > places.place[1].idle.outdoor_share);
  Design d = bare_shop();
  d.tube.from_doors_m = 0.6;
  CHECK(of(d).place[1].idle.outdoor_share < places.place[1].idle.outdoor_share);
}

TEST_CASE("tubes that run warm the place") {
  for (const WatchedPlace& place : of(bare_shop()).place) {
    if (place.kind != PlaceKind::tube) continue;
    CHECK(place.running.tube_m2K_per_W > 0.02);
    CHECK(place.running.tube_m2K_per_W < 0.3);
    CHECK(temperature_at(place.running, {10.0, -20.0, 7.0, 50.0}) > temperature_at(place.idle, {10.0, -20.0, 7.0, 0}));
  }
}

TEST_CASE("the user's own places have their own limits") {
  Design d = bare_shop();
  d.watch = {watch(WatchKind::wall_pipe, "sink line"), watch(WatchKind::room_pipe, "hose"),
             watch(WatchKind::drain_trap, "")};
  WatchedPlaces places = of(d);
  const WatchedPlace& wall = named(places, "sink line");
  CHECK(wall.kind == PlaceKind::wall_pipe);
  CHECK(wall.limit_degC == Approx(2.0));
  CHECK(temperature_at(wall.idle, {10.0, -20.0, 7.0, 0.0}) == Approx(7.0));
  CHECK(named(places, "hose").limit_degC == Approx(4.4));
  CHECK(named(places, "drain trap").limit_degC == Approx(2.0));
  CHECK(temperature_at(named(places, "drain trap").idle, {10.0, -20.0, 7.0, 0.0}) == Approx(10.0));
  d.watch[0].limit_degC = 7.0;
  CHECK(named(of(d), "sink line").limit_degC == 7.0);
}

TEST_CASE("every heated room has its own wall, and a room without tube is not known") {
  Design d = shop_with_store();
  CHECK(named(of(d), "tube 150 mm inside the outer wall of the store").room == 1);
  d.room[1].heated_floor = false;
  WatchedPlaces places = of(d);
  CHECK(places.unknown.empty());  // nothing there is watched
  for (const WatchedPlace& place : places.place) CHECK(place.room == 0);
  d.watch = {watch(WatchKind::wall_pipe, "store tap")};
  d.watch[0].room = "store";
  places = of(d);
  REQUIRE(places.unknown.size() == 1);
  CHECK(places.unknown[0].name == "store tap");
  CHECK(places.unknown[0].why.find("no tube lies there") != std::string::npos);
}
