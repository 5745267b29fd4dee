// What a floor gives for given water, and the water that a heat asks for.
#include <cmath>
#include <limits>
#include <stdexcept>

#include "section/sections.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double tube_mK_per_W = 0.13;
/// The film is settled to 1e-9 K of rise; heat follows by at most some 15 W/m2K.
constexpr double settled_W_per_m2 = 2e-8;

}  // namespace

TEST_CASE("the film is the law's for the rise it stands over") {
  CHECK(rc::check([] {
    const Section s = any_section();
    const double water = static_cast<double>(*rc::gen::inRange(-10, 90));
    const double room = static_cast<double>(*rc::gen::inRange(-5, 30));
    const FloorState floor = floor_from_water(s, water, s.wall_mK_per_W, room);
    const double rise_K = floor.floor_mean_degC - room;
    RC_ASSERT(std::abs(floor_film(rise_K).heat_W_per_m2 - floor.up_W_per_m2) < settled_W_per_m2);
    RC_ASSERT(std::abs(floor.film_W_per_m2K * rise_K - floor.up_W_per_m2) < settled_W_per_m2);
  }));
}

TEST_CASE("the water asked for gives the heat asked for") {
  CHECK(rc::check([] {
    const Section s = any_section();
    const double up = static_cast<double>(*rc::gen::inRange(-400, 2000)) / 10.0;
    const WaterWanted water = water_for(s, up, tube_mK_per_W, 15.0);
    const FloorState again = floor_from_water(s, water.water_degC, tube_mK_per_W, 15.0);
    RC_ASSERT(std::abs(water.floor.up_W_per_m2 - up) < 1e-9);
    RC_ASSERT(std::abs(again.up_W_per_m2 - up) < settled_W_per_m2);
    RC_ASSERT(std::abs(again.down_W_per_m2 - water.floor.down_W_per_m2) < settled_W_per_m2);
    RC_ASSERT(std::abs(again.sensor_degC - water.floor.sensor_degC) < settled_W_per_m2);
  }));
}

TEST_CASE("the water's heat is what goes up and down") {
  for (const Section& s : sections()) {
    const FloorState floor = floor_from_water(s, 38.0, tube_mK_per_W, 16.0);
    const double from_water_W_per_m2 = (38.0 - floor.tube_outside_degC) / tube_mK_per_W / s.spacing_m;
    CHECK(floor.up_W_per_m2 + floor.down_W_per_m2 == Approx(from_water_W_per_m2).epsilon(1e-11));
  }
}

TEST_CASE("temperatures fall from the water to the room") {
  for (const Section& s : sections()) {
    const FloorState floor = floor_from_water(s, 38.0, tube_mK_per_W, 16.0);
    CHECK(38.0 > floor.tube_outside_degC);
    CHECK(floor.tube_outside_degC > floor.sensor_degC);
    CHECK(floor.floor_over_tube_degC > floor.floor_mean_degC);
    CHECK(floor.floor_mean_degC > floor.floor_midway_degC);
    CHECK(floor.floor_midway_degC > 16.0);
  }
}

TEST_CASE("warmer water gives more, up and down") {
  for (const Section& s : sections()) {
    FloorState last = floor_from_water(s, -5.0, tube_mK_per_W, 16.0);
    for (double water = -4.5; water <= 60.0; water += 0.5) {
      const FloorState now = floor_from_water(s, water, tube_mK_per_W, 16.0);
      CHECK(now.up_W_per_m2 > last.up_W_per_m2);
      if (s.underside_W_per_m2K > 0.0) CHECK(now.down_W_per_m2 > last.down_W_per_m2);
      last = now;
    }
  }
}

