// What `drill` asks: a hole in words, and places where tube was found.
#include <fmt/format.h>

#include <sstream>

#include "asking/parts.hpp"

namespace slabwright {
namespace {

constexpr double thickest_m = 0.5, deepest_m = 2.0, farthest_m = 5.0;

/// A length above zero, or a sentence that says what to write.
std::string read_length(const std::string& option, const std::string& text, double most_m,
                        std::optional<double>& into) {
  if (text.empty()) return {};
  const Reading reading = read_quantity(text, Dimension::length);
  const bool us = most_m < 1.0;
  if (reading.fault != Fault::none)
    return fmt::format("{} takes a length: {} \"{}\"; not \"{}\".", option, option, us ? "1/2 in" : "3 in",
                       excerpt(text));
  if (reading.si <= 0.0 || reading.si > most_m)
    return fmt::format("{} \"{}\": a length above zero and up to {} m.", option, excerpt(text), most_m);
  into = reading.si;
  return {};
}

/// One line of places: where tube was found, and behind a semicolon where that spot is drawn.
std::string read_found(const std::string& line, FoundEntry& entry) {
  if (line.size() > 2 * longest_value) return fmt::format("\"{}\" is too long for a place.", excerpt(line));
  const std::size_t semicolon = line.find(';');
  if (std::string problem = read_words(line.substr(0, semicolon), entry.place); !problem.empty()) return problem;
  if (semicolon == std::string::npos) return {};
  PlanPlace drawn;
  std::string problem = read_words(line.substr(semicolon + 1), drawn);
  entry.drawn = drawn;
  return problem;
}

bool says_nothing(const std::string& line) {
  const std::size_t first = line.find_first_not_of(" \t\r");
  return first == std::string::npos || line[first] == '#';
}

std::string read_found_file(const FileGot& file, std::vector<FoundEntry>& found) {
  constexpr std::size_t most = 200;
  if (!file.problem.empty()) return file.problem;
  std::istringstream lines(file.text);
  int number = 0;
  for (std::string line; std::getline(lines, line);) {
    ++number;
    if (says_nothing(line)) continue;
    FoundEntry entry;
    if (const std::string problem = read_found(line, entry); !problem.empty())
      return fmt::format("{}:{}: {}", file.name, number, problem);
    found.push_back(std::move(entry));
    if (found.size() > most)
      return fmt::format("{}:{}: at most {} places where tube was found.", file.name, number, most);
  }
  if (found.empty())
    return fmt::format("{}: no place where tube was found; write one on a line, as --at takes it.", file.name);
  return {};
}

}  // namespace

asking::AskedHole asking::asked_hole(const Asked& asked, const GetFile& get) {
  AskedHole hole;
  if (const std::string& at = own_text(asked, "--at"); !at.empty()) {
    if (at.size() > longest_value) {
      hole.problem = fmt::format("--at \"{}\" is too long for a place.", excerpt(at));
      return hole;
    }
    PlanPlace place;
    hole.problem = read_words(at, place);
    if (!hole.problem.empty()) return hole;
    hole.asked.at = place;
  }
  struct Length {
    const char* option;
    double most_m;
    std::optional<double>& into;
  };
  for (const Length& one :
       {Length{"--diameter", thickest_m, hole.asked.diameter_m}, Length{"--depth", deepest_m, hole.asked.depth_m},
        Length{"--tolerance", thickest_m, hole.asked.tolerance_m},
        Length{"--may-move", farthest_m, hole.asked.may_move_m}}) {
    hole.problem = read_length(one.option, own_text(asked, one.option), one.most_m, one.into);
    if (!hole.problem.empty()) return hole;
  }
  if (const std::string& found = own_text(asked, "--found"); !found.empty())
    hole.problem = read_found_file(get({FileWanted::Kind::found, found, false}), hole.asked.found);
  return hole;
}

}  // namespace slabwright
