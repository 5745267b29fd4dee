#include "hydraulics/closing.hpp"

#include <algorithm>
#include <boost/pending/disjoint_sets.hpp>
#include <numeric>

namespace slabwright {
namespace {

// Open branches, those that resist least first.
std::vector<std::size_t> easiest_first(const Task& task) {
  std::vector<std::size_t> branches;
  for (std::size_t k = 0; k < task.open.size(); ++k) {
    if (task.open[k]) branches.push_back(k);
  }
  const auto slope = [&](std::size_t k) { return task.laws.motion(k).loss.slope_Pa_s_per_m3; };
  std::stable_sort(branches.begin(), branches.end(), [&](std::size_t a, std::size_t b) { return slope(a) < slope(b); });
  return branches;
}

// A tree as each node sees it: how many of its branches it has, and their numbers in one, which is the number itself
// where only one is left. All held nodes are one node, the last.
class LeastTree {
 public:
  explicit LeastTree(const Task& task) : task_(task), sees_(task.nodes.size() + 1) {
    const std::size_t nodes = sees_.size();
    std::vector<std::size_t> rank(nodes, 0), parent(nodes);
    std::iota(parent.begin(), parent.end(), std::size_t{0});
    boost::disjoint_sets<std::size_t*, std::size_t*> parts(rank.data(), parent.data());
    for (const std::size_t k : easiest_first(task)) {
      const std::size_t from = node(task.ends[k].from), to = node(task.ends[k].to);
      if (parts.find_set(from) == parts.find_set(to)) continue;
      parts.union_set(from, to);
      for (const std::size_t end : {from, to}) {
        ++sees_[end].branches;
        sees_[end].numbers ^= k;
      }
    }
  }

  /// Hands on what each node has too much, from the ends of the tree inwards.
  std::vector<double> drain(std::vector<double> lost) {
    std::vector<double> change(task_.ends.size(), 0.0);
    lost.push_back(0.0);
    for (std::size_t start = 0; start + 1 < sees_.size(); ++start) {
      for (std::size_t end = start; end + 1 < sees_.size() && sees_[end].branches == 1;) end = drop(end, lost, change);
    }
    return change;
  }

 private:
  struct Sees {
    std::size_t branches = 0, numbers = 0;
  };
  std::size_t node(std::size_t i) const { return task_.held[i] ? sees_.size() - 1 : i; }

  // Takes the end of the tree off; the node it hung on.
  std::size_t drop(std::size_t end, std::vector<double>& lost, std::vector<double>& change) {
    const std::size_t k = sees_[end].numbers, from = node(task_.ends[k].from), to = node(task_.ends[k].to);
    const std::size_t next = from == end ? to : from;
    change[k] = from == end ? -lost[end] : lost[end];
    lost[next] += lost[end];
    sees_[end] = {};
    --sees_[next].branches;
    sees_[next].numbers ^= k;
    return next;
  }

  const Task& task_;
  std::vector<Sees> sees_;
};

}  // namespace

std::vector<double> lost_at_nodes(const Task& task) {
  std::vector<double> lost(task.nodes.size());
  for (std::size_t i = 0; i < lost.size(); ++i) lost[i] = task.nodes[i].demand_m3_per_s;
  for (std::size_t k = 0; k < task.laws.size(); ++k) {
    lost[task.ends[k].from] += task.laws.motion(k).flow;
    lost[task.ends[k].to] -= task.laws.motion(k).flow;
  }
  return lost;
}

std::vector<double> closing_changes(const Task& task) { return LeastTree(task).drain(lost_at_nodes(task)); }

}  // namespace slabwright
