// The slab's way down to the ground.
#include <cmath>
#include <numbers>

#include "envelope/shops.hpp"
#include "slabwright/conduction_time.hpp"
#include "slabwright/envelope.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("ISO 13370 stands beside the field, from the tube plane down") {
  const GroundPath ground = ground_of(bare_shop());
  const double B_m = 2.0 * 108.0 / 42.0, below_tube = 0.06 / 1.75;
  const double d_m = 0.2 + 2.0 * (below_tube + 1.8 + 0.04);  // F.(3), wall 0.2 m, no film at the tube plane
  const double pi = std::numbers::pi;
  const double U = d_m < B_m ? 4.0 / (pi * B_m + d_m) * std::log(pi * B_m / d_m + 1.0) : 2.0 / (0.457 * B_m + d_m);
  CHECK(ground.dimension_m == Approx(B_m));
  CHECK(ground.iso13370.plane_W_per_m2K == Approx(U));
  CHECK(ground.iso13370.difference_share == Approx(U / ground.plane_W_per_m2K - 1.0));
  const double delta_m = std::sqrt(3.15e7 * 2.0 / (pi * 2.0e6));
  const double swing_W_per_K = 0.37 * 42.0 * 2.0 * std::log(delta_m / d_m + 1.0);  // annex H
  CHECK(ground.iso13370.swing_share == Approx(swing_W_per_K / (108.0 * U)));
  CHECK(ground.iso13370.effective_degC == Approx(7.0 - 12.0 * ground.iso13370.swing_share));
}

TEST_CASE("the way down is the edges' heat over the floor, a share to the air and a share to deep ground") {
  const Design d = bare_shop();
  EdgeFields fields;
  double outdoor = 0.0, deep = 0.0;
  for (const EdgeStretch& edge : edges_of(d)) {
    const EdgeHeat heat = fields.heat_down(edge.detail);
    outdoor += edge.length_m * heat.outdoor_W_per_mK;
    deep += edge.length_m * heat.ground_W_per_mK;
  }
  const GroundPath ground = ground_of(d);
  CHECK(ground.plane_W_per_m2K == Approx((outdoor + deep) / 108.0));
  CHECK(ground.outdoor_share == Approx(outdoor / (outdoor + deep)));
  CHECK(ground.outdoor_share + ground.deep_share == Approx(1.0));
  CHECK(1.0 / ground.plane_W_per_m2K - 1.0 / ground.underside_W_per_m2K == Approx(0.06 / 1.75));
  // A year's wave of 12 K round 7 degC, and on its coldest month a spell down to the weather planned for.
  const double spell_K = 7.0 - 12.0 - *d.climate.outdoor_degC;
  CHECK(spell_K > 0.0);
  const double colder_K = 12.0 * ground.swing_share + spell_K * ground.spell_share;
  CHECK(ground.effective_degC == Approx(7.0 - ground.outdoor_share * colder_K));
}

TEST_CASE("a cold spell is followed less than a year, and more where the edge is bare") {
  Design d = bare_shop();
  const GroundPath bare = ground_of(d);
  CHECK(bare.spell_share > 0.1);
  CHECK(bare.spell_share < bare.swing_share);
  d.edge.insulation = d.edge.door_strip = {1.8};
  CHECK(ground_of(d).spell_share < 0.6 * bare.spell_share);
  d.climate.outdoor_degC.reset();
  CHECK(ground_of(d).effective_degC > ground_of(bare_shop()).effective_degC);
}

TEST_CASE("the heat of a year follows the outdoor air less and later than steady heat would") {
  Design d = bare_shop();
  const double bare = ground_of(d).swing_share;
  d.edge.insulation = d.edge.door_strip = {1.8};
  EdgeFields fields;
  const double boarded = ground_of(d, edges_of(d), fields).swing_share;
  CHECK(bare < 0.8);
  CHECK(boarded < 0.8 * bare);
  CHECK(boarded > 0.2);
  for (const EdgeStretch& edge : edges_of(d)) {
    const EdgeHeat heat = fields.heat_down(edge.detail);
    CHECK(heat.year_behind_W_per_mK > 0.0);
    CHECK(std::hypot(heat.year_with_W_per_mK, heat.year_behind_W_per_mK) < heat.outdoor_W_per_mK);
    const FieldSection section = held_edge_section(edge.detail);
    const SwingResponses fine = swing_responses(section, {}, 365.0 * 86400.0, {0.005, 1.2, 1.0, false});
    const auto outdoor = [&](const auto& heat_in) { return -heat_by_driver(section, heat_in)[0][1]; };
    // The fine grid's own heat is 0.1 to 0.3 % high.
    CHECK(heat.year_with_W_per_mK == Approx(outdoor(fine.heat_in_with)).epsilon(0.01));
    CHECK(heat.year_behind_W_per_mK == Approx(outdoor(fine.heat_in_behind)).epsilon(0.02));
  }
}

