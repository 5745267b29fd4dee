#include "trade.hpp"

#include <algorithm>

namespace slabwright::routing {
namespace {

/// A cell with few neighbours of its own and many of the receiver fills a notch and keeps the border straight.
constexpr double receiver_weight = 1.5;
/// Beyond so many times the tolerance cells are traded over joints too.
constexpr double worth_crossing = 2.5;

class Trade {
 public:
  Trade(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& extra_m, std::vector<int>& owner)
      : cells_(cells), gates_(gates), owner_(owner), tube_m_(extra_m) {
    for (int cell = 0; cell < cells.size(); ++cell) {
      if (owner[index(cell)] >= 0) tube_m_[index(owner[index(cell)])] += cells.share_m(cell);
    }
  }

  /// One cell, between the two neighbours that differ most and can trade. False if none can.
  bool move_one(double tolerance_m, bool over_joints) {
    over_joints_ = over_joints;
    struct Pair {
      double difference_m;
      int giver, taker;
    };
    std::vector<Pair> pairs;
    for (int cell = 0; cell < cells_.size(); ++cell) {
      for (Way way = 0; way < 4; ++way) {
        const int taker = taker_of(cell, way);
        if (taker < 0) continue;
        const int giver = owner_[index(cell)];
        const double difference_m = tube_m_[index(giver)] - tube_m_[index(taker)];
        if (difference_m > tolerance_m) pairs.push_back({difference_m, giver, taker});
      }
    }
    std::sort(pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) {
      if (a.difference_m != b.difference_m) return a.difference_m > b.difference_m;
      return a.giver != b.giver ? a.giver < b.giver : a.taker < b.taker;
    });
    for (std::size_t k = 0; k < pairs.size(); ++k) {
      if (k > 0 && pairs[k].giver == pairs[k - 1].giver && pairs[k].taker == pairs[k - 1].taker) continue;
      if (move(pairs[k].giver, pairs[k].taker, pairs[k].difference_m)) return true;
    }
    return false;
  }

 private:
  int taker_of(int cell, Way way) const {
    const int giver = owner_[index(cell)];
    if (giver < 0 || !trades(cell, way)) return -1;
    const int taker = owner_[index(cells_.next(cell, way))];
    return taker == giver ? -1 : taker;
  }

  bool trades(int cell, Way way) const {
    return cells_.passes(cell, way) && (over_joints_ || !cells_.over_joint(cell, way));
  }

  bool is_gate(int cell) const {
    return std::any_of(gates_.begin(), gates_.end(), [&](const Gate& gate) { return gate.cell == cell; });
  }

  /// Whether the part stays in one piece without the cell: whether one of its neighbours reaches the others.
  bool spare(int cell) const {
    const int part = owner_[index(cell)];
    std::vector<int> beside;
    for (Way way = 0; way < 4; ++way) {
      if (cells_.passes(cell, way) && owner_[index(cells_.next(cell, way))] == part)
        beside.push_back(cells_.next(cell, way));
    }
    if (beside.empty()) return false;
    std::vector<int> open{beside[0]};
    std::vector<char> seen(owner_.size(), 0);
    seen[index(cell)] = seen[index(beside[0])] = 1;
    while (!open.empty()) {
      const int at = open.back();
      open.pop_back();
      for (Way way = 0; way < 4; ++way) {
        if (!cells_.passes(at, way)) continue;
        const int other = cells_.next(at, way);
        if (owner_[index(other)] != part || seen[index(other)] != 0) continue;
        seen[index(other)] = 1;
        open.push_back(other);
      }
    }
    return std::all_of(beside.begin(), beside.end(), [&](int other) { return seen[index(other)] != 0; });
  }

  bool move(int giver, int taker, double difference_m) {
    struct Offer {
      double price;
      int cell;
    };
    std::vector<Offer> offers;
    for (int cell = 0; cell < cells_.size(); ++cell) {
      if (owner_[index(cell)] != giver || cells_.share_m(cell) >= difference_m) continue;
      double own = 0.0, receiving = 0.0;
      for (Way way = 0; way < 4; ++way) {
        if (!cells_.passes(cell, way)) continue;
        const int other = owner_[index(cells_.next(cell, way))];
        own += other == giver ? 1.0 : 0.0;
        receiving += other == taker && trades(cell, way) ? 1.0 : 0.0;
      }
      if (receiving > 0.0) offers.push_back({own - receiver_weight * receiving, cell});
    }
    std::sort(offers.begin(), offers.end(),
              [](const Offer& a, const Offer& b) { return a.price != b.price ? a.price < b.price : a.cell < b.cell; });
    for (const Offer& offer : offers) {
      if (is_gate(offer.cell) || !spare(offer.cell)) continue;
      owner_[index(offer.cell)] = taker;
      tube_m_[index(giver)] -= cells_.share_m(offer.cell);
      tube_m_[index(taker)] += cells_.share_m(offer.cell);
      return true;
    }
    return false;
  }

  const Cells& cells_;
  const std::vector<Gate>& gates_;
  std::vector<int>& owner_;
  std::vector<double> tube_m_;
  bool over_joints_ = true;
};

}  // namespace

// Every move brings two lengths nearer to each other, so the sum of their squares falls: the moves come to an end.
void trade_cells(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& extra_m,
                 double tolerance_m, std::vector<int>& owner) {
  Trade trade(cells, gates, extra_m, owner);
  while (trade.move_one(tolerance_m, cells.joint.empty())) {
  }
  while (!cells.joint.empty() && trade.move_one(worth_crossing * tolerance_m, true)) {
  }
}

}  // namespace slabwright::routing
