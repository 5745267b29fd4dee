// The parts of an edge: drawn as described, worth what they should be, nothing where they are nothing.
#include <cmath>

#include "slabwright/conduction_edge.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

const FieldOptions coarse{0.02, 1.5, 3.0, false};
constexpr EdgePoint tube{0.15, 0.075};

EdgeDetail bare(bool at_door) {
  EdgeDetail detail;
  if (at_door)
    detail.kind = DoorEdge{};
  else
    detail.kind = WallEdge{};
  detail.half_width_m = 4.0;
  detail.slab_thickness_m = 0.15;
  detail.tube_depth_m = 0.075;
  return detail;
}

StemWall stem_wall() { return {0.2, 1.2, Footing{0.4, 0.2}}; }

/// A wall with a stem wall; the floor lies 0.2 m above the ground.
EdgeDetail raised() {
  EdgeDetail detail = bare(false);
  detail.grade_depth_m = 0.2;
  return detail;
}

EdgeBuild on_stem_wall() {
  EdgeBuild build;
  build.stem_wall = stem_wall();
  return build;
}

/// Heat down and out with tube plane and room held a kelvin above the rest.
double heat(const EdgeDetail& detail, const FieldOptions& options = coarse) {
  const FieldSection section = held_edge_section(detail);
  return by_driver(section, unit_responses(section, {}, options)).heat_in[edge_row::indoor][edge_row::indoor];
}

double outdoor_weight(const EdgeDetail& detail) {
  return edge_responses(detail, {tube}, coarse).weights[0][edge_row::outdoor];
}

/// Each with a board of this resistance, 50 mm thick.
std::vector<EdgeDetail> boarded(double resistance_m2K_per_W) {
  const InsulatingBoard board{resistance_m2K_per_W, 0.05};
  std::vector<EdgeDetail> all;
  for (const bool at_door : {false, true}) {
    std::vector<EdgeBuild> builds(6, on_stem_wall());
    builds[0].under = {{board, {}}};
    builds[1].under = {{{0.5, 0.03}, {}}, {board, 0.6}};
    builds[2].inside = EdgeBoard{board, 0.6};
    builds[3].outside = EdgeBoard{board, 0.6};
    builds[4].wing = WingBoard{board, 0.6, 0.3};
    builds[5].apron = Apron{0.1, 1.0, board};
    if (at_door) {
      builds.push_back(on_stem_wall());
      builds.back().thermal_break = ThermalBreak{board, 0.0};
    } else {
      builds.pop_back();
    }
    for (const EdgeBuild& build : builds) all.push_back(with_build(bare(at_door), build));
  }
  return all;
}

/// By the first number that differs.
bool same(const FieldSection& a, const FieldSection& b) {
  const auto here = unit_responses(a, {}, coarse), there = unit_responses(b, {}, coarse);
  return std::abs(here.heat_in[0][0] - there.heat_in[0][0]) < 1e-9 * here.heat_in[0][0];
}

}  // namespace

TEST_CASE("the section is drawn as described") {
  EdgeBuild build = on_stem_wall();
  build.under = {{{1.0, 0.05}, {}}, {{2.0, 0.04}, 0.6}};
  build.inside = EdgeBoard{{1.0, 0.05}, 0.5};
  build.outside = EdgeBoard{{2.0, 0.06}, 0.7};
  build.wing = WingBoard{{1.0, 0.05}, 0.8, 0.3};
  const FieldSection section = edge_section(with_build(raised(), build));
  REQUIRE(section.materials.size() == 10);
  const auto at = [&](std::size_t i) {
    const MaterialRectangle& r = section.materials[i];
    return std::vector<double>{r.x0_m, r.x1_m, r.y0_m, r.y1_m, r.conductivity_W_per_mK, r.heat_capacity_J_per_m3K};
  };
  const std::vector<std::vector<double>> drawn{
      {0.0, 4.0, -15.0, 0.0, 2.0, 2.0e6},       {4.0, 19.0, -15.0, -0.2, 2.0, 2.0e6},
      {0.0, 4.0, -0.15, 0.0, 1.75, 2300 * 880}, {0.0, 4.0, -0.2, -0.15, 0.05, 30 * 1450},
      {3.4, 4.0, -0.24, -0.2, 0.02, 30 * 1450}, {3.8, 4.0, -1.2, 0.0, 1.75, 2300 * 880},
      {3.7, 4.1, -1.2, -1.0, 1.75, 2300 * 880}, {3.75, 3.8, -0.5, 0.0, 0.05, 30 * 1450},
      {4.0, 4.06, -0.7, 0.0, 0.03, 30 * 1450},  {4.06, 4.86, -0.55, -0.5, 0.05, 30 * 1450}};
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    INFO(i);
    const std::vector<double> here = at(i);
    for (std::size_t k = 0; k < here.size(); ++k) CHECK(here[k] == Approx(drawn[i][k]).margin(1e-12));
  }
}

