// Vapour in a room over a cold floor: nothing is lost, and the floor sweats when it must.
#include "slabwright/building_vapour.hpp"

#include <rapidcheck.h>

#include <cmath>

#include "slabwright/climate_winter.hpp"
#include "slabwright/handbook_psychrometrics.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr double sea_Pa = 101325.0;

double any_between(double least, double most) {
  return least + (most - least) * static_cast<double>(*rc::gen::inRange(0, 1001)) / 1000.0;
}

/// 500 m3 over 150 m2.
VapourRoom usual_room() {
  VapourRoom room;
  room.air_kg = 600.0;
  room.floor_m2 = 150.0;
  return room;
}

double amount_missing_kg(const VapourAmounts& of, double risen_kg) {
  return of.in_kg + of.source_kg - of.out_kg - of.dried_kg - of.settled_kg - of.fallen_kg - risen_kg;
}

/// The same by plain small steps.
RoomVapour plainly(const VapourRoom& room, const VapourHour& hour, RoomVapour at, double step_s) {
  constexpr int steps = 100000;
  const double face = humidity_ratio_of(hour.floor_degC, 1.0, sea_Pa);
  const double dryer = humidity_ratio_of(hour.air_degC, room.dryer_above_share, sea_Pa);
  const double each_s = step_s / steps;
  for (int n = 0; n < steps; ++n) {
    double settles = room.floor_m2 * settling_kg_per_sm2(room.convection_W_per_m2K, at.ratio, face) * each_s;
    settles = std::max(settles, -at.floor_kg);
    double gain = (hour.exchange_kg_per_s * (hour.outdoor_ratio - at.ratio) + hour.source_kg_per_s) * each_s - settles;
    if (at.ratio > dryer) gain -= room.dryer_kg_per_s * each_s;
    at.ratio += gain / room.air_kg;
    at.floor_kg += settles;
  }
  return at;
}

VapourRoom any_room() {
  VapourRoom room = usual_room();
  room.convection_W_per_m2K = any_between(0.0, 5.0);
  room.dryer_kg_per_s = *rc::gen::inRange(0, 2) * any_between(0.0, 40.0) / 86400.0;
  return room;
}

VapourHour any_hour() {
  VapourHour hour;
  hour.air_degC = any_between(2.0, 22.0);
  hour.floor_degC = any_between(-2.0, 16.0);
  hour.outdoor_ratio = humidity_ratio_of(any_between(-20.0, 20.0), any_between(0.3, 1.0), sea_Pa);
  hour.exchange_kg_per_s = *rc::gen::inRange(0, 4) == 0 ? 0.0 : any_between(0.0, 2.0);
  hour.source_kg_per_s = *rc::gen::inRange(0, 2) * any_between(0.0, 5.0) / 3600.0;
  return hour;
}

}  // namespace

TEST_CASE("every kilogram of water is somewhere") {
  CHECK(rc::check("balance", [] {
    const VapourRoom room = any_room();
    RoomVapour from{humidity_ratio_of(any_between(0.0, 20.0), any_between(0.0, 1.0), sea_Pa), 0.0};
    from.floor_kg = *rc::gen::inRange(0, 2) * any_between(0.0, 3.0);
    const VapourHour hour = any_hour();
    const VapourStep step = vapour_step(room, hour, from);
    const double had_kg = room.air_kg * from.ratio, has_kg = room.air_kg * step.end.ratio;
    const double scale_kg = had_kg + from.floor_kg + step.amounts.in_kg + step.amounts.source_kg;
    RC_ASSERT(std::abs(amount_missing_kg(step.amounts, has_kg - had_kg)) <= 1e-12 * scale_kg);
    RC_ASSERT(std::abs(step.end.floor_kg - from.floor_kg - step.amounts.settled_kg) <= 1e-12 * scale_kg);
    RC_ASSERT(step.end.floor_kg >= 0.0);
    RC_ASSERT(step.end.ratio >= 0.0);
    RC_ASSERT(step.amounts.dried_kg >= 0.0);
    RC_ASSERT(step.amounts.dried_kg <= room.dryer_kg_per_s * 3600.0 * (1.0 + 1e-12));
  }));
}

TEST_CASE("an hour is what plain small steps make of it") {
  VapourRoom room = usual_room();
  const double middle = humidity_ratio_of(12.0, 0.7, sea_Pa);
  for (const double dryer_kg_per_h : {0.0, 0.7, 4.0}) {
    for (const double floor_kg : {0.0, 0.15, 5.0}) {
      for (const double floor_degC : {4.0, 7.0, 11.0}) {
        for (const double source_kg_per_h : {0.0, 1.5}) {
          room.dryer_kg_per_s = dryer_kg_per_h / 3600.0;
          const VapourHour hour{0.004, 0.15, source_kg_per_h / 3600.0, 12.0, floor_degC};
          const VapourStep ours = vapour_step(room, hour, {middle, floor_kg});
          const RoomVapour fine = plainly(room, hour, {middle, floor_kg}, 3600.0);
          CHECK(ours.end.ratio == Approx(fine.ratio).epsilon(1e-4));
          CHECK(ours.end.floor_kg == Approx(fine.floor_kg).margin(2e-4));
          // Two halves are the whole.
          const VapourStep half = vapour_step(room, hour, {middle, floor_kg}, 1800.0);
          CHECK(vapour_step(room, hour, half.end, 1800.0).end.ratio == Approx(ours.end.ratio).epsilon(1e-11));
        }
      }
    }
  }
}

