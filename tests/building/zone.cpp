// The zone at rest and in time: limits that can be written down, balances and signs.
#include <algorithm>
#include <cmath>

#include "zone_shop.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Nothing but air and contents, 2 h to its time constant.
Zone lone_zone() {
  Zone zone;
  zone.room_rise_share = {1.0};
  zone.ground_degC = 7.0;
  zone.capacity_J_per_K = 1e6;
  zone.loss_W_per_K = 1e6 / (2.0 * hour_s);
  zone.midway_lag_s = hour_s;
  return zone;
}

/// A strip without states: a conductance of 1 W/mK from the room to ground, tube heat halfway.
FloorStrip plain_strip() {
  FloorStrip strip;
  strip.length_m = 40.0;
  strip.width_m = strip.tubes_m = 1.0;
  strip.states.points = 1;
  strip.states.output.assign(4, {});
  strip.states.direct = {{0.5, 0.0, 0.5, 0.25}, {1.0, 0.0, -1.0, -0.5}, {0.0, 0.0, 0.0, 0.0}, {-1.0, 0.0, 1.0, -0.5}};
  return strip;
}

ZoneHistory at_10_below_minus_20() { return steady_history({10.0, -20.0, 0.0}); }

}  // namespace

TEST_CASE("a zone without a floor decays as an exponential") {
  const Zone zone = lone_zone();
  double worst_K = 0.0;
  for (const ZoneRow& row : rows_of(zone, at_10_below_minus_20(), dark(zone, -20.0), 60.0, 12.0 * hour_s)) {
    const double exact_degC = -20.0 + 30.0 * std::exp(-row.time_s / (2.0 * hour_s));
    worst_K = std::max(worst_K, std::abs(row.at.air_degC - exact_degC));
  }
  CHECK(worst_K < 1e-4);  // trapezoidal: 30 K e^-1 (60 s / 7200 s)^2 / 12
}

TEST_CASE("a floor without capacity is a second conductance") {
  Zone zone = lone_zone();
  zone.floor = {plain_strip()};
  const double all_W_per_K = zone.loss_W_per_K + 40.0;
  const double end_degC = (zone.loss_W_per_K * -20.0 + 40.0 * 7.0) / all_W_per_K;
  double worst_K = 0.0;
  for (const ZoneRow& row : rows_of(zone, at_10_below_minus_20(), dark(zone, -20.0), 60.0, 24.0 * hour_s)) {
    const double exact_degC = end_degC + (10.0 - end_degC) * std::exp(-row.time_s * all_W_per_K / 1e6);
    worst_K = std::max(worst_K, std::abs(row.at.air_degC - exact_degC));
  }
  CHECK(worst_K < 1e-3);
}

TEST_CASE("rest is where nothing moves") {
  for (const Design& design : {bare_shop(), shop_with_store()}) {
    const ZoneShop shop = zone_shop(design);
    const ZoneNeeds needs = needs_at_work(shop.zone);
    for (const ZoneDrivers& at : {held_by_air(shop.zone, needs, 8.0, -20.0),
                                  held_by_sensor(shop.zone, needs, 15.0, -20.0), unheated(shop.zone, needs, -20.0)}) {
      ZoneStep step;
      step.outdoor_degC = -20.0;
      step.needs = needs;
      step.tube_W_per_m2 = at.tube_W_per_m2;
      const auto rows = rows_of(shop.zone, steady_history(at), step, 3600.0, 48.0 * hour_s);
      CHECK(rows.back().at.air_degC == Approx(at.air_degC).margin(1e-6));
      CHECK(rows.back().sensor_degC == Approx(rows.front().sensor_degC).margin(1e-6));
      for (std::size_t i = 0; i < shop.places.place.size(); ++i)
        CHECK(rows.back().place_degC[i] == Approx(rows.front().place_degC[i]).margin(1e-6));
    }
    const ZoneDrivers slab = held_by_sensor(shop.zone, needs, 15.0, -20.0);
    CHECK(ZoneRun(shop.zone, steady_history(slab), 600.0).sensor_degC() == Approx(15.0));
    CHECK(unheated(shop.zone, needs, -20.0).tube_W_per_m2 == 0.0);
  }
}

TEST_CASE("places at rest are their weights") {
  const ZoneShop shop = zone_shop(bare_shop());
  const ZoneDrivers at = held_by_air(shop.zone, needs_at_work(shop.zone), 8.0, -20.0);
  const ZoneRow row = ZoneRun(shop.zone, steady_history(at), 600.0).row();
  for (const std::string word : {"outer wall", "big door", "air round"}) {
    const std::size_t i = place_row(shop.places, word);
    const WatchedPlace& place = shop.places.place[i];
    CAPTURE(place.name);
    CHECK(row.place_degC[i] == Approx(temperature_at(place.running, {8.0, -20.0, 7.0, at.tube_W_per_m2})).margin(1e-6));
    CHECK(row.shut_degC[i] == Approx(temperature_at(place.running, {8.0, -20.0, 7.0, 0.0})).margin(1e-6));
  }
}

