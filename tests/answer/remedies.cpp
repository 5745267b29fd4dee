// One key and one value for what stopped: set in the file, it ends that stop; where there is none, that is said.
#include <algorithm>

#include "slabwright/answer.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Answer answered_with(const DesignFile& file, bool remedies) {
  Wishes wishes;
  wishes.sensitivities = wishes.bands = false;
  wishes.remedies = remedies;
  return answer(file, wishes);
}

bool says(const Answer& found, const std::string& code) {
  return std::any_of(found.said.begin(), found.said.end(), [&](const Diagnostic& d) { return d.code == code; });
}

/// A shop whose boiler gives a fiftieth of what the frost hold takes, and whose outdoor lines of water no setting
/// keeps: two causes, so that no single change helps.
DesignFile two_causes() {
  return with_keys(
      layout("ten-lines").file,
      {{"second_source.kind", "water heat pump"}, {"boiler.power", "0.2 kW"}, {"climate.coldest", "-40 F"}});
}

}  // namespace

TEST_CASE("a stated value ends what it is stated for") {
  struct Case {
    std::string code;
    Keys keys;
  };
  const std::vector<Case> cases{{"plant.boiler-too-small", {{"boiler.power", "2 kW"}}},
                                {"plant.boiler-too-cool", {{"boiler.hottest", "75 F"}}},
                                {"floor.too-warm", {{"building.heat_loss", "56000 Btu/h"}}},
                                {"plant.supply-too-hot", {{"slab.covering", "R-12"}}},
                                {"balance.pump-too-weak", {{"valve.return_coefficient", "Kv 0.06"}}},
                                {"plant.start-frozen", {{"fluid.start", "20 F"}}}};
  for (const Case& one : cases) {
    INFO(one.code);
    const DesignFile file = with_keys(layout("ten-lines").file, one.keys);
    const Answer found = answered_with(file, true);
    REQUIRE(says(found, one.code));
    const auto remedy =
        std::find_if(found.remedy.begin(), found.remedy.end(), [&](const Remedy& r) { return r.code == one.code; });
    REQUIRE(remedy != found.remedy.end());
    INFO(remedy->path << " = " << remedy->text);
    REQUIRE_FALSE(remedy->path.empty());
    CHECK(remedy->tried.back() == remedy->path);
    const auto changed = with_key(file, remedy->path, remedy->text);
    REQUIRE(changed);
    CHECK_FALSE(says(answered_with(*changed, false), one.code));
  }
}

TEST_CASE("what is stated is what a shop would do") {
  struct Case {
    std::string code;
    Keys keys;
    std::string path, text;
  };
  const std::vector<Case> cases{
      {"plant.no-room-for-expansion", {{"pressure.fill", "28 psi"}}, "pressure.fill", "15 psi"},
      {"plant.start-frozen", {{"fluid.start", "20 F"}}, "fluid.kind", "propylene glycol"},
      {"floor.too-warm",
       {{"tube.spacing", "24 in"}, {"climate.outdoor", "-30 F"}, {"climate.indoor", "65 F"}},
       "tube.spacing",
       "12 in"},
      {"plant.supply-too-hot",
       {{"tube.size", "3/8 in"}, {"slab.size", "50 x 40 ft"}, {"tube.longest_loop", "1500 ft"}},
       "tube.longest_loop",
       "250 ft"}};
  for (const Case& one : cases) {
    INFO(one.code);
    const Answer found = answered_with(with_keys(layout("ten-lines").file, one.keys), true);
    const auto remedy =
        std::find_if(found.remedy.begin(), found.remedy.end(), [&](const Remedy& r) { return r.code == one.code; });
    REQUIRE(remedy != found.remedy.end());
    CHECK(remedy->path == one.path);
    CHECK(remedy->text == one.text);
  }
}

TEST_CASE("where no shop's change is enough, what the quantity would have to be is stated as such") {
  const DesignFile file = with_keys(layout("ten-lines").file, {{"building.heat_loss", "400000 Btu/h"}});
  const Answer found = answered_with(file, true);
  const auto remedy = std::find_if(found.remedy.begin(), found.remedy.end(),
                                   [](const Remedy& r) { return r.code == "floor.too-warm"; });
  REQUIRE(remedy != found.remedy.end());
  CHECK(remedy->on_paper);
  CHECK(remedy->path == "building.heat_loss");
  const auto changed = with_key(file, remedy->path, remedy->text);
  REQUIRE(changed);
  CHECK_FALSE(says(answered_with(*changed, false), "floor.too-warm"));
}

TEST_CASE("a floor none of whose rooms is to be heated is told to heat one") {
  const DesignFile file = with_keys(
      layout("frame-shop").file,
      {{"room[1].heated_floor", "false"}, {"room[2].heated_floor", "false"}, {"room[3].heated_floor", "false"}});
  const Answer found = answered_with(file, true);
  REQUIRE(says(found, "loops.no-floor"));
  REQUIRE(found.remedy.size() == 1);
  CHECK(found.remedy[0].path == "room[1].heated_floor");
}

TEST_CASE("nothing is stated that no shop has, or that breaks something else") {
  for (const Keys& keys : {Keys{{"tube.size", "3/8 in"}, {"slab.size", "50 x 40 ft"}, {"tube.longest_loop", "700 ft"}},
                           Keys{{"building.quality", "poor"}, {"climate.outdoor", "-60 F"}, {"tube.spacing", "24 in"}},
                           Keys{{"building.heat_loss", "90000 Btu/h"}}}) {
    const DesignFile file = with_keys(layout("ten-lines").file, keys);
    const Answer found = answered_with(file, true);
    CHECK_FALSE(found.remedy.empty());
    for (const Remedy& remedy : found.remedy) {
      if (remedy.path.empty() || remedy.on_paper) continue;
      INFO(remedy.path << " = " << remedy.text);
      const auto changed = with_key(file, remedy.path, remedy.text);
      REQUIRE(changed);
      for (const PumpCurvePoint& point : changed->design.pump.points) CHECK(point.head_m < 14.5);
      if (changed->design.building.heat_loss_W)
        CHECK(*changed->design.building.heat_loss_W > 0.45 * found.loss_W->usual);
      const Answer then = answered_with(*changed, false);
      for (const Diagnostic& said : then.said)
        if (said.severity == Severity::failure) CHECK(says(found, said.code));
    }
  }
}

TEST_CASE("every stop among the reasons has its row, once by code, and nothing else has") {
  for (const Layout& one : layouts()) {
    const Answer found = answered_with(one.file, true);
    for (const Remedy& remedy : found.remedy) CHECK(is_stop(remedy.code));
    for (const Diagnostic& reason : found.verdict.reasons) {
      const auto rows = std::count_if(found.remedy.begin(), found.remedy.end(),
                                      [&](const Remedy& remedy) { return remedy.code == reason.code; });
      CHECK(rows == (is_stop(reason.code) ? 1 : 0));
    }
  }
}

TEST_CASE("where no single change helps, the keys that were tried are named") {
  const Answer found = answered_with(two_causes(), true);
  const auto remedy = std::find_if(found.remedy.begin(), found.remedy.end(),
                                   [](const Remedy& r) { return r.code == "freeze.no-setting"; });
  REQUIRE(remedy != found.remedy.end());
  CHECK(remedy->path.empty());
  CHECK(remedy->text.empty());
  CHECK(remedy->tried.size() > 2);
}
