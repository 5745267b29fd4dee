// Which supply temperature serves every room, and what is said about it.
#include <algorithm>

#include "plant/plants.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {
bool has(const std::vector<Diagnostic>& said, const std::string& code) {
  return std::any_of(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
}
}  // namespace

TEST_CASE("at the supply found no room lacks heat and one has no more than it wants") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Piped p = piped(one.file.design);
    std::vector<double> wanted;
    for (std::size_t i = 0; i < p.wanted_W.size(); ++i) {
      wanted.push_back(std::min(p.wanted_W[i], p.floor.room[i].given_W_per_m2 * p.floor.room[i].heated_m2));
    }
    const auto found = supply_for(p.plant, p.conditions, wanted);
    REQUIRE(found);
    double neediest = 1e9;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      if (wanted[i] <= 0.0) continue;
      CHECK(found.value->room_up_W[i] > 0.999 * wanted[i]);
      neediest = std::min(neediest, found.value->room_up_W[i] / wanted[i]);
    }
    CHECK(neediest == Approx(1.0).epsilon(1e-3));
  }
}

TEST_CASE("tube beyond the floor's need adds tube and no floor") {
  // The ten lines' floor with loops listed: as much tube as it takes, and half as much again.
  const auto with = [](double length_m) {
    Design design = layout("ten-lines").file.design;
    for (int i = 0; i < 4; ++i) {
      LoopEntry loop;
      loop.length_m = length_m;
      loop.leaders = Leaders{false, 0.0};
      design.loop.push_back(loop);
    }
    return piped(design);
  };
  const double floor_m2 = floor_shape(layout("ten-lines").file.design.slab).area_m2;
  const double enough_m = floor_m2 / 0.3048 / 4.0;
  const Piped enough = with(enough_m), more = with(1.5 * enough_m), half = with(0.5 * enough_m);
  CHECK(enough.floor.room[0].heated_m2 == Approx(floor_m2));
  CHECK(more.floor.room[0].heated_m2 == Approx(floor_m2));
  CHECK(half.floor.room[0].heated_m2 == Approx(0.5 * floor_m2));
  CHECK(more.floor.room[0].wanted_W_per_m2 == Approx(enough.floor.room[0].wanted_W_per_m2));
  const OperatingPoint point = supply_for(more.plant, more.conditions, more.wanted_W).value.value();
  CHECK(point.room_up_W[0] == Approx(more.wanted_W[0]).epsilon(1e-4));
  // The same heat at the same flow, from nearly the same water: longer loops ask the pump for more.
  const FlowTarget a = target_flows(enough.plant, &enough.envelope), b = target_flows(more.plant, &more.envelope);
  for (std::size_t i = 0; i < 4; ++i) CHECK(b.loop_m3_per_s[i] == Approx(a.loop_m3_per_s[i]));
}

TEST_CASE("more heat asked for takes warmer water") {
  const Piped p = piped(layout("frame-shop").file.design);
  double last = -100.0;
  for (const double share : {0.25, 0.5, 0.75, 1.0, 1.25}) {
    std::vector<double> wanted = p.wanted_W;
    for (double& w : wanted) w *= share;
    const double supply = supply_for(p.plant, p.conditions, wanted).value->supply_degC;
    CHECK(supply > last);
    last = supply;
  }
}

TEST_CASE("rooms that ask their floors for nothing get the coolest water, not the hottest") {
  const Piped p = piped(layout("frame-shop").file.design);
  const auto found = supply_for(p.plant, p.conditions, std::vector<double>(p.wanted_W.size(), 0.0));
  REQUIRE(found);
  CHECK(found.value->supply_degC == *std::min_element(p.conditions.room_degC.begin(), p.conditions.room_degC.end()));
  CHECK(has(found.said, "plant.no-heat-wanted"));
  CHECK_FALSE(has(found.said, "plant.supply-too-hot"));
  CHECK_FALSE(has(found.said, "plant.boiler-too-cool"));
}

TEST_CASE("hot supply warns, hotter is refused") {
  const Piped p = piped(layout("ten-lines").file.design);
  std::vector<double> wanted = p.wanted_W;
  std::vector<std::string> codes;
  for (const double times : {1.0, 3.0, 6.0}) {
    for (std::size_t i = 0; i < wanted.size(); ++i) wanted[i] = times * p.wanted_W[i];
    const auto found = supply_for(p.plant, p.conditions, wanted);
    const double supply = found.value->supply_degC;
    CHECK(has(found.said, "plant.supply-warm") == (supply > 49.0 && supply <= 60.0));
    CHECK(has(found.said, "plant.supply-too-hot") == (supply > 60.0));
  }
}

TEST_CASE("a source that runs hot without mixing is told to have some") {
  DesignFile file = layout("ten-lines").file;
  file = with_key(file, "boiler.hottest", "180 F").value();
  const Piped plain = piped(file.design);
  CHECK(has(supply_for(plain.plant, plain.conditions, plain.wanted_W).said, "plant.no-mixing"));
  file = with_key(file, "boiler.piping", "mixing valve").value();
  const Piped mixed = piped(file.design);
  CHECK_FALSE(has(supply_for(mixed.plant, mixed.conditions, mixed.wanted_W).said, "plant.no-mixing"));
}

TEST_CASE("a boiler that stops below the water wanted fails") {
  const DesignFile file = with_key(layout("ten-lines").file, "boiler.hottest", "80 F").value();
  const Piped p = piped(file.design);
  CHECK(has(supply_for(p.plant, p.conditions, p.wanted_W).said, "plant.boiler-too-cool"));
}

TEST_CASE("a loop that is all leader takes a little by its length, and the others by their heat as before") {
  Design design = layout("ten-lines").file.design;
  const auto add = [&](double length_m) {
    LoopEntry loop;
    loop.length_m = length_m;
    design.loop.push_back(loop);
  };
  add(80.0);
  add(70.0);
  const Piped two = piped(design);
  const FlowTarget before = target_flows(two.plant, &two.envelope);
  add(1.0);
  const Piped three = piped(design);
  const FlowTarget target = target_flows(three.plant, &three.envelope);
  // A tenth of what its length would get.
  CHECK(target.loop_m3_per_s[2] / target.total_m3_per_s == Approx(0.1 / 151.1));
  CHECK(target.loop_m3_per_s[0] / target.loop_m3_per_s[1] == Approx(before.loop_m3_per_s[0] / before.loop_m3_per_s[1]));
}
