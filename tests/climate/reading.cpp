// Both forms read back what was written, and every repair is counted and named.
#include "slabwright/climate.hpp"
#include "support/catch.hpp"
#include "written.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

WeatherFile read(const std::string& text) {
  const Checked<WeatherFile> checked = read_weather(text);
  if (!checked) FAIL(say(checked.said.front(), System::si));
  CHECK(checked.said.size() == checked.value->repairs.size());
  return *checked.value;
}

WeatherFile read(const FileLines& lines) { return read(joined(lines)); }

/// What the two forms have in common.
void check_year(const WeatherYear& year, std::size_t hours) {
  REQUIRE(year.dry_bulb_degC.size() == hours);
  for (std::size_t hour = 0; hour < hours; hour += 7) {
    CHECK(year.dry_bulb_degC[hour] == Approx(invented_degC(hour)).margin(1e-12));
    CHECK(year.dew_point_degC[hour] == Approx(invented_degC(hour) - 3.0).margin(1e-12));
    CHECK(year.humidity_share[hour] == Approx(static_cast<double>(60 + hour % 40) / 100.0));
    CHECK(year.global_W_per_m2[hour] == static_cast<double>(hour % 24 * 10));
    CHECK(year.direct_W_per_m2[hour] == static_cast<double>(hour % 24 * 11));
    CHECK(year.diffuse_W_per_m2[hour] == static_cast<double>(hour % 24 * 5));
    CHECK(year.opaque_share[hour] == Approx(0.2));
    CHECK(year.wind_m_per_s[hour] == Approx(static_cast<double>(hour % 90) / 10.0));
    CHECK(year.wind_direction_deg[hour] == static_cast<double>(hour % 36 * 10));
  }
  CHECK(year.station.latitude_deg == 44.88);
  CHECK(year.station.longitude_deg == -93.23);
  CHECK(year.station.time_zone_s == -21600.0);
  CHECK(year.station.elevation_m == 254.0);
}

}  // namespace

TEST_CASE("an invented EPW year is read back, an ordinary one and a leap year") {
  for (const bool leap : {false, true}) {
    const WeatherFile file = read(epw_lines(leap));
    CHECK(file.form == WeatherForm::epw);
    CHECK(file.repairs.empty());
    CHECK(file.year.station.name == "Coldwell Field");
    CHECK(file.year.station.place == "XX, USA");
    check_year(file.year, leap ? 8784 : 8760);
    CHECK(file.year.pressure_Pa[1234] == 98234.0);
    CHECK(file.year.snow_depth_m[49] == Approx(0.49));
    CHECK(file.year.sky_infrared_W_per_m2[49] == 181.0);
  }
}

TEST_CASE("an invented TMY3 year is read back; it has no snow") {
  const WeatherFile file = read(tmy3_lines());
  CHECK(file.form == WeatherForm::tmy3);
  CHECK(file.repairs.empty());
  CHECK(file.year.station.name == "COLDWELL FIELD, NORTH");
  CHECK(file.year.station.place == "XX");
  check_year(file.year, 8760);
  CHECK(file.year.pressure_Pa[13] == Approx(98300.0));
  CHECK(file.year.snow_depth_m.empty());
  CHECK(file.year.sky_infrared_W_per_m2.empty());
}

TEST_CASE("TMY3 with three columns more, and with names that say nothing") {
  FileLines lines = tmy3_lines();
  for (std::size_t line = 1; line < lines.size(); ++line) lines[line] += line == 1 ? ",a,b,c" : ",0,0,0";
  check_year(read(lines).year, 8760);
  std::string& names = lines[1];
  names = "Date";
  for (int column = 1; column < 71; ++column) names += ",column";
  check_year(read(lines).year, 8760);
}

TEST_CASE("line ends, byte-order mark, blank lines and spelling do not matter") {
  FileLines lines = epw_lines();
  const WeatherYear plain = read(lines).year;
  CHECK(read(joined(lines, "\r\n")).year.dry_bulb_degC == plain.dry_bulb_degC);
  CHECK(read(joined(lines) + std::string(1'000'000, '\n')).year.pressure_Pa == plain.pressure_Pa);
  CHECK(read("\xEF\xBB\xBF\n" + joined(lines) + "\n\r\n\n").year.wind_m_per_s == plain.wind_m_per_s);
  std::string unended = joined(lines);
  unended.pop_back();
  CHECK(read(unended).year.dry_bulb_degC == plain.dry_bulb_degC);
  lines[4] = epw_heading_lines("HOLIDAYS/DAYLIGHT SAVING")[4];
  std::swap(lines[5], lines[2]);
  CHECK(read(lines).repairs.empty());
  for (std::size_t line = 8; line < lines.size(); ++line) lines[line] = with_cell(lines[line], 32, "0.5,0,0,more,yet");
  CHECK(read(lines).year.snow_depth_m == plain.snow_depth_m);
}

