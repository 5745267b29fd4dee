#include "cuts.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "lattice_cut.hpp"
#include "neck.hpp"

namespace slabwright::routing {
namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// A split whose worst part comes this near to its share needs no rival.
constexpr double good_split = 0.06;
constexpr int rivals = 3, patient_rivals = 8;
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
           const CutOptions& options)
      : cells_(cells), gates_(gates), leaders_m_(leaders_m), options_(options), sums_(cells) {}

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

  std::vector<Candidate> candidates(const Region& region, int from, int to) const {
    const Border border = border_of(cells_, region, gates_from(from, to), sums_);
    const double unit_m = 0.5 * cells_.tube_m(0), scale = reach(region, from, to).tube_m / wanted_m(from, to);
    std::vector<Candidate> all;
    for (int middle = from + 1; middle < to; ++middle) {
      if (std::abs(2 * middle - from - to) > 2 * most_off_middle) continue;
      const double off = std::abs(2.0 * middle - from - to) / 2.0 * off_middle_price;
      int taken = 0, looked_at = 0;
      const double left_m = scale * wanted_m(from, middle);
      for (Cut& cut : cheapest_cuts(cells_, region, border, sums_, {middle - from, to - from, left_m}, options_)) {
        Candidate made{middle, std::move(cut), {}, {}, 0.0};
        made.left = left_of(cells_, region, made.cut);
        made.right = region;
        for (std::size_t c = 0; c < region.size(); ++c) made.right[c] = static_cast<char>(region[c] && !made.left[c]);
        const Reach left = reach(made.left, from, middle), right = reach(made.right, middle, to);
        if (!left.all || !right.all) continue;
        const int shut_in = loops_shut_in(cells_, made.left, gates_from(from, middle)) +
                            loops_shut_in(cells_, made.right, gates_from(middle, to));
        made.price = made.cut.price + off + shut_in_price * shut_in +
                     lost_price * (left.lost_number + right.lost_number) + std::abs(left.tube_m - left_m) / unit_m;
        all.push_back(std::move(made));
        if ((shut_in == 0 && ++taken == rivals) || ++looked_at == most_looked_at) break;
      }
    }
    std::stable_sort(all.begin(), all.end(), [](const Candidate& a, const Candidate& b) { return a.price < b.price; });
    return all;
  }

  Parts split(const Region& region, int from, int to) {
    if (to - from == 1) return whole(region, from);
    Parts best;
    best.worst_ratio = HUGE_VAL;
    if (++calls_ > most_calls) return best;
    int tried = 0;
    for (const Candidate& candidate : candidates(region, from, to)) {
      Parts left = split(candidate.left, from, candidate.middle);
      if (left.worst_ratio < best.worst_ratio) {
        const Parts right = split(candidate.right, candidate.middle, to);
        const double worst = std::max(left.worst_ratio, right.worst_ratio);
        if (worst < best.worst_ratio) {
          for (std::size_t c = 0; c < left.owner.size(); ++c) left.owner[c] = std::max(left.owner[c], right.owner[c]);
          best = {std::move(left.owner), worst};
        }
      }
      if (best.worst_ratio <= good_split || ++tried == (options_.follow_walls ? patient_rivals : rivals)) break;
    }
    return best;
  }

  const Cells& cells_;
  const std::vector<Gate>& gates_;
  const std::vector<double>& leaders_m_;
  const CutOptions& options_;
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
                const CutOptions& options) {
  Region floor(index(cells.size()), 0);
  for (int cell = 0; cell < cells.size(); ++cell) {
    floor[index(cell)] = cells.is(cell) == Kind::free || cells.is(cell) == Kind::blocked;
  }
  floor = reached(cells, floor, gates.front().cell, false);
  Parts parts = Splitter(cells, gates, leaders_m, options).split_all(floor);
  if (!parts.owner.empty()) take_in(cells, leaders_m, parts.owner);
  return parts;
}

}  // namespace slabwright::routing
