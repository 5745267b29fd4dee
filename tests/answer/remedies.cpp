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

/// A shop whose boiler gives a tenth of what the frost hold takes, and whose outdoor lines of water no setting keeps:
/// two causes, so that no single change helps.
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
                                {"floor.too-warm", {{"building.heat_loss", "90000 Btu/h"}}},
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
