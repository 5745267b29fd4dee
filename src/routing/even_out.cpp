// Moves drawn at random are taken where they make things worse by less than a threshold that sinks to zero (Dueck and
// Scheuer, "Threshold accepting", Journal of Computational Physics 90, 1990). What things cost: half the square of each
// loop's tube, a border between two cells, a corner of a border. Tube is counted in cells.
#include "even_out.hpp"

#include <algorithm>
#include <array>

namespace slabwright::routing {
namespace {

constexpr double border_price = 1.0, corner_price = 0.5;
/// A loop may take a cell from one that is a few shorter, at first.
constexpr double first_threshold = 6.0;
constexpr int sweeps = 100;
/// So many parts may move over for one cell, by so many cells together.
constexpr std::size_t most_parts = 5, most_cells = 24;

class Borders {
 public:
  Borders(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& extra_m,
          std::vector<int>& owner)
      : cells_(cells), owner_(owner), sum_(extra_m), is_gate_(owner.size(), 0) {
    double tube_m = 0.0;
    for (int cell = 0; cell < cells.size(); ++cell) {
      if (owner[index(cell)] < 0) continue;
      floor_.push_back(cell);
      tube_m += cells.share_m(cell);
    }
    unit_m_ = tube_m / static_cast<double>(floor_.size());
    for (double& sum : sum_) sum /= unit_m_;
    for (const int cell : floor_) sum_[index(owner[index(cell)])] += tube(cell);
    for (const Gate& gate : gates) is_gate_[index(gate.cell)] = 1;
  }

  void settle(std::mt19937_64& random) {
    for (int sweep = sweeps - 1; sweep >= 0; --sweep) {
      const double threshold = first_threshold * sweep / sweeps;
      for (std::size_t k = 0; k < floor_.size(); ++k) {
        const std::uint64_t drawn = random();
        try_move(floor_[(drawn >> 8) % floor_.size()], static_cast<Way>(drawn % 4), threshold);
      }
    }
  }

 private:
  double tube(int cell) const { return cells_.share_m(cell) / unit_m_; }
  int part_of(int cell) const { return cell < 0 ? -1 : owner_[index(cell)]; }
  /// The part that lies that way, if tube passes there.
  int part_beside(int cell, Way way) const { return cells_.passes(cell, way) ? part_of(cells_.next(cell, way)) : -1; }

  /// To the part that lies that way.
  void try_move(int cell, Way way, double threshold) {
    const int taker = part_beside(cell, way);
    if (taker < 0 || taker == part_of(cell)) return;
    moved_.clear();
    takers_.clear();
    price_ = 0.0;
    if (take(cell, taker, way) && (price_ < 0.0 || price_ < threshold)) return;
    for (; !moved_.empty(); moved_.pop_back()) put(moved_.back().cell, moved_.back().part);
  }

  /// The cell, and what its own part must take from others to stay connected round it. `from` leads to the taker.
  bool take(int cell, int taker, Way from) {
    const int giver = part_of(cell);
    if (giver < 0 || is_gate_[index(cell)] != 0 || takers_.size() == most_parts || moved_.size() >= most_cells ||
        std::find(takers_.begin(), takers_.end(), giver) != takers_.end())
      return false;
    // Its neighbours of its own part, from the one next to the taker round to the last.
    int first = 4, last = 0;
    for (int turn = 1; turn <= 3; ++turn) {
      if (part_beside(cell, (from + turn) % 4) != giver) continue;
      first = std::min(first, turn);
      last = turn;
    }
    if (first == 4) return false;
    takers_.push_back(taker);
    for (int turn = first; turn < last; ++turn) {
      if (!linked(cell, giver, (from + turn) % 4)) return false;
    }
    takers_.pop_back();
    price_ += price_of(cell, taker);
    moved_.push_back({cell, giver});
    put(cell, taker);
    return true;
  }

  /// The neighbour that way, the one to its left and the corner between them, made one part's.
  bool linked(int cell, int part, Way way) {
    const Way left = (way + 1) % 4;
    if (!cells_.passes(cell, way) || !cells_.passes(cell, left)) return false;
    const int ahead = cells_.next(cell, way), beside = cells_.next(cell, left);
    if (!cells_.passes(ahead, left) || !cells_.passes(beside, way)) return false;
    return got(ahead, part, opposite(way)) && got(cells_.next(ahead, left), part, opposite(left)) &&
           got(beside, part, opposite(left));
  }
  bool got(int cell, int part, Way from) { return part_of(cell) == part || take(cell, part, from); }

  double price_of(int cell, int taker) {
    const int giver = part_of(cell);
    double price = tube(cell) * (sum_[index(taker)] - sum_[index(giver)] + tube(cell));
    // A border on a joint costs nothing: no tube crosses it there.
    for (Way way = 0; way < 4; ++way) {
      const int other = part_beside(cell, way);
      if (cells_.over_joint(cell, way)) continue;
      price += border_price * ((other == giver ? 1.0 : 0.0) - (other == taker ? 1.0 : 0.0));
    }
    const int before = corners_round(cell);
    owner_[index(cell)] = taker;
    price += corner_price * (corners_round(cell) - before);
    owner_[index(cell)] = giver;
    return price;
  }

  void put(int cell, int part) {
    sum_[index(part_of(cell))] -= tube(cell);
    sum_[index(part)] += tube(cell);
    owner_[index(cell)] = part;
  }

  int corners_round(int cell) const {
    const int i = cells_.column(cell), j = cells_.row(cell);
    return corners_at(i, j) + corners_at(i + 1, j) + corners_at(i, j + 1) + corners_at(i + 1, j + 1);
  }
  /// Of the borders that meet at a vertex of the floor's inside; where two cross, two.
  int corners_at(int i, int j) const {
    const std::array<int, 4> part{part_of(cells_.at(i - 1, j - 1)), part_of(cells_.at(i, j - 1)),
                                  part_of(cells_.at(i, j)), part_of(cells_.at(i - 1, j))};
    int borders = 0;
    for (std::size_t k = 0; k < 4; ++k) {
      if (part[k] < 0) return 0;
      borders += part[k] != part[(k + 1) % 4] ? 1 : 0;
    }
    if (borders == 4) return 2;
    return borders == 2 && (part[0] == part[2] || part[1] == part[3]) ? 1 : 0;
  }

  struct Moved {
    int cell, part;  ///< the part it was of
  };

  const Cells& cells_;
  std::vector<int>& owner_;
  std::vector<double> sum_;  ///< each loop's tube
  std::vector<char> is_gate_;
  std::vector<int> floor_;
  double unit_m_ = 1.0, price_ = 0.0;
  std::vector<Moved> moved_;
  std::vector<int> takers_;
};

}  // namespace

void even_out(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& extra_m,
              std::mt19937_64& random, std::vector<int>& owner) {
  Borders(cells, gates, extra_m, owner).settle(random);
}

}  // namespace slabwright::routing
