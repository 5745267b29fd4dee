// What the calendar and the pressure test read moves them, each in the sense that it must.
#include <cmath>
#include <set>

#include "slabwright/answer.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

const std::string shop =
    "units = \"US\"\n[project]\npoured = \"2026-09-14\"\n[slab]\nsize = \"36 x 30 ft\"\ncure = \"30 d\"\n"
    "[climate]\noutdoor = \"-12 F\"\nindoor = \"60 F\"\n[pressure]\nrelief = \"70 psi\"\n";

Answer answer_with(const std::string& path, const std::string& text) {
  std::vector<Override> moved;
  if (!path.empty()) moved.push_back({path, text, "--set"});
  const ReadDesign read = read_design(shop, moved);
  REQUIRE(read.checked);
  Wishes wishes;
  wishes.question = Question::cure;
  return answer(*read.checked.value, wishes);
}

/// Everything that the site's days say, as one text.
std::string days_of(const Answer& answer) {
  REQUIRE(answer.cure);
  REQUIRE(answer.pressure_test);
  std::string all;
  for (const Record& record : {reading(*answer.cure), reading(*answer.pressure_test)})
    walk(record, [&](const std::string& path, const Key& key, const Slot& slot) {
      all += path + " = " + write_out(key, slot, System::si) + "\n";
    });
  return all;
}

struct Move {
  std::string path, text;
};
const Move moves[] = {{"project.poured", "2026-11-14"}, {"slab.cure", "33 d"},
                      {"slab.daily_rise", "6 F"},       {"codes", "europe"},
                      {"pressure.relief", "80 psi"},    {"climate.altitude", "5000 ft"},
                      {"climate.mean", "30 F"},         {"climate.half_swing", "40 F"},
                      {"climate.outdoor", "-30 F"},     {"tube.spacing", "18 in"}};

}  // namespace

TEST_CASE("every input of calendar and pressure test moves them") {
  const std::string base = days_of(answer_with("", ""));
  CHECK(base == days_of(answer_with("", "")));
  for (const Move& move : moves) {
    INFO(move.path);
    CHECK(days_of(answer_with(move.path, move.text)) != base);
  }
}

TEST_CASE("no key is the calendar's alone and moves nothing") {
  Design design;
  std::set<std::string> moved;
  for (const Move& move : moves) moved.insert(move.path);
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot&) {
    INFO(path);
    if (key.says.only_for == "cure") CHECK(moved.count(path) == 1);
  });
}

TEST_CASE("moves go the way they must") {
  const Answer base = answer_with("", "");
  REQUIRE(base.cure);
  REQUIRE(base.pressure_test);
  REQUIRE(base.point);
  CHECK_FALSE(base.cure->top_is_ours);
  CHECK(base.cure->top_degC == base.point->supply_degC);
  CHECK_FALSE(base.freeze);
  CHECK(answer_with("slab.cure", "33 d").cure->wait_days == base.cure->wait_days + 3);
  CHECK(answer_with("slab.cure", "29.5 d").cure->wait_days == 30);
  CHECK(answer_with("slab.daily_rise", "3 F").cure->rise_days > base.cure->rise_days);
  CHECK(answer_with("tube.spacing", "18 in").cure->top_degC > base.cure->top_degC);
  CHECK(answer_with("climate.outdoor", "-30 F").cure->top_degC > base.cure->top_degC);
  CHECK(*answer_with("climate.mean", "30 F").cure->pour_month_degC < *base.cure->pour_month_degC);
  CHECK(answer_with("pressure.relief", "80 psi").pressure_test->rule[0].least_Pa >
        base.pressure_test->rule[0].least_Pa);
  CHECK(exit_code(base) == 0);
}

TEST_CASE("a calendar needs nothing but to be asked") {
  const ReadDesign read = read_design("[project]\npoured = \"2028-02-01\"\n");
  REQUIRE(read.checked);
  Wishes wishes;
  wishes.question = Question::cure;
  const Answer found = answer(*read.checked.value, wishes);
  REQUIRE(found.cure);
  CHECK(found.cure->heat_date == "2028-02-29");
  CHECK(found.cure->top_is_ours);
  CHECK(found.lacking.size() == 1);
  CHECK(exit_code(found) == 0);
}
