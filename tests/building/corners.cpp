// Places at corners of the floor, under its edge, at the ends of doors and outdoors.
#include <algorithm>

#include "building/watched.hpp"
#include "slabwright/tube.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const WatchedPlace* find(const WatchedPlaces& places, const std::string& word) {
  const auto found = std::find_if(places.place.begin(), places.place.end(),
                                  [&](const WatchedPlace& p) { return p.name.find(word) != std::string::npos; });
  return found == places.place.end() ? nullptr : &*found;
}

WatchedPlace named(const WatchedPlaces& places, const std::string& word) {
  const WatchedPlace* found = find(places, word);
  if (!found) throw std::logic_error("no such place: " + word);
  return *found;
}

WatchEntry watch(WatchKind kind, double toward_outdoor_share = 0.1) {
  WatchEntry entry;
  entry.kind = kind;
  entry.toward_outdoor_share = toward_outdoor_share;
  return entry;
}

constexpr Drivers frost{10.0, -20.0, 7.0, 0.0};

}  // namespace

TEST_CASE("a corner's weights are the product of its edges' at the bend of the tube") {
  const Design d = bare_shop();
  EdgeFields fields({.first_cell_m = 0.02, .growth = 1.4});
  const auto envelope = envelope_of(d);
  const WatchedPlaces places = watched_places(d, *envelope.value, fields);
  const WatchedPlace corner = named(places, "corners");
  CHECK(corner.kind == PlaceKind::tube);
  CHECK(corner.decides);
  REQUIRE(corner.edge);
  // r (1 - 1 / sqrt 2) of a bend of eight diameters.
  CHECK(corner.at.in_m == Approx(0.15 + 0.292893 * find_tube("16 x 2 mm")->least_bend_radius_m).epsilon(1e-5));
  const EdgeDetail& detail = envelope.value->edge[*corner.edge].detail;
  const auto edge = fields.responses(detail, {corner.at, {detail.half_width_m - 0.2, detail.tube_depth_m}}).weights;
  const double in = edge[0][edge_row::indoor], out = edge[0][edge_row::outdoor];
  CHECK(corner.idle.indoor_share == Approx(in * in).epsilon(1e-9));
  CHECK(corner.idle.outdoor_share == Approx(1.0 - (1.0 - out) * (1.0 - out)).epsilon(1e-9));
  CHECK(corner.idle.ground_share == Approx(1.0 - corner.idle.indoor_share - corner.idle.outdoor_share).epsilon(1e-9));
  CHECK(corner.corner_share == Approx((1.0 - in * in) / (1.0 - in)).epsilon(1e-9));
  const double heat = edge[0][edge_row::tube_heat], middle = edge[1][edge_row::tube_heat];
  CHECK(corner.idle.tube_m2K_per_W == Approx(heat * heat / middle).epsilon(1e-9));
  CHECK(corner.idle.tube_m2K_per_W < heat);
}

TEST_CASE("a corner is colder than the wall unless the bend takes the tube further in, and every place has its point") {
  Design d = bare_shop();
  for (const double from_walls_m : {0.15, 0.3, 0.6}) {
    d.tube.from_walls_m = from_walls_m;
    const WatchedPlaces places = watched_in(d);
    CHECK(temperature_at(named(places, "corners").idle, frost) <
          temperature_at(named(places, "mm inside").idle, frost));
    for (const WatchedPlace& place : places.place) {
      const bool corner = place.name.find("at the corners") != std::string::npos;
      CHECK((place.corner_share > 1.0) == corner);
      CHECK((!place.edge || place.at.depth_m >= 0.0));
    }
  }
}

TEST_CASE("a corner belongs to the room that it lies in") {
  Design d = shop_with_store();
  CHECK(find(watched_in(d), "corners of the outer wall of the shop"));
  CHECK(find(watched_in(d), "corners of the outer wall of the store"));  // it may have one
  const auto box = [](double x0, double x1) { return std::vector<Place>{{x0, 0.0}, {x1, 0.0}, {x1, 9.0}, {x0, 9.0}}; };
  d.room[0].outline = box(0.0, 4.0);
  d.room[1].outline = box(4.0, 8.0);  // between two others
  d.room.push_back(d.room[0]);
  d.room[2].name = "office";
  d.room[2].outline = box(8.0, 12.0);
  for (Room& room : d.room) room.size.reset();
  const WatchedPlaces places = watched_in(d);
  CHECK(find(places, "corners of the outer wall of the shop"));
  CHECK_FALSE(find(places, "corners of the outer wall of the store"));
  CHECK(find(places, "corners of the outer wall of the office"));
}

