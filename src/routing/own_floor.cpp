#include "own_floor.hpp"

#include <algorithm>
#include <cmath>

#include "border.hpp"

namespace slabwright::routing {
namespace {

/// So many ways to choose gates are shared out, the shortest corridors first.
constexpr std::size_t most_tried = 3;
/// A corridor along a wall shuts nobody in: a step beside other floor costs more.
constexpr int step_price = 4, beside_floor_price = 6;

/// What corridors shut in they heat themselves: bare floor would be worse, and another way is looked for first.
constexpr int shut_in_price = 100;
/// Floor that nobody reaches is worse than loops that differ by as much.
constexpr double bare_price = 5.0;

constexpr int nobody = -1, rest = -2;

/// A choice of gates, and the corridors that come of it.
struct Choice {
  std::vector<int> group_of_gate;  ///< the room that a gate leads to, or `rest`
  std::vector<int> group;          ///< of each cell: a room with its corridors, `rest`, or `nobody`
  int price = 0;
};

class Apart {
 public:
  Apart(const Cells& cells, const std::vector<Gate>& gates) : cells_(cells), gates_(gates) {}

  /// Free cells of each such floor.
  void add_room(const Polygon& outline) {
    std::vector<int> room;
    for (int cell = 0; cell < cells_.size(); ++cell) {
      const bool in = cells_.is(cell) == Kind::free && where_is(cells_.middle(cell), outline) != Where::outside;
      if (in) room.push_back(cell);
    }
    if (!room.empty()) rooms_.push_back(std::move(room));
  }
  bool any() const {
    std::size_t own = 0, all = 0;
    for (const auto& room : rooms_) own += room.size();
    for (int cell = 0; cell < cells_.size(); ++cell) all += cells_.is(cell) == Kind::free ? 1 : 0;
    return !rooms_.empty() && own < all;
  }

  /// The cheapest corridors first.
  std::vector<Choice> choices() const {
    Choice none;
    none.group_of_gate.assign(gates_.size(), rest);
    none.group.assign(index(cells_.size()), nobody);
    for (int cell = 0; cell < cells_.size(); ++cell) {
      if (cells_.is(cell) == Kind::free) none.group[index(cell)] = rest;
    }
    for (std::size_t r = 0; r < rooms_.size(); ++r) {
      for (const int cell : rooms_[r]) none.group[index(cell)] = static_cast<int>(r);
    }
    std::vector<Choice> made{none};
    for (std::size_t r = 0; r < rooms_.size(); ++r) {
      std::vector<Choice> longer;
      for (const Choice& choice : made) add_choices(choice, r, longer);
      std::stable_sort(longer.begin(), longer.end(),
                       [](const Choice& a, const Choice& b) { return a.price < b.price; });
      if (longer.size() > most_tried) longer.resize(most_tried);
      made = std::move(longer);
    }
    return made;
  }

 private:
  std::size_t loops_of(std::size_t room) const {
    double own_m = 0.0, all_m = 0.0;
    for (const int cell : rooms_[room]) own_m += cells_.share_m(cell);
    for (int cell = 0; cell < cells_.size(); ++cell)
      all_m += cells_.is(cell) == Kind::free ? cells_.share_m(cell) : 0.0;
    return static_cast<std::size_t>(
        std::max(1.0, std::floor(static_cast<double>(gates_.size()) * own_m / all_m + 0.5)));
  }

  void add_choices(const Choice& before, std::size_t room, std::vector<Choice>& all) const {
    const std::size_t loops = loops_of(room);
    for (std::size_t first = 0; first + loops <= gates_.size(); ++first) {
      const auto gate = before.group_of_gate.begin() + static_cast<std::ptrdiff_t>(first);
      if (std::any_of(gate, gate + static_cast<std::ptrdiff_t>(loops), [](int group) { return group != rest; }))
        continue;
      for (const bool from_left : {true, false}) {
        auto made = with_corridors(before, room, first, from_left);
        if (made) all.push_back(std::move(*made));
        if (loops == 1) break;
      }
    }
  }

