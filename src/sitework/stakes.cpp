// Lines from two walls, and each loop as a walk along them.
#include <algorithm>
#include <cmath>

#include "sitework/nearest.hpp"
#include "sitework/runs.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace sitework;

constexpr double same_line_m = 0.001;

double rounded_to(double value_m, double step_m) { return std::floor(value_m / step_m + 0.5) * step_m; }

enum class Ends { port, corner, tip, free };

/// How a run ends, by the turn after it.
Ends end_of(const std::vector<Run>& runs, std::size_t i) {
  constexpr double slack_deg = 15.0;
  const Run& run = runs[i];
  if (i + 1 == runs.size()) return Ends::port;
  const RunKind next = runs[i + 1].kind;
  if (next == RunKind::slant || run.kind == RunKind::slant) return Ends::free;
  const double turned = std::abs(run.turn_deg);
  if (next != run.kind && std::abs(turned - 90.0) < slack_deg) return Ends::corner;
  if (next == run.kind && std::abs(turned - 180.0) < slack_deg) return Ends::tip;
  return Ends::free;
}

/// Where along its line the walk leaves a run, at the end or, `before`, at the beginning of the next one.
double tip_of(const Run& run) {
  const bool rising = along(run, run.to) > along(run, run.from);
  return rising ? along(run, run.turn_most) : along(run, run.turn_least);
}

/// One thing that wants a line: tube along it, or the tips of turns.
struct Wanted {
  double at_m = 0.0;
  double from_m = 0.0, to_m = 0.0;
  bool tip = false;
};

class Lines {
 public:
  void want(Wanted one) { wanted_.push_back(one); }

  StakeTable table(const std::string& wall, char letter, double step_m) {
    std::stable_sort(wanted_.begin(), wanted_.end(), [](const Wanted& a, const Wanted& b) { return a.at_m < b.at_m; });
    StakeTable table{wall, {}};
    for (std::size_t i = 0; i < wanted_.size();) {
      std::size_t end = i;
      while (end < wanted_.size() && wanted_[end].at_m - wanted_[i].at_m < same_line_m) ++end;
      const double at_m = rounded_to(0.5 * (wanted_[i].at_m + wanted_[end - 1].at_m), step_m);
      if (table.line.empty() || at_m > table.line.back().at_m + 0.5 * step_m)
        table.line.push_back({{}, at_m, 0.0, HUGE_VAL, -HUGE_VAL, false, false});
      for (; i < end; ++i) join(table.line.back(), wanted_[i]);
    }
    for (std::size_t i = 0; i < table.line.size(); ++i) table.line[i].name = letter + std::to_string(i + 1);
    return table;
  }

 private:
  static void join(StakeLine& line, const Wanted& one) {
    line.off_m = std::max(line.off_m, std::abs(one.at_m - line.at_m));
    line.from_m = std::min(line.from_m, one.from_m);
    line.to_m = std::max(line.to_m, one.to_m);
    line.turns_end = line.turns_end || one.tip;
    line.carries = line.carries || !one.tip;
  }

  std::vector<Wanted> wanted_;
};

/// The line that a place lies on; null where there is none.
const StakeLine* line_at(const StakeTable& table, double at_m) {
  const StakeLine* best = nullptr;
  for (const StakeLine& line : table.line) {
    const double off_m = std::abs(line.at_m - at_m);
    if (off_m <= line.off_m + 1e-9 && (!best || off_m < std::abs(best->at_m - at_m))) best = &line;
  }
  return best;
}

class StakingOut {
 public:
  explicit StakingOut(const StakeTask& task) : task_(task), walls_(task) {
    for (const Path& path : task.loop) runs_.push_back(runs_of(task, walls_, path));
  }

  StakeOut result() {
    Lines first, second;
    for (const std::vector<Run>& runs : runs_) {
      for (std::size_t i = 0; i < runs.size(); ++i) want(runs, i, first, second);
    }
    out_.step_m = task_.step_m;
    out_.first = first.table(task_.first.name, 'A', task_.step_m);
    out_.second = second.table(task_.second.name, 'B', task_.step_m);
    for (const StakeTable* table : {&out_.first, &out_.second})
      for (const StakeLine& line : table->line) out_.off_m = std::max(out_.off_m, line.off_m);
    for (std::size_t loop = 0; loop < runs_.size(); ++loop)
      out_.walk.push_back({task_.name[loop], folded(steps(runs_[loop]))});
    for (std::size_t loop = 0; loop < runs_.size(); ++loop) add_tips(loop);
    return std::move(out_);
  }

 private:
  void add_tips(std::size_t loop) {
    const std::vector<Run>& runs = runs_[loop];
    for (std::size_t i = 0; i < runs.size(); ++i) {
      const Run& run = runs[i];
      if (end_of(runs, i) != Ends::tip) continue;
      const double at = tip_of(run), middle = 0.5 * (across(run, run.turn_least) + across(run, run.turn_most));
      const StakeLine* line = line_at(other(run), at);
      expects(line != nullptr, "stake_out: a turn without its line");
      const Point tip = run.kind == RunKind::first_line ? Point{middle, at} : Point{at, middle};
      const Point ahead = unit(minus(walls_.placed(run.to), walls_.placed(run.from)));
      out_.tip.push_back({loop, line->name, walls_.placed(tip), ahead});
    }
  }

