// What `check`, `--full` and "as written beside as tried" say.
#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

void check_all(const std::string& all, const std::vector<std::string>& parts) {
  INFO(all);
  for (const std::string& part : parts) CHECK_THAT(all, Catch::Matchers::Contains(part));
}

/// Without those that one command alone reads, which is not asked here.
std::vector<Assumption> guesses_for_all(const DesignFile& file) {
  std::vector<Assumption> guesses;
  for (const Assumption& guess : file.assumed) {
    if (key_at(file.design, guess.path)->says.only_for.empty()) guesses.push_back(guess);
  }
  return guesses;
}

}  // namespace

TEST_CASE("check counts what is whose and names the guesses that matter") {
  const Answer answer = sample(Question::check);
  const auto lines = lines_of(text_of(answer, {"harness.toml", false, ""}));
  CHECK(lines[2] == "No problems. 6 values are yours, " + std::to_string(guesses_for_all(answer.file).size()) +
                        " are our guesses; these three matter most:");
  check_all(flat(text_of(answer, {})), {"building.air_changes 0.6 per hour 1.9 kW 2.7 F"});
}

TEST_CASE("check repeats every typed temperature on both scales") {
  Answer answer = sample(Question::check);
  check_all(flat(text_of(answer, {})), {"climate.outdoor -12 F (-24.4 C)", "climate.indoor 60 F (15.6 C)"});
  CHECK_FALSE(has(text_of(answer, {}), "climate.mean"));
  answer.file = from_keys({{"units", "SI"}, {"slab.size", "18 x 9 m"}, {"climate.outdoor", "-16 C"}});
  check_all(flat(text_of(answer, {})), {"climate.outdoor -16 C (3.2 F)"});
}

TEST_CASE("a file that reads well and does not work says both") {
  Answer answer = sample(Question::check);
  answer.verdict.kind = VerdictKind::fails;
  answer.verdict.reasons = {said(Severity::failure, "the boiler is too small")};
  check_all(flat(text_of(answer, {})),
            {"The file reads well, but the shop does not work as it stands: (1) The boiler is too small."});
}

TEST_CASE("full prints every guess with its source and everything that was said") {
  Answer answer = sample(Question::check);
  answer.said = {said(Severity::note, "worth knowing")};
  const std::string all = flat(text_of(answer, {"", true, ""}));
  for (const Assumption& guess : guesses_for_all(answer.file)) {
    INFO(guess.path);
    CHECK(has(all, guess.path + " " + guess.text));
  }
  CHECK_FALSE(has(all, "work.people"));
  check_all(all, {"slab.conductivity 1.75 W/mK practice", "note Worth knowing."});
}

TEST_CASE("full prints every loop, part, room, edge and opinion") {
  check_all(flat(text_of(sample(Question::design), {"", true, ""})),
            {"big door, east 2 290 20 269 area and spacing", "bench 0.62 78.0 0.98 3,100 blended * 123",
             "uncertain by about 20 %", "tube 2.03", "whole round 3.42",
             "pump tried small; runs at 1.35 gpm against 7.9 ft of head",
             "floor 7.4 kW, for warming up 1.5 kW, wanted 8.9 kW", "at least 1.70 gpm", "13.2 gal in all",
             "next standard protective device 50 A", "60 A free, which is enough",
             "EN 1264-2 power function: 0.652 Btu/h ft2 F against our 0.775 Btu/h ft2 F, -16 %.",
             "Not made for this slab: the tubes do not lie on insulation.", "shop 114 0 0 76 0 0 23,000 21,800",
             "fans take 569 Btu/h F more", "1,200 Btu/h of gains is counted on", "big door 12 12.0",
             "to 35.6 F on the worst day", "Drilling concrete makes silica dust"});
}

TEST_CASE("as written stands beside as tried") {
  const Answer written = sample(Question::design);
  Answer tried = written;
  tried.file = with_key(written.file, "tube.spacing", "9 in").value();
  tried.file.spots["tube.spacing"] = {0, 0, "--spacing"};
  tried.point->supply_degC = of_F(92.0);
  tried.freeze->verdict = FreezeVerdict::no_setting;
  tried.verdict.kind = VerdictKind::fails;
  const ReportOptions options{"harness.toml", false, "--spacing \"9 in\""};
  const std::string both = text_of_both(written, tried, options);
  check_all(flat(both),
            {"as written as tried", "tube.spacing 12 in 9 in", "tube 531 ft 531 ft", "loops 2 2", "water out 98 F 92 F",
             "boiler 9 kW 9 kW", "frost hold, wall thermostat 47 F -", "verdict works does not work",
             "As tried: HARNESS SHOP", "slabwright freeze harness.toml --spacing \"9 in\""});
  CHECK(has(both, text_of(tried, options)));
}
