#include "zone_field.hpp"

#include <algorithm>
#include <cmath>
#include <queue>

namespace slabwright::routing {
namespace {

Point middle_of(const Cells& cells, int cell) {
  const Point a = cells.quarter(cell, 0), b = cells.quarter(cell, 2);
  return {0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
}

}  // namespace

FloorField::FloorField(const Cells& cells, const std::vector<double>& weight)
    : x_m_(cells.x_m), y_m_(cells.y_m), below_(index(cells.columns * (cells.rows + 1)), 0.0) {
  for (int i = 0; i < cells.columns; ++i) {
    double sum = 0.0;
    for (int j = 0; j < cells.rows; ++j) {
      const int cell = cells.at(i, j);
      sum += weight[index(cell)] / cells.width_m(cell);
      below_[index(i) * y_m_.size() + index(j) + 1] = sum;
    }
  }
}

double FloorField::below(std::size_t column, double y_m) const {
  const double* sums = &below_[column * y_m_.size()];
  if (y_m <= y_m_.front()) return 0.0;
  if (y_m >= y_m_.back()) return sums[y_m_.size() - 1];
  const auto above = static_cast<std::size_t>(std::upper_bound(y_m_.begin(), y_m_.end(), y_m) - y_m_.begin());
  const double share = (y_m - y_m_[above - 1]) / (y_m_[above] - y_m_[above - 1]);
  return sums[above - 1] + share * (sums[above] - sums[above - 1]);
}

double FloorField::within(const Polygon& polygon) const {
  double sum = 0.0;
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    const Point a = polygon[k], b = polygon[k + 1 < polygon.size() ? k + 1 : 0];
    const double from = std::min(a.x_m, b.x_m), to = std::max(a.x_m, b.x_m);
    if (from == to) continue;
    const double sign = b.x_m > a.x_m ? -1.0 : 1.0, slope = (b.y_m - a.y_m) / (b.x_m - a.x_m);
    const auto first = std::upper_bound(x_m_.begin(), x_m_.end(), from) - x_m_.begin();
    for (auto i = static_cast<std::size_t>(std::max<std::ptrdiff_t>(1, first)); i < x_m_.size(); ++i) {
      const double left = std::max(from, x_m_[i - 1]), right = std::min(to, x_m_[i]);
      if (left >= to) break;
      const double y_m = a.y_m + slope * (0.5 * (left + right) - a.x_m);
      sum += sign * (right - left) * below(i - 1, y_m);
    }
  }
  return sum;
}

std::vector<double> way_to_cells_m(const Cells& cells, Point from) {
  std::vector<double> way_m(index(cells.size()), -1.0);
  int first = -1;
  for (int cell = 0; cell < cells.size(); ++cell) {
    if (cells.is(cell) != Kind::free) continue;
    if (first < 0 || distance_m(middle_of(cells, cell), from) < distance_m(middle_of(cells, first), from)) first = cell;
  }
  if (first < 0) return way_m;
  using Place = std::pair<double, int>;
  std::priority_queue<Place, std::vector<Place>, std::greater<>> open;
  open.push({distance_m(middle_of(cells, first), from), first});
  while (!open.empty()) {
    const auto [at_m, cell] = open.top();
    open.pop();
    if (way_m[index(cell)] >= 0.0) continue;
    way_m[index(cell)] = at_m;
    for (Way way = 0; way < 4; ++way) {
      if (!cells.passes(cell, way) || way_m[index(cells.next(cell, way))] >= 0.0) continue;
      const int other = cells.next(cell, way);
      open.push({at_m + distance_m(middle_of(cells, cell), middle_of(cells, other)), other});
    }
  }
  return way_m;
}

}  // namespace slabwright::routing