TEST_CASE("the slab sensor of the zone is the section's, but for the cold of the edges") {
  // One spreads tube heat evenly, so that the middle of the floor is the warmest of it; the other has a mean floor.
  const ZoneShop shop = zone_shop(bare_shop());
  CHECK(shop.zone.midway_m2K_per_W > 0.005);
  CHECK(shop.zone.midway_m2K_per_W < 0.06);
  const ZoneDrivers at = held_by_air(shop.zone, needs_at_work(shop.zone), 8.0, -20.0);
  const SlabHold hold = slab_hold(shop.floor.section, shop.envelope.room[0], shop.floor.room[0].heated_m2);
  const double mean_K = held_at(hold, 8.0, -20.0).sensor_degC - 8.0;
  const double middle_K = ZoneRun(shop.zone, steady_history(at), 600.0).sensor_degC() - 8.0;
  CHECK(middle_K > mean_K);
  CHECK(middle_K < 1.4 * mean_K);
}

TEST_CASE("what leaves the air is what it stored and what the floor gave") {
  const ZoneShop shop = zone_shop(bare_shop());
  const ZoneDrivers before = held_by_air(shop.zone, needs_at_work(shop.zone), 8.0, -27.0);
  const auto rows = rows_of(shop.zone, steady_history(before), dark(shop.zone, -27.0), 600.0, 48.0 * hour_s);
  // The moment after the cut has no tube heat any more; its heat upward stands in no row, so that balances start at 1.
  double given_J = 0.0, lost_J = 0.0;
  for (std::size_t i = 2; i < rows.size(); ++i) {
    const double dt_s = rows[i].time_s - rows[i - 1].time_s;
    const double rise_K = 0.5 * (rows[i].at.air_degC + rows[i - 1].at.air_degC) + 27.0;
    given_J += dt_s * 0.5 * (rows[i].up_W + rows[i - 1].up_W);
    lost_J += dt_s * shop.zone.loss_W_per_K * rise_K;
  }
  const double drop_J = shop.zone.capacity_J_per_K * (rows[1].at.air_degC - rows.back().at.air_degC);
  CHECK(lost_J == Approx(given_J + drop_J).epsilon(1e-6));
}

TEST_CASE("tube heat that is asked for brings the sensor where it is asked") {
  const ZoneShop shop = zone_shop(bare_shop());
  const ZoneNeeds needs = needs_at_work(shop.zone);
  ZoneRun run(shop.zone, steady_history(held_by_sensor(shop.zone, needs, 12.0, -10.0)), 1200.0);
  ZoneStep step;
  step.needs = needs;
  for (int i = 0; i < 72 * 3; ++i) {
    step.outdoor_degC = std::max(-25.0, -10.0 - 0.5 * i);
    step.tube_W_per_m2 = run.tube_heat_for_sensor(step, 12.0);
    CHECK(step.tube_W_per_m2 > 0.0);
    run.step(step);
    if (i > 3) CHECK(run.sensor_degC() == Approx(12.0).margin(0.6));  // the ripple lags while heat rises
  }
  CHECK(run.sensor_degC() == Approx(12.0).margin(0.01));
  CHECK(run.now().air_degC < held_by_sensor(shop.zone, needs, 12.0, -10.0).air_degC - 2.0);
}

TEST_CASE("the strips cover the heated floor") {
  Design design = shop_with_store();
  const ZoneShop shop = zone_shop(design);
  double covered_m2 = 0.0;
  for (const FloorStrip& strip : shop.zone.floor) covered_m2 += strip.length_m * strip.width_m;
  CHECK(covered_m2 == Approx(108.0));
  CHECK(tubes_m2(shop.zone) < 108.0);
  CHECK(shop.zone.loss_W_per_K == Approx(shop.envelope.total_W_per_K));
  design.room[1].heated_floor = false;
  CHECK(zone_shop(design).zone.floor.size() == shop.zone.floor.size() - 1);
}

TEST_CASE("an open door is colder for what lies near it, a shut loop for what has none") {
  const ZoneShop shop = zone_shop(bare_shop());
  const ZoneDrivers at = held_by_air(shop.zone, needs_at_work(shop.zone), 8.0, -20.0);
  ZoneStep step;
  step.outdoor_degC = -20.0;
  step.needs = needs_at_work(shop.zone);
  step.tube_W_per_m2 = at.tube_W_per_m2;
  step.air_degC = 8.0;
  const std::size_t door = place_row(shop.places, "big door"), wall = place_row(shop.places, "outer wall");
  const ZoneRow shut = rows_of(shop.zone, steady_history(at), step, 1200.0, 12.0 * hour_s).back();
  step.door_open = true;
  const ZoneRow open = rows_of(shop.zone, steady_history(at), step, 1200.0, 12.0 * hour_s).back();
  CHECK(open.place_degC[door] < shut.place_degC[door] - 2.0);
  CHECK(open.place_degC[wall] == Approx(shut.place_degC[wall]).margin(1e-6));
  for (std::size_t i = 0; i < shop.places.place.size(); ++i) CHECK(shut.shut_degC[i] <= shut.place_degC[i] + 1e-9);
  CHECK(shut.shut_degC[wall] < shut.place_degC[wall] - 2.0);
}

TEST_CASE("a room that loses more keeps a smaller share of the rise") {
  Design design = shop_with_store();
  design.room[1].height_m = 9.0;
  const Zone zone = zone_shop(design).zone;
  CHECK(zone.room_rise_share[1] < zone.room_rise_share[0]);
  CHECK(room_air_degC(zone, 1, 8.0, -20.0) < room_air_degC(zone, 0, 8.0, -20.0));
  CHECK(room_air_degC(zone, 1, -20.0, -20.0) == Approx(-20.0));
}
