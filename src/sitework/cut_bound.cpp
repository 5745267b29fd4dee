// What coils must cost at least.
#include <algorithm>
#include <bitset>
#include <cmath>

#include "sitework/cut_search.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::sitework {
namespace {

constexpr std::size_t cells = 16384;
using Sums = std::bitset<cells + 1>;

/// The largest of the sums up to `most`, which has one.
std::size_t largest(const Sums& sums, std::size_t most) {
  while (most > 0 && !sums[most]) --most;
  return most;
}

/// Every coil as a whole number of this unit; nothing where one is not.
std::optional<std::vector<std::size_t>> whole(const std::vector<double>& coils_m, double unit_m) {
  std::vector<std::size_t> numbers;
  for (const double coil_m : coils_m) {
    const double number = std::floor(coil_m / unit_m + 0.5);
    if (number < 1.0 || std::abs(coil_m - number * unit_m) > rounding_m) return std::nullopt;
    numbers.push_back(static_cast<std::size_t>(number));
  }
  return numbers;
}

}  // namespace

std::optional<double> shortest_coil(const std::vector<double>& rising_m, double length_m) {
  const auto coil = std::lower_bound(rising_m.begin(), rising_m.end(), length_m - rounding_m);
  if (coil == rising_m.end()) return std::nullopt;
  return *coil;
}

std::vector<double> least_shares_m(const std::vector<double>& pieces_m, const std::vector<double>& rising_m) {
  const double cell_m = rising_m.back() / static_cast<double>(cells);
  const auto rounded_down = [&](double m) { return static_cast<std::size_t>(std::min(m / cell_m, double{cells})); };
  const double shortest_m = *std::min_element(pieces_m.begin(), pieces_m.end());
  std::vector<double> shares_m;
  for (std::size_t i = 0; i < pieces_m.size(); ++i) {
    Sums with;
    with.set(rounded_down(pieces_m[i]));
    for (std::size_t other = 0; other < pieces_m.size(); ++other)
      if (other != i) with |= with << rounded_down(pieces_m[other]);
    double share_m = rising_m.back();
    for (const double coil_m : rising_m) {
      if (pieces_m[i] > coil_m + rounding_m) continue;
      // Each piece in the coil was rounded down by less than a cell.
      const double lost_m = cell_m * (1.0 + std::floor(coil_m / shortest_m + rounding_m));
      const double fill_m = cell_m * static_cast<double>(largest(with, rounded_down(coil_m + rounding_m))) + lost_m;
      share_m = std::min(share_m, pieces_m[i] * coil_m / std::min(fill_m, coil_m));
    }
    shares_m.push_back(share_m);
  }
  return shares_m;
}

CoilSums::CoilSums(const std::vector<double>& coils_m, double most_m) {
  auto numbers = whole(coils_m, foot_m);
  unit_m_ = foot_m;
  if (!numbers) {
    numbers = whole(coils_m, 1.0);
    unit_m_ = 1.0;
  }
  if (!numbers) return;
  // Up to the first sum past `most_m` at least.
  const std::size_t size = static_cast<std::size_t>(most_m / unit_m_) + 2 + numbers->back();
  std::vector<bool> sum(size, false);
  sum[0] = true;
  for (std::size_t at = 1; at < size; ++at)
    sum[at] = std::any_of(numbers->begin(), numbers->end(), [&](std::size_t n) { return n <= at && sum[at - n]; });
  next_.assign(size, size);
  for (std::size_t at = size; at-- > 0;) next_[at] = sum[at] ? at : at + 1 < size ? next_[at + 1] : size;
}

double CoilSums::next_m(double length_m) const {
  if (next_.empty() || length_m <= 0.0) return std::max(length_m, 0.0);
  // A share is good to rounding: less than a millionth of a foot over a sum is that sum.
  const auto at = static_cast<std::size_t>(std::ceil(length_m / unit_m_ - 1e-6));
  if (at >= next_.size() || next_[at] >= next_.size()) return length_m;
  return static_cast<double>(next_[at]) * unit_m_;
}

}  // namespace slabwright::sitework