TEST_CASE("missing values: the last good one stands, no radiation is made up, and all of it is counted") {
  FileLines lines = epw_lines();
  for (const std::size_t hour : {100u, 101u, 102u, 500u}) lines[8 + hour] = with_cell(lines[8 + hour], 6, "99.9");
  for (const std::size_t hour : {0u, 1u}) lines[8 + hour] = with_cell(lines[8 + hour], 7, "");
  lines[8 + 7] = with_cell(lines[8 + 7], 12, "0");
  lines[8 + 12] = with_cell(lines[8 + 12], 13, "9999");
  lines[8 + 13] = with_cell(lines[8 + 13], 14, "-3");
  for (std::size_t line = 8; line < lines.size(); ++line) lines[line] = with_cell(lines[line], 30, "999");
  const Checked<WeatherFile> checked = read_weather(joined(lines));
  REQUIRE(checked);
  const WeatherYear& year = checked.value->year;
  CHECK(year.dry_bulb_degC[102] == year.dry_bulb_degC[99]);
  CHECK(year.dry_bulb_degC[500] == year.dry_bulb_degC[499]);
  CHECK(year.dew_point_degC[0] == year.dew_point_degC[2]);
  CHECK(year.sky_infrared_W_per_m2[7] == 181.0);
  CHECK(year.global_W_per_m2[12] == 0.0);
  CHECK(year.direct_W_per_m2[13] == 0.0);
  CHECK(year.snow_depth_m.empty());
  std::string said;
  for (const Diagnostic& each : checked.said) {
    CHECK(each.severity == Severity::note);
    CHECK(each.code == "weather.repaired");
    said += say(each, System::us) + "\n";
  }
  CHECK(
      said ==
      "the weather file: dry bulb: 4 values are missing, the first in line 109, up to 3 in a row; the last good value "
      "stands\n"
      "the weather file: dew point: 2 values are missing, the first in line 9, up to 2 in a row; the last good value "
      "stands\n"
      "the weather file: sky infrared: 1 value is missing, the first in line 16, up to 1 in a row; the last good value "
      "stands\n"
      "the weather file: global radiation: 1 value is missing, the first in line 21, up to 1 in a row; no radiation "
      "is counted there\n"
      "the weather file: direct radiation: 1 value is below zero, the first in line 22, and read as 0\n"
      "the weather file: snow depth: the file has no values\n");
}

TEST_CASE("repairs of the file as a whole") {
  FileLines lines = epw_lines();
  lines.insert(lines.begin() + 3, "NOTES,of an unknown kind");
  // 32 columns, as old files have them, and a last line that breaks off behind the wind.
  for (std::size_t line = 9; line < lines.size(); ++line) {
    const std::size_t hour = line - 9;
    lines[line] = with_cell(lines[line], 3, std::to_string(hour % 24));
    for (int cut = 0; cut < 3; ++cut) lines[line].erase(lines[line].rfind(','));
  }
  std::string& last = lines.back();
  for (int cut = 0; cut < 8; ++cut) last.erase(last.rfind(','));
  const WeatherFile file = read(lines);
  check_year(file.year, 8760);
  REQUIRE(file.repairs.size() == 4);
  CHECK(file.repairs[0].kind == RepairKind::unknown_heading);
  CHECK(file.repairs[0].first_line == 4);
  CHECK(file.repairs[1].kind == RepairKind::short_last_line);
  CHECK(file.repairs[1].first_line == 8769);
  CHECK(file.repairs[2].kind == RepairKind::hours_from_zero);
  CHECK(file.repairs[3].column == "snow depth");
  CHECK(file.repairs[3].first_line == 8769);
}

TEST_CASE("the calendar goes there and back") {
  for (const bool leap : {false, true}) {
    for (std::size_t hour = 0; hour < (leap ? 8784u : 8760u); ++hour)
      if (hour_of_year(calendar_hour(hour, leap), leap) != hour) FAIL(hour);
  }
  CHECK(calendar_hour(8759, false) == CalendarHour{12, 31, 24});
  CHECK(calendar_hour(59 * 24, true) == CalendarHour{2, 29, 1});
  CHECK_THROWS_AS(calendar_hour(8760, false), std::logic_error);
  CHECK_THROWS_AS(hour_of_year({2, 29, 1}, false), std::logic_error);
}
