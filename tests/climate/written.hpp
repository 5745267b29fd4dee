// Weather files written by the tests: an invented year in both forms.
#pragma once
#include <fmt/format.h>

#include <string>
#include <vector>

#include "slabwright/climate.hpp"

namespace slabwright::test {

/// One decimal, so that what is written is what is read.
inline double invented_degC(std::size_t hour) {
  return static_cast<double>((hour * 37 + hour / 24 * 53) % 400) / 10.0 - 25.0;
}

/// Lines without their ends, so that a test can spoil one of them.
using FileLines = std::vector<std::string>;

inline std::string joined(const FileLines& lines, const std::string& end = "\n") {
  std::string text;
  for (const std::string& line : lines) text += line + end;
  return text;
}

inline FileLines epw_heading_lines(const std::string& savings = "HOLIDAYS/DAYLIGHT SAVINGS") {
  return {"LOCATION,Coldwell Field,XX,USA,invented,000000,44.88,-93.23,-6.0,254.0",
          "DESIGN CONDITIONS,0",
          "TYPICAL/EXTREME PERIODS,0",
          "GROUND TEMPERATURES,0",
          savings + ",No,0,0,0",
          "COMMENTS 1,made up, for a test",
          "COMMENTS 2,",
          "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31"};
}

inline std::string epw_row(std::size_t hour, bool leap) {
  const CalendarHour at = calendar_hour(hour, leap);
  // Months of different years, as in a typical year.
  return fmt::format(
      "{},{},{},{},0,?9?9?9?9E0?9?9?9?9?9?9?9?9?9?9?9*9?9?9?9*9*9?9*9*9,{:.1f},{:.1f},{},{},0,0,181,{},{},{},0,0,0,0,"
      "{},{:.1f},2,2,777.7,20306,9,999999999,30,0.0440,{},88,0.220,999.0,99.0",
      1980 + at.month * 7 % 12, at.month, at.day, at.hour, invented_degC(hour), invented_degC(hour) - 3.0,
      60 + hour % 40, 98000 + hour % 1000, hour % 24 * 10, hour % 24 * 11, hour % 24 * 5, hour % 36 * 10,
      static_cast<double>(hour % 90) / 10.0, hour % 50);
}

inline FileLines epw_lines(bool leap = false) {
  FileLines lines = epw_heading_lines();
  for (std::size_t hour = 0; hour < (leap ? 8784u : 8760u); ++hour) lines.push_back(epw_row(hour, leap));
  return lines;
}

/// 68 columns: each quantity has its source and its doubt behind it.
inline FileLines tmy3_lines() {
  FileLines lines{R"(000000,"COLDWELL FIELD, NORTH",XX,-6.0,44.880,-93.230,254)"};
  std::string names = "Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),ETRN (W/m^2)";
  for (const char* name :
       {"GHI (W/m^2)",         "DNI (W/m^2)",     "DHI (W/m^2)",     "GH illum (lx)", "DN illum (lx)", "DH illum (lx)",
        "Zenith lum (cd/m^2)", "TotCld (tenths)", "OpqCld (tenths)", "Dry-bulb (C)",  "Dew-point (C)", "RHum (%)",
        "Pressure (mbar)",     "Wdir (degrees)",  "Wspd (m/s)",      "Hvis (m)",      "CeilHgt (m)",   "Pwat (cm)",
        "AOD (unitless)",      "Alb (unitless)"}) {
    const std::string full = name, word = full.substr(0, full.find(" ("));
    names += fmt::format(",{},{} source,{} uncert (code)", full, word, word);
  }
  lines.push_back(names + ",Lprecip depth (mm),Lprecip quantity (hr),Lprecip source,Lprecip uncert (code)");
  for (std::size_t hour = 0; hour < 8760; ++hour) {
    const CalendarHour at = calendar_hour(hour, false);
    std::string row = fmt::format("{:02}/{:02}/{},{:02}:00,0,0", at.month, at.day, 1980 + at.month, at.hour);
    const double pressure = 980.0 + static_cast<double>(hour % 10);
    const double values[] = {static_cast<double>(hour % 24 * 10),
                             static_cast<double>(hour % 24 * 11),
                             static_cast<double>(hour % 24 * 5),
                             0,
                             0,
                             0,
                             0,
                             2,
                             2,
                             invented_degC(hour),
                             invented_degC(hour) - 3.0,
                             static_cast<double>(60 + hour % 40),
                             pressure,
                             static_cast<double>(hour % 36 * 10),
                             static_cast<double>(hour % 90) / 10.0,
                             16000,
                             77777,
                             0.9,
                             0.03,
                             0.2};
    for (const double value : values) row += fmt::format(",{:.1f},A,7", value);
    lines.push_back(row + ",0,1,D,9");
  }
  return lines;
}

/// Replaces a cell, counted from 0.
inline std::string with_cell(const std::string& line, std::size_t cell, const std::string& text) {
  std::size_t first = 0;
  for (; cell > 0; --cell) first = line.find(',', first) + 1;
  return line.substr(0, first) + text + line.substr(std::min(line.find(',', first), line.size()));
}

}  // namespace slabwright::test
