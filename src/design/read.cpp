// Text and options to a settled design, or every problem at once.
#include <fmt/format.h>

#include <algorithm>

#include "design/draft.hpp"
#include "design/split.hpp"

namespace slabwright {
namespace {

void add_form_problems(Draft& draft, const std::vector<FormProblem>& problems) {
  for (const FormProblem& problem : problems) say(draft, "file.form", {}, problem.spot, problem.sentence);
}

/// The units that were written, wherever they stand: they decide what sentences name first.
std::optional<System> written_units(const FileStatements& statements, const std::vector<Override>& overrides) {
  std::optional<System> found;
  const auto take = [&found](std::string_view text) {
    if (text == "US" || text == "us") found = System::us;
    if (text == "SI" || text == "si") found = System::si;
  };
  for (const Statement& statement : statements.statement) {
    const auto* entry = std::get_if<FileEntry>(&statement);
    if (entry && entry->word == "units" && !found) take(entry->value.text);
  }
  for (const Override& option : overrides) {
    if (option.path == "units") take(option.text);
  }
  return found;
}

/// Options before the file, then by line and column.
void sort_by_place(Draft& draft) {
  const auto place = [&draft](const Diagnostic& d) {
    const std::string row = d.about.substr(0, d.about.find('.'));
    auto found = draft.spots.find(d.about);
    if (found == draft.spots.end()) found = draft.spots.find(row);
    return found == draft.spots.end() ? std::pair(0, 0) : std::pair(found->second.line, found->second.column);
  };
  std::stable_sort(draft.said.begin(), draft.said.end(),
                   [&](const Diagnostic& a, const Diagnostic& b) { return place(a) < place(b); });
}

bool says_nothing(std::string_view text) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = trimmed(text.substr(0, end));
    if (!line.empty() && line.front() != '#') return false;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return true;
}

ReadDesign finished(Draft& draft, std::vector<Assumption> assumed) {
  sort_by_place(draft);
  ReadDesign read;
  read.units = draft.design.units;
  read.spots = draft.spots;
  if (!any(draft.said, Severity::problem)) {
    read.checked.value =
        DesignFile{std::move(draft.design), std::move(assumed), std::move(draft.given), {}, draft.spots};
  }
  read.checked.said = std::move(draft.said);
  return read;
}

}  // namespace

ReadDesign read_design(std::string_view text, const std::vector<Override>& overrides) {
  Draft draft;
  const Decoded decoded = decode(text);
  add_form_problems(draft, decoded.problem);
  if (!decoded.readable) return finished(draft, {});
  if (overrides.empty() && says_nothing(decoded.text)) {
    say(draft, "file.empty", {}, {1, 1, {}},
        "the file is empty. A first line or two: [slab], and below it size = \"36 ft x 30 ft\".");
    return finished(draft, {});
  }
  const FileStatements statements = cut(decoded.text);
  add_form_problems(draft, statements.problem);
  const auto written = written_units(statements, overrides);
  draft.units = written ? *written : typed_units(statements, overrides).value_or(System::us);
  draft.design.units = draft.units;
  fill(draft, statements);
  for (const Override& option : overrides) apply(draft, option);
  std::vector<Assumption> assumed = settle(draft.design, draft.given);
  judge(draft);
  return finished(draft, std::move(assumed));
}

}  // namespace slabwright
