// What `design` says, from answers made by hand.
#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

std::string text(const Answer& answer) { return text_of(answer, {"shops/harness.toml", false, ""}); }

void check_all(const std::string& all, const std::vector<std::string>& parts) {
  INFO(all);
  for (const std::string& part : parts) CHECK_THAT(all, Catch::Matchers::Contains(part));
}

}  // namespace

TEST_CASE("the shop stands in line 1 and the verdict in line 3") {
  const auto lines = lines_of(text(sample(Question::design)));
  CHECK(lines[0] == "HARNESS SHOP   36 x 30 ft, 5 in slab, 1/2 in tube every 12 in   (harness.toml)");
  CHECK(lines[1].empty());
  CHECK(lines[2] == "IT WORKS at -12 F outside and 60 F inside.");
  CHECK(lines[3].substr(0, 18) == "6 values are yours");
}

TEST_CASE("every headline figure of a design is there") {
  const std::string all = flat(text(sample(Question::design)));
  check_all(all, {"tube 531 ft ~ of 1/2 in",
                  "manifold 3 ports, 1 spare",
                  "boiler 9 kW ~ electric (21 % more than the floor takes)",
                  "keeps 60 F inside down to -27 F ~ outside, the frost hold down to -31 F ~",
                  "one that gives 1.35 gpm against 8.0 ft of head ~",
                  "expansion tank of 0.4 gal ~ or more, for a cold fill to 12 psi",
                  "37.5 A ~ at 240 V; the electrician sizes wire and breaker for 46.9 A or more (125 %)",
                  "2 loops 241 to 290 ft ~",
                  "the limit for this tube is 300 ft",
                  "first tube 6 in from walls, 12 in from the big door ~",
                  "water out 98 F ~ in the coldest weather, back at 78 F ~",
                  "each loop 0.61 to 0.74 gpm ~",
                  "floor top 71 F ~ on average, up to 79 F ~ where warm water comes in; the comfort limit is 84 F",
                  "frost hold wall thermostat 47 F ~, or slab sensor 58 F ~",
                  "shop loses 23,000 Btu/h ~",
                  "2,300 Btu/h ~ more goes to ground and edge",
                  "fans take 48,500 Btu/h while they run; not counted above",
                  "building.air_changes 0.6 per hour 1.9 kW 2.7 F",
                  "insulation.under R-10 0.6 kW",
                  "Next: slabwright freeze shops/harness.toml all figures: add --full"});
  // A guess that moves nothing is not worth a line.
  CHECK_FALSE(has(all, "climate.mean"));
}

TEST_CASE("things to mend are counted, numbered and told in the reader's units") {
  Answer answer = sample(Question::design);
  answer.verdict.kind = VerdictKind::mend;
  answer.verdict.reasons = {{Severity::warning,
                             "a.b",
                             "loop",
                             "the loop takes {} and loses {}",
                             {Measured{0.5 * gpm, Dimension::flow}, Measured{23149.0 * btu_h, Dimension::power}}}};
  CHECK(has(text(answer), "inside, with one thing to mend:\n(1) The loop takes 0.50 gpm and loses 23,100 Btu/h.\n"));
  answer.verdict.reasons.push_back(said(Severity::warning, "the second thing."));
  CHECK(has(text(answer), "with two things to mend:\n(1) "));
  CHECK(has(text(answer), "(2) The second thing.\n"));
}

TEST_CASE("behind what stopped stands the value that was tried, or that none was found") {
  Answer answer = sample(Question::design);
  answer.verdict.kind = VerdictKind::fails;
  answer.verdict.reasons = {said(Severity::failure, "the boiler is too small")};
  const Diagnostic& reason = answer.verdict.reasons.front();
  answer.remedy = {{reason.code, reason.about, "boiler.power", "9 kW", {"boiler.power"}}};
  check_all(flat(text(answer)), {"The boiler is too small. Tried: boiler.power = \"9 kW\" ends this."});
  answer.remedy = {{reason.code, reason.about, "", "", {"boiler.power", "tube.spacing"}}};
  check_all(flat(text(answer)),
            {"The boiler is too small. No single change was found that ends this; tried: boiler.power, tube.spacing."});
  answer.remedy = {{reason.code, reason.about, "building.heat_loss", "2 kW", {"building.heat_loss"}, true}};
  check_all(flat(text(answer)), {"The boiler is too small. No single change that was tried ends this; the sums "
                                 "would need building.heat_loss = \"2 kW\"."});
  answer.remedy = {{reason.code, reason.about, "", "", {"boiler.power", "tube.spacing"}}};
  answer.remedy.front().tried = {"a.a", "b.b", "c.c", "d.d", "e.e", "f.f"};
  check_all(flat(text(answer)), {"tried: a.a, b.b, c.c, d.d and 2 more."});
}

TEST_CASE("more reasons than fit are counted, and --full has them all") {
  Answer answer = sample(Question::design);
  answer.verdict.kind = VerdictKind::fails;
  for (int i = 0; i < 20; ++i) answer.verdict.reasons.push_back(said(Severity::failure, "something is wrong"));
  CHECK(has(text(answer), " more: add --full\n"));
  CHECK(lines_of(text(answer)).size() <= 45);
  CHECK(has(text_of(answer, {"", true, ""}), "(20) Something is wrong.\n"));
}

