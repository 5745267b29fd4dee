// The TMY3 form: a line about the station, a line of column names, then rows of 68 or 71 columns.
#include <algorithm>

#include "cells.hpp"
#include "columns.hpp"

namespace slabwright::weather {
namespace {

struct NamedRule {
  std::size_t at;  ///< counted from 0, where the names do not tell
  std::string_view word;
  ColumnRule rule;
};

/// NREL/TP-581-43156; -9900 is missing. Pressure is in mbar. There is no snow depth and no infrared.
std::vector<NamedRule> rules() {
  using Y = WeatherYear;
  constexpr double infinity = std::numeric_limits<double>::infinity(), code = -9900.0;
  const auto rule = [&](std::string_view name, std::vector<double> Y::*series, double least, double most) {
    return ColumnRule{name, series, least, most, infinity, code};
  };
  const auto sun = [&](std::string_view name, std::vector<double> Y::*series) {
    return ColumnRule{name, series, 0.0, 9999.0, infinity, code, 1.0, true};
  };
  ColumnRule humidity = rule("relative humidity", &Y::humidity_share, 0.0, 110.0);
  humidity.scale = 0.01;
  ColumnRule pressure = rule("pressure", &Y::pressure_Pa, 310.0, 1200.0);
  pressure.scale = 100.0;
  ColumnRule cover = rule("opaque cover", &Y::opaque_share, 0.0, 10.0);
  cover.scale = 0.1;
  return {{31, "Dry-bulb", rule("dry bulb", &Y::dry_bulb_degC, -70.0, 70.0)},
          {34, "Dew-point", rule("dew point", &Y::dew_point_degC, -70.0, 70.0)},
          {37, "RHum", humidity},
          {40, "Pressure", pressure},
          {4, "GHI", sun("global radiation", &Y::global_W_per_m2)},
          {7, "DNI", sun("direct radiation", &Y::direct_W_per_m2)},
          {10, "DHI", sun("diffuse radiation", &Y::diffuse_W_per_m2)},
          {43, "Wdir", rule("wind direction", &Y::wind_direction_deg, 0.0, 360.0)},
          {46, "Wspd", rule("wind speed", &Y::wind_m_per_s, 0.0, 40.0)},
          {28, "OpqCld", cover}};
}

constexpr std::size_t old_columns = 68, new_columns = 71, past_wind = 48, station_cells = 7;

/// "GHI (W/m^2)" is the column GHI; "GHI source" and "GHI uncert (%)" are about it.
bool names_column(std::string_view cell, std::string_view word) {
  return cell.substr(0, word.size()) == word && (cell.size() == word.size() || cell.substr(word.size(), 2) == " (");
}

std::vector<Column> columns_named(const std::vector<std::string_view>& names) {
  std::vector<Column> out;
  for (const NamedRule& each : rules()) {
    const auto found = std::find_if(names.begin(), names.end(),
                                    [&](std::string_view name) { return names_column(trimmed(name), each.word); });
    out.emplace_back(each.rule, found == names.end() ? each.at : static_cast<std::size_t>(found - names.begin()));
  }
  return out;
}

std::optional<Diagnostic> read_station(const LineWalk& walk, WeatherFile& file) {
  const std::vector<std::string_view> cells = cells_of(walk.line(), true);
  if (cells.size() < station_cells)
    return refusal("heading", walk.number(), "the station's line has {} fields; it needs {}",
                   {std::to_string(cells.size()), std::to_string(station_cells)});
  const Checked<Station> station = station_of({cells[4], cells[5], cells[3], cells[6]}, walk.number());
  if (!station) return station.said.front();
  file.year.station = *station.value;
  file.year.station.name = cells[1];
  file.year.station.place = cells[2];
  return std::nullopt;
}

/// "01/31/1988" and "24:00".
std::optional<CalendarHour> hour_of(std::string_view date, std::string_view time) {
  const std::size_t slash = date.find('/');
  if (slash == date.npos) return std::nullopt;
  const std::size_t second = date.find('/', slash + 1);
  const auto month = plain_whole(date.substr(0, slash));
  const auto day = plain_whole(date.substr(slash + 1, second == date.npos ? second : second - slash - 1));
  const auto hour = plain_whole(time.substr(0, time.find(':')));
  if (!month || !day || !hour) return std::nullopt;
  return CalendarHour{*month, *day, *hour};
}

std::optional<Diagnostic> read_row(LineWalk& walk, std::size_t wanted, std::vector<Column>& columns, HourCheck& hours) {
  const std::vector<std::string_view>& cells = walk.cells();
  const bool enough = cells.size() == wanted || (walk.last() && cells.size() >= past_wind && cells.size() < wanted);
  if (!enough)
    return refusal("columns", walk.number(), "the row has {} columns; the line of names has {}",
                   {std::to_string(cells.size()), std::to_string(wanted)});
  const auto at = hour_of(cells[0], cells[1]);
  if (!at)
    return refusal("number", walk.number(), "the date and time are \"{}\" and \"{}\", not MM/DD/YYYY and HH:MM",
                   {shown_cell(cells[0]), shown_cell(cells[1])});
  if (const auto why = hours.take(*at, walk.number())) return why;
  for (Column& column : columns) {
    const std::string_view cell = column.at() < cells.size() ? cells[column.at()] : "";
    if (const auto why = column.take(cell, walk.number())) return why;
  }
  return std::nullopt;
}

}  // namespace

Checked<WeatherFile> read_tmy3(std::string_view text, const WeatherOptions& options) {
  WeatherFile file;
  file.form = WeatherForm::tmy3;
  LineWalk walk(text);
  walk.next();
  if (const auto why = read_station(walk, file)) return {std::nullopt, {*why}};
  walk.next();
  const std::size_t wanted = walk.cells().size();
  if (wanted != old_columns && wanted != new_columns)
    return {std::nullopt,
            {refusal("columns", walk.number(), "{} columns are named; a TMY3 file has {} or {}",
                     {std::to_string(wanted), std::to_string(old_columns), std::to_string(new_columns)})}};
  std::vector<Column> columns = columns_named(walk.cells());
  HourCheck hours;
  while (walk.next()) {
    if (const auto why = read_row(walk, wanted, columns, hours)) return {std::nullopt, {*why}};
    if (walk.cells().size() < wanted) file.repairs.push_back({RepairKind::short_last_line, "", 1, walk.number(), 0});
  }
  return finished(std::move(file), columns, hours, walk.number(), options);
}

}  // namespace slabwright::weather
