// A way of running as thermostats: what keeps frost out stays on by the sensors that the way has.
#include "winter/plan.hpp"

#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::winter;

namespace {

constexpr int night = 2, work = 10, evening = 22;

/// A January day of work from 8 to 17, and the same hours in July, which is no winter.
Season two_days() {
  Season season;
  season.heated[0] = true;
  for (const int month : {1, 7}) {
    for (int clock = 0; clock < 24; ++clock) {
      SeasonHour hour;
      hour.month = month;
      hour.clock = clock;
      hour.work_day = true;
      hour.worked = clock >= 8 && clock < 17;
      hour.until_work = hour.worked ? 0 : (32 - clock) % 24;
      hour.gap = hour.worked ? 0 : 15;
      season.hour.push_back(hour);
    }
  }
  return season;
}

PlanInputs inputs() {
  PlanInputs in;
  in.work_degC = 16.0;
  in.hold = {7.0, 12.0, not_set_degC};
  return in;
}

WayEntry way_by(WaySensor sensor) {
  WayEntry way;
  way.sensor = sensor;
  return way;
}

}  // namespace

TEST_CASE("a frost hold is kept by the sensors that a way has, summer and winter") {
  const auto at = [](WaySensor sensor, int hour) {
    return plan_of(way_by(sensor), two_days(), inputs())[static_cast<std::size_t>(hour)];
  };
  for (const int hour : {night, work, 24 + night, 24 + work}) {
    CHECK(at(WaySensor::air, hour) == Dials{7.0, not_set_degC, not_set_degC});
    CHECK(at(WaySensor::slab, hour) == Dials{not_set_degC, 12.0, not_set_degC});
    CHECK(at(WaySensor::both, hour) == Dials{7.0, 12.0, not_set_degC});
  }
}

TEST_CASE("a floor held at work has a wall thermostat, whatever the way says of the slab") {
  WayEntry way = way_by(WaySensor::slab);
  way.floor = WayFloor::work;
  const std::vector<Dials> plan = plan_of(way, two_days(), inputs());
  CHECK(plan[work] == Dials{16.0, not_set_degC, not_set_degC});
  CHECK(plan[24 + night] == Dials{7.0, not_set_degC, not_set_degC});
}

TEST_CASE("a floor that is charged at night coasts on its frost hold") {
  for (const WaySensor sensor : {WaySensor::air, WaySensor::slab, WaySensor::both}) {
    WayEntry way = way_by(sensor);
    way.charge = ClockSpan{22.0 * 3600.0, 6.0 * 3600.0};
    way.charge_to_degC = 19.0;
    const std::vector<Dials> plan = plan_of(way, two_days(), inputs());
    const double air_degC = sensor == WaySensor::slab ? not_set_degC : 7.0;
    const double slab_degC = sensor == WaySensor::air ? not_set_degC : 12.0;
    for (const int hour : {night, evening}) CHECK(plan[hour] == Dials{air_degC, 19.0, not_set_degC});
    for (const int hour : {work, 24 + night, 24 + work}) CHECK(plan[hour] == Dials{air_degC, slab_degC, not_set_degC});
  }
}