TEST_CASE("the first reason is said however long it is") {
  Answer answer = sample(Question::design);
  answer.verdict.kind = VerdictKind::fails;
  std::string text_of_it = "something is wrong";
  for (int i = 0; i < 60; ++i) text_of_it += " and goes on";
  answer.verdict.reasons = {said(Severity::failure, text_of_it), said(Severity::failure, "something else is wrong")};
  check_all(flat(text(answer)), {"(1) Something is wrong and goes on", "and 1 more: add --full"});
}

TEST_CASE("what does not work says why before anything else") {
  Answer answer = sample(Question::design);
  answer.verdict.kind = VerdictKind::fails;
  answer.verdict.reasons = {said(Severity::failure, "the boiler is too small")};
  const auto lines = lines_of(text(answer));
  CHECK(lines[2] == "IT DOES NOT WORK at -12 F outside and 60 F inside, because:");
  CHECK(lines[3] == "(1) The boiler is too small.");
}

TEST_CASE("a building that is not described comes as ranges, what narrows them first") {
  const std::string all = flat(text(undescribed(Question::design)));
  CHECK(all.find("The building is not described") < all.find("To buy"));
  CHECK(all.find("building.air_changes") < all.find("To buy"));
  check_all(all,
            {"sized by 8.9 kW ~ (6.3 if tight, 13.4 if poor)", "if the building is poor, 60 F only down to 3 F outside",
             "98 F ~ (91 if tight, 112 if poor)", "wall thermostat 47 F ~ (tight or poor)",
             "or slab sensor 58 F ~ (54 if tight, 63 if poor)", "23,000 Btu/h ~ (16,000 if tight, 35,000 if poor)"});
}

TEST_CASE("loops alone are answered, and one line says what the rest needs") {
  Answer answer;
  answer.wishes.question = Question::design;
  answer.file = from_keys({{"slab.size", "36 x 30 ft"}});
  answer.loops = sample_loops();
  answer.lacking = {"for heat: give --outdoor \"-12 F\""};
  const std::string all = text_of(answer, {"", false, "--size \"36 x 30 ft\""});
  CHECK(has(all, "\nTHE LOOPS WORK OUT; heat waits for the coldest weather outside.\n"));
  CHECK(has(all, "\nfor heat: give --outdoor \"-12 F\"\n"));
  CHECK(has(all, "Next:  slabwright balance --size \"36 x 30 ft\""));
  CHECK_FALSE(has(all, "boiler      "));
}

TEST_CASE("nothing to lay out is said, and how to begin") {
  Answer answer;
  answer.wishes.question = Question::design;
  answer.file = from_keys({{"slab.size", "36 x 30 ft"}});
  answer.lacking = {"for loops: give --size \"36 x 30 ft\", or --lengths"};
  const std::string all = text_of(answer, {});
  check_all(all, {"NOT ENOUGH IS KNOWN", "for loops: give --size", "slabwright design --size \"36 x 30 ft\""});
}

TEST_CASE("each kind of boiler is told as what it is") {
  Answer answer = sample(Question::design);
  BoilerSize& boiler = answer.sizes->boiler;
  boiler.kind = BoilerKind::none;
  CHECK(has(flat(text(answer)), "none yet: leave room for 9 kW ~ (21 % more than the floor takes)"));
  boiler.kind = BoilerKind::tank_heater;
  boiler.from_file = true;
  boiler.power_W = 4500.0;
  boiler.spare_share = -0.4;
  boiler.fails_working_degC = -60.0;
  answer.file = from_keys({{"slab.size", "36 x 30 ft"}, {"climate.outdoor", "-12 F"}, {"boiler.power", "4.5 kW"}});
  CHECK(has(flat(text(answer)), "yours, 4.5 kW tank heater (40 % less than the floor takes)"));
  CHECK(has(flat(text(answer)), "keeps 60 F inside even below -60 F outside"));
}

TEST_CASE("glycol to buy, three phases and a pump of one's own") {
  Answer answer = sample(Question::design);
  answer.file = from_keys({{"units", "SI"},
                           {"slab.size", "18 x 9 m"},
                           {"climate.outdoor", "-16 C"},
                           {"pump.points", "6 m at 0 L/min; 4 m at 20 L/min; 0 m at 50 L/min"}});
  answer.sizes->tank.glycol_m3 = 0.0359;
  answer.sizes->electric = {};
  answer.sizes->electric.power_W = 12000.0;
  answer.sizes->electric.voltage_V = 400.0;
  answer.sizes->electric.phases = 3;
  answer.sizes->electric.current_A = 17.3;
  check_all(flat(text(answer)), {"the floor asks for 5.11 L/min against 23.9 kPa (2.44 m of head) ~",
                                 "yours gives 5.11 L/min", "glycol 35.9 L ~ in 50.0 L of mixture",
                                 "17.3 A ~ a phase at 400 V, three-phase; the electrician sizes wire and breaker"});
}

TEST_CASE("a floor that gives more than is asked says why") {
  Answer answer = sample(Question::design);
  answer.point->up_W = 28000.0 * btu_h;
  answer.point->room_floor_peak_degC = {30.0};
  check_all(flat(text(answer)), {"28,000 Btu/h ~ upward, more than is asked: the room that is hardest to warm",
                                 "up to 86 F ~ where warm water comes in; more there than the comfort limit of 84 F"});
}

TEST_CASE("what no setting keeps is named where the frost hold would stand") {
  Answer answer = sample(Question::design);
  answer.freeze->verdict = FreezeVerdict::no_setting;
  CHECK(has(text(answer), "no setting is safe: see above"));
  answer.freeze->verdict = FreezeVerdict::cannot_be_called;
  CHECK(has(text(answer), "cannot be called safe: see above"));
}
