// The clock of a power cut: which cases it has, which way they go, and what is first.
#include <algorithm>
#include <cmath>

#include "holds.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Coarse cells, remembered between cases.
Outage clock_of(const Design& design) {
  const Line line = line_of(design);
  const auto freeze = checked_hold(line);
  REQUIRE(freeze);
  const auto outage = outage_clock(line.held(), *freeze.value, coarse_fields(), std::nullopt);
  REQUIRE(outage);
  return *outage;
}

double hours(const std::optional<double>& lasts_s) { return lasts_s ? *lasts_s / 3600.0 : 1000.0; }

double hours_of(const OutageCase& one, const std::string& word) {
  for (const OutagePlace& place : one.place)
    if (place.name.find(word) != std::string::npos) return hours(place.lasts_s);
  throw std::logic_error("no such place: " + word);
}

/// The cases of one weather, or of one setting, in their order.
template <class Same>
std::vector<OutageCase> those(const Outage& outage, Same same) {
  std::vector<OutageCase> found;
  std::copy_if(outage.row.begin(), outage.row.end(), std::back_inserter(found), same);
  return found;
}

}  // namespace

TEST_CASE("three weathers against settings up to the working temperature") {
  const Design design = bare_shop();  // -20 and -27 degC, coldest month at -5, 16 degC to work at
  const Freeze freeze = hold_of(design);
  const Outage outage = clock_of(design);
  CHECK(outage.longest_s == 96.0 * 3600.0);
  CHECK(outage.row.size() % 3 == 0);
  const std::size_t settings = outage.row.size() / 3;
  CHECK(outage.row.front().outdoor_degC == Approx(-5.0));
  CHECK(outage.row[settings].outdoor_degC == -20.0);
  CHECK(outage.row.back().outdoor_degC == -27.0);
  CHECK(outage.row.front().air_dial_degC == freeze.air->dial_degC);
  for (std::size_t i = 1; i < settings; ++i) {
    CHECK(outage.row[i].air_dial_degC > outage.row[i - 1].air_dial_degC);
    CHECK(outage.row[i].air_dial_degC <= 16.0);
  }
}

TEST_CASE("weather that is the same twice is one weather, and settings are round in the reader's units") {
  Design design = bare_shop();
  design.climate = {-8.0, -8.0, 25.0, 7.0, 12.0, 0.0, 4.0};
  design.fluid = {FluidKind::propylene_glycol, {0.3, false}};
  design.watch.resize(1);
  design.watch[0].kind = WatchKind::drain_trap;
  const Outage outage = clock_of(design);
  REQUIRE(outage.row.size() == 6);
  CHECK(outage.row[0].outdoor_degC == Approx(-5.0));
  CHECK(outage.row[3].outdoor_degC == -8.0);
  CHECK(outage.row[1].air_dial_degC == Approx(outage.row[0].air_dial_degC + 3.0));
  CHECK(outage.row[2].air_dial_degC == Approx(outage.row[0].air_dial_degC + 6.0));
  design.units = System::us;
  const Outage us = clock_of(design);
  CHECK(us.row[0].outdoor_degC == Approx((20.0 - 32.0) / 1.8));
  CHECK(us.row[1].air_dial_degC == Approx(us.row[0].air_dial_degC + 6.0 / 1.8));
}

TEST_CASE("the first of a case is the soonest of its places") {
  for (const OutageCase& one : clock_of(bare_shop()).row) {
    REQUIRE(one.place.size() == 4);  // three tubes and the air: floor line, slab corner and soil decide nothing
    CHECK(one.first == one.place[0].name);
    CHECK(one.lasts_s == one.place[0].lasts_s);
    CHECK(one.whole_s == one.place[0].whole_s);
    for (const OutagePlace& place : one.place) {
      REQUIRE(place.whole_s.has_value() == place.lasts_s.has_value());
      if (!place.whole_s) continue;
      CHECK(std::fmod(*place.whole_s, 3600.0) == 0.0);  // who is told of three hours has three
      CHECK(*place.whole_s <= *place.lasts_s);
      CHECK(*place.whole_s > *place.lasts_s - 3600.0);
    }
    CHECK(hours(one.place[0].lasts_s) <= hours(one.place[1].lasts_s));
    CHECK(hours(one.place[1].lasts_s) <= hours(one.place[2].lasts_s));
    CHECK(hours(one.lasts_s) > 0.0);
  }
}

