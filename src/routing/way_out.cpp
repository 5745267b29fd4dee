// How much of a loop is its way to its own floor and back.
#include <algorithm>
#include <cmath>
#include <queue>

#include "lay_out.hpp"

namespace slabwright {
namespace {

/// Places on the tube, in spacings; a step goes from one to another this near, and so from a tube to the next one.
constexpr double part = 0.5, stride = 1.3;

/// The way from either end to each place, through places of the same loop.
std::vector<double> ways_m(const std::vector<Point>& place, double stride_m) {
  std::vector<double> way(place.size(), HUGE_VAL);
  using Reached = std::pair<double, std::size_t>;
  std::priority_queue<Reached, std::vector<Reached>, std::greater<>> next;
  for (const std::size_t end : {std::size_t{0}, place.size() - 1}) {
    way[end] = 0.0;
    next.push({0.0, end});
  }
  while (!next.empty()) {
    const auto [at_m, k] = next.top();
    next.pop();
    if (at_m > way[k]) continue;
    for (std::size_t other = 0; other < place.size(); ++other) {
      if (std::abs(place[other].x_m - place[k].x_m) > stride_m || std::abs(place[other].y_m - place[k].y_m) > stride_m)
        continue;
      const double step_m = distance_m(place[k], place[other]);
      if (step_m > stride_m || at_m + step_m >= way[other]) continue;
      way[other] = at_m + step_m;
      next.push({way[other], other});
    }
  }
  return way;
}

}  // namespace

double way_out_m(const Path& path, double spacing_m) {
  if (path.empty()) return 0.0;
  const double all_m = length_m(path);
  const int parts = std::max(2, static_cast<int>(std::ceil(all_m / (part * spacing_m))));
  std::vector<Point> place;
  for (int k = 0; k <= parts; ++k) place.push_back(point_at(path, all_m * k / parts));
  std::vector<double> way = ways_m(place, stride * spacing_m);
  std::nth_element(way.begin(), way.begin() + parts / 2, way.end());
  return 2.0 * way[static_cast<std::size_t>(parts / 2)];
}

std::vector<BetterPlace> better_places(const Design& design, const Progress& progress) {
  std::vector<BetterPlace> all;
  const auto task = layout_task(design);
  if (!task || !task->drawn.empty()) return all;
  for (std::size_t m = 0; m < task->manifold.size(); ++m) {
    const Progress of_one = part_of(progress, m, task->manifold.size());
    if (const auto better = better_place(*task, m, of_one)) all.push_back({m, better->place.x_m, better->place.y_m});
  }
  return all;
}

}  // namespace slabwright
