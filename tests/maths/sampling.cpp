// Points spread evenly: what is proved of Sobol's sequence holds for every seed, and means are better for it.
#include "slabwright/maths_sampling.hpp"

#include <array>
#include <cmath>
#include <cstring>
#include <limits>
#include <numeric>
#include <random>
#include <set>

#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr std::size_t dimensions = sample_dimensions_most;

/// Of the polynomial of each dimension; the first has digits turned round, which is as good as degree 1.
constexpr std::array<unsigned, dimensions> degree{1, 1, 2, 3, 3, 4, 4, 5, 5, 5, 5, 5};

/// Most points in one rectangle of 2^a by 2^b equal ones, less fewest.
int unevenness(const SamplePoints& points, std::size_t i, std::size_t j, unsigned a, unsigned b) {
  std::vector<int> in(std::size_t{1} << (a + b), 0);
  for (const auto& point : points) {
    const auto x = static_cast<std::size_t>(std::ldexp(point[i], static_cast<int>(a)));
    const auto y = static_cast<std::size_t>(std::ldexp(point[j], static_cast<int>(b)));
    ++in[(x << b) + y];
  }
  return *std::max_element(in.begin(), in.end()) - *std::min_element(in.begin(), in.end());
}

/// Smallest t of a (t, m, 2)-net: in rectangles of area 2^(t-m) or more, of every shape, are points as area has it.
unsigned net_quality(const SamplePoints& points, std::size_t i, std::size_t j, unsigned m) {
  for (unsigned fine = m; fine > 0; --fine) {
    bool even = true;
    for (unsigned a = 0; a <= fine && even; ++a) even = unevenness(points, i, j, a, fine - a) == 0;
    if (even) return m - fine;
  }
  return m;
}

/// Smooth, in six dimensions, of mean 1.
double smooth(const std::vector<double>& x) {
  double sum = 0.0;
  for (std::size_t d = 0; d < 6; ++d) sum += x[d] / static_cast<double>(d + 1);
  double mean = 1.0;
  for (std::size_t d = 0; d < 6; ++d) mean *= std::expm1(1.0 / static_cast<double>(d + 1)) * static_cast<double>(d + 1);
  return std::exp(sum) / mean;
}

SamplePoints plain_random(std::size_t count, std::uint64_t seed) {
  std::mt19937_64 engine(seed);
  SamplePoints points(count, std::vector<double>(6));
  for (auto& point : points)
    for (double& x : point) x = static_cast<double>(engine() >> 11) * 0x1p-53;
  return points;
}

/// Root mean square over seeds of the error of the mean.
template <class Points>
double error_of_mean(const Points& points_of) {
  double squares = 0.0;
  for (std::uint64_t seed = 1; seed <= 16; ++seed) {
    double sum = 0.0;
    const SamplePoints points = points_of(seed);
    for (const auto& point : points) sum += smooth(point);
    squares += std::pow(sum / static_cast<double>(points.size()) - 1.0, 2);
  }
  return std::sqrt(squares / 16.0);
}

double error_of_sequence(std::size_t count) {
  return error_of_mean([&](std::uint64_t seed) { return quasi_random(count, 6, seed); });
}

/// Fowler, Noll and Vo's sum over the bits of all numbers in turn.
std::uint64_t bits_of(const SamplePoints& points) {
  std::uint64_t sum = 0xcbf29ce484222325u;
  for (const auto& point : points)
    for (const double x : point) {
      std::uint64_t bits = 0;
      std::memcpy(&bits, &x, sizeof bits);
      for (int byte = 0; byte < 8; ++byte) sum = (sum ^ (bits >> (8 * byte) & 0xffu)) * 0x100000001b3u;
    }
  return sum;
}

}  // namespace

TEST_CASE("each coordinate has one point in each cell, also further on in the sequence") {
  for (const std::uint64_t seed : {0u, 1u, 20240117u})
    for (const std::size_t count : {8u, 256u, 4096u}) {
      const SamplePoints all = quasi_random(3 * count, dimensions, seed);
      for (std::size_t block = 0; block < 3; ++block)
        for (std::size_t d = 0; d < dimensions; ++d) {
          std::set<long> cells;
          for (std::size_t i = block * count; i < (block + 1) * count; ++i) {
            REQUIRE((all[i][d] >= 0.0 && all[i][d] < 1.0));
            cells.insert(std::lround(std::floor(all[i][d] * static_cast<double>(count))));
          }
          CHECK(cells.size() == count);
        }
    }
}

