#include "balance/best_classifier.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace slabwright::test {
namespace {

constexpr std::size_t solved = 9;   ///< sizes at which the plant is solved
constexpr std::size_t between = 6;  ///< sizes summed between two of those

double log_normal(double read, double due, double error) {
  const double z = (read - due) / error;
  return -0.5 * z * z - std::log(error);
}

double mixed(double a, double b, double share) { return std::exp((1.0 - share) * std::log(a) + share * std::log(b)); }

/// Of one state between two solved ones; `meter` is what the faulty loop's meter shows over its flow.
double log_likelihood(const Readings& readings, const True& a, const True& b, double share, const PutFault& fault) {
  double sum = 0.0;
  for (std::size_t i = 0; i < readings.port.size(); ++i) {
    const PortReading& port = readings.port[i];
    const double meter = fault.wrong == Wrong::meter && fault.loop == i ? fault.size : 1.0;
    const double shown = meter * mixed(a.flow_m3_per_s[i], b.flow_m3_per_s[i], share);
    sum += log_normal(*port.flow_m3_per_s, shown, 0.10 * shown);
    const double front_s = mixed(a.front_s[i], b.front_s[i], share);
    if (port.front_s) sum += log_normal(*port.front_s, front_s, 0.06 * front_s);
    const double return_degC = (1.0 - share) * a.return_degC[i] + share * b.return_degC[i];
    if (port.return_degC) sum += log_normal(*port.return_degC, return_degC, 0.5);
  }
  return sum;
}

double log_mean(const std::vector<double>& logs) {
  const double most = *std::max_element(logs.begin(), logs.end());
  double sum = 0.0;
  for (const double l : logs) sum += std::exp(l - most);
  return most + std::log(sum / static_cast<double>(logs.size()));
}

}  // namespace

bool same(const Answered& a, const Answered& b) {
  if (a.told != b.told) return false;
  return a.told == Told::healthy || (a.loop == b.loop && a.other == b.other);
}

Answered right_answer(const PutFault& fault, Kinds kinds) {
  const bool parted = kinds.returns || kinds.fronts;
  Answered right{Told::healthy, fault.loop, fault.other};
  if (fault.wrong == Wrong::longer) right.told = parted ? Told::longer : Told::less;
  if (fault.wrong == Wrong::cut) right.told = parted ? Told::choked : Told::less;
  if (fault.wrong == Wrong::swapped) right.told = Told::swapped;
  if (fault.wrong == Wrong::meter) {
    right.told = Told::meter;
    if (!parted && !kinds.meter_apart) right.told = fault.size < 1.0 ? Told::less : Told::more;
  }
  return right;
}

Answered answer_of(const ReadBack& back, Kinds kinds) {
  struct Weight {
    Answered answer;
    double probability;
  };
  std::vector<Weight> weights;
  const bool parted = kinds.returns || kinds.fronts;
  for (const SuspectGroup& group : back.ranked) {
    for (const Suspect& s : group.member) {
      Answered one{Told::healthy, s.loop, s.other};
      if (s.cause == Cause::longer) one.told = parted ? Told::longer : Told::less;
      if (s.cause == Cause::restricted || s.cause == Cause::stopped) one.told = parted ? Told::choked : Told::less;
      if (s.cause == Cause::shorter) one.told = parted ? Told::shorter : Told::more;
      if (s.cause == Cause::meter) one.told = Told::meter;
      if (s.cause == Cause::swapped) one.told = Told::swapped;
      if (!kinds.meter_apart) {
        if (group.group == CauseGroup::reads_less) one.told = Told::less;
        if (group.group == CauseGroup::reads_more) one.told = Told::more;
      }
      auto found = std::find_if(weights.begin(), weights.end(), [&](const Weight& w) { return same(w.answer, one); });
      if (found == weights.end()) found = weights.insert(weights.end(), {one, 0.0});
      found->probability += s.probability_share;
    }
  }
  if (!kinds.meter_apart || back.healthy) return weights.front().answer;
  const auto most = std::max_element(weights.begin(), weights.end(),
                                     [](const Weight& a, const Weight& b) { return a.probability < b.probability; });
  return most->answer;
}

