// Problems as lines of text.
#include <fmt/format.h>

#include "design/statements.hpp"

namespace slabwright {
namespace {

/// "my-shop.toml:4:8: ", "--spacing: ", or the file alone where no place is known.
std::string place_of(const ReadDesign& read, const Diagnostic& problem, std::string_view name) {
  auto found = read.spots.find(problem.about);
  if (found == read.spots.end()) found = read.spots.find(problem.about.substr(0, problem.about.find('.')));
  if (found == read.spots.end()) return fmt::format("{}: ", name);
  const Spot& spot = found->second;
  if (!spot.option.empty()) return fmt::format("{}: ", spot.option);
  return spot.line > 0 ? fmt::format("{}:{}:{}: ", name, spot.line, spot.column) : fmt::format("{}: ", name);
}

}  // namespace

std::string problems_text(const ReadDesign& read, std::string_view name, std::size_t most) {
  std::string text;
  std::size_t shown = 0, all = 0;
  for (const Diagnostic& problem : read.checked.said) {
    if (problem.severity != Severity::problem || ++all > most) continue;
    ++shown;
    text += fmt::format("{}{}\n", place_of(read, problem, name), say(problem, read.units));
  }
  if (all > shown) text += fmt::format("... and {}{} more\n", all - shown, all < most_problems ? "" : " or");
  return text + "Nothing was computed, nothing was written.\n";
}

}  // namespace slabwright
