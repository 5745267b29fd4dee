#include "heat.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::routing {

double loss_ratio_at(const LayoutTask& task, Point place) {
  double most = 0.0;
  for (const LossArea& area : task.loss) {
    if (area.loss_ratio > most && where_is(place, area.outline) != Where::outside) most = area.loss_ratio;
  }
  return most > 0.0 ? most : 1.0;
}

double heat_m(const LayoutTask& task, const Path& path) {
  if (task.loss.empty()) return length_m(path);
  const double step_m = 0.25 * task.spacing_m;
  double sum = 0.0;
  for (const Piece& piece : path) {
    const std::span<const Piece> one(&piece, 1);
    const double whole_m = length_m(one);
    const int parts = std::max(1, static_cast<int>(std::ceil(whole_m / step_m)));
    for (int p = 0; p < parts; ++p) {
      sum += whole_m / parts * loss_ratio_at(task, point_at(one, whole_m * (p + 0.5) / parts));
    }
  }
  return sum;
}

}  // namespace slabwright::routing
