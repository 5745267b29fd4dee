#include "columns.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "slabwright/units_exact.hpp"

#include "cells.hpp"

namespace slabwright::weather {
namespace {

std::string stamp(CalendarHour at) { return fmt::format("{}/{} hour {}", at.month, at.day, at.hour); }

void count(Repair& repair, RepairKind kind, std::string_view column, int line) {
  if (repair.count++ > 0) return;
  repair.kind = kind;
  repair.column = column;
  repair.first_line = line;
}

std::string_view sentence_of(RepairKind kind) {
  switch (kind) {
    case RepairKind::last_good:
      return "{0}: {1} missing, the first in line {2}, up to {3} in a row; the last good value stands";
    case RepairKind::no_radiation:
      return "{0}: {1} missing, the first in line {2}, up to {3} in a row; no radiation is counted there";
    case RepairKind::negative: return "{0}: {1} below zero, the first in line {2}, and read as 0";
    case RepairKind::absent: return "{0}: the file has no values";
    case RepairKind::short_last_line:
      return "the last line, {2}, breaks off behind the wind; its columns up to there are read";
    case RepairKind::hours_from_zero: return "hours run from 0 to 23 and are read as hours 1 to 24";
    case RepairKind::unknown_heading: return "heading: {1} of an unknown kind, the first in line {2}, and passed over";
  }
  return "";
}

/// "1 value is", "4 values are".
std::string counted(const Repair& of) {
  const std::string_view thing = of.kind == RepairKind::unknown_heading ? "line" : "value";
  return of.count == 1 ? fmt::format("1 {} is", thing) : fmt::format("{} {}s are", of.count, thing);
}

}  // namespace

Diagnostic refusal(std::string code, int line, std::string sentence, Parts parts) {
  parts.insert(parts.begin(), std::to_string(line));
  return {Severity::problem, "weather." + std::move(code), "line " + std::to_string(line),
          "the weather file, line {}: " + std::move(sentence), std::move(parts)};
}

void Column::miss(int line) {
  const RepairKind kind = rule_.radiation ? RepairKind::no_radiation : RepairKind::last_good;
  count(missing_, kind, rule_.name, line);
  if (run_++ == 0) run_line_ = line;
  if (run_ > missing_.longest_hours) {
    missing_.longest_hours = run_;
    longest_line_ = run_line_;
  }
  if (!any_) ++before_first_;
  values_.push_back(rule_.radiation ? 0.0 : last_);
}

std::optional<Diagnostic> Column::take(std::string_view cell, int line) {
  if (trimmed(cell).empty()) return miss(line), std::nullopt;
  const std::optional<double> written = plain_decimal(cell);
  if (!written)
    return refusal("number", line, "{} is \"{}\", which is no number", {std::string(rule_.name), shown_cell(cell)});
  double value = *written;
  if (value >= rule_.missing_from || value <= rule_.missing_to) return miss(line), std::nullopt;
  if (rule_.radiation && value < 0.0) {
    count(negative_, RepairKind::negative, rule_.name, line);
    value = 0.0;
  }
  if (value < rule_.least || value > rule_.most)
    return refusal(
        "impossible", line, "{} is {}, outside {} to {}",
        {std::string(rule_.name), shown_cell(cell), fmt::format("{}", rule_.least), fmt::format("{}", rule_.most)});
  any_ = true;
  run_ = 0;
  last_ = value * rule_.scale;
  values_.push_back(last_);
  return std::nullopt;
}

std::optional<Diagnostic> Column::finish(WeatherFile& file, const WeatherOptions& options) {
  const bool needed = rule_.series == &WeatherYear::dry_bulb_degC;
  if (needed && missing_.longest_hours > options.longest_gap_hours)
    return refusal("gap", longest_line_, "dry bulb is missing for {} hours in a row; at most {} can be mended",
                   {std::to_string(missing_.longest_hours), std::to_string(options.longest_gap_hours)});
  if (!any_) {
    missing_.kind = RepairKind::absent;
    missing_.column = rule_.name;
    file.repairs.push_back(missing_);
    return std::nullopt;
  }
  if (!rule_.radiation) std::fill_n(values_.begin(), before_first_, values_[before_first_]);
  for (const Repair& repair : {missing_, negative_}) {
    if (repair.count > 0) file.repairs.push_back(repair);
  }
  file.year.*rule_.series = std::move(values_);
  return std::nullopt;
}

std::optional<Diagnostic> HourCheck::take(CalendarHour at, int line) {
  if (hours_ == 0) {
    first_line_ = line;
    from_zero_ = at.hour == 0;
  }
  if (from_zero_) ++at.hour;
  if (hours_ == (leap_ ? 8784u : 8760u))
    return refusal("hours", line, "rows go on behind the {} hours of a year", {std::to_string(hours_)});
  constexpr std::size_t first_of_march = 59 * 24;
  const bool leap_day = hours_ == first_of_march && at == CalendarHour{2, 29, 1};
  if (leap_day) leap_ = true;
  const CalendarHour expected = calendar_hour(hours_, leap_);
  if (!(at == expected))
    return refusal("order", line, "the row is of {}, where {} should be: rows run from 1 January to 31 December",
                   {stamp(at), stamp(expected)});
  ++hours_;
  return std::nullopt;
}

std::optional<Diagnostic> HourCheck::finish(int line) const {
  if (hours_ == (leap_ ? 8784u : 8760u)) return std::nullopt;
  return refusal("hours", line, "the file ends after {} hours; a year has 8760, or 8784 with 29 February",
                 {std::to_string(hours_)});
}

Checked<WeatherFile> finished(WeatherFile file, std::vector<Column>& columns, const HourCheck& hours, int last_line,
                              const WeatherOptions& options) {
  if (const auto why = hours.finish(last_line)) return {std::nullopt, {*why}};
  if (hours.from_zero()) file.repairs.push_back({RepairKind::hours_from_zero, "", 1, hours.first_line(), 0});
  for (Column& column : columns) {
    if (const auto why = column.finish(file, options)) return {std::nullopt, {*why}};
  }
  std::vector<Diagnostic> said;
  for (const Repair& repair : file.repairs) said.push_back(repair_note(repair));
  return {std::move(file), std::move(said)};
}

Checked<double> heading_number(const HeadingNumber& of, int line) {
  const std::optional<double> value = plain_decimal(of.cell);
  if (value && *value >= of.least && *value <= of.most) return {value, {}};
  return {
      std::nullopt,
      {refusal("heading", line, "{} is \"{}\", not a number from {} to {}",
               {std::string(of.name), shown_cell(of.cell), fmt::format("{}", of.least), fmt::format("{}", of.most)})}};
}

Checked<Station> station_of(const StationCells& cells, int line) {
  const HeadingNumber wanted[] = {{"latitude", cells.latitude, -90.0, 90.0},
                                  {"longitude", cells.longitude, -180.0, 180.0},
                                  {"time zone", cells.time_zone, -12.0, 14.0},
                                  {"elevation", cells.elevation, -1000.0, 9999.9}};
  std::vector<double> found;
  for (const HeadingNumber& number : wanted) {
    const Checked<double> value = heading_number(number, line);
    if (!value) return {std::nullopt, value.said};
    found.push_back(*value.value);
  }
  return {Station{"", "", found[0], found[1], found[2] * hour_s, found[3]}, {}};
}

}  // namespace slabwright::weather

namespace slabwright {

Diagnostic repair_note(const Repair& of) {
  const std::string text = fmt::format(fmt::runtime(weather::sentence_of(of.kind)), of.column, weather::counted(of),
                                       of.first_line, of.longest_hours);
  return {Severity::note, "weather.repaired", fmt::format("line {}", of.first_line), "the weather file: {}", {text}};
}

}  // namespace slabwright
