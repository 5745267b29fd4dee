#include "tree.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace slabwright::routing {
namespace {

int count_of(int ways) { return (ways & 1) + (ways >> 1 & 1) + (ways >> 2 & 1) + (ways >> 3 & 1); }

/// Cells of a part by their number in it.
struct Local {
  std::vector<std::array<int, 4>> next;  ///< -1 where no tube may pass or another part begins
  std::vector<std::uint8_t> walls;       ///< a bit for each way that leads off the floor
  std::vector<std::uint8_t> joints;      ///< a bit for each way over a joint; empty where there are none
  std::vector<std::uint8_t> across;      ///< a bit for each way across a band; empty where there are none
  int root = 0;
  Way gate_side = 3;
};

Local local_of(const Cells& cells, const Part& part) {
  std::vector<int> number(index(cells.size()), -1);
  for (std::size_t k = 0; k < part.cell.size(); ++k) number[index(part.cell[k])] = static_cast<int>(k);
  Local local{{}, {}, {}, {}, number[index(part.gate.cell)], part.gate.side};
  for (const int cell : part.cell) {
    std::array<int, 4> next{};
    for (Way way = 0; way < 4; ++way) {
      next[index(way)] = cells.passes(cell, way) ? number[index(cells.next(cell, way))] : -1;
    }
    local.next.push_back(next);
    int walls = 0;
    for (Way way = 0; way < 4; ++way) walls |= cells.is(cells.next(cell, way)) == Kind::outside ? 1 << way : 0;
    local.walls.push_back(static_cast<std::uint8_t>(walls));
    if (!cells.across.empty()) local.across.push_back(cells.across[index(cell)]);
    if (!cells.joint.empty()) local.joints.push_back(cells.joint[index(cell)]);
  }
  return local;
}

/// A spanning tree that hangs from the gate.
struct Tree {
  std::vector<std::uint8_t> ways;  ///< a bit for each neighbour, the gate included
  std::vector<int> parent;         ///< -1 for the root
};

void join(const Local& local, Tree& tree, int a, Way way) {
  const int b = local.next[index(a)][index(way)];
  tree.ways[index(a)] = static_cast<std::uint8_t>(tree.ways[index(a)] ^ 1 << way);
  tree.ways[index(b)] = static_cast<std::uint8_t>(tree.ways[index(b)] ^ 1 << opposite(way));
}

Tree bare(const Local& local) {
  Tree tree{std::vector<std::uint8_t>(local.next.size(), 0), std::vector<int>(local.next.size(), -1)};
  tree.ways[index(local.root)] = static_cast<std::uint8_t>(1 << local.gate_side);
  return tree;
}

/// Always along the wall on one side, back where there is no way on: a spiral where the part allows one.
Tree wall_hugging(const Local& local, bool left) {
  Tree tree = bare(local);
  std::vector<char> seen(local.next.size(), 0);
  struct Visit {
    int cell;
    Way came;
    int tried;
  };
  std::vector<Visit> stack{{local.root, opposite(local.gate_side), 0}};
  seen[index(local.root)] = 1;
  while (!stack.empty()) {
    Visit& top = stack.back();
    if (top.tried == 3) {
      stack.pop_back();
      continue;
    }
    const int turn = (left ? 1 : 3) + (left ? 3 : 1) * top.tried++;
    const Way way = (top.came + turn) % 4;
    const int cell = top.cell, other = local.next[index(cell)][index(way)];
    if (other < 0 || seen[index(other)] != 0) continue;
    seen[index(other)] = 1;
    join(local, tree, cell, way);
    tree.parent[index(other)] = cell;
    stack.push_back({other, way, 0});
  }
  return tree;
}

/// Straight lines in one direction, joined where they must be.
Tree lines(const Local& local, Way along) {
  Tree tree = bare(local);
  std::vector<int> set(local.next.size());
  std::iota(set.begin(), set.end(), 0);
  const auto root_of = [&](int a) {
    while (set[index(a)] != a) a = set[index(a)] = set[index(set[index(a)])];
    return a;
  };
  for (const Way way : {along, 1 - along}) {
    for (int cell = 0; cell < static_cast<int>(local.next.size()); ++cell) {
      const int other = local.next[index(cell)][index(way)];
      if (other < 0 || root_of(cell) == root_of(other)) continue;
      set[index(root_of(cell))] = root_of(other);
      join(local, tree, cell, way);
    }
  }
  std::vector<int> open{local.root};
  while (!open.empty()) {
    const int cell = open.back();
    open.pop_back();
    for (Way way = 0; way < 4; ++way) {
      const int other = local.next[index(cell)][index(way)];
      if (other < 0 || (tree.ways[index(cell)] >> way & 1) == 0 || tree.parent[index(cell)] == other) continue;
      tree.parent[index(other)] = cell;
      open.push_back(other);
    }
  }
  return tree;
}

class Improver {
 public:
  Improver(const Local& local, const Part& part, const TreeOptions& options, std::mt19937_64& random)
      : local_(local),
        part_(part),
        options_(options),
        random_(random),
        chain_{std::vector<int>(local.next.size()), std::vector<int>(local.next.size())},
        mark_(local.next.size()),
        counted_(local.next.size(), 0) {
    price_.resize(local.next.size());
    for (int cell = 0; cell < static_cast<int>(local.next.size()); ++cell) {
      for (int ways = 0; ways < 16; ++ways) price_[index(cell)][index(ways)] = price_of(cell, ways);
    }
    for (int cell = 0; cell < static_cast<int>(local.next.size()); ++cell) {
      for (const Way way : {0, 1}) {
        if (local.next[index(cell)][index(way)] >= 0) edges_.push_back({cell, way});
      }
    }
  }

