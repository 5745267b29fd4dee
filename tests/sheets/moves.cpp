// One input is changed: the sheets that must change do, and those that it does not concern stay as they are.
#include <map>
#include <set>

#include "slabwright/sheets.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

using Pages = std::map<std::string, std::string>;

Pages pages_of(const DesignFile& file) {
  Wishes wishes;
  wishes.question = Question::sheets;
  wishes.sensitivities = false;
  wishes.bands = false;
  Pages all;
  // Whether the design works stands in every head: what a sheet itself tells begins below it.
  for (const ReaderSheet& page : reader_sheets(answer(file, wishes)))
    all[page.sheet.name] = page.sheet.content.substr(page.sheet.content.find("<main>"));
  return all;
}

/// An input of the frame shop, another value, the sheets that must change with it, and those that must not.
struct Move {
  std::string key, value;
  std::set<std::string> must, never;
};

const std::vector<Move>& moves() {
  static const std::set<std::string> site{"materials.html", "loop-cards.html", "pour-day.html", "pressure-test.html"};
  static const std::vector<Move> all{
      {"tube.spacing",
       "9 in",
       {"owner.html", "materials.html", "loop-cards.html", "pour-day.html", "manifold.html", "piping.html",
        "heat-pump.html"},
       {"pressure-test.html"}},
      {"climate.outdoor",
       "-20 F",
       {"owner.html", "manifold.html", "heat-pump.html", "frost-card.html", "piping.html"},
       {"pressure-test.html", "loop-cards.html"}},
      {"climate.coldest", "-36 F", {"owner.html", "frost-card.html", "sections.html"}, site},
      {"boiler.power",
       "14.4 kW",
       {"owner.html", "electrician.html", "materials.html", "piping.html"},
       {"loop-cards.html", "pressure-test.html", "pour-day.html"}},
      {"edge.insulation", "R-5", {"owner.html", "sections.html"}, {"loop-cards.html", "pressure-test.html"}},
      {"insulation.under", "R-5", {"owner.html", "materials.html", "sections.html"}, {"pressure-test.html"}},
      {"service.main_breaker", "200 A", {"electrician.html"}, {"manifold.html", "heat-pump.html", "first-heat.html"}},
      {"project.poured", "2026-08-03", {"first-heat.html"}, {"manifold.html", "owner.html", "electrician.html"}},
      {"slab.thickness", "6 in", {"owner.html", "pour-day.html", "sections.html"}, {"pressure-test.html"}},
      {"second_source.cut_out", "5 F", {"owner.html", "heat-pump.html"}, site},
      {"codes", "europe", {"pressure-test.html", "electrician.html"}, {"manifold.html", "loop-cards.html"}}};
  return all;
}

}  // namespace

TEST_CASE("what an input moves changes on the sheets that tell it, and on no other", "[whole]") {
  const DesignFile base = test::layout("frame-shop").file;
  const Pages before = pages_of(base);
  for (const Move& move : moves()) {
    INFO(move.key << " = " << move.value);
    const Pages after = pages_of(test::with_keys(base, {{move.key, move.value}}));
    for (const std::string& name : move.must) {
      INFO(name);
      REQUIRE(before.count(name) == 1);
      const bool moved = after.count(name) == 0 || after.at(name) != before.at(name);
      CHECK(moved);
    }
    for (const std::string& name : move.never) {
      INFO(name);
      REQUIRE(before.count(name) == 1);
      REQUIRE(after.count(name) == 1);
      const bool as_before = after.at(name) == before.at(name);
      CHECK(as_before);
    }
  }
}
