// An electric boiler: its stages fill a demand from below, and it says what it leaves.
#include <rapidcheck.h>

#include <cmath>
#include <limits>
#include <stdexcept>

#include "slabwright/heater.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

BoilerStages three_stages() { return {{4000.0, 4000.0, 2000.0}, 1.0, 3.0 / 3600.0, 120.0, 0.0}; }

}  // namespace

TEST_CASE("stages stand below the demand and the next one comes and goes") {
  const BoilerHour hour = boiler_hour(three_stages(), 5000.0);
  CHECK(hour.run == BoilerRun::cycling);
  CHECK(hour.heat_W == 5000.0);
  CHECK(hour.electric_W == 5000.0);
  CHECK(hour.standing_stages == 1);
  CHECK(hour.on_share == 0.25);
  CHECK(hour.highest_W == 8000.0);
  CHECK(hour.cycles_per_s * 3600.0 == Approx(2.25));
}

TEST_CASE("a demand that stages meet, one too large, and none") {
  const BoilerHour met = boiler_hour(three_stages(), 8000.0);
  CHECK(met.run == BoilerRun::steady);
  CHECK(met.standing_stages == 2);
  CHECK(met.highest_W == 8000.0);
  CHECK(met.cycles_per_s == 0.0);
  const BoilerHour all = boiler_hour(three_stages(), 10000.0);
  CHECK(all.run == BoilerRun::steady);
  CHECK(all.standing_stages == 3);
  const BoilerHour beyond = boiler_hour(three_stages(), 12000.0);
  CHECK(beyond.run == BoilerRun::short_of);
  CHECK(beyond.heat_W == 10000.0);
  CHECK(boiler_hour(three_stages(), 0.0).run == BoilerRun::no_demand);
  CHECK(most_heat_W(three_stages()) == 10000.0);
}

TEST_CASE("below its least the boiler does not fire, and just above it starts once") {
  const double least_W = 4000.0 * 120.0 / 3600.0;
  const BoilerHour off = boiler_hour(three_stages(), 0.999 * least_W);
  CHECK(off.run == BoilerRun::below_least);
  CHECK(off.heat_W == 0.0);
  CHECK(off.electric_W == 0.0);
  CHECK(off.highest_W == 0.0);
  const BoilerHour on = boiler_hour(three_stages(), 1.001 * least_W);
  CHECK(on.run == BoilerRun::cycling);
  CHECK(on.highest_W == 4000.0);
  BoilerStages patient = three_stages();
  patient.least_on_s = 600.0;
  // Each firing lasts its least: 15 minutes of an hour in one and a half of them.
  CHECK(boiler_hour(patient, 1000.0).cycles_per_s * 3600.0 == Approx(1.5));
}

TEST_CASE("heat and power balance at every demand, and neither falls as it rises") {
  CHECK(rc::check("boiler balance", [] {
    BoilerStages boiler{{}, *rc::gen::inRange(80, 101) / 100.0, 3.0 / 3600.0, 0.0, 10.0};
    const int stages = *rc::gen::inRange(1, 5);
    for (int i = 0; i < stages; ++i) boiler.stage_W.push_back(500.0 * *rc::gen::inRange(1, 20));
    const double demand = *rc::gen::inRange(1, 40000), more = demand + *rc::gen::inRange(0, 3000);
    const BoilerHour hour = boiler_hour(boiler, demand), next = boiler_hour(boiler, more);
    RC_ASSERT(std::abs(hour.heat_W - std::min(demand, most_heat_W(boiler))) < 1e-6);
    RC_ASSERT(std::abs((hour.electric_W - 10.0) * boiler.heat_share - hour.heat_W) < 1e-6);
    RC_ASSERT(hour.highest_W >= hour.electric_W - 1e-6);
    RC_ASSERT(next.electric_W >= hour.electric_W - 1e-6);
    RC_ASSERT(next.highest_W >= hour.highest_W - 1e-6);
  }));
}

TEST_CASE("a thermostat rests at both ends") {
  CHECK(thermostat_cycling(0.0, 1e-3).cycles_per_s == 0.0);
  CHECK(thermostat_cycling(0.0, 1e-3).off_s == std::numeric_limits<double>::infinity());
  CHECK(thermostat_cycling(1.0, 1e-3).on_s == std::numeric_limits<double>::infinity());
  const Cycling some = thermostat_cycling(0.3, 1e-3);
  CHECK(some.on_s + some.off_s == Approx(1.0 / some.cycles_per_s));
  CHECK(some.on_s * some.cycles_per_s == Approx(0.3));
}

TEST_CASE("no boiler, no demand, no thermostat: bugs") {
  CHECK_THROWS_AS(boiler_hour({}, 100.0), std::logic_error);
  CHECK_THROWS_AS(boiler_hour({{4000.0, 0.0}}, 100.0), std::logic_error);
  CHECK_THROWS_AS(boiler_hour({{4000.0}, 0.0}, 100.0), std::logic_error);
  CHECK_THROWS_AS(boiler_hour({{4000.0}, 1.1}, 100.0), std::logic_error);
  CHECK_THROWS_AS(boiler_hour({{4000.0}, 1.0, 0.0}, 100.0), std::logic_error);
  CHECK_THROWS_AS(boiler_hour({{4000.0}, 1.0, 1e-3, 4000.0}, 100.0), std::logic_error);
  CHECK_THROWS_AS(boiler_hour(three_stages(), -1.0), std::logic_error);
  CHECK_THROWS_AS(boiler_hour(three_stages(), std::nan("")), std::logic_error);
  CHECK_THROWS_AS(thermostat_cycling(1.1, 1e-3), std::logic_error);
  CHECK_THROWS_AS(thermostat_cycling(0.5, 0.0), std::logic_error);
}