TEST_CASE("what stands above the ground outside meets the air") {
  EdgeBuild build = on_stem_wall();
  build.outside = EdgeBoard{{2.0, 0.05}, 0.1};
  const FieldSection section = edge_section(with_build(raised(), build));
  // Room; ground, underside of the board; face of the stem wall below the board, face of the board; deep ground.
  REQUIRE(section.boundaries.size() == 6);
  CHECK(section.boundaries[0].where.to.x_m == Approx(3.8));
  const auto is = [&](std::size_t i, FieldPoint from, FieldPoint to) {
    const FieldSegment& where = section.boundaries[i].where;
    CHECK(where.from.x_m == Approx(from.x_m));
    CHECK(where.from.y_m == Approx(from.y_m).margin(1e-12));
    CHECK(where.to.x_m == Approx(to.x_m));
    CHECK(where.to.y_m == Approx(to.y_m).margin(1e-12));
  };
  is(1, {4.0, -0.2}, {19.0, -0.2});
  is(2, {4.0, -0.1}, {4.05, -0.1});
  is(3, {4.0, -0.2}, {4.0, -0.1});
  is(4, {4.05, -0.1}, {4.05, 0.0});
}

TEST_CASE("a flat edge has one face indoors and one outdoors") {
  for (const bool at_door : {false, true}) {
    const FieldSection section = edge_section(bare(at_door));
    REQUIRE(section.boundaries.size() == 3);
    CHECK(section.boundaries[edge_row::indoor].where.to.x_m == Approx(at_door ? 3.9 : 3.8));
    CHECK(section.boundaries[edge_row::outdoor].where.from.x_m == Approx(at_door ? 3.95 : 4.0));
    CHECK(section.planes[0].where.to.x_m == Approx(at_door ? 3.9 : 3.8));
  }
}

TEST_CASE("more of any board never lets out more heat, nor the cold further in") {
  std::vector<double> heats, weights;
  for (const double resistance : {0.05, 0.5, 1.5, 4.0}) {
    const std::vector<EdgeDetail> details = boarded(resistance);
    for (std::size_t i = 0; i < details.size(); ++i) {
      INFO(i << " at " << resistance);
      const double now = heat(details[i]), weight = outdoor_weight(details[i]);
      if (heats.size() <= i) {
        heats.push_back(now);
        weights.push_back(weight);
      }
      CHECK(now <= heats[i] * (1.0 + 1e-9));
      // At a bare door much foam under the whole slab cuts the tube off from ground that is warmer than the air: the
      // air's weight then rises a little, and deep ground's falls.
      const bool under_bare_door = i == 5;
      CHECK(weight <= weights[i] + (under_bare_door ? 0.005 : 1e-9));
      heats[i] = now;
      weights[i] = weight;
    }
  }
}

TEST_CASE("a wider wing lets out no more heat") {
  double before = heat(bare(false));
  for (const double width_m : {0.2, 0.6, 1.2, 2.4}) {
    EdgeBuild build;
    build.wing = WingBoard{{1.5, 0.05}, width_m, 0.3};
    const double now = heat(with_build(bare(false), build));
    CHECK(now < before);
    before = now;
  }
}

TEST_CASE("a floor higher above the ground loses more") {
  const auto at = [](double grade_m) {
    EdgeDetail detail = bare(false);
    detail.grade_depth_m = grade_m;
    return heat(with_build(detail, on_stem_wall()));
  };
  CHECK(at(0.1) > at(0.0));
  CHECK(at(0.4) > at(0.1));
}

TEST_CASE("details of the concrete's own stuff and of no extent change nothing") {
  const EdgeDetail door = bare(true);
  EdgeBuild build;
  const double concrete = door.concrete_W_per_mK;
  build.thermal_break = ThermalBreak{{0.05 / concrete, 0.05}, 0.0};
  build.thickened = ThickenedEdge{0.3, door.slab_thickness_m};
  // New lines, so another grid: the usual one's own error in a heat.
  CHECK(heat(with_build(door, build), {}) == Approx(heat(door, {})).epsilon(2e-3));
  EdgeDetail soil = door;
  soil.parts.push_back({-3.0, -1.0, 0.0, 0.5, soil.soil_W_per_mK, soil_J_per_m3K});
  CHECK(heat(soil, {}) == Approx(heat(door, {})).epsilon(2e-3));
  EdgeDetail far = door;
  far.parts.push_back({-40.0, -30.0, 0.0, 0.5, 0.1, 1e5});
  CHECK(same(edge_section(far), edge_section(door)));
  CHECK(same(edge_section(with_build(door, {})), edge_section(door)));
}

TEST_CASE("with a stem wall of concrete and no board inside, the slab may as well run out over it") {
  // A board beside the wall parts the two; at a door it begins below the slab.
  EdgeBuild build = on_stem_wall();
  build.inside = EdgeBoard{{1.5, 0.05}, 0.6};
  const EdgeDetail wall = with_build(bare(false), build), door = with_build(bare(true), build);
  CHECK(wall.parts.back().depth_from_m == 0.0);
  CHECK(door.parts.back().depth_from_m == 0.15);
  CHECK(outdoor_weight(wall) < 0.7 * outdoor_weight(with_build(bare(false), on_stem_wall())));
}

TEST_CASE("the sections for weights and for heat are one section") {
  // Held at the room's own temperature a plane passes no more heat than the drivers' sum: found once, from both sides.
  for (const EdgeDetail& detail : boarded(1.0)) {
    const FieldSection section = held_edge_section(detail);
    const UnitResponses all = by_driver(section, unit_responses(section, {}, coarse));
    const double in = all.heat_in[0][0], out = -all.heat_in[1][0] - all.heat_in[2][0];
    CHECK(in == Approx(out).epsilon(1e-9));
    CHECK(all.heat_in.size() == 3);
    CHECK(all.heat_in[0][1] == Approx(all.heat_in[1][0]).epsilon(1e-9));
    CHECK(in > edge_responses(detail, {}, coarse).heat_in[0][0]);
  }
}