  /// One corridor after the other, from the left gate to the right one or the other way.
  std::optional<Choice> with_corridors(Choice choice, std::size_t room, std::size_t first, bool from_left) const {
    const std::size_t loops = loops_of(room);
    std::vector<char> ends(index(cells_.size()), 0);
    for (std::size_t k = 0; k < loops; ++k) {
      const std::size_t gate = from_left ? first + k : first + loops - 1 - k;
      choice.group_of_gate[gate] = static_cast<int>(room);
      if (!lead(choice, static_cast<int>(room), gates_[gate].cell, ends)) return std::nullopt;
    }
    const std::vector<int> shut_in = unreached(choice);
    choice.price += shut_in_price * static_cast<int>(shut_in.size());
    for (const int cell : shut_in) choice.group[index(cell)] = static_cast<int>(room);
    if (std::count(choice.group_of_gate.begin(), choice.group_of_gate.end(), rest) == 0) return std::nullopt;
    return choice;
  }

  bool is_gate(int cell) const {
    return std::any_of(gates_.begin(), gates_.end(), [&](const Gate& gate) { return gate.cell == cell; });
  }

  int price_of(const Choice& choice, int cell) const {
    int price = step_price;
    for (Way way = 0; way < 4; ++way) {
      const int other = cells_.next(cell, way);
      if (other >= 0 && cells_.passes(cell, way) && choice.group[index(other)] == rest) price += beside_floor_price;
    }
    return price;
  }

  /// The cheapest way from a gate to a cell of the room where no other corridor ends, by Dijkstra's method.
  bool lead(Choice& choice, int room, int from, std::vector<char>& ends) const {
    constexpr int far = 1 << 30;
    std::vector<int> price(index(cells_.size()), far), before(index(cells_.size()), -1);
    std::vector<char> done(index(cells_.size()), 0);
    if (choice.group[index(from)] != rest && choice.group[index(from)] != room) return false;
    price[index(from)] = 0;
    for (;;) {
      int at = -1;
      for (int cell = 0; cell < cells_.size(); ++cell) {
        if (done[index(cell)] == 0 && price[index(cell)] < (at < 0 ? far : price[index(at)])) at = cell;
      }
      if (at < 0) return false;
      done[index(at)] = 1;
      if (choice.group[index(at)] == room && ends[index(at)] == 0) {
        ends[index(at)] = 1;
        choice.price += price[index(at)];
        for (int cell = before[index(at)]; cell >= 0; cell = before[index(cell)]) {
          choice.group[index(cell)] = room;
          ends[index(cell)] = 1;
        }
        return true;
      }
      for (Way way = 0; way < 4; ++way) {
        const int next = cells_.next(at, way);
        if (next < 0 || !cells_.passes(at, way) || ends[index(next)] != 0) continue;
        const int group = choice.group[index(next)];
        if ((group != rest && group != room) || (group == rest && is_gate(next))) continue;
        const int sum = price[index(at)] + price_of(choice, next);
        if (sum >= price[index(next)]) continue;
        price[index(next)] = sum;
        before[index(next)] = at;
      }
    }
  }

  /// Cells of the rest that none of its gates reaches any more.
  std::vector<int> unreached(const Choice& choice) const {
    std::vector<char> seen(index(cells_.size()), 0);
    std::vector<int> open;
    for (std::size_t k = 0; k < gates_.size(); ++k) {
      if (choice.group_of_gate[k] == rest) open.push_back(gates_[k].cell);
    }
    while (!open.empty()) {
      const int cell = open.back();
      open.pop_back();
      if (seen[index(cell)] != 0 || choice.group[index(cell)] != rest) continue;
      seen[index(cell)] = 1;
      for (Way way = 0; way < 4; ++way) {
        if (cells_.passes(cell, way)) open.push_back(cells_.next(cell, way));
      }
    }
    std::vector<int> shut_in;
    for (int cell = 0; cell < cells_.size(); ++cell) {
      if (choice.group[index(cell)] == rest && seen[index(cell)] == 0) shut_in.push_back(cell);
    }
    return shut_in;
  }

