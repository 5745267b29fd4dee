// Rows of readings laid against the loops of a plan.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "balance/meters.hpp"
#include "slabwright/fields.hpp"

namespace slabwright {
namespace {

constexpr double wide_open_turns = 1e9;
constexpr std::size_t none = static_cast<std::size_t>(-1);

/// "3" or "2-3" of a loop, as the answer calls its port.
std::string port_name(const LoopPlan& plan, const Design& design, std::size_t loop) {
  const Loop& one = plan.loop[loop];
  return design.manifold.size() < 2 ? fmt::format("{}", one.port) : fmt::format("{}-{}", one.manifold + 1, one.port);
}

/// "port 3", "#3" and "p3" as "3".
std::string bare_port(const std::string& folded) {
  for (const std::string_view front : {"port", "#", "no.", "loop"}) {
    if (folded.compare(0, front.size(), front) == 0) return std::string(trimmed(folded.substr(front.size())));
  }
  return folded;
}

std::size_t loop_of(const std::string& at, const LoopPlan& plan, const Design& design) {
  const std::string folded = folded_words(at);
  for (std::size_t i = 0; i < plan.loop.size(); ++i) {
    if (folded_words(plan.loop[i].name) == folded) return i;
  }
  const std::string port = bare_port(folded);
  for (std::size_t i = 0; i < plan.loop.size(); ++i) {
    if (port_name(plan, design, i) == port) return i;
  }
  return none;
}

/// "\"shop 1\", \"shop 2\" ... or ports 1 to 6".
std::string loops_there_are(const LoopPlan& plan, const Design& design) {
  constexpr std::size_t most_named = 4;
  std::string words;
  for (std::size_t i = 0; i < std::min(most_named, plan.loop.size()); ++i)
    words += fmt::format("{}\"{}\"", i == 0 ? "" : ", ", excerpt(plan.loop[i].name));
  if (plan.loop.size() > most_named) words += " ...";
  return fmt::format("{}, or ports {} to {}", words, port_name(plan, design, 0),
                     port_name(plan, design, plan.loop.size() - 1));
}

class Match {
 public:
  Match(const MeterSheet& sheet, const LoopPlan& plan, const Design& design)
      : sheet_(sheet), plan_(plan), design_(design), said_(sheet.problems), row_of_(plan.loop.size(), none) {}

  void problem(const std::string& about, std::string sentence) {
    said_.push_back({Severity::problem, "readings.loops", about, "{}", {std::move(sentence)}});
  }

  void find_rows() {
    const std::size_t loops = plan_.loop.size();
    if (sheet_.in_port_order) {
      if (sheet_.row.size() != loops && sheet_.problems.empty())
        problem("readings", fmt::format("{} for {}: write one for each port, and - where none was taken",
                                        count(sheet_.row.size(), "reading"), count(loops, "loop")));
      for (std::size_t i = 0; i < std::min(loops, sheet_.row.size()); ++i) row_of_[i] = i;
      return;
    }
    for (std::size_t i = 0; i < sheet_.row.size(); ++i) {
      if (!sheet_.row[i].at.empty()) find_row(i);
    }
  }

  void judge_flows() {
    if (!said_.empty()) return;
    const auto read = [](const MeterRow& row) { return row.flow_m3_per_s.has_value(); };
    const auto flows = [](const MeterRow& row) { return row.flow_m3_per_s.value_or(0.0) > 0.0; };
    if (std::none_of(sheet_.row.begin(), sheet_.row.end(), read))
      problem("readings", "no flow was read at any port");
    else if (std::none_of(sheet_.row.begin(), sheet_.row.end(), flows))
      problem("readings", "no port shows any flow: is the pump running, and are the bars' own valves open?");
  }

  /// In the order of the text.
  std::vector<Diagnostic> said() {
    const auto place = [&](const Diagnostic& d) {
      const auto found = sheet_.spots.find(d.about);
      return found == sheet_.spots.end() ? std::pair(0, 0) : std::pair(found->second.line, found->second.column);
    };
    std::stable_sort(said_.begin(), said_.end(),
                     [&](const Diagnostic& a, const Diagnostic& b) { return place(a) < place(b); });
    return said_;
  }

