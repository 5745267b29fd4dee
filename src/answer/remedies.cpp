// Remedies: one key and one value for each solve that stopped, tried on the line of stages before it is stated.
#include <algorithm>
#include <set>

#include "slabwright/units_exact.hpp"

#include "answer/pass.hpp"
#include "answer/remedy_tries.hpp"

namespace slabwright {
namespace {

/// Bound the time; the likeliest come first.
constexpr int most_tried = 60, most_tried_in_all = 90;
/// Squares of a spacing that tube may be laid in anew for it, floors one after the other: a few seconds.
constexpr double most_squares = 15000.0;

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

double most_head_m(const Design& design) {
  double head_m = 0.0;
  for (const PumpCurvePoint& point : design.pump.points) head_m = std::max(head_m, point.head_m);
  return head_m;
}

/// A figure before and after a try, and between what it may move. Further it may go on paper, unless that takes away
/// what keeps people and pipes well or is no such thing.
struct Moved {
  double from, to, least, most;
  bool on_paper = false;
};

enum class Sense { would_be_done, on_paper, none };

/// Whether somebody could buy or would do it. Bounds are practice; what the file has beyond them may stay.
Sense sense_of(const Answer& answer, const Design& then) {
  constexpr double any = 1e300;
  const Design& now = answer.file.design;
  const Building &was = now.building, &becomes = then.building;
  const double loss_W = answer.envelope ? answer.envelope->loss_W : was.heat_loss_W.value_or(0.0);
  std::vector<Moved> moved{
      {most_head_m(now), most_head_m(then), 0.0, 14.0, true},
      {now.pressure.relief_Pa, then.pressure.relief_Pa, 0.0, 3.1e5},
      {now.boiler.hottest_degC, then.boiler.hottest_degC, 0.0, 82.5},
      {static_cast<double>(now.valve.turns), static_cast<double>(then.valve.turns), 0.0, 10.0},
      {now.valve.coefficient_kv, then.valve.coefficient_kv, 0.2, any},
      {was.air_changes_per_s, becomes.air_changes_per_s, 0.25 / hour_s, any},
      {was.wall_insulation.resistance_m2K_per_W, becomes.wall_insulation.resistance_m2K_per_W, 0.0, 8.0, true},
      {was.roof_insulation.resistance_m2K_per_W, becomes.roof_insulation.resistance_m2K_per_W, 0.0, 12.0, true},
      // Half the loss of a whole building is advice, a tenth of it is arithmetic.
      {loss_W, becomes.heat_loss_W.value_or(loss_W), 0.5 * loss_W, any, true}};
  for (std::size_t i = 0; i < now.room.size() && i < then.room.size(); ++i)
    moved.push_back({indoor_of(now, now.room[i]), indoor_of(then, then.room[i]), 5.0, any});
  // A maker's table times something is nobody's valve.
  const bool made_up = !now.valve.points.empty() && then.valve.points != now.valve.points;
  Sense sense = made_up ? Sense::on_paper : Sense::would_be_done;
  for (const Moved& one : moved) {
    if (one.to >= std::min(one.from, one.least) && one.to <= std::max(one.from, one.most)) continue;
    if (!one.on_paper) return Sense::none;
    sense = Sense::on_paper;
  }
  return sense;
}

/// Whether the shop fails otherwise than it did. Where no water ran yet, what comes after could not be said before; a
/// frost search that found no setting had not come to what cannot be called.
bool fails_anew(const Answer& before, const Answer& after) {
  const bool searched = any_code(before.said, "freeze.no-setting");
  return before.point && std::any_of(after.said.begin(), after.said.end(), [&](const Diagnostic& said) {
           const bool further = searched && said.code == "freeze.cannot-be-called";
           return said.severity == Severity::failure && !is_said(before, said) && !further;
         });
}

/// On all stops of an answer.
struct Spent {
  int tried = 0;
  double squares = 0.0;
};

/// The search for what ends a stop: what a shop would do, then on paper.
class RemedySearch {
 public:
  RemedySearch(const Answer& answer, const Diagnostic& said, Passing& passing, Spent& spent)
      : answer_(answer),
        said_(said),
        passing_(passing),
        written_(write_design(answer.file)),
        tries_(remedy_tries(answer, said)),
        spent_(spent) {}

  /// Whether one was found; it then stands in `remedy`.
  bool find(Sense sense, Remedy& remedy) {
    for (const RemedyTry& one : tries_) {
      for (const std::string& text : one.texts) {
        const auto file = with_key(answer_.file, one.path, text);
        if (!file || sense_of(answer_, file->design) != sense || !is_read(written_, one.path, text)) continue;
        if (!can_be_laid(file->design)) continue;
        if (++tried_ > most_tried || ++spent_.tried > most_tried_in_all) return false;
        std::vector<std::string>& paths = remedy.tried;
        if (std::find(paths.begin(), paths.end(), one.path) == paths.end()) paths.push_back(one.path);
        if (!ends(*file)) continue;
        remedy.path = one.path;
        remedy.text = text;
        remedy.on_paper = sense == Sense::on_paper;
        return true;
      }
    }
    return false;
  }

 private:
  /// Whether what is left to be laid is enough for it.
  bool can_be_laid(const Design& design) {
    const auto task = passing_.draws ? layout_task(design) : std::nullopt;
    if (!task || passing_.laid.knows(*task)) return true;
    const double squares = signed_area_m2(task->outline) / (task->spacing_m * task->spacing_m);
    if (spent_.squares + squares > most_squares) return false;
    spent_.squares += squares;
    return true;
  }

  bool ends(const DesignFile& file) {
    const Answer after = said_of(file, said_.code, passing_);
    return !is_said(after, said_) && !fails_anew(answer_, after);
  }

  const Answer& answer_;
  const Diagnostic& said_;
  Passing& passing_;
  std::string written_;
  std::vector<RemedyTry> tries_;
  int tried_ = 0;
  Spent& spent_;
};

Remedy remedy_for(const Answer& answer, const Diagnostic& said, Passing& passing, Spent& spent) {
  Remedy remedy{said.code, said.about, "", "", {}};
  RemedySearch search(answer, said, passing, spent);
  if (!search.find(Sense::would_be_done, remedy)) search.find(Sense::on_paper, remedy);
  return remedy;
}

}  // namespace

void add_remedies(Answer& answer, Passing& passing) {
  const bool runs_winter = passing.runs_winter;
  const MeterSheet* meters = passing.meters;
  passing.runs_winter = false;
  passing.meters = nullptr;
  std::set<std::string> codes;
  Spent spent;
  for (const Diagnostic& said : answer.verdict.reasons) {
    if (!is_stop(said.code) || !codes.insert(said.code).second) continue;
    Remedy remedy = remedy_for(answer, said, passing, spent);
    if (!remedy.tried.empty()) answer.remedy.push_back(std::move(remedy));
  }
  passing.runs_winter = runs_winter;
  passing.meters = meters;
}

}  // namespace slabwright
