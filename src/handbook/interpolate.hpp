// Linear reading of printed tables, held at the ends.
#pragma once
#include <algorithm>
#include <array>
#include <cstddef>

namespace slabwright::handbook {

/// The row at or before x and how far x lies towards the next, 0 to 1.
struct Place {
  std::size_t row = 0;
  double beyond_share = 0.0;
};

template <std::size_t N>
Place place_in(const std::array<double, N>& xs, double x) {
  if (x <= xs.front()) return {0, 0.0};
  if (x >= xs.back()) return {N - 2, 1.0};
  const auto after = std::upper_bound(xs.begin(), xs.end(), x);
  const auto row = static_cast<std::size_t>(after - xs.begin()) - 1;
  return {row, (x - xs[row]) / (xs[row + 1] - xs[row])};
}

template <std::size_t N>
double interpolate(const std::array<double, N>& xs, const std::array<double, N>& ys, double x) {
  const Place at = place_in(xs, x);
  return ys[at.row] + at.beyond_share * (ys[at.row + 1] - ys[at.row]);
}

/// `table` holds one row of values over `columns` for each of `rows`.
template <std::size_t R, std::size_t C>
double interpolate(const std::array<double, R>& rows, const std::array<double, C>& columns,
                   const std::array<std::array<double, C>, R>& table, double row, double column) {
  const Place at = place_in(rows, row);
  const double here = interpolate(columns, table[at.row], column);
  const double next = interpolate(columns, table[at.row + 1], column);
  return here + at.beyond_share * (next - here);
}

}  // namespace slabwright::handbook
