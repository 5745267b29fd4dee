// Readings as people write them: forgiving in form, strict in meaning.
#include <cmath>
#include <filesystem>
#include <sstream>

#include "slabwright/balance_meters.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Shop {
  Design design;
  LoopPlan plan;
};
const Shop& shop() {
  static const Shop four = [] {
    const Design design = from_keys({{"tube.size", "1/2 in"},
                                     {"loop[1].length", "188 ft"},
                                     {"loop[2].length", "241 ft"},
                                     {"loop[3].length", "262 ft"},
                                     {"loop[4].length", "290 ft"}})
                              .design;
    return Shop{design, plan_loops(design).value.value()};
  }();
  return four;
}

Checked<MetersRead> matched(const MeterSheet& sheet) { return match_meters(sheet, shop().plan, shop().design); }

std::string problems_of(const MeterSheet& sheet, const std::string& name) {
  ReadDesign read;
  read.spots = sheet.spots;
  read.checked.said = matched(sheet).said;
  return problems_text(read, name);
}

double gpm(double value) { return from_unit(value, "gpm", Dimension::flow); }

/// Flows 0.73, none, 0.2 and 0.57 gpm, whatever they were written like.
void check_four(const MeterSheet& sheet) {
  INFO(problems_of(sheet, "readings"));
  const auto match = matched(sheet);
  REQUIRE(match);
  const auto& port = match.value->readings.port;
  CHECK(port[0].flow_m3_per_s.value() == Approx(gpm(0.73)));
  CHECK_FALSE(port[1].flow_m3_per_s);
  CHECK(port[2].flow_m3_per_s.value() == Approx(gpm(0.2)));
  CHECK(port[3].flow_m3_per_s.value() == Approx(gpm(0.57)));
}

}  // namespace

TEST_CASE("one table in the forms that people and spreadsheets give it") {
  for (const char* text : {"loop,flow (gpm)\nloop 1,0.73\nloop 3,0.2\nloop 4,0.57\n",
                           "\xEF\xBB\xBF# today\r\n\r\nPort; Flow [GPM]\r\n1; 0.73\r\n4; .57\r\n#3; 0.2\r\n2; -\r\n",
                           "port\tmeter gpm\tremarks\n port 3 \t0.20\thardly moves\n1\t0.73\t\n4\t0.57\t\n",
                           "\"Loop\",\"Flow_gpm\"\n\"LOOP  1\",\"0.73\"\n\"loop 3\",0.2\n\"loop 4\",0.57\n",
                           "loop,flow\n1,0.73 gpm\n2,n/a\n3,0.2gpm\n4,0.57 gpm\n", "flow (gpm)\n0.73\n?\n0.2\n0.57\n",
                           "no., reading in gpm\n1, 0.73  # after lunch\n3, 0.2\n4, 0.57,,\n,,\n"}) {
    INFO(text);
    check_four(read_meters(text));
  }
}

TEST_CASE("flows in a row, with a unit, without, or of some ports") {
  for (const char* text : {"0.73 - 0.2 0.57", "0.73, -, 0.2, 0.57", "0.73;?;0.2;0.57 gpm", "0.73gpm x 0.2gpm 0.57gpm",
                           "3: 0.2 1: 0.73 4: 0.57", "0.73,-,0.2,0.57"}) {
    INFO(text);
    check_four(read_flows(text, System::us, "--read"));
  }
  const auto litres = matched(read_flows("2.76 2.42 0.76 2.16", System::si, "--read"));
  CHECK(litres.value->readings.port[0].flow_m3_per_s.value() == Approx(from_unit(2.76, "L/min", Dimension::flow)));
}

TEST_CASE("temperatures, fronts, turns and errors with their units") {
  const MeterSheet sheet = with_option(read_meters("loop, flow (L/min), supply (\xC2\xB0"
                                                   "F), return (\xB0"
                                                   "C), warm front (s), turns, meter error (%)\n"
                                                   "1, 2.76, 100, 29.5, 290, open, 8\n"
                                                   "2, 2.42, , 84 F, 4:50, 1.5,\n"),
                                       "--water", "90 F");
  const auto match = matched(sheet);
  INFO(problems_of(sheet, "readings"));
  REQUIRE(match);
  const Readings& read = match.value->readings;
  CHECK(read.supply_degC.value() == Approx(from_unit(100.0, "F", Dimension::degree)));
  CHECK(read.port[0].return_degC.value() == Approx(29.5));
  CHECK(read.port[1].return_degC.value() == Approx(from_unit(84.0, "F", Dimension::degree)));
  CHECK(read.port[0].front_s.value() == Approx(290.0));
  CHECK(read.port[1].front_s.value() == Approx(290.0));
  CHECK(read.meter_error_share == Approx(0.08));
  CHECK(sheet.water_degC.value() == Approx(from_unit(90.0, "F", Dimension::degree)));
  REQUIRE(match.value->turns.size() == 4);
  CHECK(match.value->turns[1] == Approx(1.5));
  CHECK(match.value->turns[0] > 1e6);
}

