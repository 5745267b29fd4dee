// Series and parallel, until nothing is left that is one or the other.
#include "hydraulics/elimination.hpp"

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>
#include <algorithm>

namespace slabwright {
namespace {

constexpr int none = -1;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// The way out of a node that is about to go: its neighbours and the links to them.
struct Ways {
  int count = 0;
  int node[2] = {none, none};
  int link[2] = {none, none};
};

// The links of a network from which nodes go. A link has two halves, one in the list of each of its nodes; the latest
// comes first, because the link that one step makes is the one that the next step looks for.
class Links {
 public:
  Links(std::size_t nodes, std::size_t branches) : first_(nodes, none), degree_(nodes, 0), gone_(nodes, false) {
    halves_.reserve(2 * branches + nodes);
  }

  /// The link between two nodes, made where there is none.
  int join(int one, int other) {
    const int fewer = degree(one) <= degree(other) ? one : other, more = fewer == one ? other : one;
    for (int half = first(fewer); half != none; half = next(half)) {
      if (halves_[at(half)].far == more) return half / 2;
    }
    add_half(fewer, more);
    add_half(more, fewer);
    return static_cast<int>(count()) - 1;
  }

  /// Takes away a node with two neighbours at most.
  Ways remove(int node) {
    Ways ways;
    for (int half = first(node); half != none; half = next(half)) {
      ways.node[ways.count] = halves_[at(half)].far;
      ways.link[ways.count++] = half / 2;
      --degree_[at(halves_[at(half)].far)];
    }
    gone_[at(node)] = true;
    return ways;
  }

  int degree(int node) const { return degree_[at(node)]; }
  bool gone(int node) const { return gone_[at(node)]; }
  std::size_t count() const { return halves_.size() / 2; }
  /// The two nodes of a link, numbered anew.
  CoreLink ends(std::size_t link, const std::vector<int>& number) const {
    const int one = number[at(halves_[2 * link + 1].far)], other = number[at(halves_[2 * link].far)];
    return {std::min(one, other), std::max(one, other)};
  }

 private:
  struct Half {
    int far, next;
  };
  // Halves that lead to a node that is gone are dropped when somebody comes by.
  int skip_gone(int& half) {
    while (half != none && gone_[at(halves_[at(half)].far)]) half = halves_[at(half)].next;
    return half;
  }
  int first(int node) { return skip_gone(first_[at(node)]); }
  int next(int half) { return skip_gone(halves_[at(half)].next); }

  void add_half(int node, int far) {
    halves_.push_back({far, first_[at(node)]});
    first_[at(node)] = static_cast<int>(halves_.size()) - 1;
    ++degree_[at(node)];
  }

  std::vector<Half> halves_;
  std::vector<int> first_, degree_;
  std::vector<bool> gone_;
};

// Minimum degree, by the package: for each row of the core its place in the order.
std::vector<int> minimum_degree(int rows, const std::vector<CoreLink>& links) {
  std::vector<Eigen::Triplet<double, int>> entries;
  for (int i = 0; i < rows; ++i) entries.emplace_back(i, i, 1.0);
  for (const CoreLink& link : links) entries.emplace_back(link.low, link.high, 1.0);
  Eigen::SparseMatrix<double, Eigen::ColMajor, int> pattern(rows, rows);
  pattern.setFromTriplets(entries.begin(), entries.end());
  Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> order;
  Eigen::AMDOrdering<int>()(pattern.selfadjointView<Eigen::Upper>(), order);
  std::vector<int> place(at(rows));
  for (int i = 0; i < rows; ++i) place[at(order.indices()[i])] = i;
  return place;
}

class Eliminating {
 public:
  Eliminating(std::size_t nodes, const std::vector<Ends>& branches) : links_(nodes, branches.size()) {
    made_.row.assign(nodes, none);
    made_.steps.reserve(nodes);
    made_.slot.reserve(branches.size());
    for (const Ends ends : branches) {
      made_.slot.push_back(links_.join(static_cast<int>(ends.from), static_cast<int>(ends.to)));
    }
    slot_.assign(links_.count(), none);
  }

  Elimination run() {
    // The last node to come goes first: the ends of ladders and trees are mostly told last.
    std::vector<int> waiting;
    for (std::size_t i = 0; i < made_.row.size(); ++i) waiting.push_back(static_cast<int>(i));
    while (!waiting.empty()) {
      const int node = waiting.back();
      waiting.pop_back();
      if (links_.gone(node) || links_.degree(node) > 2) continue;
      const Ways ways = take(node);
      for (int i = 0; i < ways.count; ++i) waiting.push_back(ways.node[i]);
    }
    number_core();
    for (Step& step : made_.steps) finish(step);
    for (int& slot : made_.slot) slot = slot_[at(slot)];
    return std::move(made_);
  }

 private:
  // Until all rows and slots are known a step holds nodes, and a link.
  Ways take(int node) {
    const int i = static_cast<int>(made_.steps.size());
    const Ways ways = links_.remove(node);
    for (int side = 0; side < ways.count; ++side) slot_[at(ways.link[side])] = 2 * i + side;
    Step step{ways.node[0], ways.node[1], none};
    if (ways.count == 2) {
      step.between = links_.join(ways.node[0], ways.node[1]);
      slot_.resize(links_.count(), none);
    }
    made_.row[at(node)] = i;
    made_.steps.push_back(step);
    return ways;
  }

  void number_core() {
    std::vector<int> number(made_.row.size(), none);
    int rows = 0;
    for (std::size_t i = 0; i < number.size(); ++i) {
      if (made_.row[i] == none) number[i] = rows++;
    }
    if (rows == 0) return;
    std::vector<std::size_t> links;
    for (std::size_t link = 0; link < slot_.size(); ++link) {
      if (slot_[link] == none) links.push_back(link);
    }
    for (const std::size_t link : links) made_.core.push_back(links_.ends(link, number));
    const std::vector<int> place = minimum_degree(rows, made_.core);
    const int steps = static_cast<int>(made_.steps.size());
    for (std::size_t i = 0; i < number.size(); ++i) {
      if (number[i] == none) continue;
      number[i] = place[at(number[i])];
      made_.row[i] = steps + number[i];
    }
    for (std::size_t i = 0; i < links.size(); ++i) {
      slot_[links[i]] = 2 * steps + static_cast<int>(i);
      made_.core[i] = links_.ends(links[i], number);
    }
  }

  void finish(Step& step) const {
    const int nowhere = static_cast<int>(made_.row.size());
    const int nothing = static_cast<int>(2 * made_.steps.size() + made_.core.size());
    step.one = step.one == none ? nowhere : made_.row[at(step.one)];
    step.other = step.other == none ? nowhere : made_.row[at(step.other)];
    step.between = step.between == none ? nothing : slot_[at(step.between)];
  }

  Links links_;
  Elimination made_;
  std::vector<int> slot_;  ///< by link
};

}  // namespace

Elimination eliminate(std::size_t nodes, const std::vector<Ends>& branches) {
  return Eliminating(nodes, branches).run();
}

}  // namespace slabwright
