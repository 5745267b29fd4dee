// What both forms of weather file have in common: columns with codes for missing values, and hours in order.
#pragma once
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "slabwright/climate.hpp"

namespace slabwright::weather {

using Parts = std::vector<std::variant<std::string, Measured>>;

/// A refusal. The sentence begins "line {}" and the line's number is put before the parts.
Diagnostic refusal(std::string code, int line, std::string sentence, Parts parts = {});

/// How a column is written and what is done about its faults. Values are in the file's unit until `scale` is applied.
struct ColumnRule {
  std::string_view name;
  std::vector<double> WeatherYear::*series = nullptr;
  double least = 0.0, most = 0.0;  ///< outside it a value is impossible
  double missing_from = std::numeric_limits<double>::infinity();
  double missing_to = -std::numeric_limits<double>::infinity();
  double scale = 1.0;
  bool radiation = false;  ///< below zero and missing are read as none
};

/// One column while the file is read.
class Column {
 public:
  Column(const ColumnRule& rule, std::size_t at) : rule_(rule), at_(at) { values_.reserve(8784); }
  std::size_t at() const { return at_; }
  std::optional<Diagnostic> take(std::string_view cell, int line);
  /// Moves the values into the year and adds the repairs; a refusal where the dry bulb has too wide a gap.
  std::optional<Diagnostic> finish(WeatherFile& file, const WeatherOptions& options);

 private:
  void miss(int line);

  ColumnRule rule_;
  std::size_t at_;
  std::vector<double> values_;
  double last_ = 0.0;
  std::size_t before_first_ = 0;  ///< missing values that stand before the first good one
  bool any_ = false;
  int run_ = 0, run_line_ = 0, longest_line_ = 0;
  Repair missing_, negative_;
};

/// Holds the hours of the rows against the calendar.
class HourCheck {
 public:
  std::optional<Diagnostic> take(CalendarHour at, int line);
  /// Whether it was a whole year; `line` is the last.
  std::optional<Diagnostic> finish(int line) const;
  bool from_zero() const { return from_zero_; }
  int first_line() const { return first_line_; }

 private:
  std::size_t hours_ = 0;
  bool leap_ = false, from_zero_ = false;
  int first_line_ = 0;
  CalendarHour next_;
};

/// Everything that is left to do behind the last row.
Checked<WeatherFile> finished(WeatherFile file, std::vector<Column>& columns, const HourCheck& hours, int last_line,
                              const WeatherOptions& options);

/// The heading's numbers: text in, checked, named in the refusal.
struct HeadingNumber {
  std::string_view name;
  std::string_view cell;
  double least = 0.0, most = 0.0;
};
Checked<double> heading_number(const HeadingNumber& of, int line);

/// Latitude, longitude, time zone and elevation as cells.
struct StationCells {
  std::string_view latitude, longitude, time_zone, elevation;
};
Checked<Station> station_of(const StationCells& cells, int line);

Checked<WeatherFile> read_epw(std::string_view text, const WeatherOptions& options);
Checked<WeatherFile> read_tmy3(std::string_view text, const WeatherOptions& options);

/// Whether a line begins with one of the words that begin the lines of an EPW heading.
bool epw_heading(std::string_view line);

}  // namespace slabwright::weather