TEST_CASE("several manifolds: the third port of the second is 2-3") {
  const Layout& county = layout("county-garage");
  const LoopPlan plan = plan_loops(county.file.design).value.value();
  const auto match = match_meters(read_meters("port, flow (gpm)\n2-3, 0.5\n1-1, 0.7\n"), plan, county.file.design);
  REQUIRE(match);
  for (std::size_t i = 0; i < plan.loop.size(); ++i) {
    const bool read = (plan.loop[i].manifold == 1 && plan.loop[i].port == 3) ||
                      (plan.loop[i].manifold == 0 && plan.loop[i].port == 1);
    CHECK(match.value->readings.port[i].flow_m3_per_s.has_value() == read);
  }
  CHECK_FALSE(match_meters(read_meters("port, flow (gpm)\n3, 0.5\n"), plan, county.file.design));
}

TEST_CASE("bare flows that are four times too much are asked about, with a unit they are believed") {
  const std::vector<double> expected(4, gpm(0.7));
  const auto mistaken = [&](const char* text, System system) {
    const MeterSheet sheet = read_flows(text, system, "--read");
    return unit_mistaken(sheet, matched(sheet).value->readings, expected, system).has_value();
  };
  CHECK(mistaken("2.7 2.6 2.6 2.5", System::us));
  CHECK_FALSE(mistaken("2.7 2.6 2.6 2.5 gpm", System::us));
  CHECK_FALSE(mistaken("0.7 0.2 0.7 0.6", System::us));
  CHECK_FALSE(mistaken("1.4 1.3 1.4 1.3", System::us));
  CHECK(mistaken("0.7 0.7 0.6 0.7", System::si));
  CHECK_FALSE(mistaken("2.7 2.6 2.6 2.5", System::si));
}

TEST_CASE("every hostile table gets the sentences it deserves and no more") {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(SLABWRIGHT_ROOT "/tests/hostile")) {
    if (entry.path().extension() != ".csv") continue;
    const std::string name = entry.path().filename().string(), text = read_text("tests/hostile/" + name);
    INFO(name);
    std::istringstream lines(text);
    std::string expected;
    for (std::string line; std::getline(lines, line) && line.compare(0, 2, "# ") == 0;)
      expected += (line.compare(0, 5, "# ...") == 0 ? "" : name + ":") + line.substr(2) + "\n";
    CHECK(problems_of(read_meters(text), name) == expected + "Nothing was computed, nothing was written.\n");
    ++count;
  }
  CHECK(count >= 15);
}

TEST_CASE("what holds no remark") {
  const auto said = [](const std::string& text) { return problems_of(read_meters(text), "m.csv"); };
  for (const char* nothing : {"", "\n\n", "# only remarks\n", "\xEF\xBB\xBF", ",,,\n;;\n"})
    CHECK(said(nothing).find("there is nothing in it") != std::string::npos);
  CHECK(said(std::string("l\0o\0o\0p\0", 8)).find("save it as CSV in UTF-8") != std::string::npos);
  CHECK(said("\xFF\xFEl").find("save it as CSV in UTF-8") != std::string::npos);
  CHECK(said(std::string(300'000, '1')).find("too large") != std::string::npos);
  for (const char* words :
       {"", "   ", "half", "0,73 0,64 0,2 0,57", "0.73 0.64", "0.73 0.64 0.2 0.57 0.5", "0 0 0 0", "0.73 0.64 0.2 -0.5",
        "0.73 psi 0.64 0.2 0.57", "5: 0.3", "1: 0.3 0.4", "- - - -", "1e999 1 1 1", ": : :", "0.73,0.64 0,2 0.57"}) {
    INFO(words);
    const MeterSheet sheet = read_flows(words, System::us, "--read");
    CHECK_FALSE(matched(sheet));
    CHECK(problems_of(sheet, "").compare(0, 8, "--read: ") == 0);
  }
  for (const char* option : {"--water", "--room", "--meter-error"}) {
    const MeterSheet sheet = with_option(read_flows("1 1 1 1", System::us, "--read"), option, "95");
    CHECK(problems_of(sheet, "").find(std::string(option) + ": \"95\" has no unit") != std::string::npos);
  }
}

TEST_CASE("any text at all is read or refused, never thrown at") {
  const std::string pieces[] = {"loop", ",",  ";",  "\t", "\n", "flow (gpm)", "return (F)", "0.7", "-", "\"", "#",
                                "4:50", "\r", "\0", "é",  "1",  "2-3",        "front",      "%",   ":", "   "};
  std::uint32_t state = 20261126;
  for (int k = 0; k < 3000; ++k) {
    std::string text = k % 2 == 0 ? "loop,flow (gpm),front\n" : "";
    for (int i = 0; i < 30; ++i) {
      state = state * 1664525u + 1013904223u;
      text += pieces[(state >> 16) % std::size(pieces)];
    }
    matched(read_meters(text));
    matched(read_flows(text, System::us, "--read"));
  }
  SUCCEED();
}
