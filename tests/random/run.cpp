#include "random/run.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ctime>
#include <exception>
#include <set>

#include "slabwright/report.hpp"
#include "slabwright/sheets.hpp"
#include "support/identities.hpp"

namespace slabwright::test {
namespace {

double cpu_s() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

Wishes wishes_of(Question question, bool whole) {
  Wishes wishes;
  wishes.question = question;
  wishes.sensitivities = wishes.bands = whole;
  wishes.remedies = false;
  return wishes;
}

/// An answer that is asked of every so many designs: the larger it is, the fewer.
struct Asked {
  std::string name;
  std::uint64_t every, at;
  Wishes wishes;
};
const std::vector<Asked>& questions() {
  static const std::vector<Asked> all{{"design", 1, 0, wishes_of(Question::design, false)},
                                      {"route", 8, 1, wishes_of(Question::route, false)},
                                      {"balance", 8, 2, wishes_of(Question::balance, false)},
                                      {"cure", 8, 3, wishes_of(Question::cure, false)},
                                      {"drill", 8, 4, wishes_of(Question::drill, false)},
                                      {"freeze", 10, 5, wishes_of(Question::freeze, false)},
                                      {"winter", 12, 6, wishes_of(Question::winter, false)},
                                      {"check, whole", 25, 7, wishes_of(Question::check, true)},
                                      {"sheets", 50, 8, wishes_of(Question::sheets, false)},
                                      {"freeze, whole", 100, 9, wishes_of(Question::freeze, true)},
                                      {"winter, whole", 100, 10, wishes_of(Question::winter, true)}};
  return all;
}

void hold(const std::vector<Identity>& identities, const std::string& asked, Outcome& outcome) {
  for (const Identity& one : identities) {
    const double share = one.off_share();
    if (one.allowed_share == adds_up_share && !(share <= outcome.worst_share)) {
      outcome.worst_share = share;
      outcome.worst_of = one.what;
    }
    if (!(share <= one.allowed_share))
      outcome.faults.push_back(
          fmt::format("{}: {} is {:.17g} and {:.17g}, off by {:.1e}", asked, one.what, one.left, one.right, share));
  }
}

/// Every number of it as text: what is not finite is thrown out there.
void write_down(const Answer& found, bool pages) {
  json_of(found);
  text_of(found, {"drawn.toml", false, ""});
  text_of(found, {"drawn.toml", true, ""});
  tables_of(found);
  if (!pages) return;
  sheets_of(found);
  reader_sheets(found);
}

void take_down(const Answer& found, Outcome& outcome) {
  std::set<std::string> stops;
  for (const Diagnostic& d : found.said)
    if (is_stop(d.code)) stops.insert(d.code);
  outcome.stops.assign(stops.begin(), stops.end());
  static const char* const words[] = {"works", "mend", "fails"};
  outcome.ended = exit_code(found) == 2 ? "lacking" : words[static_cast<int>(found.verdict.kind)];
}

/// Remedies are made for every so many designs.
constexpr std::uint64_t tried_every = 5;

bool is_said(const Answer& found, const Remedy& remedy) {
  return std::any_of(found.said.begin(), found.said.end(),
                     [&](const Diagnostic& d) { return d.code == remedy.code && d.about == remedy.about; });
}

/// The first stop of each kind.
std::vector<Diagnostic> first_stops(const Answer& found) {
  std::vector<Diagnostic> all;
  std::set<std::string> codes;
  for (const Diagnostic& d : found.said)
    if (d.severity >= Severity::warning && is_stop(d.code) && codes.insert(d.code).second) all.push_back(d);
  return all;
}

/// Each stated value is written beside the design's own text, as a person would, and the whole asked again.
void try_remedies(const DesignFile& file, Outcome& outcome) {
  Wishes wishes = wishes_of(Question::design, false);
  wishes.remedies = true;
  const Answer found = answer(file, wishes);
  write_down(found, false);
  const std::string toml = drawn_design(outcome.number).text.toml();
  for (const Diagnostic& stop : first_stops(found)) {
    Tried tried{stop.code, false, "not a word is said"};
    const auto remedy = std::find_if(found.remedy.begin(), found.remedy.end(),
                                     [&](const Remedy& r) { return r.code == stop.code && r.about == stop.about; });
    if (remedy != found.remedy.end() && remedy->path.empty()) tried.told = none_helps;
    if (remedy != found.remedy.end() && !remedy->path.empty()) {
      tried.told = (remedy->on_paper ? on_paper : "") + remedy->path + " = " + remedy->text;
      const ReadDesign again = read_design(toml, {{remedy->path, remedy->text, "--set"}});
      tried.solved =
          again.checked && !is_said(answer(*again.checked.value, wishes_of(Question::design, false)), *remedy);
    }
    outcome.tried.push_back(std::move(tried));
  }
}

void ask(const DesignFile& file, const Asked& asked, Outcome& outcome) {
  try {
    const Answer found = answer(file, asked.wishes);
    outcome.asked.push_back(asked.name);
    write_down(found, asked.wishes.question == Question::sheets);
    hold(identities_of(found), asked.name, outcome);
    if (asked.wishes.question != Question::design) return;
    hold(identities_of_graph(found), asked.name, outcome);
    take_down(found, outcome);
    if (outcome.number % tried_every == 0) try_remedies(file, outcome);
  } catch (const std::exception& fault) {
    outcome.faults.push_back(asked.name + ": " + fault.what());
  }
}

}  // namespace

Outcome run(const DrawnDesign& drawn) {
  const double began_s = cpu_s();
  Outcome outcome;
  outcome.number = drawn.number;
  outcome.nearly_broken = drawn.nearly_broken;
  const std::string toml = drawn.text.toml();
  const ReadDesign read = read_design(toml);
  if (!read.checked) {
    for (const Diagnostic& d : read.checked.said)
      if (d.severity == Severity::problem && outcome.ended.empty()) outcome.ended = d.code;
    if (outcome.ended.empty()) outcome.faults.push_back("refused without a problem");
  } else {
    for (const Asked& asked : questions())
      if (drawn.number % asked.every == asked.at % asked.every) ask(*read.checked.value, asked, outcome);
  }
  outcome.cpu_s = cpu_s() - began_s;
  if (outcome.cpu_s > longest_s) outcome.faults.push_back(fmt::format("took {:.1f} s", outcome.cpu_s));
  return outcome;
}

}  // namespace slabwright::test
