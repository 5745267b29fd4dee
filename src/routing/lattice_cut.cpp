#include "lattice_cut.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::routing {
namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

constexpr int most_bends = 3;
/// On a floor of more cells than this along and across, a third bend would be tried in too many places.
constexpr int many_lines = 70;
/// A line that turns back beside itself shuts a strip of floor in.
constexpr double u_price = 1.5;
constexpr std::size_t kept_cuts = 120;

struct Corner {
  int i, j;
};

class Search {
 public:
  Search(const Cells& cells, const Region& region, const Border& border, const ColumnSums& sums,
         const CutOptions& options)
      : cells_(cells), region_(region), border_(border), sums_(sums), options_(options) {
    bends_ = cells.columns + cells.rows > many_lines ? most_bends - 1 : most_bends;
    unit_m_ = 0.5 * cells.tube_m(0);
  }

  std::vector<Cut> from(int middle, double left_m) {
    wanted_m_ = left_m;
    last_gate_ = border_.gate_edge.back();
    for (int place = border_.gate_edge[index(middle - 1)] + 1; place <= border_.gate_edge[index(middle)]; ++place) {
      const int vertex = border_.vertex[index(place)];
      start_ = place;
      if (border_.place[index(vertex)] != place) continue;
      for (Way way = 0; way < 4; ++way) run(vertex, way, 0, 0.0, 0, 0);
    }
    shrink(kept_cuts);
    return found_;
  }

 private:
  bool holds(int i, int j) const {
    const int cell = cells_.at(i, j);
    return cell >= 0 && region_[index(cell)] != 0;
  }
  /// Whether a step this way from a vertex has the region on both sides.
  bool within(int i, int j, Way way) const {
    switch (way) {
      case 0: return holds(i, j) && holds(i, j - 1);
      case 1: return holds(i - 1, j) && holds(i, j);
      case 2: return holds(i - 1, j) && holds(i - 1, j - 1);
      default: return holds(i, j - 1) && holds(i - 1, j - 1);
    }
  }
  double term(int i, int j, Way way) const {
    if (way == 0) return -sums_.below(i, j);
    if (way == 2) return sums_.below(i - 1, j);
    return 0.0;
  }

  /// Straight on until the border; a bend at every vertex on the way. `turned` is the last bend: +1 left, -1 right;
  /// `alike` how many of that kind came together.
  void run(int vertex, Way way, int bends, double sum_m, int turned, int alike) {
    int i = vertex % (cells_.columns + 1), j = vertex / (cells_.columns + 1);
    const std::size_t depth = corner_.size();
    corner_.push_back(vertex);
    const int before = steps_;
    while (within(i, j, way)) {
      sum_m += term(i, j, way);
      i += (way == 0) - (way == 2);
      j += (way == 1) - (way == 3);
      ++steps_;
      const int here = j * (cells_.columns + 1) + i, place = border_.place[index(here)];
      if (place >= 0) arrive(here, place, bends, sum_m, alike >= 2);
      if (place != -1) break;
      if (bends == bends_) continue;
      for (const int turn : {1, -1}) {
        const int count = turn == turned ? alike + 1 : 1;
        if (count > (options_.u_shaped ? 2 : 1)) continue;
        // A line that has once turned back does not turn further.
        run(here, (way + turn + 4) % 4, bends + 1, sum_m, turn, count);
      }
    }
    steps_ = before;
    corner_.resize(depth);
  }

  void arrive(int vertex, int place, int bends, double sum_m, bool u_shaped) {
    if (place != 0 && place <= last_gate_) return;
    const double total_m = border_.sum_m.back();
    double left_m = sum_m + border_.sum_m[index(start_)] - border_.sum_m[index(place)];
    if (place != 0) left_m += total_m;
    const double price = std::abs(left_m - wanted_m_) / unit_m_ + options_.bend_price * bends +
                         options_.step_price * steps_ + (u_shaped ? u_price : 0.0);
    if (price >= limit_) return;
    Cut cut{corner_, price};
    cut.vertex.push_back(vertex);
    found_.push_back(std::move(cut));
    if (found_.size() >= 8 * kept_cuts) {
      shrink(kept_cuts);
      limit_ = found_.back().price;
    }
  }

  void shrink(std::size_t size) {
    std::stable_sort(found_.begin(), found_.end(), [](const Cut& a, const Cut& b) {
      return a.price != b.price ? a.price < b.price : a.vertex < b.vertex;
    });
    if (found_.size() > size) found_.resize(size);
  }

  const Cells& cells_;
  const Region& region_;
  const Border& border_;
  const ColumnSums& sums_;
  const CutOptions& options_;
  int bends_ = 0;
  double unit_m_ = 1.0, wanted_m_ = 0.0, limit_ = HUGE_VAL;
  int last_gate_ = 0, start_ = 0, steps_ = 0;
  std::vector<int> corner_;
  std::vector<Cut> found_;
};

/// Marks sides of cells that the cut runs along: a bit for each way, as in Cells::open.
std::vector<char> walls_along(const Cells& cells, const Cut& cut, int& first_left) {
  std::vector<char> wall(index(cells.size()), 0);
  const int across = cells.columns + 1;
  first_left = -1;
  for (std::size_t k = 0; k + 1 < cut.vertex.size(); ++k) {
    int i = cut.vertex[k] % across, j = cut.vertex[k] / across;
    const int to_i = cut.vertex[k + 1] % across, to_j = cut.vertex[k + 1] / across;
    const int di = (to_i > i) - (to_i < i), dj = (to_j > j) - (to_j < j);
    const Way way = di > 0 ? 0 : dj > 0 ? 1 : di < 0 ? 2 : 3;
    for (; i != to_i || j != to_j; i += di, j += dj) {
      const int left = way == 0   ? cells.at(i, j)
                       : way == 1 ? cells.at(i - 1, j)
                       : way == 2 ? cells.at(i - 1, j - 1)
                                  : cells.at(i, j - 1);
      const Way to_right = (way + 3) % 4;
      const int right = cells.next(left, to_right);
      wall[index(left)] = static_cast<char>(wall[index(left)] | 1 << to_right);
      wall[index(right)] = static_cast<char>(wall[index(right)] | 1 << opposite(to_right));
      if (first_left < 0) first_left = left;
    }
  }
  return wall;
}

}  // namespace

std::vector<Cut> cheapest_cuts(const Cells& cells, const Region& region, const Border& border, const ColumnSums& sums,
                               int middle, double left_m, const CutOptions& options) {
  return Search(cells, region, border, sums, options).from(middle, left_m);
}

Region left_of(const Cells& cells, const Region& region, const Cut& cut) {
  int first = -1;
  const std::vector<char> wall = walls_along(cells, cut, first);
  Region left(region.size(), 0);
  std::vector<int> open{first};
  left[index(first)] = 1;
  while (!open.empty()) {
    const int cell = open.back();
    open.pop_back();
    for (Way way = 0; way < 4; ++way) {
      const int other = cells.next(cell, way);
      if (other < 0 || region[index(other)] == 0 || left[index(other)] != 0 || (wall[index(cell)] >> way & 1)) continue;
      left[index(other)] = 1;
      open.push_back(other);
    }
  }
  return left;
}

}  // namespace slabwright::routing
