#include "cuts.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "lattice_cut.hpp"
#include "neck.hpp"

namespace slabwright::routing {
namespace {

/// A split whose worst part comes this near to its share needs no rival.
constexpr double good_split = 0.06;
constexpr int rivals = 3;
constexpr int most_calls = 300;
/// What a cell costs that a cut takes from every gate, in half cells of tube.
constexpr double lost_price = 6.0;
/// For each loop that a cut shuts in behind a neck.
constexpr double shut_in_price = 40.0;
/// For each gate that a cut lies off the middle one: equal halves are cut more easily.
constexpr double off_middle_price = 0.8;
constexpr int most_off_middle = 2;
/// Cuts that shut a loop in are looked past as far as this.
constexpr int most_looked_at = 30;

struct Candidate {
  int middle = 0;
  Cut cut;
  Region left, right;
  double price = 0.0;
  int shut_in = 0;
};

/// What one side of a cut is worth: its free cells that its first gate reaches. Nothing if it does not reach all gates.
struct Reach {
  bool all = false;
  double tube_m = 0.0;
  int lost_number = 0;
};

class Splitter {
 public:
  Splitter(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& leaders_m,
           const CutOptions& options, Work& work)
      : cells_(cells), gates_(gates), leaders_m_(leaders_m), options_(options), work_(work), sums_(cells) {}

  Parts split_all(const Region& region) {
    const double leaders_m = std::accumulate(leaders_m_.begin(), leaders_m_.end(), 0.0);
    mean_m_ = (reach(region, 0, 1).tube_m + leaders_m) / static_cast<double>(gates_.size());
    return split(region, 0, static_cast<int>(gates_.size()));
  }

 private:
  Reach reach(const Region& region, int from, int to) const {
    const Region found = reached(cells_, region, gates_[index(from)].cell, true);
    Reach made{true, 0.0, 0};
    for (int g = from; g < to; ++g) made.all = made.all && found[index(gates_[index(g)].cell)] != 0;
    for (int cell = 0; cell < cells_.size(); ++cell) {
      if (region[index(cell)] == 0 || cells_.is(cell) != Kind::free) continue;
      if (found[index(cell)] != 0) made.tube_m += cells_.share_m(cell);
      if (found[index(cell)] == 0) ++made.lost_number;
    }
    return made;
  }

  std::vector<Gate> gates_from(int from, int to) const { return {gates_.begin() + from, gates_.begin() + to}; }

  double wanted_m(int from, int to) const {
    double sum = 0.0;
    for (int g = from; g < to; ++g) sum += mean_m_ - leaders_m_[index(g)];
    return sum;
  }

  Parts whole(const Region& region, int gate) const {
    Parts parts{std::vector<int>(region.size(), -1), 0.0};
    const Region found = reached(cells_, region, gates_[index(gate)].cell, true);
    double tube_m = leaders_m_[index(gate)];
    for (int cell = 0; cell < cells_.size(); ++cell) {
      if (found[index(cell)] == 0 || cells_.is(cell) != Kind::free) continue;
      parts.owner[index(cell)] = gate;
      tube_m += cells_.share_m(cell);
    }
    parts.worst_ratio = std::abs(tube_m - mean_m_) / mean_m_;
    return parts;
  }

  /// A cut not yet looked at, at the least it can cost.
  struct Bid {
    double least = 0.0;
    int middle = 0;
    double left_m = 0.0;
    Cut cut;
  };

  /// Those between all pairs of gates near the middle one, cheapest first.
  std::vector<Bid> bids(const Region& region, int from, int to) {
    const Border border = border_of(cells_, region, gates_from(from, to), sums_);
    const double scale = reach(region, from, to).tube_m / wanted_m(from, to);
    std::vector<CutWish> wishes;
    for (int middle = from + 1; middle < to; ++middle) {
      if (std::abs(2 * middle - from - to) > 2 * most_off_middle) continue;
      wishes.push_back({middle - from, scale * wanted_m(from, middle)});
    }
    std::vector<Bid> all;
    std::vector<std::vector<Cut>> cuts = cheapest_cuts(cells_, region, border, sums_, wishes, options_, work_);
    for (std::size_t w = 0; w < wishes.size(); ++w) {
      const int middle = from + wishes[w].middle;
      const double off = std::abs(2.0 * middle - from - to) / 2.0 * off_middle_price;
      for (Cut& cut : cuts[w]) all.push_back({cut.price + off, middle, wishes[w].left_m, std::move(cut)});
    }
    std::stable_sort(all.begin(), all.end(), [](const Bid& a, const Bid& b) { return a.least < b.least; });
    return all;
  }

