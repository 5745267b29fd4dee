// Doors, vehicles, people: what has to add up.
#include "slabwright/building_loads.hpp"

#include <rapidcheck.h>

#include <cmath>
#include <numeric>

#include "slabwright/handbook_psychrometrics.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr OpenDoor big{3.66, 3.05};

double drawn(double least, double most) {
  return least + (most - least) * static_cast<double>(*rc::gen::inRange(0, 1001)) / 1000.0;
}

/// 400 m3 of air, surfaces of 300 m2, steady before at 15 degC over -10.
DoorRoom usual_room() {
  DoorRoom room;
  room.air_J_per_K = 1.2 * 1006.0 * 400.0;
  room.surfaces_W_per_K = 900.0;
  room.surfaces_degC = 15.0;
  room.loss_W_per_K = 200.0;
  room.heat_W = 200.0 * 25.0;
  return room;
}

/// The same by plain steps forward.
DoorOpening plainly(const DoorRoom& room, double air_degC, double outdoor_degC, double open_s, double wind) {
  constexpr int steps = 200000;
  DoorOpening out;
  double air = air_degC;
  for (int n = 0; n < steps; ++n) {
    const double step_s = open_s / steps, lost_W = open_door_W(big, air - outdoor_degC, wind);
    const double surfaces_W = room.surfaces_W_per_K * (room.surfaces_degC - air);
    out.lost_J += step_s * lost_W;
    out.surfaces_J += step_s * surfaces_W;
    air += step_s * (surfaces_W + room.heat_W - room.loss_W_per_K * (air - outdoor_degC) - lost_W) / room.air_J_per_K;
  }
  out.left_degC = air;
  return out;
}

double sum(const std::vector<double>& values) { return std::accumulate(values.begin(), values.end(), 0.0); }

}  // namespace

TEST_CASE("what an open door takes is the handbook's in still air, and wind adds to it") {
  CHECK(open_door_W(big, 25.0) == Approx(door_heat_W(big, 25.0)).epsilon(1e-14));
  CHECK(open_door_W(big, 25.0) / 1000.0 == Approx(117.0).margin(0.5));
  CHECK(open_door_W(big, -25.0, 4.0) == -open_door_W(big, 25.0, 4.0));
  CHECK(open_door_W(big, 0.0, 4.0) == 0.0);
  CHECK(open_door_W(big, 25.0, 0.0, 0.6) == Approx(open_door_W(big, 25.0) / 2.0));
  const double still = door_air_m3_per_s(big, 9.0), wind = 0.025 * 3.66 * 3.05 * 6.0;
  CHECK(open_door_flow_m3_per_s(big, 9.0, 6.0) == Approx(std::hypot(still, wind)));
  CHECK(open_door_flow_m3_per_s(big, 0.0, 6.0) == Approx(wind));
  CHECK_THROWS_AS(open_door_W(big, 5.0, -1.0), std::logic_error);
}

TEST_CASE("what leaves by the door is what surfaces, air and source gave") {
  CHECK(rc::check("balance", [] {
    DoorRoom room = usual_room();
    room.surfaces_W_per_K = drawn(0.0, 3000.0);
    room.surfaces_degC = drawn(-20.0, 30.0);
    room.loss_W_per_K = drawn(0.0, 500.0);
    room.heat_W = drawn(-5000.0, 30000.0);
    const double air = drawn(-10.0, 30.0), outdoor = drawn(-40.0, 35.0);
    const DoorOpening out = door_opening(big, room, air, outdoor, drawn(0.0, 4000.0), drawn(0.0, 12.0));
    const double scale = std::abs(out.lost_J) + std::abs(out.surfaces_J) + std::abs(out.heat_J) + 1e3;
    RC_ASSERT(std::abs(out.lost_J - (out.surfaces_J + out.heat_J + out.air_J - out.shut_J)) < 1e-11 * scale);
    RC_ASSERT(out.coldest_degC == std::min(air, out.left_degC));
    RC_ASSERT(out.recovers_s >= 0.0);
  }));
}

TEST_CASE("the steps are fine enough") {
  for (const double open_s : {20.0, 180.0, 900.0, 3600.0}) {
    for (const double outdoor : {14.0, -10.0, -40.0}) {
      DoorRoom room = usual_room();
      room.heat_W = 200.0 * (15.0 - outdoor);
      const DoorOpening ours = door_opening(big, room, 15.0, outdoor, open_s, 3.0);
      const DoorOpening fine = plainly(room, 15.0, outdoor, open_s, 3.0);
      CHECK(ours.lost_J == Approx(fine.lost_J).epsilon(1e-3));
      CHECK(15.0 - ours.left_degC == Approx(15.0 - fine.left_degC).epsilon(1e-3));
      CHECK(ours.surfaces_J == Approx(fine.surfaces_J).epsilon(1e-3));
    }
  }
}