TEST_CASE("a dry room comes to outdoor air and what its sources add") {
  const VapourRoom room = usual_room();
  const VapourHour hour{0.003, 0.1, 0.5 / 3600.0, 15.0, 12.0};
  const IndoorYear year = vapour_year(room, std::vector<VapourHour>(200, hour));
  const double steady = 0.003 + 0.5 / 3600.0 / 0.1;
  CHECK(year.hour.back().at.ratio == Approx(steady).epsilon(1e-9));
  CHECK(year.hour.back().at.floor_kg == 0.0);
  CHECK(year.hour.back().dew_point_degC == Approx(dew_point_degC(vapour_of_ratio_Pa(steady, sea_Pa))));
  CHECK(vapour_year(room, {}).hour.empty());
}

TEST_CASE("a dryer holds its humidity where it is strong enough, and helps where it is not") {
  VapourRoom room = usual_room();
  room.dryer_kg_per_s = 20.0 / 86400.0;
  VapourHour hour{0.005, 0.05, 0.5 / 3600.0, 15.0, 14.0};
  const IndoorYear held = vapour_year(room, std::vector<VapourHour>(200, hour));
  CHECK(held.hour.back().at.ratio == Approx(humidity_ratio_of(15.0, 0.6, sea_Pa)).epsilon(1e-12));
  hour.source_kg_per_s *= 4.0;
  const double weak = vapour_year(room, std::vector<VapourHour>(200, hour)).hour.back().at.ratio;
  room.dryer_kg_per_s = 0.0;
  const double none = vapour_year(room, std::vector<VapourHour>(200, hour)).hour.back().at.ratio;
  CHECK(weak > humidity_ratio_of(15.0, 0.6, sea_Pa));
  CHECK(weak < none);
}

TEST_CASE("the floor sweats where the dew point is above it and nowhere else") {
  MadeUpWinter of;
  of.station.latitude_deg = 45.0;
  of.dry_bulb.normals = usual_normals(7.0, 13.0);
  const WeatherYear weather = *made_up_winter(of).value;
  const std::vector<double> outdoor = outdoor_ratios(weather);
  REQUIRE(outdoor.size() == 8760);
  std::vector<VapourHour> hours;
  for (const double ratio : outdoor) hours.push_back({ratio, 0.1, 0.3 / 3600.0, 14.0, 8.0});
  const IndoorYear year = vapour_year(usual_room(), hours);
  int sweats = 0, damp = 0;
  for (const IndoorVapour& hour : year.hour) {
    REQUIRE(hour.sweats == (hour.dew_point_degC > 8.0));
    REQUIRE(hour.damp == (hour.at.ratio > humidity_ratio_of(8.0, 0.8, sea_Pa)));
    REQUIRE(hour.at.ratio <= humidity_ratio_of(14.0, 1.0, sea_Pa));  // no more than the air can hold
    sweats += hour.sweats ? 1 : 0;
    damp += hour.damp ? 1 : 0;
  }
  CHECK(sweats > 500);
  CHECK(damp > sweats);
  CHECK(damp < 8000);
  const double risen_kg = 600.0 * (year.hour.back().at.ratio - outdoor.front());
  CHECK(std::abs(amount_missing_kg(year.amounts, risen_kg)) < 1e-12 * year.amounts.in_kg);
  CHECK(year.amounts.settled_kg == Approx(year.hour.back().at.floor_kg).margin(1e-9));
  CHECK(year.amounts.fallen_kg > 0.0);
}

TEST_CASE("a wet floor gives back what lies on it and no more") {
  const VapourHour dry{0.001, 0.3, 0.0, 18.0, 15.0};
  RoomVapour at{0.004, 0.8};
  double given_kg = 0.0;
  for (int hour = 0; hour < 48; ++hour) {
    const VapourStep step = vapour_step(usual_room(), dry, at);
    CHECK(step.amounts.settled_kg <= 0.0);
    given_kg -= step.amounts.settled_kg;
    at = step.end;
  }
  CHECK(at.floor_kg == 0.0);
  CHECK(given_kg == Approx(0.8).epsilon(1e-12));
  CHECK(at.ratio == Approx(0.001).epsilon(1e-6));
}

TEST_CASE("outdoor air by its dew point and its own pressure") {
  WeatherYear year;
  CHECK(outdoor_ratios(year).empty());
  year.dew_point_degC = {5.0, -10.0};
  CHECK(outdoor_ratios(year)[1] == humidity_ratio(saturation_Pa(-10.0), sea_Pa));
  year.pressure_Pa = {80000.0, 80000.0};
  CHECK(outdoor_ratios(year)[0] == humidity_ratio(saturation_Pa(5.0), 80000.0));
  CHECK_THROWS_AS(vapour_step(VapourRoom{}, {}, {}), std::logic_error);
}