  /// The best `most` cuts, cheapest first. A bid that cannot be among them is not looked at.
  std::vector<Candidate> candidates(const Region& region, int from, int to, std::size_t most) {
    std::vector<Candidate> best;
    std::vector<int> taken(index(to + 1), 0), looked_at(index(to + 1), 0);
    for (Bid& bid : bids(region, from, to)) {
      const auto too_dear = [&](double price) { return best.size() == most && price >= best.back().price; };
      if (too_dear(bid.least)) break;
      const std::size_t middle = index(bid.middle);
      if (taken[middle] == rivals || looked_at[middle] == most_looked_at) continue;
      auto made = looked_into(bid, region, from, to, too_dear);
      if (!made) continue;
      ++looked_at[middle];
      if (made->shut_in == 0) ++taken[middle];
      const auto place = std::upper_bound(best.begin(), best.end(), *made,
                                          [](const Candidate& a, const Candidate& b) { return a.price < b.price; });
      best.insert(place, std::move(*made));
      if (best.size() > most) best.pop_back();
    }
    return best;
  }

  /// Absent where a side would not hold together, or where the price is too dear.
  template <class TooDear>
  std::optional<Candidate> looked_into(Bid& bid, const Region& region, int from, int to,
                                       const TooDear& too_dear) const {
    Candidate made{bid.middle, std::move(bid.cut), {}, {}, bid.least, 0};
    made.left = left_of(cells_, region, made.cut);
    made.right = region;
    for (std::size_t c = 0; c < region.size(); ++c) made.right[c] = static_cast<char>(region[c] && !made.left[c]);
    const Reach left = reach(made.left, from, made.middle), right = reach(made.right, made.middle, to);
    if (!left.all || !right.all) return std::nullopt;
    const double unit_m = 0.5 * cells_.tube_m(0);
    made.price += lost_price * (left.lost_number + right.lost_number) + std::abs(left.tube_m - bid.left_m) / unit_m;
    if (too_dear(made.price)) return std::nullopt;
    made.shut_in = loops_shut_in(cells_, made.left, gates_from(from, made.middle)) +
                   loops_shut_in(cells_, made.right, gates_from(made.middle, to));
    made.price += shut_in_price * made.shut_in;
    return made;
  }

  Parts split(const Region& region, int from, int to) {
    if (to - from == 1) return whole(region, from);
    Parts best;
    best.worst_ratio = HUGE_VAL;
    if (++calls_ > most_calls) return best;
    for (const Candidate& candidate : candidates(region, from, to, rivals)) {
      Parts left = split(candidate.left, from, candidate.middle);
      if (left.worst_ratio < best.worst_ratio) {
        const Parts right = split(candidate.right, candidate.middle, to);
        const double worst = std::max(left.worst_ratio, right.worst_ratio);
        if (worst < best.worst_ratio) {
          for (std::size_t c = 0; c < left.owner.size(); ++c) left.owner[c] = std::max(left.owner[c], right.owner[c]);
          best = {std::move(left.owner), worst};
        }
      }
      if (best.worst_ratio <= good_split) break;
    }
    return best;
  }

  const Cells& cells_;
  const std::vector<Gate>& gates_;
  const std::vector<double>& leaders_m_;
  const CutOptions& options_;
  Work& work_;
  ColumnSums sums_;
  double mean_m_ = 0.0;
  int calls_ = 0;
};

/// Cells that cuts took from their gates go to the smallest part beside them.
void take_in(const Cells& cells, const std::vector<double>& leaders_m, std::vector<int>& owner) {
  std::vector<double> tube_m = leaders_m;
  for (int cell = 0; cell < cells.size(); ++cell) {
    if (owner[index(cell)] >= 0) tube_m[index(owner[index(cell)])] += cells.share_m(cell);
  }
  for (bool moved = true; moved;) {
    moved = false;
    for (int cell = 0; cell < cells.size(); ++cell) {
      if (owner[index(cell)] >= 0 || cells.is(cell) != Kind::free) continue;
      int best = -1;
      for (Way way = 0; way < 4; ++way) {
        if (!cells.passes(cell, way)) continue;
        const int other = owner[index(cells.next(cell, way))];
        if (other >= 0 && (best < 0 || tube_m[index(other)] < tube_m[index(best)])) best = other;
      }
      if (best < 0) continue;
      owner[index(cell)] = best;
      tube_m[index(best)] += cells.share_m(cell);
      moved = true;
    }
  }
}

}  // namespace

Parts cut_floor(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& leaders_m,
                const CutOptions& options, Work& work) {
  Region floor(index(cells.size()), 0);
  for (int cell = 0; cell < cells.size(); ++cell) {
    floor[index(cell)] = cells.is(cell) == Kind::free || cells.is(cell) == Kind::blocked;
  }
  floor = reached(cells, floor, gates.front().cell, false);
  Parts parts = Splitter(cells, gates, leaders_m, options, work).split_all(floor);
  if (!parts.owner.empty()) take_in(cells, leaders_m, parts.owner);
  return parts;
}

}  // namespace slabwright::routing