  static void want(const std::vector<Run>& runs, std::size_t i, Lines& first, Lines& second) {
    const Run& run = runs[i];
    if (run.kind == RunKind::slant) return;
    const double at = 0.5 * (across(run, run.from) + across(run, run.to));
    const double a = along(run, run.from), b = along(run, run.to);
    (run.kind == RunKind::first_line ? first : second).want({at, std::min(a, b), std::max(a, b), false});
    if (end_of(runs, i) != Ends::tip) return;
    (run.kind == RunKind::first_line ? second : first)
        .want({tip_of(run), across(run, run.turn_least), across(run, run.turn_most), true});
  }

  const StakeTable& own(const Run& run) const { return run.kind == RunKind::first_line ? out_.first : out_.second; }
  const StakeTable& other(const Run& run) const { return run.kind == RunKind::first_line ? out_.second : out_.first; }

  StakePlace place(const Run& run, double across_m, double along_m) const {
    const double a = rounded_to(across_m, task_.step_m), b = rounded_to(along_m, task_.step_m);
    return run.kind == RunKind::first_line ? StakePlace{a, b} : StakePlace{b, a};
  }

  /// Where a run begins (`at_end` false) or ends along its line: at a port, at the run it meets, or at a turn's tip.
  double mark(const std::vector<Run>& runs, std::size_t i, bool at_end) const {
    const Run& run = runs[i];
    const Point own_end = at_end ? run.to : run.from;
    if (!at_end && i == 0) return along(run, own_end);
    const std::size_t turn = at_end ? i : i - 1;
    switch (end_of(runs, turn)) {
      case Ends::corner: {
        const Run& meets = runs[at_end ? i + 1 : i - 1];
        return 0.5 * (across(meets, meets.from) + across(meets, meets.to));
      }
      case Ends::tip: return tip_of(runs[turn]);
      default: return along(run, own_end);
    }
  }

  StakeStep straight(const std::vector<Run>& runs, std::size_t i) const {
    const Run& run = runs[i];
    const double at = 0.5 * (across(run, run.from) + across(run, run.to));
    const StakeLine* line = line_at(own(run), at);
    expects(line != nullptr, "stake_out: a run without its line");
    StakeStep step;
    step.line = {line->name};
    const double from = mark(runs, i, false), to = mark(runs, i, true);
    const StakeLine *from_line = line_at(other(run), from), *to_line = line_at(other(run), to);
    if (from_line) step.from_line = from_line->name;
    if (to_line) step.to_line = to_line->name;
    step.from = place(run, line->at_m, from_line ? from_line->at_m : from);
    step.to = place(run, line->at_m, to_line ? to_line->at_m : to);
    return step;
  }

  StakeStep slant(const Run& run) const {
    StakeStep step;
    step.from = {rounded_to(run.from.x_m, task_.step_m), rounded_to(run.from.y_m, task_.step_m)};
    step.to = {rounded_to(run.to.x_m, task_.step_m), rounded_to(run.to.y_m, task_.step_m)};
    step.radius_m = run.radius_m;
    return step;
  }

  static StakeTurn turn_after(const std::vector<Run>& runs, std::size_t i) {
    const bool left = runs[i].turn_deg > 0.0;
    switch (end_of(runs, i)) {
      case Ends::port: return StakeTurn::end;
      case Ends::corner: return left ? StakeTurn::left : StakeTurn::right;
      case Ends::tip: return left ? StakeTurn::back_left : StakeTurn::back_right;
      default: return StakeTurn::bears;
    }
  }

  std::vector<StakeStep> steps(const std::vector<Run>& runs) const {
    std::vector<StakeStep> steps;
    for (std::size_t i = 0; i < runs.size(); ++i) {
      steps.push_back(runs[i].kind == RunKind::slant ? slant(runs[i]) : straight(runs, i));
      steps.back().then = turn_after(runs, i);
      steps.back().at_end_m = runs[i].end_m;
    }
    return steps;
  }

  static bool back(StakeTurn turn) { return turn == StakeTurn::back_left || turn == StakeTurn::back_right; }

  /// Whether b goes on with a to and fro: it comes back between the same lines.
  static bool returns(const StakeStep& a, const StakeStep& b) {
    return back(a.then) && !a.to_line.empty() && !a.from_line.empty() && a.line[0][0] == b.line[0][0] &&
           a.to_line == b.from_line && a.from_line == b.to_line;
  }

  static std::vector<StakeStep> folded(std::vector<StakeStep> steps) {
    constexpr std::size_t least = 3;
    std::vector<StakeStep> out;
    for (std::size_t i = 0; i < steps.size();) {
      std::size_t end = i + 1;
      while (end < steps.size() && !steps[end - 1].line.empty() && !steps[end].line.empty() &&
             returns(steps[end - 1], steps[end]))
        ++end;
      if (end - i < least) end = i + 1;
      out.push_back(steps[i]);
      for (std::size_t k = i + 1; k < end; ++k) out.back().line.push_back(steps[k].line[0]);
      out.back().then = steps[end - 1].then;
      out.back().at_end_m = steps[end - 1].at_end_m;
      i = end;
    }
    return out;
  }

  const StakeTask& task_;
  Walls walls_;
  std::vector<std::vector<Run>> runs_;
  StakeOut out_;
};

}  // namespace

StakeOut stake_out(const StakeTask& task) {
  expects(task.step_m > 0.0 && task.least_run_m > 0.0, "stake_out: steps and runs have a length");
  expects(task.name.size() == task.loop.size(), "stake_out: a name for each loop");
  return StakingOut(task).result();
}

}  // namespace slabwright
