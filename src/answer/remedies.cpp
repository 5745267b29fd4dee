// Remedies: one key and one value for each solve that stopped, tried on the line of stages before it is stated.
#include <algorithm>
#include <set>

#include "answer/pass.hpp"
#include "answer/remedy_tries.hpp"

namespace slabwright {
namespace {

/// A stop that needs more than this has no single way out.
constexpr int most_tried = 60;

bool begins_with(const std::string& text, std::string_view word) { return text.compare(0, word.size(), word) == 0; }

bool is_said(const Answer& answer, const Diagnostic& what) {
  return std::any_of(answer.said.begin(), answer.said.end(),
                     [&](const Diagnostic& d) { return d.code == what.code && d.about == what.about; });
}

/// The part of the line that says such things.
Answer said_of(const DesignFile& file, const std::string& code, Passing& passing) {
  if (begins_with(code, "layout.")) return pass(file, Question::route, passing);
  if (begins_with(code, "freeze.")) return pass(file, Question::freeze, passing, Reach::no_site);
  return pass(file, Question::design, passing, Reach::no_frost_hold);
}

/// Whether the reader takes it, beside all else that the user wrote.
bool is_read(const std::string& written, const std::string& path, const std::string& text) {
  return static_cast<bool>(read_design(written, {{path, text, path}}).checked);
}

Remedy remedy_for(const Answer& answer, const Diagnostic& said, Passing& passing) {
  const std::string written = write_design(answer.file);
  Remedy remedy{said.code, said.about, "", "", {}};
  int tried = 0;
  for (const RemedyTry& one : remedy_tries(answer, said)) {
    for (const std::string& text : one.texts) {
      const auto file = with_key(answer.file, one.path, text);
      if (!file || !is_read(written, one.path, text)) continue;
      if (++tried > most_tried) return remedy;
      std::vector<std::string>& paths = remedy.tried;
      if (std::find(paths.begin(), paths.end(), one.path) == paths.end()) paths.push_back(one.path);
      if (is_said(said_of(*file, said.code, passing), said)) continue;
      remedy.path = one.path;
      remedy.text = text;
      return remedy;
    }
  }
  return remedy;
}

}  // namespace

void add_remedies(Answer& answer, Passing& passing) {
  const bool runs_winter = passing.runs_winter;
  const MeterSheet* meters = passing.meters;
  passing.runs_winter = false;
  passing.meters = nullptr;
  std::set<std::string> codes;
  for (const Diagnostic& said : answer.verdict.reasons) {
    if (is_stop(said.code) && codes.insert(said.code).second)
      answer.remedy.push_back(remedy_for(answer, said, passing));
  }
  passing.runs_winter = runs_winter;
  passing.meters = meters;
}

}  // namespace slabwright
