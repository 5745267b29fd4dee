// Problems as lines of text.
#include <fmt/format.h>

#include <algorithm>

#include "design/statements.hpp"

namespace slabwright {
namespace {

const Spot* spot_of(const ReadDesign& read, const std::string& about) {
  auto found = read.spots.find(about);
  if (found == read.spots.end()) found = read.spots.find(about.substr(0, about.find('.')));
  return found == read.spots.end() ? nullptr : &found->second;
}

/// "my-shop.toml:4:8: ", "--spacing: ", or the file alone where no place is known.
std::string place_of(const PlacedProblem& problem) {
  if (!problem.option.empty()) return problem.option + ": ";
  return problem.line > 0 ? fmt::format("{}:{}:{}: ", problem.file, problem.line, problem.column)
                          : fmt::format("{}: ", problem.file);
}

}  // namespace

std::vector<PlacedProblem> placed_problems(const ReadDesign& read, std::string_view name) {
  std::vector<PlacedProblem> all;
  for (const Diagnostic& said : read.checked.said) {
    if (said.severity != Severity::problem) continue;
    PlacedProblem one{std::string(name), 0, 0, {}, said.code, said.about, say(said, read.units)};
    if (const Spot* spot = spot_of(read, said.about)) {
      one.option = spot->option;
      if (!spot->option.empty()) {
        one.file.clear();
      } else {
        one.line = spot->line;
        one.column = spot->column;
      }
    }
    all.push_back(std::move(one));
  }
  return all;
}

std::string problems_text(const ReadDesign& read, std::string_view name, std::size_t most) {
  std::string text;
  const std::vector<PlacedProblem> all = placed_problems(read, name);
  const std::size_t shown = std::min(most, all.size());
  for (std::size_t i = 0; i < shown; ++i) text += place_of(all[i]) + all[i].sentence + '\n';
  if (all.size() > shown)
    text += fmt::format("... and {}{} more\n", all.size() - shown, all.size() < most_problems ? "" : " or");
  return text + "Nothing was computed, nothing was written.\n";
}

}  // namespace slabwright
