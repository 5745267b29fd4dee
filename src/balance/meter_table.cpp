// A table of readings: lines, cells, and what the rows say together.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "balance/meters.hpp"
#include "slabwright/fields.hpp"

namespace slabwright {
namespace {

// More than any manifold room has; whoever writes more has another file in hand.
constexpr std::size_t most_bytes = 200'000, most_rows = 500;
// Two readings of one supply on the same day.
constexpr double same_supply_K = 1.5;
// A contact thermometer on a loop that stands may show so much more than the supply.
constexpr double over_supply_K = 2.0;

struct Cell {
  std::string text;
  int column = 1;
};

struct Line {
  std::string text;
  int number = 1;
};

/// The degree sign of an old code page stands alone; in UTF-8 it has a byte before it.
std::string without_old_degree(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool alone = i == 0 || static_cast<unsigned char>(text[i - 1]) < 0x80;
    if (text[i] != '\xB0' || !alone) out += text[i];
  }
  return out;
}

/// "# this", but "#3" is a port.
bool is_remark(const std::string& line, std::size_t first) {
  const bool port = first + 1 < line.size() && line[first + 1] >= '0' && line[first + 1] <= '9';
  return line[first] == '#' && !port;
}

/// Lines that say something: neither blank, nor only separators, nor a remark.
std::vector<Line> lines_of(std::string_view text) {
  std::vector<Line> lines;
  int number = 0;
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    const std::string line = plain_characters(without_old_degree(text.substr(0, end)));
    ++number;
    const bool pair = end + 1 < text.size() && text[end] == '\r' && text[end + 1] == '\n';
    text.remove_prefix(std::min(end + (pair ? 2u : 1u), text.size()));
    const std::size_t first = line.find_first_not_of(" \t,;\"");
    if (first != std::string::npos && !is_remark(line, first)) lines.push_back({line, number});
  }
  return lines;
}

char separator_of(const std::string& heading) {
  for (const char c : {'\t', ';', ','}) {
    if (heading.find(c) != std::string::npos) return c;
  }
  return ',';
}

std::vector<Cell> cells_of(const std::string& line, char separator) {
  std::vector<Cell> cells;
  bool inside = false;
  Cell cell;
  for (std::size_t i = 0; i < line.size(); ++i) {
    // In a cell that does not begin with one, a quote is a mark for inches.
    const bool begins = trimmed(cell.text).empty();
    if (line[i] == '"' && (inside || begins)) {
      inside = !inside;
    } else if (line[i] == separator && !inside) {
      cells.push_back(cell);
      cell = {{}, static_cast<int>(i) + 2};
    } else if (line[i] != '#' || inside || line.compare(i, 2, "# ") != 0) {
      if (begins) cell.column = static_cast<int>(i) + 1;
      cell.text += line[i];
    } else {
      break;  // a remark behind the last cell
    }
  }
  cells.push_back(cell);
  while (cells.size() > 1 && trimmed(cells.back().text).empty()) cells.pop_back();
  return cells;
}

class Table {
 public:
  explicit Table(MeterSheet& sheet) : sheet_(sheet) {}

  void problem(const std::string& about, Spot spot, std::string sentence) {
    sheet_.spots.emplace(about, spot);
    sheet_.problems.push_back({Severity::problem, "readings.table", about, "{}", {std::move(sentence)}});
  }

  /// False where it cannot be a heading at all.
  bool take_heading(const Line& line) {
    separator_ = separator_of(line.text);
    const std::vector<Cell> cells = cells_of(line.text, separator_);
    const auto number = [](const Cell& c) { return read_number(trimmed(c.text)).has_value(); };
    if (std::any_of(cells.begin(), cells.end(), number)) {
      problem("heading", {line.number, 1, {}},
              "the first line must name the columns and their units, as: loop, flow (gpm), return (F)");
      return false;
    }
    for (const Cell& cell : cells) {
      const std::string about = fmt::format("column[{}]", heading_.size() + 1);
      MeterHeading one = meter_heading(cell.text);
      if (trimmed(cell.text).empty()) one = {};
      if (!one.problem.empty()) problem(about, {line.number, cell.column, {}}, one.problem);
      const auto same = [&](const MeterHeading& h) { return h.column == one.column; };
      if (one.column != MeterColumn::remark && std::any_of(heading_.begin(), heading_.end(), same))
        problem(about, {line.number, cell.column, {}},
                fmt::format("a second column of {}: take one out", word_of(one.column)));
      heading_.push_back(std::move(one));
    }
    sheet_.in_port_order = !has(MeterColumn::at);
    if (!has(MeterColumn::flow) && sheet_.problems.empty())
      problem("heading", {line.number, 1, {}}, "there is no column of flows: add one, as \"flow (gpm)\"");
    return true;
  }

