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
      wanted.push_back(std::min(p.wanted_W[i], p.floor.room[i].given_W_per_m2 * p.envelope.room[i].floor_m2));
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
