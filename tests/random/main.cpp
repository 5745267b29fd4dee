// random_designs FIRST COUNT [--log FILE]   runs designs by their numbers; with a log it goes on where that ends
// random_designs FIRST COUNT --spread       how their inputs are spread, nothing computed
// random_designs NUMBER --show              one design file
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

#include "random/summary.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double least_valid_share = 0.6, least_solved_share = 0.9, least_would_be_done_share = 0.8;

std::string joined(const std::vector<std::string>& all) {
  std::string text;
  for (const std::string& one : all) text += (text.empty() ? "" : "~") + one;
  return text;
}

std::vector<std::string> parted(const std::string& text, char at) {
  std::vector<std::string> all;
  std::string one;
  std::istringstream in(text);
  while (std::getline(in, one, at)) all.push_back(one);
  return all;
}

/// A line of the log, and back: tabs between, tildes within.
std::string line_of(const Outcome& o) {
  std::string tried;
  for (const Tried& one : o.tried)
    tried += (tried.empty() ? "" : "~") + one.code + "|" + (one.solved ? "1" : "0") + "|" + one.told;
  return fmt::format("{}\t{}\t{}\t{}\t{}\t{}\t{}\t{:.17g}\t{}\t{:.4f}\t.", o.number, o.nearly_broken ? 1 : 0, o.ended,
                     joined(o.asked), joined(o.stops), joined(o.faults), tried, o.worst_share, o.worst_of, o.cpu_s);
}

Outcome read_line(const std::string& line) {
  const std::vector<std::string> cell = parted(line, '\t');
  Outcome o;
  if (cell.size() < 11) return o;
  o.number = std::strtoull(cell[0].c_str(), nullptr, 10);
  o.nearly_broken = cell[1] == "1";
  o.ended = cell[2];
  o.asked = parted(cell[3], '~');
  o.stops = parted(cell[4], '~');
  o.faults = parted(cell[5], '~');
  for (const std::string& one : parted(cell[6], '~')) {
    const std::vector<std::string> part = parted(one, '|');
    const std::string told = part.size() > 2 ? part[2] : "";
    o.tried.push_back({part[0], part[1] == "1", told});
  }
  o.worst_share = std::strtod(cell[7].c_str(), nullptr);
  o.worst_of = cell[8];
  o.cpu_s = std::strtod(cell[9].c_str(), nullptr);
  return o;
}

int spread(std::uint64_t first, std::uint64_t count) {
  Spread spread;
  for (std::uint64_t i = first; i < first + count; ++i) {
    const ReadDesign read = read_design(drawn_design(i).text.toml());
    if (read.checked) spread.add(*read.checked.value);
  }
  fmt::print("{}", spread.text());
  return 0;
}

int run_all(std::uint64_t first, std::uint64_t count, const std::string& log) {
  Summary summary;
  std::uint64_t next = first;
  std::string line;
  for (std::ifstream in(log); !log.empty() && std::getline(in, line);) {
    const Outcome known = read_line(line);
    if (known.number < first || known.number >= first + count) continue;
    summary.add(known);
    next = known.number + 1;
  }
  std::ofstream out(log, std::ios::app);
  for (; next < first + count; ++next) {
    const Outcome outcome = run(drawn_design(next));
    summary.add(outcome);
    if (!log.empty()) out << line_of(outcome) << std::endl;
  }
  fmt::print("{}", summary.text());
  return summary.faults() == 0 && summary.valid_share() >= least_valid_share &&
                 summary.solved_share() >= least_solved_share &&
                 summary.would_be_done_share() >= least_would_be_done_share
             ? 0
             : 1;
}

}  // namespace

int main(int count, char* words[]) {
  const std::vector<std::string> word(words + 1, words + count);
  if (word.size() < 2) return 64;
  const std::uint64_t first = std::strtoull(word[0].c_str(), nullptr, 10);
  if (word[1] == "--show") {
    fmt::print("{}", drawn_design(first).text.toml());
    return 0;
  }
  const std::uint64_t designs = std::strtoull(word[1].c_str(), nullptr, 10);
  if (word.size() > 2 && word[2] == "--spread") return spread(first, designs);
  return run_all(first, designs, word.size() > 3 && word[2] == "--log" ? word[3] : "");
}
