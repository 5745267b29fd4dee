// Turns in steps that a hand can tell, where each rounded by itself leaves a loop outside its band.
#include "balance/turn_search.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright {
namespace {

// The ports that are tried_turns in each round; on a long manifold the worst few decide.
constexpr std::size_t most_tried = 6;
constexpr int most_searches = 24;
// Less is noise of the solver, and two machines might not agree on it.
constexpr double least_gain = 1e-4;

/// How far off a flow is, in halves of its band: 1 at its edge.
double off(const PortSetting& port, double flow_m3_per_s) {
  const double miss = flow_m3_per_s - port.aim_m3_per_s;
  return std::abs(miss) /
         (miss < 0.0 ? port.aim_m3_per_s - port.least_m3_per_s : port.most_m3_per_s - port.aim_m3_per_s);
}

struct TriedTurns {
  std::vector<double> off;
  double cost = 0.0;  ///< squares of all, those outside their band far above the rest
};

TriedTurns tried_turns(const Plant& plant, const Balance& balance, const ValveTurns& turns, double water_degC) {
  const NetworkSolution solved = flows_at(with_settings(plant, turns, balance.pump_speed_share), water_degC);
  constexpr double edge = 0.95, outside = 1000.0;
  TriedTurns all;
  for (std::size_t i = 0; i < balance.port.size(); ++i) {
    const double one = off(balance.port[i], solved.flow_m3_per_s[plant.loop_branch[i].at]);
    const double over = std::max(0.0, one - edge);
    all.off.push_back(one);
    all.cost += one * one + outside * over * over;
  }
  return all;
}

/// Rows of the ports that are off most.
std::vector<std::size_t> worst_of(const std::vector<double>& off) {
  std::vector<std::size_t> rows(off.size());
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i] = i;
  std::stable_sort(rows.begin(), rows.end(), [&](std::size_t a, std::size_t b) { return off[a] > off[b]; });
  rows.resize(std::min(rows.size(), most_tried));
  return rows;
}

}  // namespace

ValveTurns search_turns(const Plant& plant, const Balance& balance, const TurnSteps& steps, double water_degC) {
  ValveTurns best = balance.turns;
  TriedTurns now = tried_turns(plant, balance, best, water_degC);
  const auto outside = [](double one) { return one > 1.0; };
  for (int round = 0; round < most_searches && std::any_of(now.off.begin(), now.off.end(), outside); ++round) {
    ValveTurns next = best;
    TriedTurns found = now;
    for (const std::size_t i : worst_of(now.off)) {
      for (const double step : {-steps.step, steps.step}) {
        ValveTurns turns = best;
        turns[i] = std::clamp(best[i] + step, steps.step, steps.most);
        if (i == balance.hardest || turns[i] == best[i]) continue;
        TriedTurns one = tried_turns(plant, balance, turns, water_degC);
        if (one.cost >= found.cost * (1.0 - least_gain)) continue;
        found = std::move(one);
        next = std::move(turns);
      }
    }
    if (next == best) break;
    best = std::move(next);
    now = std::move(found);
  }
  return best;
}

}  // namespace slabwright
