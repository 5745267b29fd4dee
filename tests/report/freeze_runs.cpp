// Bands, single faults, the way back, everything off: what `freeze` says of them, from answers made by hand.
#include "sample.hpp"
#include "support/catch.hpp"

#include "slabwright/units_exact.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

std::string text(const Answer& answer, bool full = false) { return flat(text_of(answer, {"harness.toml", full, ""})); }

void check_part(const std::string& all, const std::string& part) { CHECK_THAT(all, Catch::Matchers::Contains(part)); }

Bands sample_bands() {
  Bands bands;
  bands.air_low_degC = of_F(43.0);
  bands.air_middle_degC = of_F(45.0);
  bands.air_high_degC = of_F(46.6);
  bands.slab_low_degC = of_F(53.0);
  bands.slab_middle_degC = of_F(56.0);
  bands.slab_high_degC = of_F(57.9);
  bands.lasts_low_s = 5.9 * hour_s;
  bands.lasts_middle_s = 7.0 * hour_s;
  bands.lasts_high_s = 8.2 * hour_s;
  bands.solves = 40;
  bands.checks = 20;
  bands.samples = 4096;
  bands.input = {{"air leaks", 2.0 / 1.8, 3.0 / 1.8}};
  return bands;
}

Recovery way_back(double outdoor_F, double hours, double floor_degC) {
  Recovery one;
  one.outdoor_degC = of_F(outdoor_F);
  one.from_air_degC = of_F(47.0);
  one.to_air_degC = of_F(60.0);
  one.takes_s = hours * hour_s;
  one.starts_at_s = (7.0 - hours) * hour_s;
  one.boiler_J = 136.2 * 3.6e6;
  one.floor_degC = floor_degC;
  one.operative_degC = of_F(62.0);
  return one;
}

}  // namespace

TEST_CASE("what nobody can know is said once, and left out where that was wished") {
  Answer answer = sample(Question::freeze);
  CHECK_FALSE(has(text(answer), "95 of 100"));
  answer.bands = sample_bands();
  check_part(text(answer),
             "Best figures 45 and 56 F; the settings also cover 95 of 100 draws of what nobody can know (soil, leaks, "
             "wet or crushed foam, where tubes lie, sensor error).");
  const std::string full = text(answer, true);
  check_part(full, "95 of 100 draws 46.6 57.9");
  check_part(full, "air leaks 2 F 3 F");
  check_part(full, "4096 draws from a surface through 40 whole solves; 20 others found it off by");
  answer.bands.reset();
  answer.wishes.bands = false;
  check_part(text(answer), "leave out --quick.");
}

TEST_CASE("the ranges of a building that is not described cover what the setting covers") {
  Answer answer = undescribed(Question::freeze);
  const double error_K = answer.file.design.frost_hold.sensor_error_K;
  answer.bands = sample_bands();
  answer.freeze->air->best_degC = of_F(45.0) - error_K;   // the dial without draws would be 45, not 47
  answer.freeze->slab->best_degC = of_F(57.0) - error_K;  // and this 57, not 58
  check_part(text(answer), "wall thermostat 49 F ~ (tight or poor), slab sensor 59 F ~ (55 if tight, 64 if poor)");
}

TEST_CASE("hours of the coldest row have their band") {
  Answer answer = sample(Question::freeze);
  answer.bands = sample_bands();
  Outage outage;
  outage.longest_s = 96.0 * hour_s;
  OutageCase row;
  row.outdoor_degC = of_F(-24.0);
  row.air_dial_degC = of_F(47.0);
  row.first = "water line in the wall";
  row.lasts_s = 7.0 * hour_s;
  outage.row = {row};
  answer.outage = outage;
  check_part(text(answer), "From 47 F at -24 F outside it is 5 to 8 hours in 9 of 10 draws.");
  answer.bands->lasts_high_s = outage.longest_s;
  check_part(text(answer), "it is 5 to over 96 hours in 9 of 10 draws.");
}

TEST_CASE("one thing that fails: a sentence, and a table in full") {
  Answer answer = sample(Question::freeze);
  answer.fault = {{"pump dead, or a thermostat that never calls", "water line in the wall", 6.5 * hour_s, ""},
                  {"second source lost", "", {}, "the boiler then gives 5 kW of its 9 kW"}};
  check_part(text(answer),
             "If one thing fails at -24 F, hours until something freezes: pump dead 6, second source lost over 96.");
  const std::string full = text(answer, true);
  check_part(full, "pump dead, or a thermostat that never calls 6 h, then the water line in the wall");
  check_part(full, "second source lost nothing freezes within 96 h; the boiler then gives 5 kW of its 9 kW");
}

