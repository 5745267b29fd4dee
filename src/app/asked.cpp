// What `drill` asks: a hole in words, and places where tube was found.
#include <fmt/format.h>

#include <sstream>

#include "app/files.hpp"
#include "app/request.hpp"

namespace slabwright::app {
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

std::string read_found_file(const std::string& name, std::vector<FoundEntry>& found) {
  constexpr std::size_t most = 200;
  const FileText file = read_file(name);
  if (!file.problem.empty()) return file.problem;
  std::istringstream lines(file.text);
  int number = 0;
  for (std::string line; std::getline(lines, line);) {
    ++number;
    if (says_nothing(line)) continue;
    FoundEntry entry;
    if (const std::string problem = read_found(line, entry); !problem.empty())
      return fmt::format("{}:{}: {}", name, number, problem);
    found.push_back(std::move(entry));
    if (found.size() > most) return fmt::format("{}:{}: at most {} places where tube was found.", name, number, most);
  }
  if (found.empty())
    return fmt::format("{}: no place where tube was found; write one on a line, as --at takes it.", name);
  return {};
}

}  // namespace

AskedHole asked_hole(const Request& request) {
  AskedHole hole;
  if (!request.at.empty()) {
    PlanPlace place;
    hole.problem = read_words(request.at, place);
    if (!hole.problem.empty()) return hole;
    hole.asked.at = place;
  }
  struct Length {
    const char* option;
    const std::string& text;
    double most_m;
    std::optional<double>& into;
  };
  for (const Length& one : {Length{"--diameter", request.diameter, thickest_m, hole.asked.diameter_m},
                            Length{"--depth", request.depth, deepest_m, hole.asked.depth_m},
                            Length{"--tolerance", request.tolerance, thickest_m, hole.asked.tolerance_m},
                            Length{"--may-move", request.may_move, farthest_m, hole.asked.may_move_m}}) {
    hole.problem = read_length(one.option, one.text, one.most_m, one.into);
    if (!hole.problem.empty()) return hole;
  }
  if (!request.found.empty()) hole.problem = read_found_file(request.found, hole.asked.found);
  return hole;
}

}  // namespace slabwright::app
