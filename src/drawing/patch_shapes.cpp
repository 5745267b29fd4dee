// Outlines of patches, and patterns that tell neighbours apart.
#include <algorithm>
#include <map>

#include "patches.hpp"

namespace slabwright {
namespace {

using Corner = std::pair<int, int>;  // row, column: of the lower left corner of a cell

/// Borders of a loop's cells, the cells on the left, by the corner they set out from.
std::map<Corner, std::vector<Corner>> borders(const Raster& raster, int loop) {
  std::map<Corner, std::vector<Corner>> from;
  for (int r = 0; r < raster.rows; ++r) {
    for (int c = 0; c < raster.columns; ++c) {
      if (raster.at(c, r) != loop) continue;
      if (raster.at(c, r - 1) != loop) from[{r, c}].push_back({r, c + 1});
      if (raster.at(c + 1, r) != loop) from[{r, c + 1}].push_back({r + 1, c + 1});
      if (raster.at(c, r + 1) != loop) from[{r + 1, c + 1}].push_back({r + 1, c});
      if (raster.at(c - 1, r) != loop) from[{r + 1, c}].push_back({r, c});
    }
  }
  return from;
}

/// Without corners that lie on a straight line or nearer than `slack_m` to one (Douglas and Peucker 1973), from the
/// first corner to the last, the last left out.
std::vector<Point> simpler(const std::vector<Point>& line, double slack_m) {
  std::vector<bool> keep(line.size(), false);
  keep.front() = keep.back() = true;
  std::vector<std::pair<std::size_t, std::size_t>> open{{0, line.size() - 1}};
  while (!open.empty()) {
    const auto [a, b] = open.back();
    open.pop_back();
    double most = slack_m;
    std::size_t farthest = 0;
    for (std::size_t k = a + 1; k < b; ++k) {
      const double away = distance_to_edge_m(line[k], line[a], line[b]);
      if (away > most) {
        most = away;
        farthest = k;
      }
    }
    if (farthest == 0) continue;
    keep[farthest] = true;
    open.emplace_back(a, farthest);
    open.emplace_back(farthest, b);
  }
  std::vector<Point> left;
  for (std::size_t k = 0; k + 1 < line.size(); ++k) {
    if (keep[k]) left.push_back(line[k]);
  }
  return left;
}

Polygon smoothed(const std::vector<Point>& ring, double cell_m) {
  // Cut at the corner farthest from the first, so that both halves have a line to be measured against.
  std::size_t far = 0;
  for (std::size_t k = 1; k < ring.size(); ++k) {
    if (distance_m(ring[k], ring[0]) > distance_m(ring[far], ring[0])) far = k;
  }
  const auto middle = ring.begin() + static_cast<std::ptrdiff_t>(far);
  std::vector<Point> first(ring.begin(), middle + 1), second(middle, ring.end());
  second.push_back(ring[0]);
  Polygon joined = simpler(first, 0.75 * cell_m);
  const auto rest = simpler(second, 0.75 * cell_m);
  joined.insert(joined.end(), rest.begin(), rest.end());
  return joined;
}

}  // namespace

std::vector<Polygon> patch_rings(const Raster& raster, int loop) {
  auto from = borders(raster, loop);
  const auto place = [&](Corner at) {
    return Point{raster.low.x_m + at.second * raster.cell_m, raster.low.y_m + at.first * raster.cell_m};
  };
  std::vector<Polygon> rings;
  while (!from.empty()) {
    const Corner start = from.begin()->first;
    std::vector<Point> ring;
    for (Corner at = start; ring.empty() || at != start;) {
      ring.push_back(place(at));
      auto& next = from.at(at);
      const Corner to = next.back();
      next.pop_back();
      if (next.empty()) from.erase(at);
      at = to;
    }
    Polygon smooth = smoothed(ring, raster.cell_m);
    if (smooth.size() >= 3) rings.push_back(std::move(smooth));
  }
  return rings;
}

namespace {

/// Loops most hemmed in first; a wrong turn is taken back, within reason: a floor's patches lie in a plane.
class Colouring {
 public:
  Colouring(std::size_t loops, const std::vector<std::pair<int, int>>& pairs, int colours)
      : beside_(loops), colour_(loops, -1), colours_(colours) {
    for (const auto& [a, b] : pairs) {
      beside_[static_cast<std::size_t>(a)].push_back(static_cast<std::size_t>(b));
      beside_[static_cast<std::size_t>(b)].push_back(static_cast<std::size_t>(a));
    }
  }

  std::vector<int> run() {
    if (!search()) {
      std::fill(colour_.begin(), colour_.end(), -1);
      for (std::size_t left = colour_.size(); left > 0; --left) {
        const std::size_t k = most_hemmed();
        colour_[k] = least_used(k);
      }
    }
    return colour_;
  }

 private:
  std::vector<int> used(std::size_t k) const {
    std::vector<int> number(static_cast<std::size_t>(colours_), 0);
    for (const std::size_t other : beside_[k]) {
      if (colour_[other] >= 0) ++number[static_cast<std::size_t>(colour_[other])];
    }
    return number;
  }

  std::size_t most_hemmed() const {
    std::size_t best = colour_.size();
    std::pair<std::ptrdiff_t, std::size_t> most{-1, 0};
    for (std::size_t k = 0; k < colour_.size(); ++k) {
      if (colour_[k] >= 0) continue;
      const auto number = used(k);
      const std::pair<std::ptrdiff_t, std::size_t> now{
          static_cast<std::ptrdiff_t>(number.size()) - std::count(number.begin(), number.end(), 0), beside_[k].size()};
      if (best == colour_.size() || now > most) {
        best = k;
        most = now;
      }
    }
    return best;
  }

  int least_used(std::size_t k) const {
    const auto number = used(k);
    return static_cast<int>(std::min_element(number.begin(), number.end()) - number.begin());
  }

  bool search() {
    const std::size_t k = most_hemmed();
    if (k == colour_.size()) return true;
    if (++steps_ > 20000) return false;
    const auto number = used(k);
    for (int shift = 0; shift < colours_; ++shift) {
      // Each loop begins with another pattern, so that few loops do not all take the first two.
      const int c = static_cast<int>((k + static_cast<std::size_t>(shift)) % static_cast<std::size_t>(colours_));
      if (number[static_cast<std::size_t>(c)] > 0) continue;
      colour_[k] = c;
      if (search()) return true;
      colour_[k] = -1;
    }
    return false;
  }

  std::vector<std::vector<std::size_t>> beside_;
  std::vector<int> colour_;
  int colours_;
  int steps_ = 0;
};

}  // namespace

std::vector<int> unlike(std::size_t loops, const std::vector<std::pair<int, int>>& pairs, int colours) {
  return Colouring(loops, pairs, colours).run();
}

}  // namespace slabwright
