// The cells near the gates that hold the shares of j loops can satisfy no more than j; the others must pass to what
// lies beyond, each by cells of its own. How many can is the largest number of paths that share no cell (Ford and
// Fulkerson).
#include "neck.hpp"

#include <algorithm>

namespace slabwright::routing {
namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// No more than this many sizes of near floor are looked at.
constexpr int most_looks = 4;

/// Cells by their distance from the gates.
std::vector<int> by_distance(const Cells& cells, const Region& region, const std::vector<Gate>& gates) {
  std::vector<char> seen(region.size(), 0);
  std::vector<int> order;
  for (const Gate& gate : gates) {
    order.push_back(gate.cell);
    seen[index(gate.cell)] = 1;
  }
  for (std::size_t k = 0; k < order.size(); ++k) {
    for (Way way = 0; way < 4; ++way) {
      if (!cells.passes(order[k], way)) continue;
      const int other = cells.next(order[k], way);
      if (region[index(other)] == 0 || seen[index(other)] != 0) continue;
      seen[index(other)] = 1;
      order.push_back(other);
    }
  }
  return order;
}

/// Paths through cells, none of which is used twice. A cell has a place where paths come in and one where they leave.
class Paths {
 public:
  Paths(const Cells& cells, const std::vector<int>& near)
      : cells_(cells), near_(near), leaves_(near.size(), -1), comes_(near.size(), -1), from_(2 * near.size(), -1) {}

  /// One more path from the gate to what is not near, others moved aside for it where they must.
  bool add(int gate) {
    if (comes_[index(gate)] == -2) return false;
    // What the search before has marked is wiped out.
    for (const int place : open_) from_[index(place)] = -1;
    std::vector<int>&from = from_, &open = open_;
    open = {2 * gate};
    from[index(2 * gate)] = 2 * gate;
    for (std::size_t k = 0; k < open.size(); ++k) {
      const int place = open[k], cell = place / 2;
      if (near_[index(cell)] == 0 && !used(cell)) {
        follow(from, place);
        return true;
      }
      const auto visit = [&](int next) {
        if (from[index(next)] != -1) return;
        from[index(next)] = place;
        open.push_back(next);
      };
      if (place % 2 == 0) {
        if (!used(cell)) visit(2 * cell + 1);
        if (used(cell) && comes_[index(cell)] >= 0) visit(2 * comes_[index(cell)] + 1);
        continue;
      }
      if (used(cell)) visit(2 * cell);
      for (Way way = 0; way < 4; ++way) {
        if (!cells_.passes(cell, way)) continue;
        const int other = cells_.next(cell, way);
        if (near_[index(other)] >= 0 && leaves_[index(cell)] != other) visit(2 * other);
      }
    }
    return false;
  }

 private:
  bool used(int cell) const { return comes_[index(cell)] != -1; }

  /// -1 unused, -2 a path begins here, else the cell it comes from.
  void follow(const std::vector<int>& from, int place) {
    std::vector<int> places{place};
    while (from[index(places.back())] != places.back()) places.push_back(from[index(places.back())]);
    std::reverse(places.begin(), places.end());
    // Steps against a path take it away; steps along new ground lay one.
    std::vector<std::pair<int, int>> laid;
    for (std::size_t k = 0; k + 1 < places.size(); ++k) {
      const int a = places[k], b = places[k + 1];
      if (a / 2 == b / 2) continue;
      if (a % 2 == 1) laid.push_back({a / 2, b / 2});
      if (a % 2 == 0) {
        leaves_[index(b / 2)] = -1;
        comes_[index(a / 2)] = -1;
      }
    }
    comes_[index(places.front() / 2)] = -2;
    for (const auto& [a, b] : laid) {
      leaves_[index(a)] = b;
      comes_[index(b)] = a;
    }
  }

  const Cells& cells_;
  const std::vector<int>& near_;  ///< 1 near, 0 beyond, -1 not of the region
  std::vector<int> leaves_, comes_;
  std::vector<int> from_, open_;
};

}  // namespace

int loops_shut_in(const Cells& cells, const Region& region, const std::vector<Gate>& gates) {
  const int loops = static_cast<int>(gates.size());
  const std::vector<int> order = by_distance(cells, region, gates);
  int most = 0;
  for (int near = 1; near < loops; near += std::max(1, (loops - 1) / most_looks)) {
    std::vector<int> side(region.size(), -1);
    const std::size_t within = order.size() * index(near) / index(loops);
    for (std::size_t k = 0; k < order.size(); ++k) side[index(order[k])] = k < within ? 1 : 0;
    Paths paths(cells, side);
    int passing = 0;
    for (const Gate& gate : gates) {
      // No more need pass, or no more than were shut in before stay behind.
      if (loops - near - passing <= most) break;
      passing += paths.add(gate.cell) ? 1 : 0;
    }
    most = std::max(most, loops - near - passing);
  }
  return most;
}

}  // namespace slabwright::routing