  int price(const Tree& tree) const {
    int sum = 0;
    for (int cell = 0; cell < static_cast<int>(tree.ways.size()); ++cell) sum += price_of(tree, cell);
    return sum;
  }

  /// Edges swapped at random, worse ones taken less and less often.
  void improve(Tree& tree, double hot, double cold) {
    if (edges_.size() + 1 == tree.ways.size()) return;
    const int swaps = options_.swaps_per_cell * static_cast<int>(tree.ways.size());
    std::vector<std::uint8_t> best = tree.ways;
    int now = price(tree), least = now;
    for (int k = 0; k < swaps; ++k) {
      const double heat = hot + (cold - hot) * k / swaps;
      now += swap(tree, heat);
      if (now < least) {
        least = now;
        best = tree.ways;
      }
    }
    tree.ways = std::move(best);
  }

 private:
  struct Edge {
    int cell;
    Way way;
  };

  int bends_price(int ways) const {
    const int count = count_of(ways);
    if (count <= 1) return options_.end_price;
    if (ways == 5 || ways == 10) return 0;
    return count == 2 ? 20 : (count - 2) * options_.tee_price;
  }

  /// What these ways cost in a cell, whatever its neighbours are.
  int price_of(int cell, int ways) const {
    int sum = bends_price(ways);
    if (cell != local_.root && is_end(ways) && ends_at_wall(cell, ways)) sum += 2 * options_.stub_price;
    if (!local_.joints.empty()) sum += joint_price(ways & local_.joints[index(cell)], ways);
    // Half of what an edge costs: the other half is the neighbour's.
    if (!local_.across.empty()) sum += count_of(ways & local_.across[index(cell)]) * options_.across_price / 2;
    if (cell == local_.root) {
      for (Way way = 0; way < 4; ++way) sum += (ways >> way & 1) * part_.gate_price[index(way)];
    }
    return sum;
  }

  /// Half of what edges over joints cost: the other half is the neighbours'.
  int joint_price(int over, int ways) const {
    if (over == 0) return 0;
    return count_of(over) * options_.joint_price / 2 + (ways == 5 || ways == 10 ? 0 : options_.joint_bend_price);
  }

  static bool is_end(int ways) { return (ways & (ways - 1)) == 0 && ways != 0; }
  static Way way_of_end(int ways) { return ways == 1 ? 0 : ways == 2 ? 1 : ways == 4 ? 2 : 3; }

  /// An end has no room for a wide U-turn beside a wall, or where it is one cell long.
  bool ends_at_wall(int cell, int ways) const {
    const Way way = way_of_end(ways);
    const int walls = local_.walls[index(cell)];
    return (walls >> (way + 1) % 4 & 1) != 0 || (walls >> (way + 3) % 4 & 1) != 0;
  }
  bool ends_short(const Tree& tree, int cell) const {
    const Way way = way_of_end(tree.ways[index(cell)]);
    return (tree.ways[index(local_.next[index(cell)][index(way)])] >> way & 1) == 0;
  }

  int price_of(const Tree& tree, int cell) const {
    const int ways = tree.ways[index(cell)];
    const bool is_stub = options_.stub_price > 0 && is_end(ways) && cell != local_.root && ends_short(tree, cell);
    return price_[index(cell)][index(ways)] + (is_stub ? options_.stub_price : 0);
  }

  /// Finds the cells whose price may change with these: themselves and ends that hang on them, each once.
  void look_around(const Tree& tree, const std::array<int, 4>& cells) {
    ++round_;
    around_.clear();
    const auto add = [&](int cell) {
      if (counted_[index(cell)] == round_) return;
      counted_[index(cell)] = round_;
      around_.push_back(cell);
    };
    for (const int cell : cells) {
      add(cell);
      for (Way way = 0; way < 4 && options_.stub_price > 0; ++way) {
        const int beside = local_.next[index(cell)][index(way)];
        if (beside >= 0 && tree.ways[index(beside)] == 1 << opposite(way)) add(beside);
      }
    }
  }
  int price_around(const Tree& tree) const {
    int total = 0;
    for (const int cell : around_) total += price_of(tree, cell);
    return total;
  }

