#include "slabwright/progress.hpp"

#include <algorithm>
#include <string>

namespace slabwright {

Progress part_of(const Progress& whole, double from, double to) {
  if (!whole) return {};
  return [whole, from, to](double share) { whole(share >= 1.0 ? to : std::min(to, from + share * (to - from))); };
}

Progress part_of(const Progress& whole, std::size_t row, std::size_t parts) {
  const double all = static_cast<double>(parts);
  return part_of(whole, static_cast<double>(row) / all, static_cast<double>(row + 1) / all);
}

Progress try_of(const Progress& whole, int row) {
  double left = 1.0;
  for (int k = 0; k < row; ++k) left *= 0.5;
  return part_of(whole, 1.0 - left, 1.0 - 0.5 * left);
}

void tell(const Progress& progress, double share) {
  if (progress) progress(share);
}

Progress work_of(const Works& works, std::string_view name) {
  if (!works) return {};
  return [works, name = std::string(name)](double share) { works(name, share); };
}

}  // namespace slabwright
