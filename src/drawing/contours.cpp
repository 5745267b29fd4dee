// Lines of equal temperature through a raster.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "slabwright/contract.hpp"
#include "slabwright/drawing_warmth.hpp"

namespace slabwright {
namespace {

/// Beyond the floor's rim: so many cells that have a neighbour's temperature, and one that is colder than all.
constexpr int ring_cells = 2, rim_cells = ring_cells + 1;
constexpr double colder_degC = -1e6;

/// Middles of cells as knots of a net.
struct Net {
  Point low;
  double side_m = 0.0;
  int columns = 0, rows = 0;
  std::vector<double> degC;
  std::vector<bool> known;

  std::size_t index(int i, int j) const {
    return static_cast<std::size_t>(j) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(i);
  }
  bool holds(int i, int j) const { return i >= 0 && j >= 0 && i < columns && j < rows; }
};

/// Each knot that is not known but has neighbours that are takes their mean.
void spread(Net& net) {
  const std::vector<bool> known = net.known;
  const std::vector<double> degC = net.degC;
  for (int j = 0; j < net.rows; ++j) {
    for (int i = 0; i < net.columns; ++i) {
      if (known[net.index(i, j)]) continue;
      double sum = 0.0, number = 0.0;
      for (int n = 0; n < 9; ++n) {
        const int x = i + n % 3 - 1, y = j + n / 3 - 1;
        if (!net.holds(x, y) || !known[net.index(x, y)]) continue;
        sum += degC[net.index(x, y)];
        number += 1.0;
      }
      if (number <= 0.0) continue;
      net.degC[net.index(i, j)] = sum / number;
      net.known[net.index(i, j)] = true;
    }
  }
}

Net net_of(const DrawnWarmth& warmth) {
  const int columns = static_cast<int>(warmth.columns), rows = static_cast<int>(warmth.rows);
  Net net{
      {warmth.corner.x_m + (0.5 - rim_cells) * warmth.cell_m, warmth.corner.y_m + (0.5 - rim_cells) * warmth.cell_m},
      warmth.cell_m,
      columns + 2 * rim_cells,
      rows + 2 * rim_cells,
      {},
      {}};
  const std::size_t number = static_cast<std::size_t>(net.columns) * static_cast<std::size_t>(net.rows);
  net.degC.assign(number, colder_degC);
  net.known.assign(number, false);
  for (int j = 0; j < rows; ++j) {
    for (int i = 0; i < columns; ++i) {
      const std::size_t cell = static_cast<std::size_t>(j) * warmth.columns + static_cast<std::size_t>(i);
      if (!warmth.on_floor[cell]) continue;
      net.degC[net.index(i + rim_cells, j + rim_cells)] = warmth.degC[cell];
      net.known[net.index(i + rim_cells, j + rim_cells)] = true;
    }
  }
  for (int n = 0; n < ring_cells; ++n) spread(net);
  return net;
}

class Rings {
 public:
  Rings(const Net& net, double level_degC) : net_(net), level_(level_degC) {}

  std::vector<Polygon> run() {
    for (int j = 0; j + 1 < net_.rows; ++j) {
      for (int i = 0; i + 1 < net_.columns; ++i) square(i, j);
    }
    std::vector<Polygon> rings;
    while (!next_.empty()) {
      Polygon ring;
      for (auto at = next_.begin(); at != next_.end(); at = next_.find(to_)) {
        ring.push_back(crossing(at->first));
        to_ = at->second;
        next_.erase(at);
      }
      rings.push_back(std::move(ring));
    }
    return rings;
  }

 private:
  using Line = std::pair<std::pair<int, int>, bool>;  ///< row, column of its lower left knot; upright

  bool warm(int i, int j) const { return net_.degC[net_.index(i, j)] >= level_; }

  /// Round a square of knots, from its lower left one to the left: where warm turns to cold a line goes in, where cold
  /// turns to warm one comes out. Where two go in, the mean of the knots says which out belongs to which.
  void square(int i, int j) {
    const std::array<bool, 4> corner{warm(i, j), warm(i + 1, j), warm(i + 1, j + 1), warm(i, j + 1)};
    const std::array<Line, 4> side{Line{{j, i}, false}, {{j, i + 1}, true}, {{j + 1, i}, false}, {{j, i}, true}};
    double sum = 0.0;
    for (int n = 0; n < 4; ++n) sum += net_.degC[net_.index(i + n % 2, j + n / 2)];
    const bool two = corner[0] == corner[2] && corner[1] == corner[3] && corner[0] != corner[1];
    for (std::size_t n = 0; n < 4; ++n) {
      if (!corner[n] || corner[(n + 1) % 4]) continue;
      std::size_t out = (n + 1) % 4;
      if (two)
        out = 0.25 * sum >= level_ ? (n + 1) % 4 : (n + 3) % 4;
      else
        while (corner[out] || !corner[(out + 1) % 4]) out = (out + 1) % 4;
      next_[side[n]] = side[out];
    }
  }

  Point crossing(const Line& line) const {
    const auto [j, i] = line.first;
    const double a = net_.degC[net_.index(i, j)];
    const double b = line.second ? net_.degC[net_.index(i, j + 1)] : net_.degC[net_.index(i + 1, j)];
    const double share = std::clamp((level_ - a) / (b - a), 0.0, 1.0);
    return {net_.low.x_m + net_.side_m * (i + (line.second ? 0.0 : share)),
            net_.low.y_m + net_.side_m * (j + (line.second ? share : 0.0))};
  }

  const Net& net_;
  double level_;
  Line to_{};
  std::map<Line, Line> next_;
};

}  // namespace

std::vector<Polygon> warmer_than(const DrawnWarmth& warmth, double level_degC) {
  expects(warmth.cell_m > 0.0 && warmth.degC.size() == warmth.columns * warmth.rows &&
              warmth.on_floor.size() == warmth.degC.size(),
          "warmer_than: cells that fit");
  return Rings(net_of(warmth), level_degC).run();
}

std::vector<double> contour_levels_degC(const DrawnWarmth& warmth, System system) {
  constexpr std::size_t most_levels = 8;
  double low = 1e9, high = -1e9;
  for (std::size_t i = 0; i < warmth.degC.size(); ++i) {
    if (!warmth.on_floor[i]) continue;
    low = std::min(low, warmth.degC[i]);
    high = std::max(high, warmth.degC[i]);
  }
  const bool us = system == System::us;
  const auto own = [&](double degC) { return us ? 1.8 * degC + 32.0 : degC; };
  std::vector<double> levels;
  for (const double step : {0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0}) {
    if (us && step < 1.0) continue;
    levels.clear();
    for (double at = step * std::ceil(own(low) / step); at <= own(high) && levels.size() <= most_levels; at += step)
      levels.push_back(us ? (at - 32.0) / 1.8 : at);
    if (levels.size() <= most_levels) break;
  }
  return levels;
}

}  // namespace slabwright