  int drawn(int below) { return static_cast<int>(random_() % static_cast<std::uint64_t>(below)); }

  Way way_to(int from, int to) const {
    for (Way way = 0; way < 3; ++way) {
      if (local_.next[index(from)][index(way)] == to) return way;
    }
    return 3;
  }

  /// The ring that an edge a-b would close: the cells from a and from b up to where they meet.
  void find_ring(const Tree& tree, int a, int b) {
    stamp_ += 2;
    std::array<int, 2> at{a, b}, size{0, 0};
    // One step up; true where the other chain has come by: it ends there.
    const auto climbs = [&, mark = mark_.data(), parent = tree.parent.data()](int c) {
      const std::size_t own = index(c), other = index(1 - c);
      if (at[own] < 0) return false;
      const std::size_t here = index(at[own]);
      if (mark[here].stamp == stamp_ + 1 - c) {
        size[other] = mark[here].place;
        return true;
      }
      mark[here] = {stamp_ + c, size[own]};
      chain_[own][index(size[own]++)] = at[own];
      at[own] = parent[here];
      return false;
    };
    while (!climbs(0) && !climbs(1)) continue;
    size_ = size;
  }

  int swap(Tree& tree, double heat) {
    const Edge edge = edges_[index(drawn(static_cast<int>(edges_.size())))];
    if ((tree.ways[index(edge.cell)] >> edge.way & 1) != 0) return 0;
    const int a = edge.cell, b = local_.next[index(a)][index(edge.way)];
    find_ring(tree, a, b);
    const int size = size_[0] + size_[1];
    int pick = drawn(2 * size);
    // Half of the time an edge beside the new one: that is where a corner is most likely won.
    if (pick >= size) pick = pick % 2 == 0 || size_[1] == 0 ? 0 : size_[0];
    const bool first = pick < size_[0];
    const auto& chain = chain_[first ? 0 : 1];
    const std::size_t place = index(first ? pick : pick - size_[0]);
    const int low = chain[place], high = tree.parent[index(low)];

    const std::array<int, 4> touched{a, b, low, high};
    const Way dropped = way_to(low, high);
    look_around(tree, touched);
    const int before = price_around(tree);
    join(local_, tree, a, edge.way);
    join(local_, tree, low, dropped);
    const int more = price_around(tree) - before;
    if (!taken(more, heat)) {
      join(local_, tree, a, edge.way);
      join(local_, tree, low, dropped);
      return 0;
    }
    for (std::size_t k = place; k > 0; --k) tree.parent[index(chain[k])] = chain[k - 1];
    tree.parent[index(chain[0])] = first ? b : a;
    return more;
  }

  /// Metropolis' rule with a rational function for the exponential, which differs between machines.
  bool taken(int more, double heat) {
    if (more <= 0) return true;
    const double z = 0.1 * more / heat;
    if (z > 12.0) return false;
    const double chance = static_cast<double>(random_() >> 11) / 9007199254740992.0;
    return chance * (1.0 + z * (1.0 + z / 2.0 * (1.0 + z / 3.0 * (1.0 + z / 4.0)))) < 1.0;
  }

  const Local& local_;
  const Part& part_;
  const TreeOptions& options_;
  std::mt19937_64& random_;
  std::vector<std::array<int, 16>> price_;  ///< of each cell, by its ways
  std::vector<Edge> edges_;
  std::array<std::vector<int>, 2> chain_;
  std::array<int, 2> size_{};
  /// When a cell was last passed on the way up from either end of an edge, and as which of the chain.
  struct Mark {
    int stamp = 0, place = 0;
  };
  std::vector<Mark> mark_;
  std::vector<int> counted_;
  std::vector<int> around_;
  int stamp_ = 0, round_ = 0;
};

}  // namespace

std::vector<std::uint8_t> few_turn_tree(const Cells& cells, const Part& part, const TreeOptions& options,
                                        std::mt19937_64& random) {
  const Local local = local_of(cells, part);
  Improver improver(local, part, options, random);
  std::vector<std::uint8_t> best;
  double least = HUGE_VAL;
  for (int start = 0; start < 4; ++start) {
    Tree tree = start < 2 ? wall_hugging(local, start == 0) : lines(local, start - 2);
    improver.improve(tree, start < 2 ? 0.35 : 1.5, 0.08);
    std::vector<std::uint8_t> ways(index(cells.size()), 0);
    for (std::size_t k = 0; k < part.cell.size(); ++k) ways[index(part.cell[k])] = tree.ways[k];
    // Either end may be the supply, so the walls may come early from either.
    const double place = wall_place(cells, part.gate, ways);
    const double price = improver.price(tree) + options.wall_weight * std::min(place, 1.0 - place) *
                                                    std::sqrt(static_cast<double>(part.cell.size()));
    if (price >= least) continue;
    least = price;
    best = std::move(ways);
  }
  return best;
}

}  // namespace slabwright::routing
