// Sobol's sequence, scrambled by a seed. Whole numbers throughout; the last step to a double is exact.
#include "slabwright/maths_sampling.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

constexpr std::size_t digits = 32;

/// What makes a dimension: a primitive polynomial over the two-element field, and the odd numbers it starts from.
struct Direction {
  unsigned degree;
  unsigned inner;  // coefficients between the first and the last, both of which are 1; the highest power first
  std::array<std::uint32_t, 5> start;
};

// Dimensions 2 to 12; the first has no polynomial. Joe and Kuo 2008, set D(6).
constexpr std::array<Direction, sample_dimensions_most - 1> directions{{{1, 0, {1}},
                                                                        {2, 1, {1, 3}},
                                                                        {3, 1, {1, 3, 1}},
                                                                        {3, 2, {1, 1, 1}},
                                                                        {4, 1, {1, 1, 3, 3}},
                                                                        {4, 4, {1, 3, 5, 13}},
                                                                        {5, 2, {1, 1, 5, 5, 17}},
                                                                        {5, 4, {1, 1, 5, 5, 5}},
                                                                        {5, 7, {1, 1, 7, 11, 19}},
                                                                        {5, 11, {1, 1, 5, 1, 1}},
                                                                        {5, 13, {1, 1, 1, 3, 11}}}};

using Columns = std::array<std::uint32_t, digits>;

/// What each digit of a point's number turns over, the first digit after the point on top.
Columns columns_of(std::size_t dimension) {
  Columns columns{};
  if (dimension == 0) {
    for (std::size_t k = 0; k < digits; ++k) columns[k] = 1u << (digits - 1 - k);
    return columns;
  }
  const Direction& of = directions[dimension - 1];
  for (std::size_t k = 0; k < digits; ++k) {
    if (k < of.degree) {
      columns[k] = of.start[k] << (digits - 1 - k);
      continue;
    }
    columns[k] = columns[k - of.degree] ^ (columns[k - of.degree] >> of.degree);
    for (unsigned i = 1; i < of.degree; ++i)
      if ((of.inner >> (of.degree - 1 - i) & 1u) != 0) columns[k] ^= columns[k - i];
  }
  return columns;
}

/// Spreads a change of any digit over all of them (Steele, Lea and Flood 2014).
std::uint64_t mixed(std::uint64_t x) {
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9u;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebu;
  return x ^ (x >> 31);
}

constexpr std::uint64_t stride = 0x9e3779b97f4a7c15u;

/// Chance by place in the tree of digits: a node is a leading 1 and the digits so far.
std::uint64_t chance_at(std::uint64_t key, std::uint64_t node) { return mixed(key + stride * node); }

/// Digits beyond the 32 are 0 in the sequence, so that scrambled they are chance alone: 21 more fill a double.
double scrambled(std::uint32_t x, std::uint64_t key) {
  std::uint64_t node = 1, done = 0;
  for (std::size_t k = 0; k < digits; ++k) {
    const std::uint64_t digit = x >> (digits - 1 - k) & 1u;
    done = done << 1 | (digit ^ chance_at(key, node) >> 63);
    node = node << 1 | digit;
  }
  return static_cast<double>(done << 21 | chance_at(key, node) >> 43) * 0x1p-53;
}

double plain(std::uint32_t x) { return static_cast<double>(x) * 0x1p-32; }

std::size_t trailing_ones(std::size_t n) {
  std::size_t k = 0;
  for (; (n & 1u) != 0; n >>= 1) ++k;
  return k;
}

template <class ToDouble>
SamplePoints sequence(std::size_t count, std::size_t dimensions, const ToDouble& to_double) {
  expects(dimensions >= 1 && dimensions <= sample_dimensions_most, "a sequence of points has 1 to 12 dimensions");
  expects((static_cast<std::uint64_t>(count) >> digits) == 0, "a sequence of points ends at 2^32");
  SamplePoints points(count, std::vector<double>(dimensions));
  for (std::size_t d = 0; d < dimensions; ++d) {
    const Columns columns = columns_of(d);
    std::uint32_t x = 0;
    for (std::size_t i = 0; i < count; ++i) {
      points[i][d] = to_double(x, d);
      if (i + 1 < count) x ^= columns[trailing_ones(i)];
    }
  }
  return points;
}

double of_sorted(const std::vector<double>& sorted, double share) {
  expects(share >= 0.0 && share <= 1.0, "a share is 0 to 1");
  // 0.07 of 100 is 7 and a rounding; that must not become the eighth.
  const double rank = std::ceil(share * static_cast<double>(sorted.size()) * (1.0 - 1e-12));
  return sorted[rank < 1.0 ? 0 : static_cast<std::size_t>(rank) - 1];
}

std::vector<double> sorted(std::vector<double> values) {
  expects(!values.empty(), "a quantile of no values");
  for (const double value : values) expects(!std::isnan(value), "a quantile of values that are no numbers");
  std::sort(values.begin(), values.end());
  return values;
}

}  // namespace

SamplePoints sobol_points(std::size_t count, std::size_t dimensions) {
  return sequence(count, dimensions, [](std::uint32_t x, std::size_t) { return plain(x); });
}

SamplePoints quasi_random(std::size_t count, std::size_t dimensions, std::uint64_t seed) {
  return sequence(count, dimensions, [seed](std::uint32_t x, std::size_t d) {
    return scrambled(x, mixed(mixed(seed + stride) + stride * (static_cast<std::uint64_t>(d) + 1)));
  });
}

double quantile(std::vector<double> values, double share) { return of_sorted(sorted(std::move(values)), share); }

Band band_of(std::vector<double> values) {
  const std::vector<double> all = sorted(std::move(values));
  return {of_sorted(all, 0.05), of_sorted(all, 0.50), of_sorted(all, 0.95)};
}

}  // namespace slabwright
