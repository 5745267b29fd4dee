// How high curves stand, column by column across a panel: what words beside a curve need to know.
#pragma once
#include <vector>

#include "plot_parts.hpp"

namespace slabwright::drawn {

constexpr double slice_m = 0.5 * mm;

/// Rows are columns from the panel's left side on; empty ones have `low` above `high`.
struct Profile {
  double left_m = 0.0;
  std::vector<double> low, high;

  bool empty(std::size_t column) const { return low[column] > high[column]; }
  double middle_m(std::size_t column) const { return left_m + slice_m * (static_cast<double>(column) + 0.5); }
};
Profile profile_of(const std::vector<Stroke>& parts, const Box& area);

/// From the box to the nearest place of the curve, as far as `most_m`; 0 where it lies on it.
double distance_to_profile_m(const Box& box, const Profile& profile, double most_m);

/// Places beside curve `own` for words so large, above, below, left or right of it; the first are farthest from all
/// other curves. None is nearer to another curve than to its own.
std::vector<LabelSpot> spots_beside(const std::vector<Profile>& curves, std::size_t own, const TextBlock& block,
                                    const Box& area);

/// The place on the curve that is farthest from the others. Empty where nothing of it is seen.
std::optional<Point> loneliest(const std::vector<Profile>& curves, std::size_t own);

}  // namespace slabwright::drawn
