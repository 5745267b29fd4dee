// The edges of a slab as the file describes them, and the memory of solved edges.
#include <numeric>

#include "envelope/shops.hpp"
#include "slabwright/envelope.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

double length_m(const std::vector<EdgeStretch>& edges) {
  return std::accumulate(edges.begin(), edges.end(), 0.0,
                         [](double sum, const EdgeStretch& edge) { return sum + edge.length_m; });
}

const EdgeStretch& door_of(const std::vector<EdgeStretch>& edges) {
  for (const EdgeStretch& edge : edges) {
    if (edge.kind == EdgeKind::big_door) return edge;
  }
  throw std::logic_error("no door");
}

const std::vector<EdgePoint> at_tube{{0.3, 0.06}};

}  // namespace

TEST_CASE("the edges add up to the exposed perimeter") {
  CHECK(length_m(edges_of(bare_shop())) == Approx(42.0));
  Design d = shop_with_store();
  CHECK(length_m(edges_of(d)) == Approx(42.0));
  d.slab.exposed_perimeter_m = 30.0;
  d.room[1].outer_wall_m = 12.0;
  Opening second = d.opening[0];
  second.room = "store";
  d.opening.push_back(second);
  const auto edges = edges_of(d);
  CHECK(edges.size() == 4);
  CHECK(length_m(edges) == Approx(30.0));
}

TEST_CASE("doors and windows for people leave the edge alone") {
  Design d = bare_shop();
  d.opening[0].kind = OpeningKind::door;
  const auto edges = edges_of(d);
  REQUIRE(edges.size() == 1);
  CHECK(edges[0].name == "outer wall");
  CHECK(edges[0].length_m == Approx(42.0));
}

TEST_CASE("an edge is built as the file has it") {
  Design d = bare_shop();
  d.edge.insulation = {1.8};
  d.slab.covering = {0.1};
  const auto edges = edges_of(d);
  const EdgeDetail& wall = edges[0].detail;
  CHECK(std::holds_alternative<WallEdge>(wall.kind));
  CHECK(edges[0].tube_in_m == 0.15);
  CHECK(wall.last_tube_in_m == 0.0);
  CHECK(wall.half_width_m == Approx(108.0 / 42.0));
  CHECK(wall.slab_thickness_m == 0.12);
  CHECK(wall.tube_depth_m == Approx(0.06));
  CHECK(wall.indoor_film_m2K_per_W == Approx(1.0 / 6.5 + 0.1));
  REQUIRE(wall.parts.size() == 2);
  const double board_m = 1.8 * 0.02885;
  CHECK(wall.parts[0].conductivity_W_per_mK == Approx(0.02885).epsilon(1e-3));
  CHECK(wall.parts[0].depth_from_m == 0.12);
  CHECK(wall.parts[0].depth_to_m == Approx(0.12 + board_m).epsilon(1e-3));
  CHECK(wall.parts[1].depth_to_m == 0.6);
  CHECK(wall.parts[1].in_to_m == -0.2);

  const EdgeStretch& door = door_of(edges);
  CHECK(door.tube_in_m == 0.3);
  CHECK(door.detail.last_tube_in_m == Approx(0.15));
  CHECK(door.detail.parts.size() == 1);  // the foam under the slab
}

TEST_CASE("a door's own strip and tube win over the edge's and the tube's") {
  Design d = bare_shop();
  d.edge.door_strip = {1.8};
  const auto strip_m = [&] {
    const EdgePart strip = door_of(edges_of(d)).detail.parts.at(1);
    return strip.in_to_m - strip.in_from_m;
  };
  CHECK(strip_m() == Approx(1.8 * 0.02885).epsilon(1e-3));
  d.opening[0].strip = Insulation{0.9};
  d.opening[0].tube_distance_m = 0.5;
  const EdgeStretch door = door_of(edges_of(d));
  CHECK(strip_m() == Approx(0.9 * 0.02885).epsilon(1e-3));
  CHECK(door.tube_in_m == 0.5);
  d.opening[0].strip = Insulation{0.0};
  CHECK(door_of(edges_of(d)).detail.parts.size() == 1);
}