  MetersRead read() const {
    MetersRead read;
    read.readings.port.resize(row_of_.size());
    ValveTurns turns(row_of_.size(), wide_open_turns);
    bool any_turned = false;
    for (std::size_t i = 0; i < row_of_.size(); ++i) {
      if (row_of_[i] == none) continue;
      const MeterRow& row = sheet_.row[row_of_[i]];
      read.readings.port[i] = {row.flow_m3_per_s, row.return_degC, row.front_s};
      turns[i] = row.open_turns.value_or(wide_open_turns);
      // What a port that was shut shows says nothing of its loop.
      if (turns[i] == 0.0) read.readings.port[i] = {};
      any_turned = any_turned || row.open_turns.has_value();
    }
    if (any_turned) read.turns = std::move(turns);
    for (const MeterRow& row : sheet_.row) {
      if (!read.readings.supply_degC) read.readings.supply_degC = row.supply_degC;
    }
    read.readings.meter_error_share = sheet_.meter_error_share.value_or(read.readings.meter_error_share);
    return read;
  }

 private:
  static std::string count(std::size_t number, std::string_view word) {
    return fmt::format("{} {}{}", number, word, number == 1 ? "" : "s");
  }

  void find_row(std::size_t i) {
    const MeterRow& row = sheet_.row[i];
    const std::string about = fmt::format("row[{}].loop", i + 1);
    const std::size_t loop = loop_of(row.at, plan_, design_);
    if (loop == none)
      problem(about, fmt::format("there is no loop or port \"{}\" here; there are {}", excerpt(row.at),
                                 loops_there_are(plan_, design_)));
    else if (row_of_[loop] != none)
      problem(about, fmt::format("{} is there twice: keep one reading, or their mean", excerpt(plan_.loop[loop].name)));
    else
      row_of_[loop] = i;
  }

  const MeterSheet& sheet_;
  const LoopPlan& plan_;
  const Design& design_;
  std::vector<Diagnostic> said_;
  std::vector<std::size_t> row_of_;
};

}  // namespace

Checked<MetersRead> match_meters(const MeterSheet& sheet, const LoopPlan& plan, const Design& design) {
  Match match(sheet, plan, design);
  match.find_rows();
  match.judge_flows();
  std::vector<Diagnostic> said = match.said();
  if (!said.empty()) return {{}, std::move(said)};
  return {match.read(), {}};
}

std::optional<Diagnostic> unit_mistaken(const MeterSheet& sheet, const Readings& readings,
                                        const std::vector<double>& expected_m3_per_s, System system) {
  // A pump that is not the one thought of moves half or twice as much, not four times.
  constexpr double far_off = 1.6;
  if (sheet.unit_written) return std::nullopt;
  double read = 0.0, expected = 0.0;
  for (std::size_t i = 0; i < readings.port.size(); ++i) {
    if (!readings.port[i].flow_m3_per_s) continue;
    read += *readings.port[i].flow_m3_per_s;
    expected += expected_m3_per_s[i];
  }
  const bool us = system == System::us;
  const double litres_per_gallon = from_unit(1.0, "gal", Dimension::volume) / 1e-3;
  const double times = us ? read / expected : expected / read;
  if (!(times > litres_per_gallon / far_off && times < litres_per_gallon * far_off)) return std::nullopt;
  return Diagnostic{Severity::problem,
                    "readings.unit",
                    "readings",
                    "as {} these flows are about {} what the ports should carry: were they {}? Write the unit behind "
                    "the last, {} or {}",
                    {us ? "gpm" : "L/min", us ? "four times" : "a quarter of", us ? "L/min" : "gpm",
                     us ? "L/min" : "gpm", us ? "gpm" : "L/min"}};
}

}  // namespace slabwright
