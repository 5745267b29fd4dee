// A one-way branch carries water forwards, or stands with the pressure against it.
#include "hydraulics/one_way.hpp"

#include <algorithm>
#include <limits>

namespace slabwright {
namespace {

constexpr int turns_without_gain = 5;

}  // namespace

std::vector<std::size_t> standing_wrong(const Task& task, const NodeEquations& equations, const NetworkOptions& options,
                                        Stop stop) {
  std::vector<std::size_t> wrong;
  for (std::size_t k = 0; k < task.open.size(); ++k) {
    if (!task.laws.one_way(k) || task.laws.shut(k)) continue;
    const double push = equations.drop(k) - task.laws.loss(k, 0.0).pressure_Pa;
    const bool runs_back = task.open[k] && task.laws.motion(k).flow < -options.imbalance_m3_per_s;
    const bool would_open = !task.open[k] && stop == Stop::converged && push > options.head_Pa;
    if (runs_back || would_open) wrong.push_back(k);
  }
  return wrong;
}

Turns::Turns(const Task& task) : fewest_(std::numeric_limits<std::size_t>::max()), patience_(turns_without_gain) {
  const auto takes = [](const Node& node) { return node.demand_m3_per_s != 0.0; };
  if (!std::any_of(task.nodes.begin(), task.nodes.end(), takes)) return;
  fewest_ = 0;
  patience_ = 0;
}

void Turns::turn(Task& task, const std::vector<std::size_t>& wrong) {
  if (wrong.size() < fewest_) {
    fewest_ = wrong.size();
    patience_ = turns_without_gain;
  } else {
    --patience_;
  }
  const auto last = patience_ > 0 ? wrong.end() : wrong.begin() + 1;
  for (auto k = wrong.begin(); k != last; ++k) {
    task.open[*k] = !task.open[*k];
    task.laws.move_to(*k, 0.0);
  }
}

}  // namespace slabwright
