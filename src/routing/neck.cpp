// The cells near the gates that hold the shares of j loops can satisfy no more than j; the others must pass to what
// lies beyond, each by cells of its own. How many can is the largest number of paths that share no cell (Ford and
// Fulkerson).
#include "neck.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::routing {
namespace {

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
      each_next(place, [&](int next) {
        if (from[index(next)] != -1) return;
        from[index(next)] = place;
        open.push_back(next);
      });
    }
    return false;
  }

  /// After the last path: what a path more would still reach, 1 a cell it could enter, 2 one it could leave too.
  std::vector<char> within_reach(const std::vector<Gate>& gates) const {
    std::vector<char> found(near_.size(), 0);
    std::vector<char> seen(2 * near_.size(), 0);
    std::vector<int> open;
    for (const Gate& gate : gates) {
      if (comes_[index(gate.cell)] != -2) open.push_back(2 * gate.cell);
    }
    for (const int place : open) seen[index(place)] = 1;
    for (std::size_t k = 0; k < open.size(); ++k) {
      const int place = open[k];
      found[index(place / 2)] = std::max(found[index(place / 2)], static_cast<char>(1 + place % 2));
      each_next(place, [&](int next) {
        if (seen[index(next)] != 0) return;
        seen[index(next)] = 1;
        open.push_back(next);
      });
    }
    return found;
  }

 private:
  /// Where a path more can go from a place, against paths that are laid too.
  template <class Visit>
  void each_next(int place, const Visit& visit) const {
    const int cell = place / 2;
    if (place % 2 == 0) {
      if (!used(cell)) visit(2 * cell + 1);
      if (used(cell) && comes_[index(cell)] >= 0) visit(2 * comes_[index(cell)] + 1);
      return;
    }
    if (used(cell)) visit(2 * cell);
    for (Way way = 0; way < 4; ++way) {
      if (!cells_.passes(cell, way)) continue;
      const int other = cells_.next(cell, way);
      if (near_[index(other)] >= 0 && leaves_[index(cell)] != other) visit(2 * other);
    }
  }

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

namespace {

/// Loops differ by no more than this where no neck holds them up.
constexpr double uneven = 1.1;

bool through(const Cells& cells, int cell, int other, const Opening& opening) {
  return meet(cells.middle(cell), cells.middle(other), opening.from, opening.to);
}

/// Cells that hang together without the openings, numbered; -1 for what is not of the floor.
std::vector<int> rooms_of(const Cells& cells, const std::vector<int>& order, const std::vector<Opening>& openings) {
  const auto through_opening = [&](int cell, int other) {
    return std::any_of(openings.begin(), openings.end(),
                       [&](const Opening& o) { return through(cells, cell, other, o); });
  };
  std::vector<int> room(index(cells.size()), -1);
  int count = 0;
  for (const int first : order) {
    if (room[index(first)] >= 0) continue;
    std::vector<int> open{first};
    room[index(first)] = count;
    while (!open.empty()) {
      const int cell = open.back();
      open.pop_back();
      for (Way way = 0; way < 4; ++way) {
        const int other = cells.passes(cell, way) ? cells.next(cell, way) : -1;
        if (other < 0 || room[index(other)] >= 0 || through_opening(cell, other)) continue;
        room[index(other)] = count;
        open.push_back(other);
      }
    }
    ++count;
  }
  return room;
}

/// Ways to part the floor into what is near to the gates, 1, and what lies beyond, 0; -1 for what is not of the floor.
std::vector<std::vector<int>> sides(const Cells& cells, const std::vector<int>& order, const std::vector<Gate>& gates,
                                    const std::vector<Opening>& openings) {
  std::vector<std::vector<int>> all;
  const std::vector<int> room = openings.empty() ? std::vector<int>{} : rooms_of(cells, order, openings);
  const int rooms = room.empty() ? 0 : 1 + *std::max_element(room.begin(), room.end());
  for (int k = 0; k < rooms; ++k) {
    if (std::any_of(gates.begin(), gates.end(), [&](const Gate& gate) { return room[index(gate.cell)] == k; }))
      continue;
    all.emplace_back(index(cells.size()), -1);
    for (const int cell : order) all.back()[index(cell)] = room[index(cell)] == k ? 0 : 1;
  }
  for (std::size_t near = 1; near < gates.size(); ++near) {
    all.emplace_back(index(cells.size()), -1);
    for (std::size_t k = 0; k < order.size(); ++k) {
      all.back()[index(order[k])] = k < order.size() * near / gates.size() ? 1 : 0;
    }
  }
  return all;
}

/// The neck that paths came to a stop at, if they did.
std::optional<Neck> neck_in(const Cells& cells, const std::vector<int>& order, const std::vector<char>& reach) {
  Neck neck;
  for (const int cell : order) {
    const char found = reach[index(cell)];
    if (found == 0) neck.beyond_m2 += cells.width_m(cell) * cells.depth_m(cell);
    if (found != 1) continue;
    const Point middle = cells.middle(cell);
    neck.place = {neck.place.x_m + middle.x_m, neck.place.y_m + middle.y_m};
    ++neck.passing_number;
  }
  if (neck.passing_number == 0) return std::nullopt;
  neck.place = {neck.place.x_m / neck.passing_number, neck.place.y_m / neck.passing_number};
  return neck;
}

}  // namespace

std::optional<Neck> worst_neck(const Cells& cells, const std::vector<Gate>& gates, const std::vector<Opening>& openings,
                               double longest_m) {
  Region region(index(cells.size()), 0);
  for (int cell = 0; cell < cells.size(); ++cell) region[index(cell)] = cells.is(cell) == Kind::free;
  const std::vector<int> order = by_distance(cells, region, gates);
  const std::size_t loops = gates.size();
  const auto tube_m = [&](const auto& counts) {
    double sum = 0.0;
    for (const int cell : order) sum += counts(cell) ? cells.tube_m(cell) : 0.0;
    return sum;
  };
  const double mean_m = tube_m([](int) { return true; }) / static_cast<double>(loops);
  const double fair_m = std::min(uneven * mean_m, longest_m);
  double worst_m = fair_m;
  std::optional<Neck> worst;
  for (const std::vector<int>& side : sides(cells, order, gates, openings)) {
    Paths paths(cells, side);
    std::size_t passing = 0;
    for (const Gate& gate : gates) passing += paths.add(gate.cell) ? 1 : 0;
    if (passing == loops) continue;
    const std::vector<char> reach = paths.within_reach(gates);
    auto neck = neck_in(cells, order, reach);
    if (!neck) continue;
    const double beyond_m = tube_m([&](int cell) { return reach[index(cell)] == 0; });
    if (beyond_m / neck->passing_number <= worst_m) continue;
    worst_m = beyond_m / neck->passing_number;
    neck->needed_number = static_cast<int>(std::ceil(beyond_m / fair_m));
    worst = neck;
  }
  return worst;
}

std::vector<Opening> closed_openings(const Cells& cells, const std::vector<Opening>& openings) {
  std::vector<Opening> closed;
  for (const Opening& opening : openings) {
    bool passed = false;
    for (int cell = 0; cell < cells.size() && !passed; ++cell) {
      for (const Way way : {0, 1}) {
        passed = passed || (cells.passes(cell, way) && through(cells, cell, cells.next(cell, way), opening));
      }
    }
    if (!passed) closed.push_back(opening);
  }
  return closed;
}

}  // namespace slabwright::routing
