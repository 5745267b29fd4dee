// The weather reader. A year has 8760 lines, which no fuzzer would ever put together: the bytes are edits of an
// invented file. The first one chooses the form, or that what follows is the file itself; then each line is an edit:
// "LINE text" sets a line, "LINE,CELL text" one cell of it, "LINE-" takes it out, "LINE+COUNT text" cells of several.
#include <cmath>
#include <cstdlib>

#include "climate/written.hpp"
#include "fuzz/targets.hpp"
#include "slabwright/climate_statistics.hpp"

namespace slabwright::fuzz {
namespace {

/// A number at the front of `text`, which is taken off; empty where there is none.
std::optional<std::size_t> number_of(std::string_view& text) {
  std::size_t digits = 0, value = 0;
  while (digits < text.size() && digits < 6 && text[digits] >= '0' && text[digits] <= '9')
    value = value * 10 + static_cast<std::size_t>(text[digits++] - '0');
  text.remove_prefix(digits);
  return digits > 0 ? std::optional(value) : std::nullopt;
}

std::string_view text_after(std::string_view rest) { return rest.substr(std::min<std::size_t>(rest.size(), 1)); }

void edit(test::FileLines& lines, std::string_view how) {
  const auto line = number_of(how);
  if (!line || lines.empty() || how.empty()) return;
  const std::size_t at = *line % lines.size();
  const char kind = how.front();
  if (kind == ' ') lines[at] = std::string(text_after(how));
  if (kind == '-') lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(at));
  if (kind != ',' && kind != '+') return;
  how.remove_prefix(1);
  const std::size_t cell = number_of(how).value_or(0) % 70;
  const std::size_t count = kind == '+' ? number_of(how = text_after(how)).value_or(1) % 9000 : 1;
  const std::string text(text_after(how));
  for (std::size_t i = at; i < std::min(at + count, lines.size()); ++i)
    lines[i] = test::with_cell(lines[i], cell, text);
}

std::string file_of(std::string_view bytes) {
  static const test::FileLines epw = test::epw_lines(), leap = test::epw_lines(true), tmy3 = test::tmy3_lines();
  if (bytes.empty()) return {};
  const char form = bytes.front();
  bytes.remove_prefix(1);
  if (form == 'r') return std::string(bytes);
  test::FileLines lines = form == 't' ? tmy3 : form == 'l' ? leap : epw;
  for (int edits = 0; !bytes.empty() && edits < 50; ++edits) {
    const std::size_t end = std::min(bytes.find('\n'), bytes.size());
    edit(lines, bytes.substr(0, end));
    bytes.remove_prefix(std::min(end + 1, bytes.size()));
  }
  return test::joined(lines);
}

void check_series(const std::vector<double>& series, std::size_t hours, double least, double most) {
  must(series.empty() || series.size() == hours, "a series of another length");
  for (const double value : series) must(value >= least && value <= most, "weather beyond its limits");
}

void check_year(const WeatherYear& year) {
  const std::size_t hours = year.dry_bulb_degC.size();
  must(hours == 8760 || hours == 8784, "a year of another length");
  check_series(year.dry_bulb_degC, hours, -100.0, 80.0);
  check_series(year.dew_point_degC, hours, -110.0, 80.0);
  check_series(year.humidity_share, hours, 0.0, 1.1);
  check_series(year.pressure_Pa, hours, 2e4, 2e5);
  for (const auto* series : {&year.global_W_per_m2, &year.direct_W_per_m2, &year.diffuse_W_per_m2, &year.wind_m_per_s,
                             &year.snow_depth_m, &year.sky_infrared_W_per_m2})
    check_series(*series, hours, 0.0, 1e5);
  check_series(year.wind_direction_deg, hours, 0.0, 360.0);
  check_series(year.opaque_share, hours, 0.0, 1.0);
  const double mean = year_mean_degC(year.dry_bulb_degC), reached = reached_degC(year.dry_bulb_degC, 0.996);
  must(std::isfinite(mean) && reached <= mean + 1e-9, "statistics that contradict each other");
}

}  // namespace

bool weather(std::string_view bytes) {
  const Checked<WeatherFile> read = read_weather(file_of(bytes));
  for (const Diagnostic& said : read.said) {
    const std::string sentence = say(said, System::si);
    must(sentence.size() < 500 && sentence.find('\n') == std::string::npos, "a long sentence: " + sentence);
  }
  must(read || any(read.said, Severity::problem), "refused without a word");
  if (!read) return false;
  for (const Repair& repair : read.value->repairs) must(!say(repair_note(repair), System::us).empty(), "no note");
  check_year(read.value->year);
  return true;
}

}  // namespace slabwright::fuzz
