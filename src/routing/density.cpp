// How much tube lies on the densest square of an apron.
#include "density.hpp"

#include <algorithm>
#include <cmath>
#include "vectors.hpp"

namespace slabwright::routing {
namespace {

/// Squares are looked at a quarter of a spacing apart; tube is counted in parts of that.
constexpr int steps_per_spacing = 4, square_steps = static_cast<int>(density_square) * steps_per_spacing;
constexpr double parts_of_step = 16.0;

double densest(const Box& box, double step_m, const std::vector<std::vector<Point>>& lines) {
  const int columns = static_cast<int>((box.most.x_m - box.least.x_m) / step_m) + 1;
  const int rows = static_cast<int>((box.most.y_m - box.least.y_m) / step_m) + 1;
  // Sums of all tube to the left and below.
  std::vector<double> sum_m(static_cast<std::size_t>((columns + 1) * (rows + 1)), 0.0);
  const auto at = [&](int i, int j) { return static_cast<std::size_t>(j * (columns + 1) + i); };
  for (const auto& line : lines) {
    for (std::size_t c = 0; c + 1 < line.size(); ++c) {
      // The last column and row reach beyond the box.
      if (apart(box_of(line[c], line[c + 1]), box, 2.0 * step_m)) continue;
      const double length = distance_m(line[c], line[c + 1]);
      const int parts = static_cast<int>(std::ceil(parts_of_step * length / step_m));
      for (int p = 0; p < parts; ++p) {
        const double share = (p + 0.5) / parts;
        const int i = static_cast<int>(
            std::floor((line[c].x_m + share * (line[c + 1].x_m - line[c].x_m) - box.least.x_m) / step_m));
        const int j = static_cast<int>(
            std::floor((line[c].y_m + share * (line[c + 1].y_m - line[c].y_m) - box.least.y_m) / step_m));
        if (i >= 0 && j >= 0 && i < columns && j < rows) sum_m[at(i + 1, j + 1)] += length / parts;
      }
    }
  }
  for (int j = 1; j <= rows; ++j) {
    for (int i = 1; i <= columns; ++i)
      sum_m[at(i, j)] += sum_m[at(i - 1, j)] + sum_m[at(i, j - 1)] - sum_m[at(i - 1, j - 1)];
  }
  double most_m = 0.0;
  for (int j = square_steps; j <= rows; ++j) {
    for (int i = square_steps; i <= columns; ++i) {
      const int x = i - square_steps, y = j - square_steps;
      most_m = std::max(most_m, sum_m[at(i, j)] - sum_m[at(x, j)] - sum_m[at(i, y)] + sum_m[at(x, y)]);
    }
  }
  const double side_m = square_steps * step_m;
  return most_m / (side_m * side_m);
}

}  // namespace

std::vector<double> densest_squares(double spacing_m, const std::vector<Polygon>& apron,
                                    const std::vector<Path>& tube) {
  std::vector<std::vector<Point>> lines;
  for (const Path& path : tube) {
    if (!path.empty()) lines.push_back(flattened(path, 0.01 * spacing_m));
  }
  std::vector<double> all;
  for (const Polygon& one : apron)
    all.push_back(one.empty() ? 0.0 : densest(box_of(one), spacing_m / steps_per_spacing, lines));
  return all;
}

double densest_apron(const LayoutTask& task, const TubeLayout& layout) {
  std::vector<Path> tube;
  for (const LaidLoop& loop : layout.loop) tube.push_back(loop.path);
  double most = 0.0;
  for (const double m_per_m2 : densest_squares(task.spacing_m, layout.apron, tube)) most = std::max(most, m_per_m2);
  return most;
}

}  // namespace slabwright::routing
