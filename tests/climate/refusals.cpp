// What is no year of weather is refused in one sentence that names the line; no text does harm.
#include <rapidcheck.h>

#include "slabwright/climate.hpp"
#include "support/catch.hpp"
#include "written.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

std::string refusal(const std::string& text) {
  const Checked<WeatherFile> checked = read_weather(text);
  if (checked) return "read";
  REQUIRE(checked.said.size() == 1);
  CHECK(checked.said.front().severity == Severity::problem);
  CHECK(checked.said.front().about.substr(0, 5) == "line ");
  return say(checked.said.front(), System::us);
}

const FileLines& whole() {
  static const FileLines lines = epw_lines();
  return lines;
}

std::string spoiled(std::size_t line, std::size_t cell, const std::string& text) {
  FileLines lines = whole();
  lines[line - 1] = with_cell(lines[line - 1], cell, text);
  return refusal(joined(lines));
}

const std::string neither =
    "the weather file, line 1: neither EPW (a first line that begins LOCATION) nor TMY3 (a second line that begins "
    "Date)";

}  // namespace

TEST_CASE("a text that is neither form") {
  CHECK(refusal("") == neither);
  CHECK(refusal("\n\r\n") == neither);
  CHECK(refusal("day,temperature\n1,5\n") == neither);
  CHECK(refusal(std::string("\x7F"
                            "ELF\0\0\x01\xFF\xFE,,,\n\0\0\n",
                            17)) == neither);
  CHECK(refusal(std::string(100000, ',')) == neither);
}

TEST_CASE("a few days are no year") {
  FileLines lines(whole().begin(), whole().begin() + 8 + 72);
  CHECK(refusal(joined(lines)) ==
        "the weather file, line 80: the file ends after 72 hours; a year has 8760, or 8784 with 29 February");
  FileLines tmy3 = tmy3_lines();
  tmy3.resize(2 + 48);
  CHECK(refusal(joined(tmy3)) ==
        "the weather file, line 50: the file ends after 48 hours; a year has 8760, or 8784 with 29 February");
  lines.resize(8);
  CHECK(refusal(joined(lines)) ==
        "the weather file, line 8: the file ends after 0 hours; a year has 8760, or 8784 with 29 February");
  FileLines more = whole();
  more.push_back(more.back());
  CHECK(refusal(joined(more)) == "the weather file, line 8769: rows go on behind the 8760 hours of a year");
}

TEST_CASE("rows out of their place") {
  CHECK(spoiled(20, 3, "5") ==
        "the weather file, line 20: the row is of 1/1 hour 5, where 1/1 hour 12 should be: rows "
        "run from 1 January to 31 December");
  CHECK(spoiled(9, 1, "7").find("the row is of 7/1 hour 1, where 1/1 hour 1 should be") != std::string::npos);
  CHECK(spoiled(20, 2, "x") ==
        "the weather file, line 20: month, day and hour are \"1,x,12\", which are no whole numbers");
  FileLines lines = whole();
  lines.erase(lines.begin() + 100);
  CHECK(refusal(joined(lines)).find("the weather file, line 101: the row is of 1/4 hour 22") == 0);
}

TEST_CASE("values that cannot be") {
  CHECK(spoiled(20, 6, "71") == "the weather file, line 20: dry bulb is 71, outside -70 to 70");
  CHECK(spoiled(20, 6, "-9900") == "the weather file, line 20: dry bulb is -9900, outside -70 to 70");
  CHECK(spoiled(20, 6, "nan") == "the weather file, line 20: dry bulb is \"nan\", which is no number");
  CHECK(spoiled(20, 9, "-1e400") == "the weather file, line 20: pressure is \"-1e400\", which is no number");
  CHECK(spoiled(20, 21, "41") == "the weather file, line 20: wind speed is 41, outside 0 to 40");
  CHECK(spoiled(20, 8, std::string(1000, '7') + "x").find("\"777777777777777777777777...\"") != std::string::npos);
  FileLines tmy3 = tmy3_lines();
  tmy3[30] = with_cell(tmy3[30], 31, "-80");
  CHECK(refusal(joined(tmy3)) == "the weather file, line 31: dry bulb is -80, outside -70 to 70");
}

TEST_CASE("columns and heading") {
  FileLines lines = whole();
  lines[50] = "1980,1,2,19,0,flags,-1.0";
  CHECK(refusal(joined(lines)) ==
        "the weather file, line 51: the row has 7 columns; an EPW row has 35, at the least 32");
  lines = whole();
  lines.back() = "1980,12,31,24,0,flags,-1.0";
  CHECK(refusal(joined(lines)).find("line 8768: the row has 7 columns") != std::string::npos);
  lines = whole();
  lines.erase(lines.begin());
  CHECK(refusal(joined(lines)) == "the weather file, line 8: no LOCATION before the data");
  CHECK(spoiled(1, 6, "91") == "the weather file, line 1: latitude is \"91\", not a number from -90 to 90");
  CHECK(spoiled(1, 8, "") == "the weather file, line 1: time zone is \"\", not a number from -12 to 14");
  CHECK(spoiled(8, 2, "4") ==
        "the weather file, line 8: DATA PERIODS has \"1\" periods and \"4\" records an hour; both must be 1");
  lines = whole();
  lines[0] = "LOCATION,Coldwell";
  CHECK(refusal(joined(lines)) == "the weather file, line 1: LOCATION has 2 fields; it needs 10");
  FileLines tmy3 = tmy3_lines();
  tmy3[1] += ",more";
  CHECK(refusal(joined(tmy3)) == "the weather file, line 2: 69 columns are named; a TMY3 file has 68 or 71");
  tmy3 = tmy3_lines();
  tmy3[7] += ",more";
  CHECK(refusal(joined(tmy3)) == "the weather file, line 8: the row has 69 columns; the line of names has 68");
}

TEST_CASE("a wide gap in the dry bulb is refused, in the dew point it is not") {
  FileLines lines = whole();
  for (std::size_t hour = 200; hour < 225; ++hour) lines[8 + hour] = with_cell(lines[8 + hour], 6, "99.9");
  CHECK(refusal(joined(lines)) ==
        "the weather file, line 209: dry bulb is missing for 25 hours in a row; at most 24 can be mended");
  CHECK(read_weather(joined(lines), {25}));
  lines = whole();
  for (std::size_t hour = 200; hour < 900; ++hour) lines[8 + hour] = with_cell(lines[8 + hour], 7, "99.9");
  CHECK(read_weather(joined(lines)).value->repairs.front().longest_hours == 700);
}

TEST_CASE("a file cut anywhere, or with any bytes in it, is read or refused, in one sentence") {
  const std::string text = joined(whole());
  CHECK(rc::check([&] {
    const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
    RC_ASSERT(refusal(text.substr(0, at)) != "");
    // Near the beginning, so that the heading has its turn.
    const auto near = *rc::gen::inRange<std::size_t>(0, 1500);
    std::string bad = text.substr(0, 20000);
    bad.replace(near, 1, *rc::gen::arbitrary<std::string>());
    RC_ASSERT(refusal(bad) != "read");
  }));
}
