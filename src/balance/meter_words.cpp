// Flows in a row, as on the command line: "0.73 0.64 - 0.57".
#include <fmt/format.h>

#include <algorithm>

#include "balance/meters.hpp"
#include "slabwright/fields.hpp"

namespace slabwright {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }

/// Words between blanks and semicolons; "0.73,0.64" is two. A comma that may be a decimal one stays where it is.
std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words(1);
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool joins = i > 0 && i + 1 < text.size() && digit(text[i - 1]) && digit(text[i + 1]);
    const std::size_t behind = std::min(text.find_first_of(" ,;\t", i + 1), text.size());
    const bool pointed =
        words.back().find('.') != std::string::npos || text.substr(i, behind - i).find('.') != std::string::npos;
    const bool parts = c == ' ' || c == '\t' || c == '\n' || c == ';' || (c == ',' && (!joins || pointed));
    if (!parts)
      words.back() += c;
    else if (!words.back().empty())
      words.emplace_back();
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

/// One reading as typed.
struct Typed {
  std::string at, number, unit;
};

/// "3:" names a port; a number is a reading, and what is none behind it is its unit.
std::vector<Typed> typed_of(const std::vector<std::string>& words) {
  std::vector<Typed> all;
  std::string at;
  for (const std::string& word : words) {
    const std::size_t colon = word.find(':');
    std::string rest = word;
    if (colon != std::string::npos) {
      at = word.substr(0, colon);
      rest = word.substr(colon + 1);
      if (rest.empty()) continue;
    }
    if (nothing_read(rest) || rest == "x" || digit(rest[0]) || rest[0] == '.' || rest[0] == '-' || all.empty()) {
      const std::size_t end = std::min(rest.find_first_not_of("0123456789.,-+x?"), rest.size());
      all.push_back({at, rest.substr(0, end), rest.substr(end)});
    } else {
      all.back().unit += (all.back().unit.empty() ? "" : " ") + rest;
    }
    at.clear();
  }
  return all;
}

}  // namespace

MeterSheet read_flows(std::string_view text, System system, std::string_view option) {
  MeterSheet sheet;
  const Spot spot{0, 0, std::string(option)};
  sheet.spots["readings"] = spot;
  const auto problem = [&](std::string sentence) {
    sheet.problems.push_back({Severity::problem, "readings.words", "readings", "{}", {std::move(sentence)}});
  };
  const std::vector<Typed> all = typed_of(words_of(plain_characters(text)));
  if (all.empty()) problem("nothing between the quotes: write the flows port by port, as \"0.73 0.64 - 0.57\"");
  // One unit at the end is everybody's.
  const auto has_unit = [](const Typed& t) { return !t.unit.empty(); };
  const bool last_alone = std::count_if(all.begin(), all.end(), has_unit) == 1 && has_unit(all.back());
  const std::string own(shown(Dimension::flow, system).unit);
  sheet.unit_written = std::any_of(all.begin(), all.end(), has_unit);
  sheet.in_port_order = std::all_of(all.begin(), all.end(), [](const Typed& t) { return t.at.empty(); });
  for (const Typed& typed : all) {
    const std::string unit = has_unit(typed) ? typed.unit : last_alone ? all.back().unit : own;
    MeterRow row;
    row.at = typed.at;
    const bool none = nothing_read(typed.number) || typed.number == "x";
    const MeterFigure figure =
        none ? MeterFigure{}
             : meter_figure(MeterColumn::flow, typed.number + (has_unit(typed) ? " " + unit : ""), unit);
    if (!figure.problem.empty()) problem(figure.problem);
    if (!sheet.in_port_order && typed.at.empty())
      problem(
          fmt::format("\"{}\" has no port in front; name all of them, as \"3: 0.2\", or none", excerpt(typed.number)));
    row.flow_m3_per_s = figure.si;
    sheet.spots.emplace(fmt::format("row[{}]", sheet.row.size() + 1), spot);
    sheet.row.push_back(std::move(row));
  }
  return sheet;
}

MeterSheet with_option(MeterSheet sheet, std::string_view option, std::string_view text) {
  const MeterColumn column = option == "--water"  ? MeterColumn::water
                             : option == "--room" ? MeterColumn::room
                                                  : MeterColumn::meter_error;
  MeterFigure figure = meter_figure(column, text, {});
  const char* example = column == MeterColumn::water ? "95 F" : column == MeterColumn::room ? "58 F" : "10 %";
  if (!figure.si && figure.problem.empty()) figure.no_unit = true;
  if (figure.no_unit)
    figure.problem = fmt::format("\"{}\" has no unit: write {} \"{}\"", excerpt(text), option, example);
  if (!figure.problem.empty()) {
    sheet.spots[std::string(option)] = {0, 0, std::string(option)};
    sheet.problems.push_back({Severity::problem, "readings.words", std::string(option), "{}", {figure.problem}});
  }
  (column == MeterColumn::water  ? sheet.water_degC
   : column == MeterColumn::room ? sheet.room_degC
                                 : sheet.meter_error_share) = figure.si;
  return sheet;
}

}  // namespace slabwright