TEST_CASE("no difference loses nothing; longer and colder lose more; the sign turns round") {
  DoorRoom room = usual_room();
  room.heat_W = 0.0;
  const DoorOpening none = door_opening(big, room, 15.0, 15.0, 600.0);
  CHECK(none.lost_J == 0.0);
  CHECK(none.left_degC == 15.0);
  CHECK(none.recovers_s == 0.0);
  double last = 0.0;
  for (const double minutes : {0.5, 1.0, 3.0, 10.0, 30.0}) {
    const double lost = door_opening(big, room, 15.0, -10.0, 60.0 * minutes).lost_J;
    CHECK(lost > last);
    last = lost;
  }
  last = 0.0;
  for (const double outdoor : {10.0, 5.0, 0.0, -10.0, -30.0}) {
    const DoorOpening cold = door_opening(big, room, 15.0, outdoor, 180.0);
    CHECK(cold.lost_J > last);
    last = cold.lost_J;
    const DoorOpening hot = door_opening(big, room, 15.0, 30.0 - outdoor, 180.0);
    CHECK(hot.lost_J == Approx(-cold.lost_J));
    CHECK(hot.recovers_s == Approx(cold.recovers_s));
    CHECK(hot.coldest_degC == 15.0);
  }
}

TEST_CASE("the way back is exponential, and without heat there is none") {
  const DoorRoom room = usual_room();
  const DoorOpening out = door_opening(big, room, 15.0, -10.0, 180.0);
  CHECK(out.left_degC < 10.0);
  // 1100 W/K bring 483 kJ/K back.
  CHECK(out.recovers_s == Approx(room.air_J_per_K / 1100.0 * std::log(15.0 - out.left_degC)));
  DoorRoom unheated = room;
  unheated.surfaces_W_per_K = 0.0;
  unheated.heat_W = 0.0;
  CHECK(std::isinf(door_opening(big, unheated, 15.0, -10.0, 180.0).recovers_s));
  unheated.loss_W_per_K = 0.0;
  CHECK(std::isinf(door_opening(big, unheated, 15.0, -10.0, 180.0).recovers_s));
  unheated.heat_W = 1000.0;
  const DoorOpening by_heat = door_opening(big, unheated, 15.0, -10.0, 180.0);
  CHECK(by_heat.recovers_s == Approx(room.air_J_per_K * (14.0 - by_heat.left_degC) / 1000.0));
  CHECK_THROWS_AS(door_opening(big, DoorRoom{}, 15.0, 0.0, 60.0), std::logic_error);
}

TEST_CASE("the year's table holds to single openings") {
  double worst = 0.0, worst_of_all = 0.0;
  for (const double open_s : {30.0, 180.0, 900.0}) {
    const DoorUse use = door_use(big, usual_room(), open_s);
    for (double difference = 2.0; difference <= 80.0; difference += 3.7) {
      for (double wind = 0.0; wind <= 12.0; wind += 1.3) {
        DoorRoom room = usual_room();
        room.surfaces_degC = difference;
        room.heat_W = room.loss_W_per_K * difference;
        const double once = door_opening(big, room, difference, 0.0, open_s, wind).lost_J;
        const double off = std::abs(opening_J_per_K(use, difference, wind) * difference / once - 1.0);
        worst_of_all = std::max(worst_of_all, off);
        if (difference > 5.0) worst = std::max(worst, off);
      }
    }
    CHECK(opening_J_per_K(use, -20.0, 2.0) == opening_J_per_K(use, 20.0, 2.0));
    CHECK(opening_J_per_K(use, 500.0, 50.0) == Approx(use.J_per_K.back().back()).epsilon(1e-12));
    CHECK(door_W_per_K(use, 4.0, 20.0, 2.0) == Approx(4.0 / 3600.0 * opening_J_per_K(use, 20.0, 2.0)));
  }
  CHECK(worst < 0.01);
  CHECK(worst_of_all < 0.05);
}

TEST_CASE("a vehicle takes what warms it, melts its snow and lifts its vapour") {
  const ColdVehicle truck{8000.0, -15.0, 120.0, 0.2};
  const VehicleHours hours = vehicle_hours(truck, 15.0);
  const double vapour_kg = 0.2 * 120.0;
  CHECK(3600.0 * sum(hours.vapour_kg_per_s) == Approx(vapour_kg).epsilon(1e-12));
  CHECK(3600.0 * sum(hours.heat_W) ==
        Approx(8000.0 * 600.0 * 30.0 + 120.0 * (334e3 + 2100.0 * 15.0) + vapour_kg * vaporisation_J_per_kg)
            .epsilon(1e-12));
  REQUIRE(hours.heat_W.size() == 14);  // exp(-14 / 3) is the first below 1 in 100
  // The last hour has the rest; before it each has exp(-1 / 3) of the hour before.
  for (std::size_t hour = 1; hour + 1 < hours.heat_W.size(); ++hour)
    CHECK(hours.heat_W[hour] / hours.heat_W[hour - 1] == Approx(std::exp(-1.0 / 3.0)));

  const VehicleHours frozen = vehicle_hours(truck, 0.0);
  CHECK(sum(frozen.vapour_kg_per_s) == 0.0);
  CHECK(3600.0 * sum(frozen.heat_W) == Approx(8000.0 * 600.0 * 15.0));
  CHECK(sum(vehicle_hours({1000.0, 40.0, 0.0, 0.0}, 15.0).heat_W) < 0.0);
  CHECK_THROWS_AS(vehicle_hours({1000.0, 0.0, 10.0, 1.5}, 15.0), std::logic_error);
}

TEST_CASE("a person gives as much heat and vapour as work on one's feet does") {
  const double total_W = person_W + person_vapour_kg_per_s * vaporisation_J_per_kg;
  CHECK(total_W > 150.0);
  CHECK(total_W < 220.0);
}
