// Tube for the tests of what is drilled and staked out.
#pragma once
#include <vector>

#include "slabwright/geometry_path.hpp"

namespace slabwright::test {

/// One loop to and fro: `rows` lines `length_m` long along x, `spacing_m` apart, from (0, 0) up.
inline Path to_and_fro(int rows, double length_m, double spacing_m) {
  std::vector<Point> corners;
  for (int row = 0; row < rows; ++row) {
    const double y = row * spacing_m;
    corners.push_back({row % 2 == 0 ? 0.0 : length_m, y});
    corners.push_back({row % 2 == 0 ? length_m : 0.0, y});
  }
  return rounded(corners, 0.5 * spacing_m);
}

}  // namespace slabwright::test