TEST_CASE("soil that stores nothing follows the air at once") {
  // A year in soil of next to no capacity: steady heat, without lag.
  const Design d = bare_shop();
  FieldSection section = held_edge_section(edges_of(d)[0].detail);
  for (MaterialRectangle& material : section.materials) material.heat_capacity_J_per_m3K = 1.0;
  const FieldOptions grid{0.04, 1.5, 2.0, false};
  const SwingResponses swing = swing_responses(section, {}, 365.0 * 86400.0, grid);
  const UnitResponses steady = by_driver(section, unit_responses(section, {}, grid));
  CHECK(heat_by_driver(section, swing.heat_in_with)[0][1] == Approx(steady.heat_in[0][1]).epsilon(1e-6));
}

TEST_CASE("heat from the grid of the ground path is within 0.3 % of a far finer one") {
  Design d = bare_shop();
  d.edge.insulation = {1.8};
  EdgeFields fields;
  for (const EdgeStretch& edge : edges_of(d)) {
    const FieldSection section = held_edge_section(edge.detail);
    const UnitResponses fine = by_driver(section, unit_responses(section, {}, {0.002, 1.1, 0.5, false}));
    const EdgeHeat heat = fields.heat_down(edge.detail);
    CHECK(heat.outdoor_W_per_mK + heat.ground_W_per_mK == Approx(fine.heat_in[0][0]).epsilon(0.003));
    CHECK(heat.outdoor_W_per_mK == Approx(-fine.heat_in[1][0]).epsilon(0.004));
  }
}

TEST_CASE("a floor without an edge loses heat to deep ground alone") {
  Design d = bare_shop();
  d.slab.exposed_perimeter_m = 0.0;
  d.opening.clear();
  const GroundPath ground = ground_of(d);
  CHECK(ground.outdoor_share == 0.0);
  CHECK(ground.effective_degC == 7.0);
  const double foam_m = 1.8 * 0.028847, soil_m = 15.0 - 0.12 - foam_m;
  CHECK(ground.plane_W_per_m2K == Approx(1.0 / (0.06 / 1.75 + 1.8 + soil_m / 2.0)).epsilon(1e-4));
}

TEST_CASE("more exposed perimeter loses more, whatever the rooms' walls say") {
  Design d = bare_shop();
  d.room[0].outer_wall_m = 42.0;
  const double before = ground_of(d).plane_W_per_m2K;
  d.slab.exposed_perimeter_m = 50.0;
  CHECK(ground_of(d).plane_W_per_m2K > 1.05 * before);
  d.slab.exposed_perimeter_m = 30.0;
  CHECK(ground_of(d).plane_W_per_m2K < 0.9 * before);
}

TEST_CASE("a wide floor's middle joins on without a step") {
  const auto at = [](double side_m) {
    Design d = bare_shop();
    d.opening.clear();
    d.slab.size = d.room[0].size = Size{side_m, side_m};
    return ground_of(d).plane_W_per_m2K;
  };
  // Half widths of 14.9 and 15.1 m, either side of the widest section.
  CHECK(at(60.4) == Approx(at(59.6)).epsilon(0.02));
  CHECK(at(60.4) < at(59.6));
}

TEST_CASE("foam under the slab or at its edge lets less heat down") {
  Design d = bare_shop();
  const double plain = ground_of(d).plane_W_per_m2K;
  d.edge.insulation = {1.8};
  CHECK(ground_of(d).plane_W_per_m2K < plain);
  d = bare_shop();
  d.insulation.under = {0.0};
  CHECK(ground_of(d).plane_W_per_m2K > 1.5 * plain);
}

TEST_CASE("any slab a file can describe has a way down") {
  for (const double area_m2 : {1.0, 30.0, 1e5}) {
    for (const double exposed_m : {0.0, 1.0, 40.0, 2000.0}) {
      for (const double edge_m2K_per_W : {0.0, 9.0}) {
        Design d = bare_shop();
        d.slab.size.reset();
        d.slab.area_m2 = area_m2;
        d.slab.exposed_perimeter_m = exposed_m;
        d.insulation.under = {0.0};
        d.edge.insulation = {edge_m2K_per_W};
        d.edge.depth_m = 3.0;
        const GroundPath ground = ground_of(d);
        CHECK(ground.plane_W_per_m2K > 0.0);
        CHECK(ground.underside_W_per_m2K > ground.plane_W_per_m2K);
        CHECK(std::isfinite(ground.effective_degC));
      }
    }
  }
}
