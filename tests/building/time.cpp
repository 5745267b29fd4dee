// A building cools down: limits that can be written down, balances and signs.
#include <algorithm>
#include <cmath>

#include "power_cut.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Nothing but air and contents, 2 h to its time constant.
CoolingBuilding lone_zone() {
  CoolingBuilding building;
  building.capacity_J_per_K = 1e6;
  building.loss_W_per_K = 1e6 / (2.0 * hour_s);
  return building;
}

PowerCut from_10_to_minus_20() { return {10.0, -20.0, 7.0, 0.0, {1.0}}; }

/// A strip without states: a conductance of 1 W/mK from the room to ground.
FloorStrip plain_strip() {
  FloorStrip strip;
  strip.length_m = 40.0;
  strip.states.points = 1;
  strip.states.output.assign(4, {});
  strip.states.direct = {{0.5, 0.0, 0.5, 0.0}, {1.0, 0.0, -1.0, 0.0}, {0, 0, 0, 0}, {-1.0, 0.0, 1.0, 0.0}};
  return strip;
}

}  // namespace

TEST_CASE("a zone without a floor decays as an exponential") {
  const auto rows = cool_down(lone_zone(), from_10_to_minus_20(), {60.0, 12.0 * hour_s});
  REQUIRE(rows.size() == 721);
  double worst_K = 0.0;
  for (const CoolingRow& row : rows) {
    const double exact_degC = -20.0 + 30.0 * std::exp(-row.time_s / (2.0 * hour_s));
    worst_K = std::max(worst_K, std::abs(row.air_degC - exact_degC));
  }
  CHECK(worst_K < 1e-4);  // trapezoidal: 30 K e^-1 (60 s / 7200 s)^2 / 12
  WatchedPlace air;
  air.idle.indoor_share = 1.0;
  const auto lasts_s = freezes_after_s(air, lone_zone(), from_10_to_minus_20(), rows);
  REQUIRE(lasts_s);
  CHECK(*lasts_s == Approx(2.0 * hour_s * std::log(1.5)).epsilon(1e-4));
}

TEST_CASE("a floor without capacity is a second conductance") {
  CoolingBuilding building = lone_zone();
  building.floor = {plain_strip()};
  const auto rows = cool_down(building, from_10_to_minus_20(), {60.0, 24.0 * hour_s});
  const double all_W_per_K = building.loss_W_per_K + 40.0;
  const double end_degC = (building.loss_W_per_K * -20.0 + 40.0 * 7.0) / all_W_per_K;
  double worst_K = 0.0;
  for (const CoolingRow& row : rows) {
    const double exact_degC = end_degC + (10.0 - end_degC) * std::exp(-row.time_s * all_W_per_K / 1e6);
    worst_K = std::max(worst_K, std::abs(row.air_degC - exact_degC));
  }
  CHECK(worst_K < 1e-3);
  CHECK(rows.back().tube_degC[0] == Approx(0.5 * (rows.back().air_degC + 7.0)));
}

TEST_CASE("what leaves the air is what it stored and what the floor gave") {
  const CutShop shop = cut_shop(bare_shop(), 8.0, -27.0);
  const auto rows = cool_down(shop.building, shop.cut, {600.0, 48.0 * hour_s});
  // The moment after the cut has no tube heat any more; its heat upward stands in no row, so that balances start at 1.
  double given_J = 0.0, lost_J = 0.0;
  for (std::size_t i = 2; i < rows.size(); ++i) {
    const double dt_s = rows[i].time_s - rows[i - 1].time_s;
    const double rise_K = 0.5 * (rows[i].air_degC + rows[i - 1].air_degC) - shop.cut.outdoor_degC;
    given_J += dt_s * 0.5 * (rows[i].up_W + rows[i - 1].up_W);
    lost_J += dt_s * shop.building.loss_W_per_K * rise_K;
  }
  const double drop_J = shop.building.capacity_J_per_K * (rows[1].air_degC - rows.back().air_degC);
  CHECK(lost_J == Approx(given_J + drop_J).epsilon(1e-6));
}

TEST_CASE("before the cut all is in balance, and nothing moves while it lasts") {
  const CutShop shop = cut_shop(bare_shop(), 8.0, -27.0);
  const auto rows = cool_down(shop.building, shop.cut, {600.0, 0.0});
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].up_W == Approx(shop.building.loss_W_per_K * 35.0).epsilon(1e-9));
  CHECK(shop.cut.tube_W_per_m2 > 20.0);
  CHECK(rows[0].tube_degC[0] > shop.cut.air_degC);
}