TEST_CASE("each part of the section moves the heat the way it should") {
  const auto heat = [](auto change) {
    Section s = shop_slab();
    change(s);
    return floor_from_water(s, 38.0, tube_mK_per_W, 16.0);
  };
  const FloorState base = heat([](Section&) {});
  CHECK(heat([](Section& s) { s.underside_W_per_m2K = 0.2; }).down_W_per_m2 < base.down_W_per_m2);
  CHECK(heat([](Section& s) { s.spacing_m = 0.2286; }).up_W_per_m2 > base.up_W_per_m2);
  CHECK(heat([](Section& s) { s.covering_m2K_per_W = 0.1; }).up_W_per_m2 < base.up_W_per_m2);
  CHECK(heat([](Section& s) { s.covering_m2K_per_W = 0.1; }).down_W_per_m2 > base.down_W_per_m2);
  CHECK(heat([](Section& s) { s.concrete_W_per_mK = 2.0; }).up_W_per_m2 > base.up_W_per_m2);
  CHECK(heat([](Section& s) { s.below_degC = 0.0; }).down_W_per_m2 > base.down_W_per_m2);
  CHECK(floor_from_water(shop_slab(), 38.0, 0.3, 16.0).up_W_per_m2 < base.up_W_per_m2);
}

TEST_CASE("a floor colder than its room takes heat from it") {
  const FloorState floor = floor_from_water(shop_slab(), 5.0, tube_mK_per_W, 18.0);
  CHECK(floor.up_W_per_m2 < 0.0);
  CHECK(floor.film_W_per_m2K == Approx(6.5));
  CHECK(floor.floor_mean_degC < 18.0);
}

TEST_CASE("no heat upward needs water that only makes up for what the ground takes") {
  const WaterWanted water = water_for(shop_slab(), 0.0, tube_mK_per_W, 15.0);
  CHECK(water.water_degC > 15.0);
  CHECK(water.floor.floor_mean_degC == Approx(15.0).epsilon(1e-12));
  CHECK(water.floor.film_W_per_m2K == 6.0);
  Section adiabatic = shop_slab();
  adiabatic.underside_W_per_m2K = 0.0;
  CHECK(water_for(adiabatic, 0.0, tube_mK_per_W, 15.0).water_degC == Approx(15.0).epsilon(1e-12));
}

// Trade tables of floor output for 12 in spacing in a bare 4 in slab come to 0.7 to 0.9 Btu/h ft2 F from mean water to
// room (worked back, with a room of 70 F taken; no oracle, but a section far outside would be wrong).
TEST_CASE("a bare slab gives what the trade finds") {
  Section s = shop_slab();
  s.cover_above_m = s.cover_below_m = 0.0508;
  const FloorState floor = floor_from_water(s, 38.0, tube_mK_per_W, 21.1);
  const double coefficient_W_per_m2K = floor.up_W_per_m2 / (38.0 - 21.1);
  CHECK(coefficient_W_per_m2K > 0.7 * 5.678263);
  CHECK(coefficient_W_per_m2K < 0.9 * 5.678263);
}

// Under the thinnest cover a file may give and over cold ground the heat that arrives at the floor is a small
// difference of large ones, and the film moves it the other way.
TEST_CASE("a floor whose heat the ground all but takes up still settles") {
  CHECK(rc::check([] {
    Section s = any_section();
    s.cover_above_m = s.outside_diameter_m * 0.5 + 0.010;
    s.underside_W_per_m2K = 5.0;
    s.covering_m2K_per_W = 0.0;
    const double balance_degC = water_for(s, 0.0, tube_mK_per_W, 20.0).water_degC;
    const double water = balance_degC + static_cast<double>(*rc::gen::inRange(-1000, 1000)) / 1000.0;
    const FloorState floor = floor_from_water(s, water, tube_mK_per_W, 20.0);
    RC_ASSERT(std::abs(floor_film(floor.floor_mean_degC - 20.0).heat_W_per_m2 - floor.up_W_per_m2) < settled_W_per_m2);
  }));
}

TEST_CASE("a temperature that is no number is a bug") {
  const double nothing = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(floor_from_water(shop_slab(), nothing, tube_mK_per_W, 15.0), std::logic_error);
}
