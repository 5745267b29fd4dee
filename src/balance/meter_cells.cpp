// Headings and cells of a table of readings.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "balance/meters.hpp"
#include "slabwright/fields.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// What a column takes: its dimension, an example of its heading, and what no manifold in a shop exceeds.
struct ColumnKind {
  MeterColumn column;
  std::string_view word, heading, cell;
  Dimension dimension;
  double least_si, most_si;
  std::string_view limits;
};
constexpr std::array<ColumnKind, 8> kinds{{
    {MeterColumn::flow, "flow", "flow (gpm)", "0.64 gpm", Dimension::flow, 0.0, 2e-3, "0 to 30 gpm (120 L/min)"},
    {MeterColumn::supply, "supply", "supply (F)", "98 F", Dimension::degree, 0.0, 99.0, "32 to 210 F (0 to 99 C)"},
    {MeterColumn::back, "return", "return (F)", "84 F", Dimension::degree, 0.0, 99.0, "32 to 210 F (0 to 99 C)"},
    {MeterColumn::front, "front", "front (min)", "4:50", Dimension::time, 1.0, 6 * hour_s, "1 second to 6 hours"},
    {MeterColumn::turns, "turns", "turns", "2.5", Dimension::turns, 0.0, 100.0, "0 to 100, or \"open\""},
    {MeterColumn::water, "water", "water (F)", "95 F", Dimension::degree, 0.0, 99.0, "32 to 210 F (0 to 99 C)"},
    {MeterColumn::room, "room", "room (F)", "58 F", Dimension::degree, -40.0, 50.0, "-40 to 120 F (-40 to 50 C)"},
    {MeterColumn::meter_error, "meter error", "meter error (%)", "10 %", Dimension::share, 0.005, 0.5, "0.5 to 50 %"},
}};

const ColumnKind& kind_of(MeterColumn column) {
  return *std::find_if(kinds.begin(), kinds.end(), [&](const ColumnKind& k) { return k.column == column; });
}

struct Name {
  std::string_view text;
  MeterColumn column;
};
// The longer of two that begin alike stands first.
constexpr std::array<Name, 41> names{{
    {"loop", MeterColumn::at},
    {"port", MeterColumn::at},
    {"circuit", MeterColumn::at},
    {"zone", MeterColumn::at},
    {"name", MeterColumn::at},
    {"number", MeterColumn::at},
    {"no.", MeterColumn::at},
    {"#", MeterColumn::at},
    {"flow rate", MeterColumn::flow},
    {"flowrate", MeterColumn::flow},
    {"flow meter", MeterColumn::flow},
    {"flow", MeterColumn::flow},
    {"meter error", MeterColumn::meter_error},
    {"error", MeterColumn::meter_error},
    {"meter", MeterColumn::flow},
    {"reading", MeterColumn::flow},
    {"supply temperature", MeterColumn::supply},
    {"supply temp", MeterColumn::supply},
    {"supply", MeterColumn::supply},
    {"return temperature", MeterColumn::back},
    {"return temp", MeterColumn::back},
    {"return", MeterColumn::back},
    {"warm front time", MeterColumn::front},
    {"warm front", MeterColumn::front},
    {"warm-front time", MeterColumn::front},
    {"warm-front", MeterColumn::front},
    {"front time", MeterColumn::front},
    {"front", MeterColumn::front},
    {"time", MeterColumn::front},
    {"turns", MeterColumn::turns},
    {"open turns", MeterColumn::turns},
    {"setting", MeterColumn::turns},
    {"water temperature", MeterColumn::water},
    {"water temp", MeterColumn::water},
    {"water", MeterColumn::water},
    {"room", MeterColumn::room},
    {"air", MeterColumn::room},
    {"remark", MeterColumn::remark},
    {"note", MeterColumn::remark},
    {"comment", MeterColumn::remark},
    {"date", MeterColumn::remark},
}};

bool letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

/// Whether a heading begins with this name as a whole word, a plural's s allowed.
std::optional<std::size_t> behind_name(const std::string& heading, std::string_view name) {
  if (heading.compare(0, name.size(), name) != 0) return std::nullopt;
  std::size_t end = name.size();
  if (end < heading.size() && heading[end] == 's' && letter(name.back())) ++end;
  if (end < heading.size() && letter(heading[end]) && letter(heading[end - 1])) return std::nullopt;
  return end;
}

/// "(gpm)", "[L/min]", "in F", "/ s" as the unit alone.
std::string unit_in(std::string_view rest) {
  std::string unit;
  for (const char c : rest) {
    if (c != '(' && c != ')' && c != '[' && c != ']') unit += c;
  }
  std::string_view bare = trimmed(unit);
  if (bare.compare(0, 3, "in ") == 0) bare.remove_prefix(3);
  return std::string(trimmed(bare));
}

bool minutes_and_seconds(std::string_view unit) {
  constexpr std::array<std::string_view, 6> forms{"m:ss", "mm:ss", "min:s", "min:sec", "min:ss", "m:s"};
  return std::find(forms.begin(), forms.end(), unit) != forms.end();
}

std::string_view usual_word(std::string_view unit) {
  if (unit == "sec" || unit == "secs" || unit == "second" || unit == "seconds") return "s";
  if (unit == "mins" || unit == "minute" || unit == "minutes") return "min";
  return unit;
}