TEST_CASE("the way back says when to start, what it takes and how it feels") {
  Answer answer = sample(Question::freeze);
  answer.recovery = {way_back(20.0, 6.2, 22.0), way_back(-12.0, 15.25, 18.0)};
  const std::string all = text(answer, true);
  check_part(
      all,
      "Back to 60 F for 7:00: start at 15:40 the day before at -12 F (16 h, 136 kWh); the floor is then at 64 F, "
      "it feels like 62: standing work on a cold floor. Or start at 0:40 at 20 F (7 h, 136 kWh); the floor is "
      "then at 72 F, it feels like 62.");
  answer.recovery = {way_back(-12.0, 33.0, 22.0)};
  answer.recovery[0].source_runs = true;
  answer.recovery[0].source_J = 40.0 * 3.6e6;
  check_part(text(answer), "start at 22:00 two days before at -12 F (33 h, 136 kWh and 40 kWh from the second source)");
  answer.recovery[0].takes_s.reset();
  answer.recovery[0].starts_at_s.reset();
  check_part(text(answer), "Back to 60 F for 7:00: at -12 F not within 96 h.");
}

TEST_CASE("whether it can be switched off is answered plainly") {
  Answer answer = sample(Question::freeze);
  answer.turn_off = TurnOff{false, {"air round manifold and boiler", "tap", "sink", "trap"}, -12.0, -13.0, 0.35};
  check_part(text(answer),
             "Switch it off for the winter? No: the manifold and boiler, the tap and two more freeze. 35 % propylene "
             "glycol would keep the loops, not the pipes.");
  check_part(text(answer, true), "the manifold and boiler, the tap, the sink, the trap freeze.");
  answer.turn_off->glycol_share.reset();
  answer.turn_off->freezes = {"tap"};
  check_part(text(answer), "No: the tap freezes. No glycol up to 50 % would keep the loops then.");
  answer.file.design.fluid.kind = FluidKind::propylene_glycol;
  answer.file.design.fluid.glycol.share = 0.4;
  answer.turn_off->glycol_share = 0.35;
  const std::string glycol = text(answer);
  check_part(glycol, "Switch it off for the winter, with the glycol that is in it? No: the tap freezes.");
  CHECK_FALSE(has(glycol, "would keep the loops"));
  answer.turn_off = TurnOff{true, {}, -12.0, -13.0, 0.35};
  check_part(text(answer), "Yes: nothing that is watched freezes; the coldest tube comes to 10 F");
  answer.turn_off->yes = false;
  check_part(text(answer), "No: what could not be computed may freeze.");
}

TEST_CASE("a sensor in the wrong place, and weather that lasts, stand in full") {
  Answer answer = sample(Question::freeze);
  answer.sensor = {{"in the sun", 8.0 / 1.8, of_F(66.0), -2.0 / 1.8}};
  answer.freeze->lasting_air_dial_degC = of_F(49.0);
  answer.freeze->lasting_slab_dial_degC = of_F(60.0);
  const std::string full = text(answer, true);
  check_part(full, "in the sun 8.0 66.0 -2.0");
  check_part(full, "the pump kept running 49 F 60 F any one loop shut for good none none");
  CHECK_FALSE(has(text(answer), "in the sun"));
}

TEST_CASE("however much there is to say, a screen holds it, and the verdict, the setting and tonight stay") {
  Answer answer = undescribed(Question::freeze);
  answer.bands = sample_bands();
  answer.recovery = {way_back(20.0, 6.2, 22.0), way_back(-12.0, 15.25, 18.0)};
  answer.turn_off = TurnOff{false, {"air round manifold and boiler", "tap", "sink", "trap"}, -12.0, -13.0, 0.35};
  for (int i = 0; i < 6; ++i) {
    answer.fault.push_back({"a thing with a long name that fails", "tap", 6.5 * hour_s, ""});
    answer.change.push_back({"another change that would lower it " + std::to_string(i), false, of_F(50.0), of_F(43.0)});
    answer.freeze->place.push_back(answer.freeze->place[1]);
  }
  for (const char* code : {"freeze.footing", "freeze.corners", "freeze.shut", "freeze.two-dials"})
    answer.said.push_back({Severity::note, code, "", std::string("something is said at some length of ") + code, {}});
  const std::string all = text_of(answer, {"harness.toml", false, ""});
  CHECK(lines_of(all).size() <= 45);
  check_part(all, "SET THE WALL THERMOSTAT TO 47 F ~");
  check_part(all, "Slab sensor: in the concrete");
  check_part(all, "Next:  slabwright freeze harness.toml --explain");
}
