// The EPW form: eight lines of heading, each known by its first word, then rows of 35 columns.
#include <algorithm>
#include <array>

#include "cells.hpp"
#include "columns.hpp"

namespace slabwright::weather {
namespace {

struct PlacedRule {
  std::size_t at;
  ColumnRule rule;
};

/// EPW data dictionary; a value at or above the code is missing.
std::vector<Column> columns() {
  using Y = WeatherYear;
  constexpr double infinity = std::numeric_limits<double>::infinity();
  const auto rule = [](std::string_view name, std::vector<double> Y::*series, double least, double most, double code) {
    return ColumnRule{name, series, least, most, code};
  };
  const auto sun = [](std::string_view name, std::vector<double> Y::*series) {
    return ColumnRule{name, series, 0.0, 9999.0, 9999.0, -infinity, 1.0, true};
  };
  ColumnRule humidity = rule("relative humidity", &Y::humidity_share, 0.0, 110.0, 999.0);
  humidity.scale = 0.01;
  ColumnRule snow = rule("snow depth", &Y::snow_depth_m, 0.0, 999.0, 999.0);
  snow.scale = 0.01;
  ColumnRule cover = rule("opaque cover", &Y::opaque_share, 0.0, 10.0, 99.0);
  cover.scale = 0.1;
  ColumnRule infrared = rule("sky infrared", &Y::sky_infrared_W_per_m2, 0.0, 9999.0, 9999.0);
  infrared.missing_to = 0.0;  // no sky is black and cold as space
  const PlacedRule placed[] = {{6, rule("dry bulb", &Y::dry_bulb_degC, -70.0, 70.0, 99.9)},
                               {7, rule("dew point", &Y::dew_point_degC, -70.0, 70.0, 99.9)},
                               {8, humidity},
                               {9, rule("pressure", &Y::pressure_Pa, 31000.0, 120000.0, 999999.0)},
                               {12, infrared},
                               {13, sun("global radiation", &Y::global_W_per_m2)},
                               {14, sun("direct radiation", &Y::direct_W_per_m2)},
                               {15, sun("diffuse radiation", &Y::diffuse_W_per_m2)},
                               {20, rule("wind direction", &Y::wind_direction_deg, 0.0, 360.0, 999.0)},
                               {21, rule("wind speed", &Y::wind_m_per_s, 0.0, 40.0, 999.0)},
                               {23, cover},
                               {30, snow}};
  std::vector<Column> out;
  for (const PlacedRule& each : placed) out.emplace_back(each.rule, each.at);
  return out;
}

constexpr std::size_t least_columns = 32, behind_wind = 23, heading_cells = 10;

std::optional<Diagnostic> read_location(LineWalk& walk, WeatherFile& file) {
  const std::vector<std::string_view> cells = cells_of(walk.line(), true);
  if (cells.size() < heading_cells)
    return refusal("heading", walk.number(), "LOCATION has {} fields; it needs {}",
                   {std::to_string(cells.size()), std::to_string(heading_cells)});
  const Checked<Station> station = station_of({cells[6], cells[7], cells[8], cells[9]}, walk.number());
  if (!station) return station.said.front();
  file.year.station = *station.value;
  file.year.station.name = cells[1];
  file.year.station.place = cells[2];
  if (!cells[2].empty() && !cells[3].empty()) file.year.station.place += ", ";
  file.year.station.place += cells[3];
  return std::nullopt;
}

std::optional<Diagnostic> read_periods(LineWalk& walk) {
  const std::vector<std::string_view>& cells = walk.cells();
  const std::string_view periods = cells.size() > 1 ? cells[1] : "", records = cells.size() > 2 ? cells[2] : "";
  if (plain_whole(periods) == 1 && plain_whole(records) == 1) return std::nullopt;
  return refusal("periods", walk.number(), "DATA PERIODS has \"{}\" periods and \"{}\" records an hour; both must be 1",
                 {shown_cell(periods), shown_cell(records)});
}

bool same_word(std::string_view a, std::string_view b) {
  const auto upper = [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [&](char x, char y) { return upper(x) == upper(y); });
}

std::string_view first_cell(std::string_view line) { return trimmed(line.substr(0, line.find(','))); }

/// One line of the heading.
std::optional<Diagnostic> read_heading(LineWalk& walk, WeatherFile& file) {
  const std::string_view word = first_cell(walk.line());
  if (same_word(word, "LOCATION")) return read_location(walk, file);
  if (same_word(word, "DATA PERIODS")) return read_periods(walk);
  if (epw_heading(walk.line())) return std::nullopt;
  if (file.repairs.empty()) file.repairs.push_back({RepairKind::unknown_heading, "", 0, walk.number(), 0});
  ++file.repairs.front().count;
  return std::nullopt;
}

/// One row of data.
std::optional<Diagnostic> read_row(LineWalk& walk, std::vector<Column>& columns, HourCheck& hours, WeatherFile& file) {
  const std::vector<std::string_view>& cells = walk.cells();
  if (cells.size() < (walk.last() ? behind_wind : least_columns))
    return refusal("columns", walk.number(), "the row has {} columns; an EPW row has 35, at the least 32",
                   {std::to_string(cells.size())});
  if (cells.size() < least_columns) file.repairs.push_back({RepairKind::short_last_line, "", 1, walk.number(), 0});
  const auto month = plain_whole(cells[1]), day = plain_whole(cells[2]), hour = plain_whole(cells[3]);
  if (!month || !day || !hour)
    return refusal("number", walk.number(), "month, day and hour are \"{}\", which are no whole numbers",
                   {shown_cell(std::string(cells[1]) + "," + std::string(cells[2]) + "," + std::string(cells[3]))});
  if (const auto why = hours.take({*month, *day, *hour}, walk.number())) return why;
  for (Column& column : columns) {
    const std::string_view cell = column.at() < cells.size() ? cells[column.at()] : "";
    if (const auto why = column.take(cell, walk.number())) return why;
  }
  return std::nullopt;
}

}  // namespace

bool epw_heading(std::string_view line) {
  constexpr std::array<std::string_view, 9> words{"LOCATION",
                                                  "DESIGN CONDITIONS",
                                                  "TYPICAL/EXTREME PERIODS",
                                                  "GROUND TEMPERATURES",
                                                  "HOLIDAYS/DAYLIGHT SAVING",
                                                  "HOLIDAYS/DAYLIGHT SAVINGS",
                                                  "COMMENTS 1",
                                                  "COMMENTS 2",
                                                  "DATA PERIODS"};
  const std::string_view word = first_cell(line);
  return std::any_of(words.begin(), words.end(), [&](std::string_view known) { return same_word(word, known); });
}

Checked<WeatherFile> read_epw(std::string_view text, const WeatherOptions& options) {
  WeatherFile file;
  std::vector<Column> read = columns();
  HourCheck hours;
  LineWalk walk(text);
  bool located = false, data = false;
  while (walk.next()) {
    const char first = trimmed(walk.line()).front();
    data = data || (first >= '0' && first <= '9');
    if (!data) located = located || same_word(first_cell(walk.line()), "LOCATION");
    if (data && !located) return {std::nullopt, {refusal("heading", walk.number(), "no LOCATION before the data")}};
    const auto why = data ? read_row(walk, read, hours, file) : read_heading(walk, file);
    if (why) return {std::nullopt, {*why}};
  }
  return finished(std::move(file), read, hours, walk.number(), options);
}

}  // namespace slabwright::weather
