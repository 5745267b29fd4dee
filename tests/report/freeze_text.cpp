// What `freeze` says, from answers made by hand.
#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

std::string text(const Answer& answer) { return text_of(answer, {"harness.toml", false, ""}); }

void check_part(const std::string& all, const std::string& part) { CHECK_THAT(all, Catch::Matchers::Contains(part)); }

}  // namespace

TEST_CASE("both dials are given, each with its sensor and its place") {
  const std::string all = text(sample(Question::freeze));
  CHECK(lines_of(all)[2] == "SET THE WALL THERMOSTAT TO 47 F ~, or the slab sensor to 58 F ~.");
  check_part(flat(all),
             "Wall thermostat: on an inside wall, 5 ft up. Slab sensor: in the concrete at tube depth, "
             "midway between two tubes.");
  check_part(all, "Tried: the coldest hour, -24 F ~, taken as if it lasted: careful.");
}

TEST_CASE("places stand in a table, and the door line decides nothing") {
  const std::string all = flat(text(sample(Question::freeze)));
  check_part(all, "tube 12 in inside the big door 35.6 35.6 32.0 3.6 decides");
  check_part(all, "water line in the wall 39.2 35.6 32.0 7.2");
  check_part(all, "Ice at the floor line at the big door below 22 F ~ outside: a nuisance, it decides nothing.");
  Answer warm = sample(Question::freeze);
  warm.freeze->place.back().ice_below_degC = of_F(-50.0);
  check_part(text(warm), "No ice at the floor line at the big door, even in the coldest hour.\n");
}

TEST_CASE("changes that help are told apart from those that do not") {
  Answer answer = sample(Question::freeze);
  answer.change[0].what = "R-10 strip";
  const std::string all = flat(text(answer));
  check_part(all, "R-10 strip (before the pour only) 43 F 50 F");
  check_part(all, "Tried, and lowers nothing: door-side tube 12 in further in.");
}

TEST_CASE("the boiler, and what the stage has to say") {
  Answer answer = sample(Question::freeze);
  answer.said = {{Severity::note,
                  "freeze.two-dials",
                  "",
                  "a slab sensor stands at {} all winter",
                  {Measured{of_F(58.0), Dimension::degree}}},
                 {Severity::note, "freeze.steady", "", "told already", {}},
                 {Severity::note, "loops.uneven", "", "not about frost", {}}};
  const std::string all = flat(text(answer));
  check_part(all,
             "Holding that takes 20,000 Btu/h ~ in the coldest hour; the 9 kW ~ boiler keeps it down to -31 F ~ "
             "outside.");
  check_part(all, "A slab sensor stands at 58 F all winter.");
  CHECK_FALSE(has(all, "old already"));
  CHECK_FALSE(has(all, "ot about frost"));
}

TEST_CASE("where no setting is safe, why comes first and what would help moves up") {
  Answer answer = sample(Question::freeze);
  answer.freeze->verdict = FreezeVerdict::no_setting;
  answer.freeze->reason = "The tube at the big door falls below 36 F however warm the floor is held.";
  answer.freeze->place[0].asks_slab_degC.reset();
  answer.freeze->decides = "water line in the wall";
  answer.verdict.kind = VerdictKind::fails;
  answer.verdict.reasons = {{Severity::failure, "freeze.no-setting", "frost_hold", "no setting is safe", {}},
                            said(Severity::failure, "the boiler is too small")};
  const std::string all = text(answer);
  CHECK(lines_of(all)[2].substr(0, 48) == "NO SETTING IS SAFE. The tube at the big door fal");
  CHECK(all.find("What would help") < all.find("Place, in F"));
  check_part(all, "3.6  fails\n");
  check_part(all, "(1) The boiler is too small.\n");
  CHECK_FALSE(has(all, "(2)"));
  check_part(all, "--door \"R-10\"");
}

TEST_CASE("what could not be computed cannot be called safe") {
  Answer answer = sample(Question::freeze);
  answer.freeze->verdict = FreezeVerdict::cannot_be_called;
  answer.freeze->reason = "The store: its air cannot be computed.";
  answer.freeze->unknown = {{"the store", "its air cannot be computed"}};
  check_part(text(answer), "\nIT CANNOT BE CALLED SAFE. The store: its air cannot be computed.\n");
  answer.freeze->verdict = FreezeVerdict::no_setting;
  check_part(text(answer), "the store: not known, its air cannot be computed.\n");
}

TEST_CASE("a building that is not described has both ends of both dials") {
  const std::string all = flat(text(undescribed(Question::freeze)));
  check_part(all, "wall thermostat 47 F ~ (tight or poor), slab sensor 58 F ~ (54 if tight, 63 if poor)");
  check_part(all, "Our guess ~: one big door, the slab run through under its leaf, the first tube 12 in inside it.");
}

TEST_CASE("without weather nothing can be said, and how to say it") {
  Answer answer;
  answer.wishes.question = Question::freeze;
  answer.file = from_keys({{"slab.size", "36 x 30 ft"}});
  answer.lacking = {"for frost hold: give --outdoor \"-12 F\""};
  const std::string all = text_of(answer, {"", false, "--size \"36 x 30 ft\""});
  check_part(all, "\nHOW LOW CANNOT BE SAID YET.\nfor frost hold: give --outdoor \"-12 F\"\n");
  check_part(all, "slabwright freeze --size \"36 x 30 ft\" --outdoor \"-12 F\"");
}
