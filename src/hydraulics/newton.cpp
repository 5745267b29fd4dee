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

// One run of the method. Its vectors are made once: a large network spends its time fetching memory otherwise.
class Run {
 public:
  Run(NodeEquations& equations, const Task& task, Vector flow)
      : equations_(equations), task_(task), flow_(std::move(flow)), loss_(flow_.size()), right_(task.held.size()) {
    conductance_.assign(flow_.size(), 0.0);
    change_.assign(flow_.size(), 0.0);
    lose();
  }

  /// One round; false where the pressures left the numbers.
  bool advance(bool first_round) {
    linearise(first_round);
    if (!equations_.solve(conductance_, task_.held, right_)) return false;
    double pull_at_start = 0.0;
    for (std::size_t k = 0; k < flow_.size(); ++k) {
      change_[k] = conductance_[k] * drive(k);
      pull_at_start += drive(k) * change_[k];
    }
    start_ = flow_;
    step(1.0);
    // The first step is never cut: it is the one that brings the flows into balance.
    if (!first_round && pull() < -pull_at_start) cut_step(pull_at_start);
    return true;
  }

  Worst worst_imbalance() {
    right_ = task_.demand_m3_per_s;
    for (std::size_t k = 0; k < flow_.size(); ++k) {
      right_[task_.ends[k].from] += flow_[k];
      right_[task_.ends[k].to] -= flow_[k];
    }
    Worst worst;
    for (std::size_t i = 0; i < right_.size(); ++i) {
      if (!task_.held[i] && std::abs(right_[i]) > worst.amount) worst = {std::abs(right_[i]), i};
    }
    return worst;
  }

  Worst worst_head() const {
    Worst worst;
    for (std::size_t k = 0; k < flow_.size(); ++k) {
      const double left = task_.open[k] ? std::abs(drive(k)) : 0.0;
      if (left > worst.amount) worst = {left, k};
    }
    return worst;
  }

  const Vector& flow() const { return flow_; }

 private:
  void lose() {
    for (std::size_t k = 0; k < flow_.size(); ++k) {
      if (task_.open[k]) loss_[k] = task_.laws.loss(k, flow_[k]);
    }
  }

  double tangent(std::size_t k, bool first_round) const {
    const double chord = task_.laws.chord(k);
    const bool still = std::abs(flow_[k]) < still_share * task_.laws.usual_flow(k);
    return std::max(loss_[k].slope_Pa_s_per_m3, first_round && still ? chord : least_slope_share * chord);
  }

  // The conductances (a shut branch keeps none, so that it never moves), and on the right the net flow into each node
  // if all pressures were zero.
  void linearise(bool first_round) {
    for (std::size_t i = 0; i < right_.size(); ++i) right_[i] = -task_.demand_m3_per_s[i];
    for (std::size_t k = 0; k < flow_.size(); ++k) {
      if (!task_.open[k]) continue;
      conductance_[k] = 1.0 / tangent(k, first_round);
      const double flow = flow_[k] - conductance_[k] * loss_[k].pressure_Pa;
      right_[task_.ends[k].from] -= flow;
      right_[task_.ends[k].to] += flow;
    }
    for (std::size_t i = 0; i < right_.size(); ++i) {
      if (task_.held[i]) right_[i] = task_.held_pressure_Pa[i];
    }
  }

  // What the pressures at its ends leave over for a branch beyond its loss.
  double drive(std::size_t k) const {
    const auto [from, to] = task_.ends[k];
    return equations_.pressure(from) - equations_.pressure(to) - loss_[k].pressure_Pa;
  }

  // The slope of the content along the step, with its sign turned: above zero while the step still leads downhill.
  double pull() const {
    double sum = 0.0;
    for (std::size_t k = 0; k < flow_.size(); ++k) sum += drive(k) * change_[k];
    return sum;
  }

  void step(double share) {
    for (std::size_t k = 0; k < flow_.size(); ++k) flow_[k] = start_[k] + share * change_[k];
    lose();
  }

  void cut_step(double pull_at_start) {
    const auto pull_at = [&](double share) {
      step(share);
      return pull();
    };
    step(root_in_bracket(pull_at, 0.0, 1.0, {0.0, settled_share * pull_at_start, most_probes}).x);
  }

  NodeEquations& equations_;
  const Task& task_;
  Vector flow_, start_, conductance_, change_;
  std::vector<Loss> loss_;
  Vector right_;
};

}  // namespace

Flows find_flows(NodeEquations& equations, const Task& task, Vector flow, const NetworkOptions& options) {
  Run run(equations, task, std::move(flow));
  Flows found;
  while (found.rounds < options.most_rounds && found.stop == Stop::rounds_spent) {
    ++found.rounds;
    if (!run.advance(found.rounds == 1)) {
      found.stop = Stop::not_finite;
      break;
    }
    found.head_Pa = run.worst_head();
    if (found.head_Pa.amount > options.head_Pa) continue;
    if (run.worst_imbalance().amount <= options.imbalance_m3_per_s) found.stop = Stop::converged;
  }
  found.imbalance_m3_per_s = run.worst_imbalance();
  found.flow_m3_per_s = run.flow();
  found.pressure_Pa.resize(task.held.size());
  for (std::size_t i = 0; i < task.held.size(); ++i) found.pressure_Pa[i] = equations.pressure(i);
  return found;
}

}  // namespace slabwright
