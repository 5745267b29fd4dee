// When no number is given, or one is refused, and why.
#include <algorithm>

#include "freeze/holds.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Diagnostic& said(const Checked<Freeze>& checked, const std::string& code) {
  for (const Diagnostic& d : checked.said) {
    if (d.code == code) return d;
  }
  throw std::logic_error("not said: " + code);
}

Design failing_shop() {
  Design d = bare_shop();
  d.edge.insulation = {1.8};
  d.climate.coldest_degC = -32.0;
  d.opening[0].tube_distance_m = 0.05;
  d.edge.insulation = {1.8};
  d.second_source.kind = SecondSourceKind::heat_pump;
  return d;
}

}  // namespace

TEST_CASE("a slab at 40 F under a leaky building is refused with the reason") {
  Design d = bare_shop();
  d.units = System::us;
  d.building.quality = Quality::poor;
  d.climate.coldest_degC = -20.0;
  const auto checked = checked_hold(line_of(d));
  CHECK(say(said(checked, "freeze.usual-slab-setting"), System::us).find("refused") != std::string::npos);
  CHECK(checked.value->slab->best_degC > 10.0);
}

TEST_CASE("a tight building in mild weather does not hear about 40 F") {
  Design d = bare_shop();
  d.building.quality = Quality::tight;
  d.climate.coldest_degC = -2.0;
  CHECK_FALSE(has_code(checked_hold(line_of(d)).said, "freeze.usual-slab-setting"));
}

TEST_CASE("where a tube freezes however warm the floor is, no setting is safe") {
  const auto checked = checked_hold(line_of(failing_shop()));
  const Freeze& freeze = *checked.value;
  CHECK(freeze.verdict == FreezeVerdict::no_setting);
  CHECK(said(checked, "freeze.no-setting").severity == Severity::failure);
  CHECK(freeze.place[0].name == "tube 50 mm inside the big door");
  CHECK_FALSE(freeze.place[0].asks_air_degC);
  CHECK(freeze.reason.find("The tube 50 mm inside the big door falls below 2.0 C however the floor is set") == 0);
  CHECK(freeze.reason.find("shut that loop off and drain it, or fill with glycol") != std::string::npos);
  CHECK(freeze.reason.find("Everywhere else " + show(freeze.slab->dial_degC, Dimension::degree, System::si)) !=
        std::string::npos);
  CHECK(freeze.air->decides == "air round manifold and boiler");
  CHECK(freeze.slab->dial_degC > 0.0);
}

TEST_CASE("the warmest floor allowed really leaves that tube too cold") {
  const Line line = line_of(failing_shop());
  const SlabHold hold = slab_hold(line.floor.section, line.envelope.room[0], line.floor.room[0].heated_m2);
  double sensor_degC = 20.0;
  while (room_held_by(hold, sensor_degC, -32.0).floor_over_tube_degC < warmest_floor_degC) sensor_degC += 0.1;
  const HeldRoom room = room_held_by(hold, sensor_degC, -32.0);
  const auto tube = std::find_if(line.places.place.begin(), line.places.place.end(),
                                 [](const WatchedPlace& p) { return p.name == "tube 50 mm inside the big door"; });
  CHECK(temperature_at(tube->idle, {room.room_degC, -32.0, 7.0, 0.0}) < 2.0);
}

TEST_CASE("enough glycol makes a setting of what had none") {
  Design d = failing_shop();
  d.fluid.kind = FluidKind::propylene_glycol;
  d.fluid.glycol = {0.4, false};
  CHECK(hold_of(d).verdict == FreezeVerdict::found);
}

TEST_CASE("a place that could not be computed: it cannot be called safe") {
  Design d = shop_with_store();
  d.room[1].heated_floor = false;
  d.watch = {{"store tap", WatchKind::wall_pipe, "store", std::nullopt, 0.1}};
  const auto checked = checked_hold(line_of(d));
  CHECK(checked.value->verdict == FreezeVerdict::cannot_be_called);
  CHECK(said(checked, "freeze.cannot-be-called").severity == Severity::failure);
  CHECK(checked.value->reason.find("The store tap: the air of the store cannot be computed") == 0);
  CHECK(checked.value->reason.find("For everything else ") != std::string::npos);
  CHECK(checked.value->slab->dial_degC > 0.0);
}