BestClassifier::BestClassifier(const DrawnManifold& manifold) {
  const std::size_t loops = manifold.healthy.loop.size();
  const double each = 6.0 / 7.0 / static_cast<double>(wrongs - 1);
  const True healthy = true_state(manifold, {});
  const auto add = [&](States states, double before) {
    states_.push_back(std::move(states));
    log_before_.push_back(std::log(before));
  };
  const auto solve = [&](Wrong wrong, std::size_t loop, double least, double most) {
    States states{{wrong, loop, loop, 1.0}, least, most, {}};
    for (std::size_t k = 0; k < solved; ++k) {
      const double size = least + (most - least) * static_cast<double>(k) / static_cast<double>(solved - 1);
      states.at.push_back(true_state(manifold, {wrong, loop, loop, size}));
    }
    return states;
  };
  add({{}, 1.0, 1.0, {healthy}}, 1.0 / 7.0);
  const double per_loop = each / static_cast<double>(loops);
  for (std::size_t i = 0; i < loops; ++i) {
    add(solve(Wrong::longer, i, 1.2, 1.5), per_loop);
    add(solve(Wrong::cut, i, 0.3, 0.7), per_loop);
    const std::vector<True> unmoved(solved, healthy);
    add({{Wrong::meter, i, i, 0.6}, 0.5, 0.7, unmoved}, 0.5 * per_loop);
    add({{Wrong::meter, i, i, 1.4}, 1.3, 1.5, unmoved}, 0.5 * per_loop);
    for (std::size_t j = i + 1; j < loops; ++j) {
      const PutFault fault{Wrong::swapped, i, j, 1.0};
      add({fault, 1.0, 1.0, {true_state(manifold, fault)}}, 2.0 * per_loop / static_cast<double>(loops - 1));
    }
  }
}

double BestClassifier::log_of(const States& states, const Readings& readings) const {
  if (states.at.size() == 1) return log_likelihood(readings, states.at[0], states.at[0], 0.0, states.fault);
  std::vector<double> logs;
  for (std::size_t k = 0; k + 1 < states.at.size(); ++k) {
    for (std::size_t n = 0; n < between; ++n) {
      const double share = (static_cast<double>(n) + 0.5) / static_cast<double>(between);
      const double at = (static_cast<double>(k) + share) / static_cast<double>(states.at.size() - 1);
      PutFault fault = states.fault;
      fault.size = states.least + (states.most - states.least) * at;
      logs.push_back(log_likelihood(readings, states.at[k], states.at[k + 1], share, fault));
    }
  }
  return log_mean(logs);
}

Answered BestClassifier::answer(const Readings& readings, Kinds kinds, double* probability) const {
  std::vector<Answered> answers;
  std::vector<std::vector<double>> logs;
  double most = -1e300;
  for (std::size_t k = 0; k < states_.size(); ++k) {
    const Answered one = right_answer(states_[k].fault, kinds);
    const auto found = std::find_if(answers.begin(), answers.end(), [&](const Answered& a) { return same(a, one); });
    const std::size_t row = static_cast<std::size_t>(found - answers.begin());
    if (found == answers.end()) {
      answers.push_back(one);
      logs.emplace_back();
    }
    logs[row].push_back(log_before_[k] + log_of(states_[k], readings));
    most = std::max(most, logs[row].back());
  }
  std::size_t best = 0;
  double whole = 0.0, of_best = -1.0;
  for (std::size_t row = 0; row < answers.size(); ++row) {
    double sum = 0.0;
    for (const double l : logs[row]) sum += std::exp(l - most);
    whole += sum;
    if (sum <= of_best) continue;
    of_best = sum;
    best = row;
  }
  if (probability) *probability = of_best / whole;
  return answers[best];
}

}  // namespace slabwright::test
