// Faults, the way back to work, sensors in the wrong place, and everything switched off.
#include <algorithm>

#include "freeze/holds.hpp"
#include "slabwright/freeze_recovery.hpp"
#include "slabwright/units_exact.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Held {
  Line line;
  Freeze freeze;
};
Held held(const Design& design, std::optional<double> boiler_W = 12000.0) {
  Line line = line_of(design);
  Freeze freeze = *checked_hold(line, boiler_W).value;
  return {std::move(line), std::move(freeze)};
}

double hours(const std::optional<double>& lasts_s) { return lasts_s ? *lasts_s / hour_s : 1000.0; }

double hours_of(const std::vector<SingleFault>& faults, const std::string& word) {
  for (const SingleFault& fault : faults)
    if (fault.what.find(word) != std::string::npos) return hours(fault.lasts_s);
  throw std::logic_error("no such fault: " + word);
}

const SensorCase& sensor(const std::vector<SensorCase>& cases, const std::string& word) {
  for (const SensorCase& one : cases)
    if (one.where.find(word) != std::string::npos) return one;
  throw std::logic_error("no such case: " + word);
}

}  // namespace

TEST_CASE("a dead pump is the worst of what is dead, an open door the worst of all") {
  Design design = described_shop();
  design.second_source.kind = SecondSourceKind::heat_pump;
  const Held at = held(design);
  const auto faults = single_faults(at.line.held(), at.freeze, coarse_fields(), 12000.0);
  REQUIRE(faults.size() == 5);
  CHECK(hours_of(faults, "pump dead") > 1.0);
  CHECK(hours_of(faults, "pump dead") < 48.0);
  CHECK(hours_of(faults, "boiler tripped") >= hours_of(faults, "pump dead"));
  CHECK(hours_of(faults, "valve stuck") >= hours_of(faults, "pump dead"));
  CHECK(hours_of(faults, "second source lost") == 1000.0);  // the boiler is enough
  CHECK(hours_of(faults, "left open") < hours_of(faults, "pump dead"));
  design.opening.clear();
  design.building.big_door = false;
  const Held closed = held(design);
  CHECK(single_faults(closed.line.held(), closed.freeze, coarse_fields(), 12000.0).size() == 4);
}

TEST_CASE("a second source that is lost matters where the boiler alone is too small") {
  Design design = described_shop();
  design.second_source.kind = SecondSourceKind::heat_pump;
  const Held at = held(design, 2000.0);
  const auto faults = single_faults(at.line.held(), at.freeze, coarse_fields(), 2000.0);
  CHECK(hours_of(faults, "second source lost") < 200.0);
  CHECK(hours_of(faults, "second source lost") > hours_of(faults, "pump dead"));
}

TEST_CASE("more heat and milder weather are a shorter way back, and its energy is power times time") {
  const Held at = held(described_shop());
  const auto usual = recoveries(at.line.held(), at.freeze, coarse_fields(), 12000.0);
  const auto strong = recoveries(at.line.held(), at.freeze, coarse_fields(), 18000.0);
  REQUIRE(usual.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    REQUIRE((usual[i].takes_s && strong[i].takes_s));
    CHECK(*strong[i].takes_s < *usual[i].takes_s);
    CHECK(usual[i].boiler_J == Approx(12000.0 * *usual[i].takes_s));
    CHECK(usual[i].source_J == 0.0);
    CHECK(*usual[i].starts_at_s == Approx(7.0 * hour_s - *usual[i].takes_s));
    CHECK(usual[i].to_air_degC == 16.0);
    CHECK(usual[i].floor_degC > 16.0);
    CHECK(usual[i].operative_degC > 15.0);
    CHECK(usual[i].operative_degC < usual[i].floor_degC);
  }
  CHECK(*usual[0].takes_s < *usual[1].takes_s);
  CHECK(recoveries(at.line.held(), at.freeze, coarse_fields(), std::nullopt).empty());
}

TEST_CASE("a second source shortens the way back where it can run, and leaves the floor colder") {
  Design design = described_shop();
  const Held alone = held(design);
  design.second_source = {SecondSourceKind::heat_pump, -15.0, 7000.0, {}};
  Held at = held(design);
  at.freeze.air->dial_degC = alone.freeze.air->dial_degC;
  const auto without = recoveries(alone.line.held(), alone.freeze, coarse_fields(), 12000.0);
  const auto with = recoveries(at.line.held(), at.freeze, coarse_fields(), 12000.0);
  CHECK(with[0].source_runs);
  CHECK(*with[0].takes_s < *without[0].takes_s);
  CHECK(with[0].source_J > 0.0);
  CHECK(with[0].floor_degC < without[0].floor_degC);
  CHECK_FALSE(with[1].source_runs);  // -20 degC is below its cut-out
  CHECK(*with[1].takes_s == Approx(*without[1].takes_s));
}

TEST_CASE("a boiler that is too small never gets there") {
  const Held at = held(described_shop());
  const auto none = recoveries(at.line.held(), at.freeze, coarse_fields(), 1500.0);
  REQUIRE_FALSE(none.empty());
  CHECK_FALSE(none.back().takes_s);
  CHECK_FALSE(none.back().starts_at_s);
}

TEST_CASE("a sensor that reads more leaves the floor colder, and its dial has to stand higher by as much") {
  const Held at = held(described_shop());
  const auto cases = sensor_cases(at.line.held(), at.freeze, coarse_fields());
  REQUIRE(cases.size() == 6);
  const SensorCase& right = sensor(cases, "midway");
  CHECK(right.reads_off_K == 0.0);
  CHECK(right.coldest_spare_K >= 2.0 - 1e-6);
  CHECK(sensor(cases, "too high").reads_off_K == 1.0);
  CHECK(sensor(cases, "from a tube").reads_off_K > 0.5);
  CHECK(sensor(cases, "under a mat").reads_off_K > 0.5);
  CHECK(sensor(cases, "in the sun").reads_off_K > 2.0);
  CHECK(sensor(cases, "inside the big door").reads_off_K < 0.0);
  for (const SensorCase& one : cases) {
    CHECK(one.dial_degC == Approx(at.freeze.slab->dial_degC + one.reads_off_K));
    if (one.reads_off_K > 0.0) CHECK(one.coldest_spare_K < right.coldest_spare_K);
    if (one.reads_off_K < 0.0) CHECK(one.coldest_spare_K > right.coldest_spare_K);
  }
}

TEST_CASE("water cannot be left off, glycol can where it is strong and no pipe stands by") {
  Design design = bare_shop();
  Line line = line_of(design);
  const TurnOff water = turned_off(line.held(), coarse_fields());
  CHECK_FALSE(water.yes);
  CHECK(water.freezes.size() >= 4);
  REQUIRE(water.glycol_share);
  CHECK(water.coldest_air_degC < water.coldest_tube_degC);
  CHECK(water.coldest_air_degC > -27.0);
  design.fluid = {FluidKind::propylene_glycol, {*water.glycol_share, false}};
  line = line_of(design);
  CHECK(turned_off(line.held(), coarse_fields()).yes);
  design.watch.resize(1);
  design.watch[0].name = "sink line";
  design.watch[0].kind = WatchKind::wall_pipe;
  line = line_of(design);
  const TurnOff pipe = turned_off(line.held(), coarse_fields());
  CHECK_FALSE(pipe.yes);
  REQUIRE(pipe.freezes.size() == 1);
  CHECK(pipe.freezes[0] == "sink line");
  design.fluid.glycol.share = 0.25;
  line = line_of(design);
  CHECK(turned_off(line.held(), coarse_fields()).freezes.size() > 1);
}
