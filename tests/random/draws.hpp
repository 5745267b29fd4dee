// Drawn numbers: the same on every compiler, because only the engine is the standard library's.
#pragma once
#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

namespace slabwright::test {

class Draws {
 public:
  explicit Draws(std::uint64_t seed);
  double unit();  ///< from 0 to below 1, in steps of 2^-53
  bool chance(double share);
  int whole(int least, int most);
  double between(double low, double high);
  /// As often below the geometric mean as above it; low > 0. Made with square roots, which are the same everywhere.
  double by_ratio(double low, double high);
  template <class T>
  const T& of(const std::vector<T>& all) {
    return all[static_cast<std::size_t>(whole(0, static_cast<int>(all.size()) - 1))];
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace slabwright::test