TEST_CASE("a strip too thick for the leaf reaches into the room") {
  Design d = bare_shop();
  d.edge.door_strip = {5.0};
  CHECK(door_of(edges_of(d)).detail.parts.at(1).in_to_m > 0.0);
  CHECK_NOTHROW(edge_section(door_of(edges_of(d)).detail));
}

TEST_CASE("every slab a file can describe has an edge that can be solved") {
  for (const double area_m2 : {1.0, 30.0, 1e5}) {
    for (const double exposed_m : {0.0, 1.0, 40.0, 2000.0}) {
      Design d = bare_shop();
      d.slab.size.reset();
      d.room[0].size.reset();
      d.slab.area_m2 = area_m2;
      d.slab.exposed_perimeter_m = exposed_m;
      d.edge.insulation = d.edge.door_strip = {9.0};
      d.edge.depth_m = 3.0;
      d.tube.from_doors_m = 5.0;
      for (const EdgeStretch& edge : edges_of(d)) CHECK_NOTHROW(edge_section(edge.detail));
    }
  }
}

TEST_CASE("the same edge is solved once") {
  EdgeFields fields;
  const EdgeDetail detail = door_of(edges_of(bare_shop())).detail;
  const auto first = fields.responses(detail, at_tube).weights;
  CHECK(fields.responses(detail, at_tube).weights == first);
  CHECK(fields.solved() == 1);
}

TEST_CASE("every number of an edge tells it from another") {
  const EdgeDetail plain = door_of(edges_of(bare_shop())).detail;
  std::vector<EdgeDetail> others(13, plain);
  others[0].half_width_m += 0.1;
  others[1].slab_thickness_m += 0.01;
  others[2].concrete_W_per_mK = 2.0;
  others[3].soil_W_per_mK = 1.5;
  others[4].parts.clear();
  EdgeBuild build;
  build.outside = EdgeBoard{{1.0, 0.03}, 0.5};
  others[5] = with_build(plain, build);
  others[6].indoor_film_m2K_per_W = 0.1;
  others[7].outdoor_film_W_per_m2K = 10.0;
  others[8].last_tube_in_m = 0.2;
  others[9].kind = DoorEdge{0.05, 0.04};
  others[11].parts[0].heat_capacity_J_per_m3K = 1e5;
  others[10].kind = WallEdge{0.1};
  others[12].near_air_m += 0.5;
  EdgeFields fields({.first_cell_m = 0.02, .growth = 1.5});
  const auto first = fields.responses(plain, at_tube).weights;
  // What only stores heat moves no steady weight; it is a field of its own nevertheless.
  for (std::size_t i = 0; i < 11; ++i) CHECK(fields.responses(others[i], at_tube).weights != first);
  CHECK(fields.responses(others[11], at_tube).weights == first);
  CHECK(fields.responses(others[12], at_tube).weights != first);
  CHECK(fields.solved() == 14);
  fields.responses(plain, {{0.2, 0.06}});
  CHECK(fields.solved() == 15);
}

TEST_CASE("wind is the outdoor film of every edge: 4 m/s has ISO 6946's 1 / 0.04") {
  Design d = bare_shop();
  for (const EdgeStretch& edge : edges_of(d)) CHECK(edge.detail.outdoor_film_W_per_m2K == Approx(25.0));
  d.climate.wind_m_per_s = 10.0;
  for (const EdgeStretch& edge : edges_of(d)) CHECK(edge.detail.outdoor_film_W_per_m2K == Approx(49.0));
}

TEST_CASE("the first metre at a door has air of its own, a wall's floor none") {
  for (const EdgeStretch& edge : edges_of(bare_shop()))
    CHECK(edge.detail.near_air_m == (edge.kind == EdgeKind::big_door ? 1.0 : 0.0));
}

TEST_CASE("a strip across the slab keeps the cold of a door out") {
  Design d = bare_shop();
  EdgeFields fields;
  const double bare = fields.responses(door_of(edges_of(d)).detail, at_tube).weights[0][edge_row::outdoor];
  d.edge.door_strip = {1.8};
  const double broken = fields.responses(door_of(edges_of(d)).detail, at_tube).weights[0][edge_row::outdoor];
  CHECK(bare > 0.15);
  CHECK(broken < 0.6 * bare);
}
