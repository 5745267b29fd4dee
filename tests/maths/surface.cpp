// Response surfaces: quadratics come back, errors are what they say, what does not vary is dropped.
#include "slabwright/maths_surface.hpp"

#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "support/catch.hpp"

using namespace slabwright;

namespace {

using Vector = std::vector<double>;
using Values = std::vector<Vector>;

double drawn(double low, double high) {
  return low + (high - low) * static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

/// x as the slow calculation takes it, from the unit box.
SamplePoints in_box(SamplePoints points, const Vector& low, const Vector& high) {
  for (Vector& point : points)
    for (std::size_t d = 0; d < point.size(); ++d) point[d] = low[d] + (high[d] - low[d]) * point[d];
  return points;
}

/// c + sum of s_i x_i + sum of q_ij x_i x_j, summed in its own way.
struct Quadratic {
  double c;
  Vector s;
  Values q;
  double at(const Vector& x) const {
    double sum = c;
    for (std::size_t i = 0; i < x.size(); ++i) {
      sum += s[i] * x[i];
      for (std::size_t j = 0; j < x.size(); ++j) sum += q[i][j] * x[i] * x[j];
    }
    return sum;
  }
};

Quadratic drawn_quadratic(std::size_t dimensions) {
  Quadratic of{drawn(-5.0, 5.0), Vector(dimensions), Values(dimensions, Vector(dimensions))};
  for (std::size_t i = 0; i < dimensions; ++i) {
    of.s[i] = drawn(-5.0, 5.0);
    for (double& q : of.q[i]) q = drawn(-5.0, 5.0);
  }
  return of;
}

double curved(const Vector& x) { return std::exp(0.8 * x[0] - x[1]) + std::sin(2.0 * x[2]) * x[0]; }

template <class Function>
Values values_of(const SamplePoints& points, const Function& function) {
  Values values;
  for (const Vector& point : points) values.push_back({function(point)});
  return values;
}

}  // namespace

TEST_CASE("every quadratic comes back, several at once, in its own units") {
  CHECK(rc::check("quadratics", [] {
    const auto dimensions = static_cast<std::size_t>(*rc::gen::inRange(1, 9));
    const auto seed = static_cast<std::uint64_t>(*rc::gen::inRange(0, 1000));
    Vector low(dimensions), high(dimensions);
    for (std::size_t d = 0; d < dimensions; ++d) {
      low[d] = drawn(-3.0, 3.0);
      high[d] = low[d] + drawn(0.5, 4.0);
    }
    const std::vector<Quadratic> of{drawn_quadratic(dimensions), drawn_quadratic(dimensions)};
    const std::size_t count = surface_terms(dimensions) + 2 * dimensions;
    const SamplePoints points = in_box(surface_points(dimensions, count, seed), low, high);
    Values values;
    for (const Vector& x : points) values.push_back({of[0].at(x), of[1].at(x)});
    const SurfaceFit fit = fit_surface(points, values);
    for (const Vector& x : in_box(quasi_random(50, dimensions, seed + 1), low, high))
      for (std::size_t output = 0; output < 2; ++output) {
        // Values reach some thousands: 1e-10 of them.
        const double size = 1.0 + std::abs(of[output].c) + 50.0 * static_cast<double>(dimensions * dimensions);
        RC_ASSERT(std::abs(surface_value(fit.surface, x, output) - of[output].at(x)) <= 1e-10 * size);
        RC_ASSERT(fit.residual[output] <= 1e-10 * size);
      }
  }));
}

TEST_CASE("the error at further points is what direct calculation says") {
  const SamplePoints points = surface_points(3, 40, 1), further = quasi_random(64, 3, 2);
  const SurfaceFit fit = fit_surface(points, values_of(points, curved));
  const auto errors = surface_error(fit.surface, further, values_of(further, curved));
  double largest = 0.0, squares = 0.0;
  for (const Vector& x : further) {
    const double off = surface_value(fit.surface, x) - curved(x);
    largest = std::max(largest, std::max(off, -off));
    squares += off * off;
  }
  REQUIRE(errors.size() == 1);
  CHECK(errors[0].largest == largest);
  CHECK(errors[0].rms == Approx(std::sqrt(squares / 64.0)).epsilon(1e-14));
  CHECK(errors[0].largest > 1e-3);
  CHECK(errors[0].rms < errors[0].largest);
}

TEST_CASE("half the box has an eighth of the error: the rest is of third degree") {
  const auto error_in = [](double half) {
    const Vector low{0.4 - half, 0.3 - half, 0.2 - half}, high{0.4 + half, 0.3 + half, 0.2 + half};
    const SamplePoints points = in_box(surface_points(3, 40, 1), low, high);
    const SamplePoints further = in_box(quasi_random(256, 3, 2), low, high);
    return surface_error(fit_surface(points, values_of(points, curved)).surface, further,
                         values_of(further, curved))[0];
  };
  const SurfaceError wide = error_in(0.1), narrow = error_in(0.05);
  // The terms of fourth degree, by the halves of the box: up to a tenth of those of third.
  CHECK(wide.rms / narrow.rms == Approx(8.0).epsilon(0.1));
  CHECK(wide.largest / narrow.largest == Approx(8.0).epsilon(0.1));
}

TEST_CASE("in one dimension a surface is the parabola of least squares") {
  const SurfaceFit fit = fit_surface({{-1.0}, {0.0}, {1.0}, {2.0}}, {{1.0}, {0.0}, {1.0}, {2.0}});
  // y = a + b x + c x^2: sums n 4, x 2, xx 6, xxx 8, xxxx 18, y 4, xy 4, xxy 10; so c = 1/2, b = -1/10, a = 3/10.
  for (const double x : {-1.0, 0.3, 2.0})
    CHECK(surface_value(fit.surface, {x}) == Approx(0.3 - 0.1 * x + 0.5 * x * x).margin(1e-14));
  // Left: 1 - 0.9, 0 - 0.3, 1 - 0.7, 2 - 2.1.
  CHECK(fit.residual[0] == Approx(std::sqrt((0.01 + 0.09 + 0.09 + 0.01) / 4.0)).epsilon(1e-12));
}

TEST_CASE("a dimension without range is dropped, and the rest is as without it") {
  const Quadratic of{1.0, {2.0, 3.0, -1.0}, {{1.0, 0.5, 0.0}, {0.0, 2.0, 1.0}, {0.0, 0.0, -1.0}}};
  const Vector low{0.0, 0.7, -1.0}, high{1.0, 0.7, 2.0};
  // As many points as two dimensions need and three would not do with.
  const SamplePoints points = in_box(surface_points(3, 8, 3), low, high);
  const SurfaceFit fit = fit_surface(points, values_of(points, [&](const Vector& x) { return of.at(x); }));
  CHECK(fit.surface.per_half[1] == 0.0);
  for (const Vector& x : in_box(quasi_random(20, 3, 4), low, high)) {
    CHECK(surface_value(fit.surface, x) == Approx(of.at(x)).epsilon(1e-12));
    CHECK(surface_value(fit.surface, {x[0], 55.0, x[2]}) == surface_value(fit.surface, x));
  }
}

TEST_CASE("where nothing varies the surface is the mean") {
  const SurfaceFit fit = fit_surface({{2.0, 3.0}, {2.0, 3.0}}, {{4.0}, {5.0}});
  CHECK(surface_value(fit.surface, {2.0, 3.0}) == Approx(4.5).epsilon(1e-15));
  CHECK(fit.residual[0] == Approx(0.5).epsilon(1e-15));
}

TEST_CASE("the places to ask: centre, faces, and points between") {
  const SamplePoints points = surface_points(4, 30, 9);
  REQUIRE(points.size() == 30);
  CHECK(points[0] == Vector(4, 0.5));
  for (std::size_t d = 0; d < 4; ++d)
    for (const std::size_t side : {0u, 1u}) {
      Vector face(4, 0.5);
      face[d] = static_cast<double>(side);
      CHECK(points[1 + 2 * d + side] == face);
    }
  const SamplePoints inside = quasi_random(21, 4, 9);
  CHECK(std::equal(inside.begin(), inside.end(), points.begin() + 9));
  CHECK(surface_terms(7) == 36);
}

TEST_CASE("the smallest count of points tells all terms apart, up to twelve dimensions") {
  for (std::size_t dimensions = 1; dimensions <= sample_dimensions_most; ++dimensions)
    for (std::uint64_t seed = 0; seed < 5; ++seed) {
      const std::size_t count = std::max(surface_terms(dimensions), 1 + 2 * dimensions);
      const SamplePoints points = surface_points(dimensions, count, seed);
      CHECK_NOTHROW(fit_surface(points, Values(points.size(), Vector{1.0})));
    }
}

TEST_CASE("what makes no surface is refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS(fit_surface({}, {}));
  CHECK_THROWS(fit_surface({{0.0}, {1.0}}, {{1.0}, {1.0}}));                     // three terms
  CHECK_THROWS(fit_surface({{0.0}, {1.0}, {0.0}}, {{1.0}, {1.0}, {1.0}}));       // two places only
  CHECK_THROWS(fit_surface({{0.0}, {1.0}, {2.0}}, {{1.0}, {1.0}}));              // a value short
  CHECK_THROWS(fit_surface({{0.0}, {1.0}, {2.0}}, {{1.0}, {1.0}, {1.0, 2.0}}));  // rows of two widths
  CHECK_THROWS(fit_surface({{0.0}, {1.0}, {nan}}, {{1.0}, {1.0}, {1.0}}));
  CHECK_THROWS(fit_surface({{0.0}, {1.0}, {2.0}}, {{1.0}, {nan}, {1.0}}));
  const SurfaceFit fit = fit_surface({{0.0}, {1.0}, {2.0}}, {{1.0}, {1.0}, {1.0}});
  CHECK_THROWS(surface_value(fit.surface, {0.0, 1.0}));
  CHECK_THROWS(surface_value(fit.surface, {0.0}, 1));
  CHECK_THROWS(surface_error(fit.surface, {{0.0}}, {{0.0, 1.0}}));
  CHECK_THROWS(surface_points(3, 6, 1));
}