/// "4:50" or "1:04:50" as seconds.
std::optional<double> clock_s(std::string_view text) {
  double seconds = 0.0;
  int parts = 0;
  for (std::size_t at = 0; at <= text.size(); ++parts) {
    const std::size_t end = std::min(text.find(':', at), text.size());
    const auto part = read_number(text.substr(at, end - at));
    if (!part || *part < 0.0 || (parts > 0 && *part >= 60.0)) return std::nullopt;
    seconds = 60.0 * seconds + *part;
    at = end + 1;
  }
  return parts == 2 || parts == 3 ? std::optional(seconds) : std::nullopt;
}

std::string fault_words(const ColumnKind& kind, std::string_view text, const Reading& reading) {
  const std::string said = excerpt(text);
  switch (reading.fault) {
    case Fault::none: break;
    case Fault::decimal_comma: {
      std::string point = said;
      std::replace(point.begin(), point.end(), ',', '.');
      return fmt::format("decimal comma: write {}", point);
    }
    case Fault::no_unit:
      return fmt::format("{} {} has no unit: write it in the heading, as \"{}\", or behind each, as \"{}\"", kind.word,
                         said, kind.heading, kind.cell);
    case Fault::unknown_unit:
    case Fault::wrong_kind:
      return fmt::format("\"{}\" does not fit {}; units that fit: {}", said, kind.word, units_that_fit(kind.dimension));
    case Fault::not_a_number:
      return fmt::format("\"{}\" is no {}: write a number{}, or - where nothing was read", said, kind.word,
                         kind.column == MeterColumn::front ? ", or minutes and seconds as 4:50" : "");
    case Fault::not_finite: return fmt::format("{} is too large a number", said);
  }
  return {};
}

Reading reading_of(const ColumnKind& kind, const std::string& text, std::string_view unit) {
  if (kind.column == MeterColumn::front && text.find(':') != std::string::npos) {
    const auto seconds = clock_s(text);
    return {seconds.value_or(0.0), seconds ? Fault::none : Fault::not_a_number, 0.0, ""};
  }
  Reading reading = read_quantity(text, kind.dimension);
  // The table's share has a row without a unit; a bare 10 for an error would be ten times the flow.
  const bool bare = reading.unit.empty() && reading.fault != Fault::not_a_number;
  if (bare && kind.column == MeterColumn::turns && reading.fault == Fault::no_unit)
    return read_quantity(text + " turns", kind.dimension);
  if (!bare || reading.fault == Fault::decimal_comma) return reading;
  if (unit.empty() || minutes_and_seconds(unit)) {
    reading.fault = Fault::no_unit;
    return reading;
  }
  return read_quantity(text + " " + std::string(unit), kind.dimension);
}

}  // namespace

std::string folded_words(std::string_view text) {
  std::string out;
  for (const char c : trimmed(text)) {
    const bool blank = std::isspace(static_cast<unsigned char>(c)) || c == '_';
    if (!blank)
      out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  return out;
}

bool nothing_read(std::string_view text) {
  constexpr std::array<std::string_view, 8> marks{"", "-", "--", "---", "?", "n/a", "na", "none"};
  return std::find(marks.begin(), marks.end(), folded_words(text)) != marks.end();
}

std::string_view word_of(MeterColumn column) {
  if (column == MeterColumn::at) return "loop";
  return column == MeterColumn::remark ? std::string_view("remark") : kind_of(column).word;
}

MeterHeading meter_heading(std::string_view text) {
  const std::string heading = folded_words(text);
  for (const Name& name : names) {
    const auto end = behind_name(heading, name.text);
    if (!end) continue;
    MeterHeading found{name.column, std::string(usual_word(unit_in(heading.substr(*end)))), {}};
    if (found.column == MeterColumn::at || found.column == MeterColumn::remark) return {found.column, {}, {}};
    const ColumnKind& kind = kind_of(found.column);
    if (found.unit.empty() || (found.column == MeterColumn::front && minutes_and_seconds(found.unit))) return found;
    if (read_quantity("1 " + found.unit, kind.dimension).fault != Fault::none)
      found.problem = fmt::format("\"{}\" is no unit of {}: write \"{}\"; units that fit: {}", excerpt(found.unit),
                                  kind.word, kind.heading, units_that_fit(kind.dimension));
    return found;
  }
  return {MeterColumn::remark,
          {},
          fmt::format("no column is called \"{}\"; columns are: loop, flow (gpm), supply (F), return (F), front (min), "
                      "turns, water (F), room (F), meter error (%), remarks",
                      excerpt(trimmed(text)))};
}

MeterFigure meter_figure(MeterColumn column, std::string_view text, std::string_view unit) {
  if (nothing_read(text)) return {};
  const ColumnKind& kind = kind_of(column);
  const std::string plain(trimmed(text));
  if (column == MeterColumn::turns && folded_words(plain) == "open") return {};
  if (column == MeterColumn::turns && (folded_words(plain) == "shut" || folded_words(plain) == "closed"))
    return {0.0, {}, false};
  const Reading reading = reading_of(kind, plain, unit);
  if (reading.fault != Fault::none) return {{}, fault_words(kind, plain, reading), reading.fault == Fault::no_unit};
  if (!std::isfinite(reading.si) || reading.si < kind.least_si || reading.si > kind.most_si)
    return {{}, fmt::format("{} {} is beyond what is read here: {}", kind.word, excerpt(plain), kind.limits), false};
  return {reading.si, {}, false};
}

}  // namespace slabwright
