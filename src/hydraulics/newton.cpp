// The global gradient method of Todini and Pilati (1988, in: Computer Applications in Water Supply, vol. 1).
//
// Every branch is replaced by its tangent, p_from - p_to = loss + slope (Q_new - Q). That makes it a plain resistance
// with a source; the balance of the nodes then is a linear system in the pressures alone, from which the new flows
// follow. Because the balances are linear, one full step fulfils them, and every later step, long or short, keeps them:
// what the rounds after the first work on is the heads. They keep them to rounding, which is no trifle where a wide
// pipe stands in a strong pump's circuit: at the end nodes are closed (closing.hpp).
//
// Among balanced flows the true ones are those of least content, the sum over the branches of the loss integrated over
// the flow (the heads added up around any loop are its derivative). All losses rise with the flow, so the content is
// convex: there is one solution, and Newton's step leads towards it. It can lead too far where a law has a kink (water
// turning turbulent) or a pump ends. The step is too long when at its end the losses push back harder than they pulled
// at its beginning; then it is cut where the content is least along it.
#include "hydraulics/newton.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "hydraulics/closing.hpp"

namespace slabwright {
namespace {

// Below this share of its usual flow a branch stands nearly still, and its tangent says nothing about how it will
// resist when it moves (a fitting at rest resists nothing): the first round takes the chord instead.
constexpr double still_share = 0.01;

// No slope is taken to be less than this share of the chord. It only damps: the losses stay exact.
constexpr double least_slope_share = 1e-4;

// A cut step ends where no more than this share of the first pull is left: nearer is not worth the evaluations.
constexpr double settled_share = 0.1;
constexpr int most_probes = 60;  // of a bisection down to rounding

// What a step leads to. The pull is the slope of the content along the step with its sign turned, times the full step:
// above zero while the step still leads downhill.
struct Ending {
  double pull = 0.0;
  Worst head_Pa;
};

class Run {
 public:
  Run(NodeEquations& equations, const Task& task) : equations_(equations), task_(task), laws_(task.laws) {
    equations_.give(task.nodes, task.held);
    for (std::size_t k = 0; k < laws_.size(); ++k) {
      if (task_.open[k]) laws_.move_to(k, laws_.motion(k).flow);
    }
  }

  /// One round, which ends with the worst head; nothing where the pressures left the numbers.
  std::optional<Worst> advance(bool first_round) {
    linearise(first_round);
    if (!equations_.solve()) return {};
    const double pull_at_start = aim(first_round);
    Ending end = step(1.0);
    // The first step is never cut: it is the one that brings the flows into balance.
    if (!first_round && end.pull < -pull_at_start) end = cut_step(pull_at_start);
    if (!std::isfinite(end.pull)) return {};
    return end.head_Pa;
  }

  Worst worst_imbalance() const {
    const std::vector<double> lost = lost_at_nodes(task_);
    Worst worst;
    for (std::size_t i = 0; i < lost.size(); ++i) {
      if (!task_.held[i] && std::abs(lost[i]) > worst.amount) worst = {std::abs(lost[i]), i};
    }
    return worst;
  }

  /// Closes the nodes; the worst head after that.
  Worst close() {
    const std::vector<double> change = closing_changes(task_);
    Worst head_Pa;
    for (std::size_t k = 0; k < laws_.size(); ++k) {
      if (!task_.open[k]) continue;
      if (change[k] != 0.0) laws_.move_to(k, laws_.motion(k).flow + change[k]);
      const double left = std::abs(drive(k));
      if (left > head_Pa.amount) head_Pa = {left, k};
    }
    return head_Pa;
  }

 private:
  double conductance(std::size_t k, bool first_round) const {
    const Motion& now = laws_.motion(k);
    const double chord = laws_.chord(k);
    const bool still = first_round && std::abs(now.flow) < still_share * laws_.usual_flow(k);
    return 1.0 / std::max(now.loss.slope_Pa_s_per_m3, still ? chord : least_slope_share * chord);
  }

  // Each branch as its tangent.
  void linearise(bool first_round) {
    equations_.begin();
    for (std::size_t k = 0; k < laws_.size(); ++k) {
      if (!task_.open[k]) continue;
      const Motion& now = laws_.motion(k);
      const double g = conductance(k, first_round);
      equations_.add(k, g, now.flow - g * now.loss.pressure_Pa);
    }
  }

  // What the pressures at its ends leave over for a branch beyond its loss.
  double drive(std::size_t k) const { return equations_.drop(k) - laws_.motion(k).loss.pressure_Pa; }

  // Where the tangents lead, and the pull on the way there.
  double aim(bool first_round) {
    double pull = 0.0;
    for (std::size_t k = 0; k < laws_.size(); ++k) {
      if (!task_.open[k]) continue;
      const double left = drive(k), change = conductance(k, first_round) * left;
      laws_.aim(k, change);
      pull += left * change;
    }
    return pull;
  }

  // On by a share of the full step; back where it is below zero.
  Ending step(double share) {
    Ending end;
    for (std::size_t k = 0; k < laws_.size(); ++k) {
      if (!task_.open[k]) continue;
      const Motion& now = laws_.motion(k);
      laws_.move_to(k, now.flow + share * now.change);
      const double left = drive(k);
      end.pull += left * now.change;
      if (std::abs(left) > end.head_Pa.amount) end.head_Pa = {std::abs(left), k};
    }
    return end;
  }

  // From the end of the full step to where the content is least along it.
  Ending cut_step(double pull_at_start) {
    double share = 1.0;
    const auto go_to = [&](double wanted) {
      const Ending end = step(wanted - share);
      share = wanted;
      return end;
    };
    const RootOptions near_enough{0.0, settled_share * pull_at_start, most_probes};
    return go_to(root_in_bracket([&](double s) { return go_to(s).pull; }, 0.0, 1.0, near_enough).x);
  }

  NodeEquations& equations_;
  const Task& task_;
  BranchLaws& laws_;
};

}  // namespace

Ended find_flows(NodeEquations& equations, const Task& task, const NetworkOptions& options) {
  Run run(equations, task);
  Ended ended;
  while (ended.rounds < options.most_rounds && ended.stop == Stop::rounds_spent) {
    ++ended.rounds;
    const std::optional<Worst> head = run.advance(ended.rounds == 1);
    if (!head) {
      ended.stop = Stop::not_finite;
      break;
    }
    ended.head_Pa = *head;
    if (ended.head_Pa.amount > options.head_Pa) continue;
    if (run.worst_imbalance().amount > options.imbalance_m3_per_s) continue;
    ended.head_Pa = run.close();
    if (ended.head_Pa.amount <= options.head_Pa) ended.stop = Stop::converged;
  }
  ended.imbalance_m3_per_s = run.worst_imbalance();
  return ended;
}

}  // namespace slabwright
