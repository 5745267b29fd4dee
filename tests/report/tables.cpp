// Tables that a spreadsheet reads without being told anything.
#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("loops and balance have their units in the head") {
  const auto sheets = tables_of(sample(Question::design));
  REQUIRE(sheets.size() == 2);
  CHECK(sheets[0].name == "loops.csv");
  CHECK(sheets[1].name == "balance.csv");
  const auto loops = lines_of(sheets[0].content), balance = lines_of(sheets[1].content);
  REQUIRE(loops.size() == 3);
  CHECK(loops[0] ==
        "loop,manifold,port,length (ft),leaders (ft),heats (ft2),flow (gpm),drop (psi),supply (F),return (F),"
        "heat up (Btu/h),heat down (Btu/h),velocity (ft/s),Reynolds number,water moves");
  CHECK(loops[1] == "bench,manifold,1,241,20,269,0.62,2.18,98.0,78.0,0,0,0.98,3100,blended");
  CHECK(loops[2].substr(0, 32) == "\"big door, east\",manifold,2,290,");
  CHECK(balance[1] == "1,manifold,bench,241,0.78,0.61,0.54,0.70,0.62,2.25,no,0.58,8,yes");
}

TEST_CASE("metric tables keep the point") {
  Answer answer = sample(Question::design);
  answer.file = from_keys({{"units", "SI"}, {"slab.size", "18 x 9 m"}});
  const auto loops = lines_of(tables_of(answer)[0].content);
  CHECK(has(loops[0], "length (m)"));
  CHECK(has(loops[0], "drop (kPa)"));
  CHECK(loops[1].substr(0, 22) == "bench,manifold,1,73.5,");
}

TEST_CASE("a name is a text, whatever it begins with") {
  Answer answer = sample(Question::design);
  answer.loops->loop[0].name = "=1+1";
  answer.loops->loop[1].name = "the \"long\" one";
  const auto loops = lines_of(tables_of(answer)[0].content);
  CHECK(loops[1].substr(0, 6) == "'=1+1,");
  CHECK(loops[2].substr(0, 19) == "\"the \"\"long\"\" one\",");
}

TEST_CASE("without flows the loop table has its lengths, and absent stages no table") {
  Answer answer = sample(Question::design);
  answer.point.reset();
  answer.balance.reset();
  const auto sheets = tables_of(answer);
  REQUIRE(sheets.size() == 1);
  CHECK(lines_of(sheets[0].content)[0] == "loop,manifold,port,length (ft),leaders (ft),heats (ft2)");
  answer.loops.reset();
  CHECK(tables_of(answer).empty());
}

TEST_CASE("power cuts and ways back are tables, empty where nothing freezes") {
  Answer answer = sample(Question::freeze);
  Outage outage;
  OutageCase row;
  row.outdoor_degC = of_F(-24.0);
  row.air_dial_degC = of_F(47.0);
  row.first = "tap";
  row.lasts_s = 5.6 * 3600.0;
  outage.row = {row};
  answer.outage = outage;
  Recovery way;
  way.outdoor_degC = of_F(-12.0);
  way.from_air_degC = of_F(47.0);
  way.to_air_degC = of_F(60.0);
  way.takes_s = 15.0 * 3600.0;
  way.starts_at_s = -8.0 * 3600.0;
  way.boiler_J = 136.0 * 3.6e6;
  way.floor_degC = of_F(71.0);
  way.operative_degC = of_F(62.0);
  answer.recovery = {way};
  const auto sheets = tables_of(answer);
  REQUIRE(sheets.size() == 4);
  CHECK(sheets[2].name == "outage.csv");
  CHECK(lines_of(sheets[2].content)[1] == "-24.0,47.0,5.6,tap,,,,no boiler");
  CHECK(sheets[3].name == "recovery.csv");
  CHECK(lines_of(sheets[3].content)[1] == "-12.0,47.0,60.0,15.0,-8.0,136.0,0.0,71.0,62.0");
}