  const Cells& cells_;
  const std::vector<Gate>& gates_;
  std::vector<std::vector<int>> rooms_;
};

/// Passages between groups closed.
Cells closed_between(Cells cells, const std::vector<int>& group) {
  for (int cell = 0; cell < cells.size(); ++cell) {
    for (Way way = 0; way < 4; ++way) {
      if (!cells.passes(cell, way) || group[index(cell)] == group[index(cells.next(cell, way))]) continue;
      cells.open[index(cell)] = static_cast<std::uint8_t>(cells.open[index(cell)] & ~(1 << way));
    }
  }
  return cells;
}

struct Sharing {
  const std::vector<Gate>& gates;
  const std::vector<double>& leaders_m;
  const CutOptions& options;
  Work& work;
};

/// What the gates reach, these ones only. False where it cannot be shared out.
bool share(const Cells& cells, const std::vector<int>& group, const std::vector<std::size_t>& gates,
           const Sharing& sharing, std::vector<int>& owner) {
  Cells own = cells;
  for (int cell = 0; cell < cells.size(); ++cell) {
    const bool other = cells.is(cell) == Kind::free && group[index(cell)] != group[index(sharing.gates[gates[0]].cell)];
    if (other) own.kind[index(cell)] = Kind::blocked;
  }
  std::vector<Gate> some;
  std::vector<double> leaders_m;
  for (const std::size_t gate : gates) {
    some.push_back(sharing.gates[gate]);
    leaders_m.push_back(sharing.leaders_m[gate]);
  }
  const Parts parts = cut_floor(own, some, leaders_m, sharing.options, sharing.work);
  if (parts.owner.empty()) return false;
  for (std::size_t c = 0; c < owner.size(); ++c) {
    if (parts.owner[c] >= 0) owner[c] = static_cast<int>(gates[index(parts.owner[c])]);
  }
  return true;
}

/// The floor of each group, and of the rest each piece by itself.
std::optional<std::vector<int>> shared(const Cells& cells, const Choice& choice, const Sharing& sharing) {
  std::vector<int> owner(index(cells.size()), -1);
  std::vector<char> done(sharing.gates.size(), 0);
  const Region everywhere(index(cells.size()), 1);
  for (std::size_t k = 0; k < sharing.gates.size(); ++k) {
    if (done[k] != 0) continue;
    const Region piece = reached(cells, everywhere, sharing.gates[k].cell, true);
    std::vector<int> group = choice.group;
    for (std::size_t c = 0; c < group.size(); ++c) {
      if (piece[c] == 0 && group[c] == choice.group_of_gate[k]) group[c] = nobody;
    }
    std::vector<std::size_t> gates;
    for (std::size_t other = k; other < sharing.gates.size(); ++other) {
      if (piece[index(sharing.gates[other].cell)] == 0) continue;
      gates.push_back(other);
      done[other] = 1;
    }
    if (!share(cells, group, gates, sharing, owner)) return std::nullopt;
  }
  return owner;
}

/// (most - least) / mean of the loops' tube.
double spread(const Cells& cells, const std::vector<int>& owner, const std::vector<double>& leaders_m) {
  std::vector<double> tube_m = leaders_m;
  double sum = 0.0;
  for (int cell = 0; cell < cells.size(); ++cell) {
    if (owner[index(cell)] >= 0) tube_m[index(owner[index(cell)])] += cells.share_m(cell);
  }
  for (const double m : tube_m) sum += m;
  const auto [least, most] = std::minmax_element(tube_m.begin(), tube_m.end());
  return (*most - *least) * static_cast<double>(tube_m.size()) / sum;
}

/// Of free cells, those that no loop has.
double bare_share(const Cells& cells, const std::vector<int>& owner) {
  double free = 0.0, bare = 0.0;
  for (int cell = 0; cell < cells.size(); ++cell) {
    if (cells.is(cell) != Kind::free) continue;
    free += 1.0;
    bare += owner[index(cell)] < 0 ? 1.0 : 0.0;
  }
  return bare / free;
}

}  // namespace

std::optional<Parts> cut_floor_apart(const LayoutTask& task, Cells& cells, const std::vector<Gate>& gates,
                                     const std::vector<double>& leaders_m, const CutOptions& options, Work& work) {
  Apart apart(cells, gates);
  for (const Polygon& outline : task.own_floor) apart.add_room(outline);
  if (!apart.any()) return cut_floor(cells, gates, leaders_m, options, work);
  std::optional<Parts> best;
  Cells best_cells;
  for (const Choice& choice : apart.choices()) {
    const Cells closed = closed_between(cells, choice.group);
    const auto owner = shared(closed, choice, {gates, leaders_m, options, work});
    if (!owner) continue;
    const double worst = spread(cells, *owner, leaders_m) + bare_price * bare_share(cells, *owner);
    if (best && worst >= best->worst_ratio) continue;
    best = Parts{*owner, worst};
    best_cells = closed;
  }
  if (best) cells = std::move(best_cells);
  return best;
}

}  // namespace slabwright::routing