TEST_CASE("halved steps move no hour by 0.2 per cent") {
  const CutShop shop = cut_shop(bare_shop(), 8.0, -20.0);
  for (const std::string place : {"outer wall", "big door", "air round"})
    CHECK(hours_of(shop, place, 600.0) == Approx(hours_of(shop, place, 300.0)).epsilon(0.002));
}

TEST_CASE("colder weather leaves fewer hours, a warmer shop, more contents and better walls more") {
  const Design shop = described_shop();
  for (const std::string place : {"outer wall", "big door", "air round"}) {
    const double hours = hours_of(cut_shop(shop, 8.0, -20.0), place);
    CAPTURE(place, hours);
    CHECK(hours > 0.0);
    CHECK(hours < 96.0);
    CHECK(hours_of(cut_shop(shop, 8.0, -27.0), place) < hours);
    CHECK(hours_of(cut_shop(shop, 11.0, -20.0), place) > hours);
    CutShop full = cut_shop(shop, 8.0, -20.0);
    full.building.capacity_J_per_K *= 2.0;
    CHECK(hours_of(full, place) > hours);
    Design better = shop;
    better.building.wall_insulation = {4.0};
    CHECK(hours_of(cut_shop(better, 8.0, -20.0), place) > hours);
  }
}

TEST_CASE("the strips cover the heated floor, each tube at the edge it lies at") {
  Design design = shop_with_store();
  CutShop shop = cut_shop(design, 8.0, -20.0);
  const auto envelope = envelope_of(design, coarse_fields());
  double covered_m2 = 0.0;
  for (const FloorStrip& strip : shop.building.floor)
    covered_m2 += strip.length_m * envelope.value->edge[strip.edge].detail.half_width_m;
  CHECK(covered_m2 == Approx(108.0));
  CHECK(shop.building.loss_W_per_K == Approx(envelope.value->total_W_per_K));
  for (const WatchedPlace& place : shop.places.place)
    CHECK(place.edge.has_value() == (place.kind != PlaceKind::room_air));
  design.room[1].heated_floor = false;
  CHECK(cut_shop(design, 8.0, -20.0).building.floor.size() == shop.building.floor.size() - 1);
}

TEST_CASE("a room that stands colder than the zone freezes sooner") {
  CutShop shop = cut_shop(shop_with_store(), 8.0, -20.0);
  const double hours = hours_of(shop, "outer wall of the store");
  shop.cut.room_rise_share[1] = 0.9;
  CHECK(hours_of(shop, "outer wall of the store") < hours);
}

TEST_CASE("a pump that runs on keeps the coldest tube, and no pipe in a wall") {
  const CutShop shop = cut_shop(bare_shop(), 8.0, -20.0);
  const auto rows = cool_down(shop.building, shop.cut);
  const auto lasts = [&](const WatchedPlace& place, PumpInCut pump) {
    return freezes_after_s(place, shop.building, shop.cut, rows, pump).value();
  };
  const auto tube = std::find_if(shop.places.place.begin(), shop.places.place.end(),
                                 [](const WatchedPlace& p) { return p.name.find("big door") != std::string::npos; });
  CHECK(lasts(*tube, PumpInCut::runs) > lasts(*tube, PumpInCut::rests) + hour_s);
  WatchedPlace pipe;
  pipe.kind = PlaceKind::wall_pipe;
  pipe.idle = {0.8, 0.2, 0.0, 0.0};
  CHECK(lasts(pipe, PumpInCut::runs) == lasts(pipe, PumpInCut::rests));
  // All water is one.
  WatchedPlace air;
  air.kind = PlaceKind::room_air;
  CHECK(lasts(air, PumpInCut::runs) == lasts(*tube, PumpInCut::runs));
}

TEST_CASE("what is frozen already lasts no time, and what has no strip is not known") {
  const CutShop shop = cut_shop(bare_shop(), 8.0, -20.0);
  const auto rows = cool_down(shop.building, shop.cut);
  WatchedPlace place = shop.places.place[0];
  place.freezes_degC = 50.0;
  CHECK(freezes_after_s(place, shop.building, shop.cut, rows) == 0.0);
  place.edge = 17;
  CHECK_FALSE(freezes_after_s(place, shop.building, shop.cut, rows).has_value());
}

TEST_CASE("broken contracts are found") {
  CoolingBuilding building = lone_zone();
  CHECK_THROWS_AS(cool_down(building, from_10_to_minus_20(), {0.0, 1.0}), std::logic_error);
  building.floor = {plain_strip()};
  CHECK_THROWS_AS(cool_down(building, {10.0, -20.0, 7.0, 0.0, {}}), std::logic_error);
  building.capacity_J_per_K = 0.0;
  CHECK_THROWS_AS(cool_down(building, from_10_to_minus_20()), std::logic_error);
}