TEST_CASE("a room that was to be heated and has no tube after all is not known either") {
  Line line = line_of(shop_with_store());
  line.floor.room[1].heated_m2 = 0.0;
  const Freeze freeze = *checked_hold(line).value;
  CHECK(freeze.verdict == FreezeVerdict::cannot_be_called);
  REQUIRE(freeze.unknown.size() == 4);  // every place of its edge
  CHECK(freeze.unknown[0].name == "tube 150 mm inside the outer wall of the store");
  for (const UnknownPlace& place : freeze.unknown) CHECK(place.why == "no tube lies in the floor of the store");
}

TEST_CASE("a shop without any tube cannot be called") {
  Design d = bare_shop();
  d.room[0].heated_floor = false;
  Line line{d, *envelope_of(d).value, {}, {}, snap_of(d)};
  line.floor.section = line_of(bare_shop()).floor.section;
  line.floor.room.resize(1);
  const auto checked = checked_hold(line);
  CHECK(checked.value->verdict == FreezeVerdict::cannot_be_called);
  CHECK(checked.value->reason == "The whole shop: no tube lies in any floor that has an edge outdoors.");
}

TEST_CASE("a boiler too small for the hold is named with the weather it can keep") {
  const Freeze enough = hold_of(bare_shop(), 12000.0);
  REQUIRE(enough.boiler_keeps_to_degC);
  CHECK(*enough.boiler_keeps_to_degC < -27.0);
  CHECK(enough.hold_W < 12000.0);

  const double half_W = enough.hold_W / 2.0;
  const auto checked = checked_hold(line_of(bare_shop()), half_W);
  const Diagnostic& small = said(checked, "freeze.boiler-too-small");
  CHECK(small.severity == Severity::failure);
  CHECK(say(small, System::si).find("enough down to") != std::string::npos);
  REQUIRE(checked.value->boiler_keeps_to_degC);
  CHECK(*checked.value->boiler_keeps_to_degC > -27.0);
  CHECK(*checked.value->boiler_keeps_to_degC < 20.0);
  CHECK_FALSE(has_code(checked_hold(line_of(bare_shop())).said, "freeze.boiler-too-small"));
}

TEST_CASE("without the coldest hour there is no frost hold") {
  Line line = line_of(bare_shop());
  line.design.climate.coldest_degC.reset();
  const auto checked = checked_hold(line);
  CHECK_FALSE(checked);
  CHECK(has_code(checked.said, "freeze.no-outdoor"));
}

TEST_CASE("weather that cannot freeze anything asks for next to nothing") {
  Design d = bare_shop();
  d.climate.outdoor_degC = 12.0;
  d.climate.coldest_degC = 10.0;
  const Freeze freeze = hold_of(d, 6000.0);
  CHECK(freeze.verdict == FreezeVerdict::found);
  CHECK(freeze.air->best_degC <= 10.0 + 1e-6);
  CHECK(freeze.slab->dial_degC < 10.0);
}

TEST_CASE("the hold may take a shop out of the class its footing was built for") {
  CHECK(has_code(checked_hold(line_of(door_shop())).said, "freeze.footing"));
}

TEST_CASE("water that stands outdoors is kept by no setting; glycol is the way out") {
  Design d = door_shop();
  d.second_source.kind = SecondSourceKind::water_heat_pump;
  const Freeze freeze = hold_of(d);
  CHECK(freeze.verdict == FreezeVerdict::no_setting);
  CHECK(freeze.reason.find("outdoor lines of the heat pump") != std::string::npos);
  CHECK(freeze.reason.find("fill with glycol, or drain it before the cold") != std::string::npos);
  d.fluid = {FluidKind::propylene_glycol, {0.5, false}};
  CHECK(hold_of(d).verdict == FreezeVerdict::found);
}