  void take_row(const Line& line) {
    const std::vector<Cell> cells = cells_of(line.text, separator_);
    const std::string about = fmt::format("row[{}]", sheet_.row.size() + 1);
    sheet_.spots.emplace(about, Spot{line.number, 1, {}});
    if (cells.size() > heading_.size()) {
      const bool commas = separator_ == ',' && line.text.find('.') == std::string::npos;
      problem(about + ".cells", {line.number, cells[heading_.size()].column, {}},
              fmt::format("{} cells where the heading has {}{}", cells.size(), heading_.size(),
                          commas ? ": with decimal commas, write points, as 0.64" : ""));
      sheet_.row.push_back({});
      return;
    }
    MeterRow row;
    for (std::size_t i = 0; i < cells.size(); ++i) take_cell(cells[i], heading_[i], line.number, row);
    sheet_.row.push_back(std::move(row));
  }

  bool has(MeterColumn column) const {
    return std::any_of(heading_.begin(), heading_.end(), [&](const MeterHeading& h) { return h.column == column; });
  }

 private:
  void take_cell(const Cell& cell, MeterHeading& heading, int line, MeterRow& row) {
    if (heading.column == MeterColumn::remark || !heading.problem.empty()) return;
    const std::string about = fmt::format("row[{}].{}", sheet_.row.size() + 1, word_of(heading.column));
    const Spot spot{line, cell.column, {}};
    sheet_.spots.emplace(about, spot);
    if (heading.column == MeterColumn::at) {
      row.at = std::string(trimmed(cell.text));
      if (row.at.empty()) problem(about, spot, "this row does not say which loop or port it is of");
      return;
    }
    const MeterFigure figure = meter_figure(heading.column, cell.text, heading.unit);
    if (figure.no_unit) heading.problem = figure.problem;  // once for the column is enough
    if (!figure.problem.empty()) return problem(about, spot, figure.problem);
    if (figure.si) put(heading.column, *figure.si, row);
  }

  void put(MeterColumn column, double si, MeterRow& row) {
    switch (column) {
      case MeterColumn::flow: row.flow_m3_per_s = si; break;
      case MeterColumn::supply: row.supply_degC = si; break;
      case MeterColumn::back: row.return_degC = si; break;
      case MeterColumn::front: row.front_s = si; break;
      case MeterColumn::turns: row.open_turns = si; break;
      case MeterColumn::water: sheet_.water_degC = sheet_.water_degC.value_or(si); break;
      case MeterColumn::room: sheet_.room_degC = sheet_.room_degC.value_or(si); break;
      case MeterColumn::meter_error: sheet_.meter_error_share = sheet_.meter_error_share.value_or(si); break;
      default: break;
    }
  }

  MeterSheet& sheet_;
  std::vector<MeterHeading> heading_;
  char separator_ = ',';
};

/// One supply for all, and no return warmer than it.
void judge_temperatures(MeterSheet& sheet) {
  Table table(sheet);
  const auto at = [&](std::size_t i, const char* column) { return fmt::format("row[{}].{}", i + 1, column); };
  std::optional<double> supply;
  for (std::size_t i = 0; i < sheet.row.size(); ++i) {
    const auto& here = sheet.row[i].supply_degC;
    if (here && supply && std::abs(*here - *supply) > same_supply_K)
      table.problem(at(i, "supply"), {}, "another supply temperature than above: all loops of a manifold have one");
    if (here && !supply) supply = here;
  }
  for (std::size_t i = 0; i < sheet.row.size(); ++i) {
    const auto& back = sheet.row[i].return_degC;
    if (back && supply && *back > *supply + over_supply_K)
      table.problem(at(i, "return"), {},
                    "the return is warmer than the supply: are the two columns, or the two bars, changed over?");
  }
}

/// Problems in the order of the text.
void sort_problems(MeterSheet& sheet) {
  const auto place = [&](const Diagnostic& d) {
    const Spot& spot = sheet.spots[d.about];
    return std::pair(spot.line, spot.column);
  };
  std::stable_sort(sheet.problems.begin(), sheet.problems.end(),
                   [&](const Diagnostic& a, const Diagnostic& b) { return place(a) < place(b); });
}

}  // namespace

MeterSheet read_meters(std::string_view text) {
  MeterSheet sheet;
  sheet.spots["readings"] = {};
  Table table(sheet);
  const auto refuse = [&](const char* sentence) {
    table.problem("readings", {}, sentence);
    return sheet;
  };
  if (text.size() > most_bytes) return refuse("this file is too large for the readings of a manifold: name another");
  if (text.substr(0, 64).find('\0') != std::string_view::npos || text.substr(0, 2) == "\xFF\xFE")
    return refuse("this is no plain text: save it as CSV in UTF-8");
  const std::vector<Line> lines = lines_of(text);
  if (lines.empty()) return refuse("there is nothing in it: begin with a line such as: loop, flow (gpm), return (F)");
  if (!table.take_heading(lines.front())) return sheet;
  if (lines.size() == 1) return refuse("there is no reading below the heading: write a line for each loop");
  if (lines.size() > most_rows) return refuse("there are too many lines for one manifold: name another file");
  for (std::size_t i = 1; i < lines.size(); ++i) table.take_row(lines[i]);
  judge_temperatures(sheet);
  sort_problems(sheet);
  return sheet;
}

}  // namespace slabwright
