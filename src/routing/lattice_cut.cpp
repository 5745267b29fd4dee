#include "lattice_cut.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace slabwright::routing {
namespace {

constexpr int most_bends = 3;
/// In a region of more cells than this along and across, a third bend would be tried in too many places.
constexpr int many_lines = 70;
/// A line that turns back beside itself shuts a strip of floor in.
constexpr double u_price = 1.5;
/// What a step along a joint, or along a partition, is worth: tube need not cross it then.
constexpr double joint_worth = 0.2, partition_worth = 0.36;
constexpr std::size_t kept_cuts = 120;

/// Where a line has come to.
struct Run {
  int vertex = 0;
  Way way = 0;
  int bends = 0;
  double sum_m = 0.0;
  int turned = 0;  ///< the last free bend: +1 left, -1 right
  int alike = 0;   ///< how many of that kind came together
};

class Search {
 public:
  Search(const Cells& cells, const Region& region, const Border& border, const ColumnSums& sums,
         const CutOptions& options, Work& work)
      : cells_(cells),
        region_(region),
        border_(border),
        sums_(sums),
        options_(options),
        work_(work),
        across_(cells.columns + 1) {
    bends_ = lines_of_region() > many_lines ? most_bends - 1 : most_bends;
    unit_m_ = 0.5 * cells.tube_m(0);
    look_ahead();
    find_seams();
  }

  std::vector<Cut> from(const CutWish& wish) {
    found_.clear();
    limit_ = HUGE_VAL;
    wanted_m_ = wish.left_m;
    last_gate_ = border_.gate_edge.back();
    for (int place = border_.gate_edge[index(wish.middle - 1)] + 1; place <= border_.gate_edge[index(wish.middle)];
         ++place) {
      const int vertex = border_.vertex[index(place)];
      start_ = place;
      if (border_.place[index(vertex)] != place) continue;
      for (Way way = 0; way < 4; ++way) follow({vertex, way, 0, 0.0, 0, 0});
    }
    shrink(kept_cuts);
    return std::move(found_);
  }

 private:
  /// Columns and rows that the region takes.
  int lines_of_region() const {
    int left = cells_.columns, right = -1, low = cells_.rows, high = -1;
    for (int cell = 0; cell < cells_.size(); ++cell) {
      if (region_[index(cell)] == 0) continue;
      left = std::min(left, cells_.column(cell));
      right = std::max(right, cells_.column(cell));
      low = std::min(low, cells_.row(cell));
      high = std::max(high, cells_.row(cell));
    }
    return right - left + high - low + 2;
  }

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
  int stride(Way way) const { return way == 0 ? 1 : way == 1 ? across_ : way == 2 ? -1 : -across_; }

  /// Steps from each vertex each way until the border, or until the region ends.
  void look_ahead() {
    const int vertices = across_ * (cells_.rows + 1);
    for (Way way = 0; way < 4; ++way) {
      std::vector<int>& steps = ahead_[index(way)];
      steps.assign(index(vertices), 0);
      const bool upward = way >= 2;  // the vertex one step on comes first
      for (int k = 0; k < vertices; ++k) {
        const int v = upward ? k : vertices - 1 - k;
        if (!within(v % across_, v / across_, way)) continue;
        const int next = v + stride(way);
        steps[index(v)] = 1 + (border_.place[index(next)] == -1 ? steps[index(next)] : 0);
      }
    }
  }
  int ahead(int vertex, Way way) const { return ahead_[index(way)][index(vertex)]; }

  /// What a step to the right, and one upward, from each vertex is worth; empty where none is worth anything.
  void find_seams() {
    std::vector<double> worth(index(2 * across_ * (cells_.rows + 1)), 0.0);
    double sum = 0.0;
    for (int cell = 0; cell < cells_.size(); ++cell) {
      for (const Way way : {2, 3}) {
        const int other = cells_.next(cell, way);
        if (other < 0 || cells_.is(cell) != Kind::free || cells_.is(other) != Kind::free) continue;
        const double here = cells_.over_joint(cell, way) ? joint_worth
                            : cells_.passes(cell, way)   ? 0.0
                                                         : partition_worth;
        worth[index(2 * (cells_.row(cell) * across_ + cells_.column(cell)) + (way == 2 ? 1 : 0))] = here;
        sum += here;
      }
    }
    if (sum > 0.0) seam_ = std::move(worth);
  }
  double seam(int vertex, Way way) const {
    const int from = way < 2 ? vertex : vertex + stride(way);
    return seam_[index(2 * from + (way % 2))];
  }

  double term(int vertex, Way way) const {
    if (way == 0) return -sums_.below(vertex % across_, vertex / across_);
    if (way == 2) return sums_.below(vertex % across_ - 1, vertex / across_);
    return 0.0;
  }

  /// Straight on until the border; a bend wherever one may be.
  void follow(const Run& run) {
    const std::size_t depth = corner_.size();
    corner_.push_back(run.vertex);
    const int before = steps_;
    const double seams = seams_;
    Run now = run;
    const double bends_price = options_.bend_price * run.bends;
    for (int left = ahead(run.vertex, run.way); left > 0; --left) {
      if (--work_.steps_left < 0) break;
      // What has been paid for already is too much.
      if (bends_price + options_.step_price * (steps_ + 1) >= limit_) break;
      now.sum_m += term(now.vertex, run.way);
      if (!seam_.empty()) seams_ += seam(now.vertex, run.way);
      now.vertex += stride(run.way);
      ++steps_;
      const int place = border_.place[index(now.vertex)];
      if (place >= 0) arrive(now, place);
      if (place != -1) break;
      for (const int turn : {1, -1}) bend(now, turn);
    }
    steps_ = before;
    seams_ = seams;
    corner_.resize(depth);
  }

  void bend(const Run& now, int turn) {
    if (now.bends >= bends_) return;
    Run next = now;
    next.way = (now.way + turn + 4) % 4;
    ++next.bends;
    next.alike = turn == now.turned ? now.alike + 1 : 1;
    next.turned = turn;
    // A line that has once turned back does not turn further.
    if (next.alike <= 2) follow(next);
  }

  void arrive(const Run& run, int place) {
    if (place != 0 && place <= last_gate_) return;
    double left_m = run.sum_m + border_.sum_m[index(start_)] - border_.sum_m[index(place)];
    if (place != 0) left_m += border_.sum_m.back();
    const double price = std::abs(left_m - wanted_m_) / unit_m_ + options_.bend_price * run.bends +
                         options_.step_price * steps_ - seams_ + (run.alike >= 2 ? u_price : 0.0);
    if (price >= limit_) return;
    Cut cut{corner_, price};
    cut.vertex.push_back(run.vertex);
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
  Work& work_;
  int across_ = 0, bends_ = 0;
  double unit_m_ = 1.0, wanted_m_ = 0.0, limit_ = HUGE_VAL;
  int last_gate_ = 0, start_ = 0, steps_ = 0;
  std::array<std::vector<int>, 4> ahead_;
  std::vector<double> seam_;
  double seams_ = 0.0;  ///< what steps up to here were worth
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

std::vector<std::vector<Cut>> cheapest_cuts(const Cells& cells, const Region& region, const Border& border,
                                            const ColumnSums& sums, const std::vector<CutWish>& wishes,
                                            const CutOptions& options, Work& work) {
  Search search(cells, region, border, sums, options, work);
  std::vector<std::vector<Cut>> all;
  for (const CutWish& wish : wishes) all.push_back(search.from(wish));
  return all;
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