TEST_CASE("the pump alone on a generator gives hours where a tube is first, and none to a pipe") {
  Design design = bare_shop();
  for (const OutageCase& one : clock_of(design).row) CHECK(hours(one.pump_lasts_s) > hours(one.lasts_s) + 1.0);
  design.watch.resize(1);
  design.watch[0].name = "sink line";
  design.watch[0].kind = WatchKind::wall_pipe;
  design.watch[0].toward_outdoor_share = 0.4;
  for (const OutageCase& one : clock_of(design).row) {
    CHECK(one.pump_first == "sink line");
    CHECK(one.pump_lasts_s == one.lasts_s);
  }
}

TEST_CASE("colder weather leaves fewer hours, a higher setting more") {
  const Outage outage = clock_of(bare_shop());
  for (const std::string place : {"outer wall", "big door", "air round"}) {
    for (const OutageCase& one : outage.row) {
      const auto colder = those(outage, [&](const OutageCase& other) {
        return other.air_dial_degC == one.air_dial_degC && other.outdoor_degC < one.outdoor_degC;
      });
      const auto higher = those(outage, [&](const OutageCase& other) {
        return other.outdoor_degC == one.outdoor_degC && other.air_dial_degC > one.air_dial_degC;
      });
      for (const OutageCase& other : colder) CHECK(hours_of(other, place) < hours_of(one, place));
      for (const OutageCase& other : higher) CHECK(hours_of(other, place) > hours_of(one, place));
    }
  }
}

TEST_CASE("a sensor that reads too high costs hours") {
  Design design = described_shop();
  const double exact = hours(clock_of(design).row.back().lasts_s);
  Design wrong = design;
  wrong.frost_hold.sensor_error_K = 0.0;
  const Line line = line_of(wrong);
  Freeze freeze = *checked_hold(line_of(design)).value;  // the same dial
  const auto right = outage_clock(line.held(), freeze, coarse_fields(), std::nullopt);
  CHECK(hours(right->row.back().lasts_s) > exact);
}

TEST_CASE("a pipe in an outer wall is first, and a store that loses more is colder") {
  Design design = shop_with_store();
  design.room[1].height_m = 6.0;
  WatchEntry pipe;
  pipe.name = "sink line";
  pipe.kind = WatchKind::wall_pipe;
  pipe.toward_outdoor_share = 0.4;
  design.watch = {pipe};
  const Outage outage = clock_of(design);
  for (const OutageCase& one : outage.row) {
    CHECK(one.first == "sink line");
    CHECK(hours_of(one, "outer wall of the store") < hours_of(one, "outer wall of the shop"));
  }
}

TEST_CASE("glycol does not freeze while the clock runs") {
  Design design = bare_shop();
  design.fluid = {FluidKind::propylene_glycol, {0.4, false}};
  const Outage outage = clock_of(design);
  CHECK(outage.row.front().first.empty());
  CHECK_FALSE(outage.row.front().lasts_s.has_value());
}

TEST_CASE("without a setting or an edge there is no clock") {
  Line line = line_of(bare_shop());
  Freeze freeze = *checked_hold(line).value;
  Line inside = line;
  inside.envelope.edge.clear();
  CHECK_FALSE(outage_clock(inside.held(), freeze, coarse_fields(), std::nullopt).has_value());
  freeze.air.reset();
  CHECK_FALSE(outage_clock(line.held(), freeze, coarse_fields(), std::nullopt).has_value());
}

TEST_CASE("one element of the boiler adds hours, and is none without a boiler") {
  const Line line = line_of(bare_shop());
  const Freeze freeze = *checked_hold(line).value;
  const auto with = outage_clock(line.held(), freeze, coarse_fields(), 9000.0);
  REQUIRE(with);
  CHECK(with->stage_W == 4500.0);
  for (const OutageCase& one : with->row) CHECK(hours(one.stage_lasts_s) > hours(one.pump_lasts_s));
  CHECK(outage_clock(line.held(), freeze, coarse_fields(), 12000.0)->stage_W == 4000.0);
  CHECK(clock_of(bare_shop()).stage_W == 0.0);
}

TEST_CASE("the records of the clock name every member") {
  Outage outage = clock_of(bare_shop());
  CHECK(record_of(outage).keys.size() == 5);
  CHECK(record_of(outage.row[0]).keys.size() == 12);
  CHECK(record_of(outage.row[0].place[0]).keys.size() == 3);
}