TEST_CASE("a re-entrant corner is none") {
  Design d = shop_with_store();
  d.slab.size.reset();
  d.slab.outline = {{0, 0}, {12, 0}, {12, 9}, {6, 9}, {6, 5}, {0, 5}};
  for (Room& room : d.room) room.size.reset();
  d.room[0].outline = {{0, 0}, {12, 0}, {12, 9}, {8, 9}, {8, 4}, {0, 4}};
  d.room[1].outline = {{5, 4}, {8, 4}, {8, 6}, {6, 6}, {6, 5}, {5, 5}};  // round the inner corner
  CHECK(find(watched_in(d), "corners of the outer wall of the shop"));
  CHECK_FALSE(find(watched_in(d), "corners of the outer wall of the store"));
}

TEST_CASE("slab corner and soil are reported, further from the room than the tube") {
  Design d = bare_shop();
  const auto soil = [&] { return named(watched_in(d), "soil under"); };
  for (const std::string word : {"bottom corner", "soil under"}) {
    const WatchedPlace place = named(watched_in(d), word);
    CHECK_FALSE(place.decides);
    CHECK(place.limit_degC == 0.0);
    CHECK(place.idle.indoor_share < named(watched_in(d), "tube 150").idle.indoor_share);
  }
  const double foam_m = 1.8 * 0.0254 / 0.880;  // an inch of XPS to R-5
  CHECK(soil().at.depth_m == Approx(0.12 + foam_m).epsilon(0.02));
  CHECK(soil().at.in_m == Approx(-0.1));
  d.edge.thickened_depth_m = 0.4;
  d.edge.thickened_width_m = 0.3;
  CHECK(soil().name == "soil under the thickened edge at the outer wall");
  CHECK(soil().at.depth_m == Approx(0.4));
  CHECK(soil().at.in_m == Approx(-0.05));
  d = bare_shop();
  d.edge.stem_wall_m = 0.2;
  d.edge.footing_depth_m = 1.0;
  d.edge.footing_width_m = 0.4;
  d.edge.footing_thickness_m = 0.2;
  CHECK(soil().name == "soil under the footing at the outer wall");
  CHECK(soil().at.depth_m == Approx(1.0));
  const double shallow = soil().idle.outdoor_share;
  d.edge.footing_depth_m = 1.5;
  CHECK(soil().idle.outdoor_share < shallow);
}

TEST_CASE("at the end of a door the colder of door and wall is the door's place") {
  Design d = bare_shop();
  const auto door_row = [&] { return *named(watched_in(d), "inside the big door").edge; };
  const std::size_t wall = *named(watched_in(d), "tube 150").edge;
  CHECK(door_row() != wall);
  d.opening[0].strip = Insulation{4.0};  // a better edge than the bare wall's
  d.frost_hold.door_air_share = 0.0;
  CHECK(door_row() == wall);
  const WatchedPlace tube = named(watched_in(d), "inside the big door");
  CHECK(tube.at.in_m == Approx(0.3));
  CHECK(tube.length_m == Approx(3.0));
  d.edge.insulation = {1.8};
  d.opening[0].strip = Insulation{1.0};
  CHECK(door_row() != wall);
}

TEST_CASE("sprinklers, hose bibs and lines outdoors") {
  Design d = bare_shop();
  d.watch = {watch(WatchKind::sprinkler), watch(WatchKind::hose_bib, 0.5), watch(WatchKind::outdoor_line)};
  WatchedPlaces places = watched_in(d);
  CHECK(named(places, "sprinkler line").kind == PlaceKind::room_pipe);
  CHECK(named(places, "sprinkler line").limit_degC == 4.4);
  CHECK(temperature_at(named(places, "sprinkler line").idle, frost) == Approx(10.0));
  CHECK(named(places, "hose bib").kind == PlaceKind::wall_pipe);
  CHECK(temperature_at(named(places, "hose bib").idle, frost) == Approx(-5.0));
  CHECK(named(places, "outdoor line").kind == PlaceKind::outdoor_line);
  CHECK(temperature_at(named(places, "outdoor line").idle, frost) == -20.0);
  CHECK(named(places, "outdoor line").limit_degC == Approx(2.0));
  CHECK(named(places, "outdoor line").decides);
}

TEST_CASE("a water heat pump has lines outdoors, and only glycol keeps them") {
  Design d = bare_shop();
  CHECK_FALSE(find(watched_in(d), "heat pump"));
  d.second_source.kind = SecondSourceKind::heat_pump;
  CHECK_FALSE(find(watched_in(d), "heat pump"));
  d.second_source.kind = SecondSourceKind::water_heat_pump;
  CHECK(named(watched_in(d), "outdoor lines of the heat pump").limit_degC == Approx(2.0));
  CHECK(named(watched_in(d), "outdoor lines of the heat pump").decides);
  d.fluid = {FluidKind::propylene_glycol, {0.5, false}};
  const WatchedPlace kept = named(watched_in(d), "outdoor lines of the heat pump");
  CHECK(kept.limit_degC == Approx(freezing_point_degC(mixture_of(d.fluid)) + 2.0));
  CHECK(kept.decides == (kept.limit_degC > -27.0));
  CHECK_FALSE(kept.decides);
}
