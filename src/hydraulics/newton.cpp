// The global gradient method of Todini and Pilati (1988, in: Computer Applications in Water Supply, vol. 1).
//
// Every branch is replaced by its tangent, p_from - p_to = loss + slope (Q_new - Q). That makes it a plain resistance
// with a source; the balance of the nodes then is a linear system in the pressures alone, from which the new flows
// follow. Because the balances are linear, one full step fulfils them, and every later step, long or short, keeps them:
// what the rounds after the first work on is the heads.
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

namespace slabwright {
namespace {

using Vector = std::vector<double>;

// Below this share of its usual flow a branch stands nearly still, and its tangent says nothing about how it will
// resist when it moves (a fitting at rest resists nothing): the first round takes the chord instead.
constexpr double still_share = 0.01;

// No slope is taken to be less than this share of the chord. It only damps: the losses stay exact.
constexpr double least_slope_share = 1e-6;

// A cut step ends where no more than this share of the first pull is left: nearer is not worth the evaluations.
constexpr double settled_share = 0.1;
constexpr int most_probes = 60;  // of a bisection down to rounding

/// A branch in the course of a round: where it is, where the round began, and what it moves by in a full step.
struct Moving {
  double flow = 0.0, start = 0.0, change = 0.0;
  double conductance = 0.0;
  Loss loss;
};

// What a step leads to. A pull is the slope of the content along the step with its sign turned, times the full step:
// above zero while the step still leads downhill.
struct Ending {
  double pull_at_start = 0.0, pull = 0.0;
  Worst head_Pa;
};

class Run {
 public:
  Run(NodeEquations& equations, const Task& task, const Vector& flow)
      : equations_(equations), task_(task), branches_(flow.size()) {
    equations_.give(task.nodes);
    for (std::size_t k = 0; k < flow.size(); ++k) {
      branches_[k].flow = flow[k];
      if (task.open[k]) branches_[k].loss = task_.laws.loss(k, flow[k]);
    }
  }

  /// One round, which ends with the worst head; nothing where the pressures left the numbers.
  std::optional<Worst> advance(bool first_round) {
    linearise(first_round);
    if (!equations_.solve()) return {};
    Ending end = full_step();
    // The first step is never cut: it is the one that brings the flows into balance.
    if (!first_round && end.pull < -end.pull_at_start) end = cut_step(end.pull_at_start);
    if (!std::isfinite(end.pull)) return {};
    return end.head_Pa;
  }

  Worst worst_imbalance() const {
    Vector lost(task_.nodes.size());
    for (std::size_t i = 0; i < lost.size(); ++i) lost[i] = task_.nodes[i].demand_m3_per_s;
    for (std::size_t k = 0; k < branches_.size(); ++k) {
      lost[task_.ends[k].from] += branches_[k].flow;
      lost[task_.ends[k].to] -= branches_[k].flow;
    }
    Worst worst;
    for (std::size_t i = 0; i < lost.size(); ++i) {
      if (!task_.nodes[i].held && std::abs(lost[i]) > worst.amount) worst = {std::abs(lost[i]), i};
    }
    return worst;
  }

  Vector flow() const {
    Vector flow;
    flow.reserve(branches_.size());
    for (const Moving& branch : branches_) flow.push_back(branch.flow);
    return flow;
  }

 private:
  double tangent(std::size_t k, bool first_round) const {
    const double chord = task_.laws.chord(k);
    const bool still = first_round && std::abs(branches_[k].flow) < still_share * task_.laws.usual_flow(k);
    return std::max(branches_[k].loss.slope_Pa_s_per_m3, still ? chord : least_slope_share * chord);
  }

  void linearise(bool first_round) {
    equations_.begin();
    for (std::size_t k = 0; k < branches_.size(); ++k) {
      Moving& branch = branches_[k];
      if (!task_.open[k]) continue;
      branch.conductance = 1.0 / tangent(k, first_round);
      equations_.add(k, branch.conductance, branch.flow - branch.conductance * branch.loss.pressure_Pa);
    }
  }

  // What the pressures at its ends leave over for a branch beyond its loss.
  double drive(std::size_t k) const { return equations_.drop(k) - branches_[k].loss.pressure_Pa; }

  // Where the straight lines lead.
  Ending full_step() {
    for (std::size_t k = 0; k < branches_.size(); ++k) {
      branches_[k].start = branches_[k].flow;
      branches_[k].change = task_.open[k] ? branches_[k].conductance * drive(k) : 0.0;
    }
    return step(1.0);
  }

  Ending step(double share) {
    Ending end;
    for (std::size_t k = 0; k < branches_.size(); ++k) {
      Moving& branch = branches_[k];
      if (!task_.open[k]) continue;
      branch.flow = branch.start + share * branch.change;
      branch.loss = task_.laws.loss(k, branch.flow);
      const double left = drive(k);
      // A full step began with change / conductance to go.
      end.pull_at_start += branch.change * branch.change / branch.conductance;
      end.pull += left * branch.change;
      if (std::abs(left) > end.head_Pa.amount) end.head_Pa = {std::abs(left), k};
    }
    return end;
  }

  // To where the content is least along the step.
  Ending cut_step(double pull_at_start) {
    const auto pull_at = [&](double share) { return step(share).pull; };
    const RootOptions near_enough{0.0, settled_share * pull_at_start, most_probes};
    return step(root_in_bracket(pull_at, 0.0, 1.0, near_enough).x);
  }

  NodeEquations& equations_;
  const Task& task_;
  std::vector<Moving> branches_;
};

}  // namespace

Flows find_flows(NodeEquations& equations, const Task& task, const Vector& flow, const NetworkOptions& options) {
  Run run(equations, task, flow);
  Flows found;
  while (found.rounds < options.most_rounds && found.stop == Stop::rounds_spent) {
    ++found.rounds;
    const std::optional<Worst> head = run.advance(found.rounds == 1);
    if (!head) {
      found.stop = Stop::not_finite;
      break;
    }
    found.head_Pa = *head;
    if (found.head_Pa.amount > options.head_Pa) continue;
    if (run.worst_imbalance().amount <= options.imbalance_m3_per_s) found.stop = Stop::converged;
  }
  found.imbalance_m3_per_s = run.worst_imbalance();
  found.flow_m3_per_s = run.flow();
  found.pressure_Pa.resize(task.nodes.size());
  for (std::size_t i = 0; i < task.nodes.size(); ++i) found.pressure_Pa[i] = equations.pressure(i);
  return found;
}

}  // namespace slabwright
