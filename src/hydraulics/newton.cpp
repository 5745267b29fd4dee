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

struct State {
  Vector flow;
  std::vector<Loss> loss;  ///< at that flow
};

State at(const Task& task, Vector flow) {
  std::vector<Loss> loss(flow.size());
  for (std::size_t k = 0; k < flow.size(); ++k) {
    if (task.open[k]) loss[k] = task.laws.loss(k, flow[k]);
  }
  return {std::move(flow), std::move(loss)};
}

Vector conductances(const Task& task, const State& state, bool first_round) {
  Vector conductance(state.flow.size(), 0.0);
  for (std::size_t k = 0; k < conductance.size(); ++k) {
    if (!task.open[k]) continue;
    const double chord = task.laws.chord(k);
    const bool still = std::abs(state.flow[k]) < still_share * task.laws.usual_flow(k);
    const double least = first_round && still ? chord : least_slope_share * chord;
    conductance[k] = 1.0 / std::max(state.loss[k].slope_Pa_s_per_m3, least);
  }
  return conductance;
}

// Net flow into each node if all pressures were zero, and the pressures of the held nodes.
Vector right_side(const Task& task, const State& state, const Vector& conductance) {
  Vector right(task.held.size(), 0.0);
  for (std::size_t k = 0; k < conductance.size(); ++k) {
    if (!task.open[k]) continue;
    const double flow = state.flow[k] - conductance[k] * state.loss[k].pressure_Pa;
    right[task.ends[k].from] -= flow;
    right[task.ends[k].to] += flow;
  }
  for (std::size_t i = 0; i < right.size(); ++i) {
    right[i] = task.held[i] ? task.held_pressure_Pa[i] : right[i] - task.demand_m3_per_s[i];
  }
  return right;
}

// What the pressures at its ends leave over for a branch beyond its loss.
double drive(const Task& task, const State& state, const Vector& pressure, std::size_t k) {
  return pressure[task.ends[k].from] - pressure[task.ends[k].to] - state.loss[k].pressure_Pa;
}

Vector step(const Task& task, const State& state, const Vector& conductance, const Vector& pressure) {
  Vector change(conductance.size(), 0.0);
  for (std::size_t k = 0; k < change.size(); ++k) {
    if (task.open[k]) change[k] = conductance[k] * drive(task, state, pressure, k);
  }
  return change;
}

// The slope of the content along a step, with its sign turned: above zero while the step still leads downhill.
double pull(const Task& task, const State& state, const Vector& pressure, const Vector& change) {
  double sum = 0.0;
  for (std::size_t k = 0; k < change.size(); ++k) {
    if (task.open[k]) sum += drive(task, state, pressure, k) * change[k];
  }
  return sum;
}

State moved(const Task& task, const State& from, const Vector& change, double share) {
  Vector flow = from.flow;
  for (std::size_t k = 0; k < flow.size(); ++k) flow[k] += share * change[k];
  return at(task, std::move(flow));
}

State careful_step(const Task& task, const State& from, const Vector& pressure, const Vector& change) {
  const double at_start = pull(task, from, pressure, change);
  State to = moved(task, from, change, 1.0);
  if (pull(task, to, pressure, change) >= -at_start) return to;
  const auto pull_at = [&](double share) {
    return share > 0.0 ? pull(task, moved(task, from, change, share), pressure, change) : at_start;
  };
  const Root lowest = root_in_bracket(pull_at, 0.0, 1.0, {0.0, settled_share * at_start, 60});
  return moved(task, from, change, lowest.x);
}

bool all_finite(const Vector& values) {
  return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

Worst worst_imbalance(const Task& task, const Vector& flow) {
  Vector balance = task.demand_m3_per_s;
  for (std::size_t k = 0; k < flow.size(); ++k) {
    balance[task.ends[k].from] += flow[k];
    balance[task.ends[k].to] -= flow[k];
  }
  Worst worst;
  for (std::size_t i = 0; i < balance.size(); ++i) {
    if (!task.held[i] && std::abs(balance[i]) > worst.amount) worst = {std::abs(balance[i]), i};
  }
  return worst;
}

Worst worst_head(const Task& task, const State& state, const Vector& pressure) {
  Worst worst;
  for (std::size_t k = 0; k < state.flow.size(); ++k) {
    const double left = task.open[k] ? std::abs(drive(task, state, pressure, k)) : 0.0;
    if (left > worst.amount) worst = {left, k};
  }
  return worst;
}

}  // namespace

Flows find_flows(NodeEquations& equations, const Task& task, Vector flow, const NetworkOptions& options) {
  State state = at(task, std::move(flow));
  Flows found;
  for (int round = 1; round <= options.most_rounds && found.stop == Stop::rounds_spent; ++round) {
    const Vector conductance = conductances(task, state, round == 1);
    Vector pressure = equations.pressures(conductance, task.held, right_side(task, state, conductance));
    found.rounds = round;
    if (pressure.empty() || !all_finite(pressure)) {
      found.stop = Stop::not_finite;
      break;
    }
    found.pressure_Pa = std::move(pressure);
    const Vector change = step(task, state, conductance, found.pressure_Pa);
    // The first step is never cut: it is the one that brings the flows into balance.
    state = round == 1 ? moved(task, state, change, 1.0) : careful_step(task, state, found.pressure_Pa, change);
    found.imbalance_m3_per_s = worst_imbalance(task, state.flow);
    found.head_Pa = worst_head(task, state, found.pressure_Pa);
    const bool balanced = found.imbalance_m3_per_s.amount <= options.imbalance_m3_per_s;
    if (balanced && found.head_Pa.amount <= options.head_Pa) found.stop = Stop::converged;
  }
  found.flow_m3_per_s = std::move(state.flow);
  return found;
}

}  // namespace slabwright
