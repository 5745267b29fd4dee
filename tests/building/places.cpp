// Which places are watched, against which limits.
#include "building/watched.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const WatchedPlace& named(const WatchedPlaces& places, const std::string& name) {
  for (const WatchedPlace& place : places.place) {
    if (place.name == name) return place;
  }
  throw std::logic_error("no such place: " + name);
}

/// Where the bare shop's places stand in the list.
constexpr std::size_t wall_tube = 0, corner_tube = 1, slab_corner = 2, soil = 3, door_tube = 4, floor_line = 5,
                      step = 6, air = 7;

const WatchedPlace& at(const WatchedPlaces& places, std::size_t row) { return places.place.at(row); }

WatchEntry watch(WatchKind kind, const std::string& name) {
  WatchEntry entry;
  entry.name = name;
  entry.kind = kind;
  entry.toward_outdoor_share = 0.1;
  return entry;
}

}  // namespace

TEST_CASE("wall, door, floor line and manifold are watched without being asked") {
  const WatchedPlaces places = watched_in(bare_shop());
  CHECK(places.unknown.empty());
  std::vector<std::string> names;
  for (const WatchedPlace& place : places.place) names.push_back(place.name);
  CHECK(names == std::vector<std::string>{"tube 150 mm inside the outer wall", "tube at the corners of the outer wall",
                                          "bottom corner of the slab at the outer wall",
                                          "soil under the slab's rim at the outer wall",
                                          "tube 300 mm inside the big door", "floor line at the big door",
                                          "floor 25 mm inside the big door", "air round manifold and boiler"});
  CHECK(at(places, wall_tube).length_m == Approx(39.0));
  CHECK(at(places, door_tube).length_m == Approx(3.0));
  for (const WatchedPlace& place : places.place) {
    CHECK(place.decides == (place.kind == PlaceKind::tube || place.kind == PlaceKind::room_air));
    CHECK(place.idle.indoor_share + place.idle.outdoor_share + place.idle.ground_share == Approx(1.0));
    CHECK(place.running.indoor_share + place.running.outdoor_share + place.running.ground_share == Approx(1.0));
  }
}

TEST_CASE("places are named in the reader's units") {
  Design d = bare_shop();
  d.units = System::us;
  d.tube.from_walls_m = 6 * 0.0254;
  d.tube.from_doors_m = 12 * 0.0254;
  const WatchedPlaces places = watched_in(d);
  CHECK(at(places, wall_tube).name == "tube 6 in inside the outer wall");
  CHECK(at(places, door_tube).name == "tube 12 in inside the big door");
  CHECK(at(places, step).name == "floor 1 in inside the big door");
}

TEST_CASE("limits are the freezing point and a margin, or the limit of practice in air") {
  const WatchedPlaces places = watched_in(bare_shop());
  CHECK(at(places, wall_tube).freezes_degC == Approx(0.0).margin(1e-9));
  CHECK(at(places, wall_tube).limit_degC == Approx(2.0));
  CHECK(at(places, floor_line).limit_degC == 0.0);
  CHECK(at(places, air).limit_degC == 4.4);
}

TEST_CASE("glycol lowers the tube's limit, and the air is then only reported") {
  Design d = bare_shop();
  d.fluid.kind = FluidKind::propylene_glycol;
  d.fluid.glycol = {0.3, false};
  const WatchedPlaces places = watched_in(d);
  CHECK(at(places, wall_tube).freezes_degC == freezing_point_degC({FluidKind::propylene_glycol, 0.3}));
  CHECK(at(places, wall_tube).limit_degC < -9.0);
  CHECK_FALSE(at(places, air).decides);
  CHECK(at(places, air).limit_degC == 0.0);
  CHECK(at(places, floor_line).freezes_degC == 0.0);  // what lies on the floor is water
}

TEST_CASE("the air on the first metre at a door stands part of the way to outdoor air") {
  Design d = bare_shop();
  const auto outdoor_share = [&](double door_air_share, std::size_t place) {
    d.frost_hold.door_air_share = door_air_share;
    return watched_in(d).place[place].idle.outdoor_share;
  };
  for (const std::size_t at_door : {door_tube, floor_line, step}) {
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
  for (const std::size_t elsewhere : {wall_tube, corner_tube, air})
    CHECK(outdoor_share(0.5, elsewhere) == outdoor_share(0.0, elsewhere));
}

TEST_CASE("wind makes the edge colder") {
  Design d = bare_shop();
  double last[2] = {0.0, 0.0};
  for (const double wind_m_per_s : {0.0, 2.0, 4.0, 10.0, 40.0}) {
    d.climate.wind_m_per_s = wind_m_per_s;
    for (const std::size_t tube : {wall_tube, corner_tube}) {
      const double now = watched_in(d).place[tube].idle.outdoor_share;
      CHECK(now > last[tube]);
      last[tube] = now;
    }
  }
}

TEST_CASE("cold comes in along the floor: line, step, tube") {
  const WatchedPlaces places = watched_in(bare_shop());
  CHECK(at(places, floor_line).idle.outdoor_share > at(places, step).idle.outdoor_share);
  CHECK(at(places, step).idle.outdoor_share > at(places, door_tube).idle.outdoor_share);
  Design d = bare_shop();
  d.tube.from_doors_m = 0.6;
  CHECK(at(watched_in(d), door_tube).idle.outdoor_share < at(places, door_tube).idle.outdoor_share);
}

TEST_CASE("tubes that run warm the place") {
  for (const WatchedPlace& place : watched_in(bare_shop()).place) {
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
  WatchedPlaces places = watched_in(d);
  const WatchedPlace& wall = named(places, "sink line");
  CHECK(wall.kind == PlaceKind::wall_pipe);
  CHECK(wall.limit_degC == Approx(2.0));
  CHECK(temperature_at(wall.idle, {10.0, -20.0, 7.0, 0.0}) == Approx(7.0));
  CHECK(named(places, "hose").limit_degC == Approx(4.4));
  CHECK(named(places, "drain trap").limit_degC == Approx(2.0));
  CHECK(temperature_at(named(places, "drain trap").idle, {10.0, -20.0, 7.0, 0.0}) == Approx(10.0));
  d.watch[0].limit_degC = 7.0;
  CHECK(named(watched_in(d), "sink line").limit_degC == 7.0);
}

TEST_CASE("every heated room has its own wall, and a room without tube is not known") {
  Design d = shop_with_store();
  CHECK(named(watched_in(d), "tube 150 mm inside the outer wall of the store").room == 1);
  d.room[1].heated_floor = false;
  WatchedPlaces places = watched_in(d);
  CHECK(places.unknown.empty());  // nothing there is watched
  for (const WatchedPlace& place : places.place) CHECK(place.room == 0);
  d.watch = {watch(WatchKind::wall_pipe, "store tap")};
  d.watch[0].room = "store";
  places = watched_in(d);
  REQUIRE(places.unknown.size() == 1);
  CHECK(places.unknown[0].name == "store tap");
  CHECK(places.unknown[0].why.find("no tube lies there") != std::string::npos);
}
