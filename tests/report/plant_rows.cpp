// What is told of the plant: every key that describes it moves a line that somebody reads.
#include "sample.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Setting = std::pair<std::string, std::string>;

/// A boiler in one large stage, and a service with all that hangs on it.
const std::vector<Setting>& described() {
  static const std::vector<Setting> all{{"boiler.stages", "1"},
                                        {"boiler.differential", "10 F"},
                                        {"boiler.least_on", "5 min"},
                                        {"boiler.least_flow", "1.5 gpm"},
                                        {"boiler.rated_voltage", "240 V"},
                                        {"pump.efficiency", "30 %"},
                                        {"pump.season", "4000 h"},
                                        {"valve.meter_most", "2 gpm"},
                                        {"second_source.kind", "heat pump"},
                                        {"second_source.current", "21 A"},
                                        {"service.main_breaker", "200 A"},
                                        {"service.other_loads", "40 A"},
                                        {"fluid.start", "40 F"},
                                        {"pressure.fill", "12 psi"},
                                        {"pressure.height", "8 ft"}};
  return all;
}

DesignFile with_plant() {
  DesignFile file = layout("old-pour").file;
  for (const auto& [path, text] : described()) file = with_key(file, path, text).value();
  return file;
}

Wishes plainly() {
  Wishes wishes;
  wishes.sensitivities = false;
  return wishes;
}

std::string told(const DesignFile& file) { return text_of(answer(file, plainly()), {"old-pour.toml", true, ""}); }

}  // namespace

TEST_CASE("every key of the plant moves a line of the whole report", "[whole]") {
  const DesignFile file = with_plant();
  const std::string before = told(file);
  const std::vector<Setting> moved{{"boiler.stages", "2"},
                                   {"boiler.differential", "14 F"},
                                   {"boiler.least_on", "9 min"},
                                   {"boiler.least_flow", "9 gpm"},
                                   {"boiler.rated_voltage", "250 V"},
                                   {"pump.efficiency", "20 %"},
                                   {"pump.season", "3000 h"},
                                   {"valve.meter_most", "0.5 gpm"},
                                   {"second_source.kind", "none"},
                                   {"second_source.current", "30 A"},
                                   {"service.main_breaker", "100 A"},
                                   {"service.other_loads", "60 A"},
                                   {"fluid.start", "50 F"},
                                   {"pressure.fill", "15 psi"},
                                   {"pressure.height", "12 ft"}};
  REQUIRE(moved.size() == described().size());
  for (const auto& [path, text] : moved) {
    INFO(path);
    CHECK(told(with_key(file, path, text).value()) != before);
  }
}

TEST_CASE("a boiler that does not fire cold, and water in a frozen slab, are no working shop", "[whole]") {
  DesignFile file = layout("old-pour").file;
  file = with_key(file, "fluid.kind", "propylene glycol").value();
  file = with_key(file, "fluid.glycol", "50 %").value();
  const Answer usual = answer(file, plainly());
  REQUIRE(usual.sizes);
  REQUIRE(usual.sizes->start.flow_share < 0.9);
  const double between = 0.5 * (usual.sizes->start.flow_m3_per_s + usual.point->flow_m3_per_s);
  const Answer cold = answer(
      with_key(file, "boiler.least_flow", write_quantity(between, Dimension::flow, System::us)).value(), plainly());
  CHECK(exit_code(cold) == 3);
  const std::string all = flat(text_of(cold, {"old-pour.toml", false, ""}));
  CHECK_THAT(all, Catch::Matchers::Contains("IT DOES NOT WORK"));
  CHECK_THAT(all, Catch::Matchers::Contains("it does not fire. A bypass or a separator at the boiler mends it"));
  CHECK_THAT(all, Catch::Matchers::Contains("cold start at 40 F"));
  const Answer frozen = answer(with_key(layout("old-pour").file, "fluid.start", "25 F").value(), plainly());
  CHECK(exit_code(frozen) == 3);
  CHECK_THAT(flat(text_of(frozen, {"old-pour.toml", false, ""})),
             Catch::Matchers::Contains("cold start not at 25 F: it freezes in the tubes"));
}

TEST_CASE("a whole report names power, suction, stages, relief and each loop's air") {
  const std::string all = flat(text_of(sample(Question::design), {"harness.toml", true, ""}));
  for (const std::string part :
       {"7 W from the wall", "suction head (NPSH)", "2 of 4.5 kW; in mild weather, 1.9 kW taken, one stays on",
        "opens at 30 psi", "AIR OUT, one loop at a time", "fill to 12 psi at 40 F"})
    CHECK_THAT(all, Catch::Matchers::Contains(part));
}