TEST_CASE("each pair of coordinates is a net of the proved quality, scrambled or not") {
  for (const unsigned m : {4u, 7u, 10u}) {
    const SamplePoints plain = sobol_points(std::size_t{1} << m, dimensions);
    const SamplePoints scrambled = quasi_random(std::size_t{1} << m, dimensions, 7);
    for (std::size_t i = 0; i < dimensions; ++i)
      for (std::size_t j = 0; j < i; ++j) {
        CAPTURE(m, i, j);
        const unsigned quality = net_quality(scrambled, j, i, m);
        // Sobol 1967; Niederreiter, Random Number Generation (1992), theorem 4.49: the sum of degrees less one.
        CHECK(quality <= degree[i] + degree[j] - 2);
        CHECK(quality == net_quality(plain, j, i, m));
      }
  }
}

TEST_CASE("plain random points are no such net: the measure can fail") {
  CHECK(net_quality(plain_random(1024, 1), 0, 1, 10) > 3);
}

TEST_CASE("the error of a mean falls as 1 / n and is far below plain random points'") {
  const double few = error_of_sequence(256), more = error_of_sequence(1024), most = error_of_sequence(4096);
  const double random = error_of_mean([](std::uint64_t seed) { return plain_random(4096, seed); });
  CAPTURE(few, more, most, random);
  CHECK(most < few / 16.0);
  CHECK(more < few / 3.0);
  CHECK(most < random / 10.0);
}

TEST_CASE("a mean over seeds has no bias") {
  // 256 seeds of 16 points: each point alone is spread evenly.
  double sum = 0.0, squares = 0.0;
  for (std::uint64_t seed = 0; seed < 256; ++seed) {
    double mean = 0.0;
    for (const auto& point : quasi_random(16, 6, seed)) mean += smooth(point) / 16.0;
    sum += mean - 1.0;
    squares += (mean - 1.0) * (mean - 1.0);
  }
  CHECK(std::abs(sum / 256.0) < 3.0 * std::sqrt(squares) / 256.0);
}

TEST_CASE("two seeds differ in every dimension; one seed is the same bytes everywhere") {
  const SamplePoints one = quasi_random(64, dimensions, 1), two = quasi_random(64, dimensions, 2);
  for (std::size_t i = 0; i < 64; ++i)
    for (std::size_t d = 0; d < dimensions; ++d) CHECK(one[i][d] != two[i][d]);
  for (std::size_t d = 1; d < dimensions; ++d) CHECK(one[5][d] != one[5][0]);
  CHECK(bits_of(one) == bits_of(quasi_random(64, dimensions, 1)));
  // Written down when the sequence was made: a change of it moves every band.
  CHECK(bits_of(one) == 0xec5e6d6e8f8384edu);
  CHECK(bits_of(quasi_random(1000, 7, 0xffffffffffffffffu)) == 0x6cfb212b5455548eu);
}

TEST_CASE("more points and more dimensions leave those before as they are") {
  const SamplePoints small = quasi_random(100, 3, 5), large = quasi_random(1000, 7, 5);
  for (std::size_t i = 0; i < 100; ++i)
    for (std::size_t d = 0; d < 3; ++d) CHECK(small[i][d] == large[i][d]);
  CHECK(quasi_random(0, 3, 5).empty());
}

TEST_CASE("a quantile is the smallest value that a share does not exceed") {
  std::vector<double> values(100);
  std::iota(values.begin(), values.end(), 1.0);
  std::shuffle(values.begin(), values.end(), std::mt19937_64(3));
  CHECK(quantile(values, 0.0) == 1.0);
  CHECK(quantile(values, 0.07) == 7.0);  // 0.07 of 100 is a little above 7 in binary
  CHECK(quantile(values, 0.0701) == 8.0);
  CHECK(quantile(values, 1.0) == 100.0);
  const Band band = band_of(values);
  CHECK(band.low == 5.0);
  CHECK(band.middle == 50.0);
  CHECK(band.high == 95.0);
  CHECK(quantile({4.0}, 0.5) == 4.0);
}

TEST_CASE("what does not happen may be infinite in a band") {
  const double never = std::numeric_limits<double>::infinity();
  CHECK(quantile({1.0, never, never}, 0.5) == never);
  CHECK(quantile({1.0, 2.0, never}, 0.5) == 2.0);
  CHECK(band_of({1.0, 2.0, never}).high == never);
}

TEST_CASE("what no sample or quantile can be is refused") {
  CHECK_THROWS(quasi_random(8, 0, 1));
  CHECK_THROWS(quasi_random(8, dimensions + 1, 1));
  CHECK_THROWS(sobol_points((std::size_t{1} << 32) + 1, 1));
  CHECK_THROWS(quantile({}, 0.5));
  CHECK_THROWS(quantile({1.0, std::numeric_limits<double>::quiet_NaN()}, 0.5));
  CHECK_THROWS(quantile({1.0}, 1.1));
  CHECK_THROWS(quantile({1.0}, -0.1));
}
