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
             "midway between two tubes. Deadband of either: 2 F.");
  check_part(flat(all), "Tried: 3 days at -16 F, worst hour -24 F ~; something warm fools the thermostat for the");
}

TEST_CASE("places stand in a table, and the door line decides nothing") {
  const std::string all = flat(text(sample(Question::freeze)));
  check_part(all, "tube 12 in inside the big door 35.6 35.6 32.0 3.6 decides ");
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
  check_part(all, "R-10 strip (before pour) 43 F 50 F");
  check_part(all, "Tried, and lowers nothing: door-side tube 12 in further in.");
  answer.change[0].air_dial_degC = of_F(19.0);
  check_part(flat(text(answer)), "R-10 strip (before pour) < 40 F 50 F");
}

TEST_CASE("the boiler, and what the stage has to say") {
  Answer answer = sample(Question::freeze);
  answer.said = {{Severity::note,
                  "freeze.two-dials",
                  "",
                  "a slab sensor stands at {} all winter",
                  {Measured{of_F(58.0), Dimension::degree}}},
                 {Severity::note, "loops.uneven", "", "not about frost", {}}};
  const std::string all = flat(text(answer));
  check_part(all, "Holding it takes 20,000 Btu/h ~; the 9 kW ~ boiler can, down to -31 F ~.");
  check_part(all, "A slab sensor stands at 58 F all winter.");
  CHECK_FALSE(has(all, "ot about frost"));
}

TEST_CASE("where no setting is safe, why comes first and what would help moves up") {
  Answer answer = sample(Question::freeze);
  answer.freeze->verdict = FreezeVerdict::no_setting;
  answer.freeze->reason = "The tube at the big door falls below 36 F however warm the floor is held.";
  answer.freeze->place[0].asks_air_degC.reset();
  answer.freeze->air->decides = "water line in the wall";
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

namespace {

/// -24 and 20 F, from 47 and 53 F; one element of the boiler keeps everything.
Outage sample_outage(const std::string& first, const std::string& mild_first) {
  const auto one = [](double outdoor_F, double dial_F, const std::string& name, std::optional<double> hours) {
    if (hours) *hours *= 3600.0;
    OutageCase row;
    row.outdoor_degC = of_F(outdoor_F);
    row.air_dial_degC = of_F(dial_F);
    row.first = row.pump_first = name;
    row.lasts_s = row.pump_lasts_s = hours;
    row.place = {{name, hours}, {"the other", {}}};
    return row;
  };
  Outage outage;
  outage.longest_s = 96.0 * 3600.0;
  outage.stage_W = 4500.0;
  outage.line_ice_s = 52.0 * 60.0;
  outage.row = {one(20.0, 47.0, mild_first, 31.96), one(20.0, 53.0, mild_first, {}), one(-24.0, 47.0, first, 0.4),
                one(-24.0, 53.0, first, 8.2)};
  return outage;
}

Answer without_power(const std::string& first, const std::string& mild_first) {
  Answer answer = sample(Question::freeze);
  answer.outage = sample_outage(first, mild_first);
  return answer;
}

}  // namespace

TEST_CASE("power off: hours against weather and setting, rounded down, and which place is first") {
  const std::string all = text(without_power("tube 12 in inside the big door", "water line in the wall"));
  check_part(all, "Power off (all loops run until then): hours ~ until the first place freezes\n");
  check_part(
      flat(all),
      "outside, F from 47 F from 53 F first 20 31 over 96 water line in the wall "
      "-24 under 1 8 tube 12 in inside the big door Tonight, in this order: keep the doors shut; run the pump "
      "alone on a small generator (100 W): it spreads the slab's heat; with one 4.5 kW element of the boiler too over "
      "96 ~ hours; without one, have the loops blown out at once. Engines and fuel heaters outdoors only: carbon "
      "monoxide kills. A bare 1/2 in line is solid 50 min after it gets to freezing. Afterwards warm up slowly: water "
      "no more than 9 F a day over the slab.");
  CHECK(all.find("Place, in F") < all.find("Power off"));
  CHECK(all.find("Power off") < all.find("What would lower it"));
}

TEST_CASE("a long name that is first everywhere stands before the hours") {
  Answer answer =
      without_power("tube 6 in inside the outer wall of the store", "tube 6 in inside the outer wall of the store");
  answer.freeze->place[1].name = "tube 6 in inside the outer wall of the store";
  const std::string all = flat(text(answer));
  check_part(all,
             "hours ~ until the tube 6 in inside the outer wall of the store, the first of all, freezes outside, F");
  check_part(
      all,
      "keep the doors shut; shut off and drain the tube 6 in inside the outer wall of the store at once; run the pump");
}

TEST_CASE("what is done tonight suits the places, soonest first") {
  Answer answer = without_power("water line in the wall", "water line in the wall");
  check_part(flat(text(answer)), "shut; shut off and drain the water line in the wall at once; run the pump");
  answer.outage->row[2].place.insert(answer.outage->row[2].place.begin() + 1,
                                     {"tube 12 in inside the big door", 7.5 * 3600.0});
  check_part(flat(text(answer)), "; without one, have the loops blown out within 7 h.");
  answer.freeze->place[1].kind = PlaceKind::room_air;
  check_part(
      flat(text(answer)),
      "keep the doors shut; run the pump alone on a small generator (100 W): it spreads the slab's heat; with one "
      "4.5 kW element of the boiler too over 96 ~ hours; without one, drain boiler and manifold at once, then "
      "have the loops blown out within 7 h.");
  answer.outage->row[2].pump_lasts_s = 9.5 * 3600.0;
  answer.outage->row[2].stage_lasts_s = 9.5 * 3600.0;
  check_part(
      flat(text(answer)),
      "generator (100 W): 9 ~ hours at -24 F, not under 1; one 4.5 kW element of the boiler adds nothing to that");
  answer.outage->stage_W = 0.0;
  check_part(flat(text(answer)), "9 ~ hours at -24 F, not under 1; without one");
  answer.outage = sample_outage("", "");
  CHECK_FALSE(has(text(answer), "Tonight"));
}

TEST_CASE("at most three places to drain are named, all in full") {
  Answer answer = without_power("water line in the wall", "water line in the wall");
  auto& due = answer.outage->row[2].place;
  due.clear();
  for (const std::string name : {"sink", "tap", "trap", "pump line"}) {
    answer.freeze->place.push_back(answer.freeze->place[1]);
    answer.freeze->place.back().name = name;
    due.push_back({name, 3600.0 * static_cast<double>(due.size() + 2)});
  }
  check_part(flat(text(answer)),
             "drain the sink within 2 h, then the tap within 3 h, then the trap within 4 h and one more; run");
  check_part(flat(text_of(answer, {"harness.toml", true, ""})), "then the pump line within 5 h; run");
}

TEST_CASE("every place has its hours in full, and a floor that cools the air is said") {
  Answer answer = without_power("water line in the wall", "water line in the wall");
  answer.outage->floor_cools_air = true;
  const std::string all = flat(text_of(answer, {"harness.toml", true, ""}));
  check_part(all, "Hours from 47 F; outside: 20 F -24 F water line in the wall 31 under 1 the other over 96 over 96");
  check_part(all, "the cold floor takes heat from the air");
}
