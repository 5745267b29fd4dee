#include "slabwright/answer.hpp"

#include <algorithm>
#include <string_view>

#include "answer/pass.hpp"

namespace slabwright {
namespace {

/// Whether the question is one about heat, whose ranges and guesses then matter.
bool needs_heat(Question question) {
  return question == Question::check || question == Question::design || question == Question::freeze ||
         question == Question::winter || question == Question::sheets;
}

/// One line for each stage that could not run for want of an entry.
std::vector<std::string> lacking_in(const Answer& answer) {
  const bool si = answer.file.design.units == System::si;
  std::vector<std::string> lines;
  if (answer.wishes.question == Question::cure) {
    // No calendar waits for loops; only its last temperature is then a guess.
    if (!answer.point) lines.emplace_back("for this floor's own supply temperature: give --size and --outdoor");
    return lines;
  }
  if (!answer.loops)
    lines.push_back(std::string("for loops: give --size \"") + (si ? "11 x 9 m" : "36 x 30 ft") + "\", or --lengths");
  if (!answer.envelope && needs_heat(answer.wishes.question)) {
    lines.push_back(std::string("for heat, pump, boiler and frost hold: give --outdoor \"") + (si ? "-25 C" : "-12 F") +
                    "\"");
  }
  return lines;
}

bool begins(const std::string& code, std::string_view word) { return code.compare(0, word.size(), word) == 0; }

/// Whether what was said bears on the question: a boiler that is too small does not spoil a manifold's balance.
bool concerns(Question question, const std::string& code) {
  if (question == Question::balance)
    return begins(code, "balance.") || begins(code, "loop") || begins(code, "manifold.") || begins(code, "readings.");
  if (question == Question::drill) return begins(code, "drill.");
  if (question == Question::cure) return begins(code, "cure.");
  if (question == Question::winter)
    return begins(code, "winter.") || begins(code, "bill.") || begins(code, "freeze.") || begins(code, "weather.");
  if (question == Question::freeze)
    return !begins(code, "balance.") && !begins(code, "plant.") && !begins(code, "loop");
  return true;
}

}  // namespace

Verdict verdict_of(const std::vector<Diagnostic>& said) {
  Verdict verdict;
  for (const Diagnostic& d : said) {
    if (d.severity >= Severity::warning) verdict.reasons.push_back(d);
  }
  std::stable_sort(verdict.reasons.begin(), verdict.reasons.end(),
                   [](const Diagnostic& a, const Diagnostic& b) { return a.severity > b.severity; });
  if (any(said, Severity::failure))
    verdict.kind = VerdictKind::fails;
  else if (any(said, Severity::warning))
    verdict.kind = VerdictKind::mend;
  return verdict;
}

bool answered(const Answer& answer) {
  switch (answer.wishes.question) {
    case Question::check: return true;
    case Question::design: return answer.loops.has_value();
    case Question::route: return answer.loops && answer.loops->drawing;
    case Question::balance: return answer.balance && !any(answer.said, Severity::problem);
    case Question::freeze: return answer.freeze.has_value();
    case Question::winter: return answer.winter.has_value();
    case Question::drill: return answer.drill.has_value();
    case Question::sheets: return answer.loops.has_value();
    case Question::cure: return answer.cure.has_value();
  }
  return false;
}

Answer answer(const DesignFile& file, const Wishes& wishes, const Brought& brought) {
  Passing passing;
  if (brought.weather) passing.weather = &brought.weather->year;
  const bool sheets = wishes.question == Question::sheets;
  passing.sees_floor = sheets || wishes.question == Question::design;
  passing.plots = sheets;
  passing.progress = wishes.progress;
  passing.runs_winter = sheets || wishes.question == Question::winter;
  if (brought.meters && wishes.question == Question::balance) passing.meters = &*brought.meters;
  Answer found = pass(brought.weather ? with_weather(file, *brought.weather) : file, wishes.question, passing);
  passing.sees_floor = false;
  passing.progress = {};
  const std::vector<Diagnostic> weather = weather_said(found.file, brought);
  found.said.insert(found.said.begin(), weather.begin(), weather.end());
  found.wishes = wishes;
  found.lacking = lacking_in(found);
  const bool cold = sheets || wishes.question == Question::freeze;
  // Before a winter that runs with them: what they ask for raises the settings.
  if (cold && wishes.bands) add_bands(found, passing);
  if (sheets || wishes.question == Question::winter) {
    passing.progress = wishes.progress;
    add_winter(found, passing);
    if (wishes.bands) add_pay_back(found, passing.weather);
    if (sheets) add_owner_costs(found, passing.weather);
    passing.progress = {};
  }
  if (cold) add_cold_runs(found, passing);
  passing.plots = false;
  if (wishes.better_place && found.loops && found.loops->drawing)
    found.better = better_places(found.file.design, work_of(wishes.progress, "looking for better places"));
  if (sheets || wishes.question == Question::cure) add_site_days(found, passing.weather);
  if (wishes.question == Question::drill && found.loops) {
    Checked<DrillGuide> guide = drill_at(found.file.design, *found.loops, wishes.drill);
    found.drill = std::move(guide.value);
    found.said.insert(found.said.end(), guide.said.begin(), guide.said.end());
  }
  if (wishes.sensitivities && needs_heat(wishes.question) && wishes.question != Question::winter) {
    add_ranges(found, passing);
    if (cold) add_changes(found, passing.weather);
    if (wishes.question != Question::freeze) add_sensitivities(found, passing.weather);
  }
  if (sheets) found.sums = sums_of(found);
  std::vector<Diagnostic> bearing;
  for (const Diagnostic& d : found.said) {
    // Why there is no drawing is why nobody can say where to drill.
    const bool why = wishes.question == Question::drill && !found.drill && begins(d.code, "layout.");
    if (why || concerns(wishes.question, d.code)) bearing.push_back(d);
  }
  found.verdict = verdict_of(bearing);
  if (wishes.remedies) add_remedies(found, passing);
  return found;
}

int exit_code(const Answer& answer) {
  if (!answered(answer)) return 2;
  return answer.verdict.kind == VerdictKind::fails ? 3 : 0;
}

}  // namespace slabwright
