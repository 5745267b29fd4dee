// Roots in a bracket: found to rounding, and honest where there are none.
#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "slabwright/maths.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

double drawn(double low, double high) {
  return low + (high - low) * static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

}  // namespace

TEST_CASE("a root is found to rounding") {
  const Root root = root_in_bracket([](double x) { return x * x * x - 2.0; }, 0.0, 2.0);
  CHECK(root.stop == Stop::converged);
  CHECK(root.x == Approx(std::cbrt(2.0)).epsilon(1e-15));
  CHECK(root.low <= root.x);
  CHECK(root.x <= root.high);
  CHECK(root.rounds <= 12);
}

TEST_CASE("a root of any rising curve lies in the bracket returned") {
  CHECK(rc::check("power curves", [] {
    const double power = drawn(0.3, 5.0), at = drawn(0.01, 0.9);
    const auto f = [&](double x) { return std::copysign(std::pow(std::abs(x - at), power), x - at); };
    const Root root = root_in_bracket(f, -1.0, 1.0);
    RC_ASSERT(root.stop == Stop::converged);
    RC_ASSERT(std::abs(root.x - at) <= 1e-15 + 4e-16 * std::abs(at));
  }));
}

TEST_CASE("a step has its root where it jumps") {
  const Root root = root_in_bracket([](double x) { return x < 0.3 ? -1.0 : 2.0; }, 0.0, 1.0, {1e-6, 0.0, 100});
  CHECK(root.stop == Stop::converged);
  CHECK(root.low < 0.3);
  CHECK(root.high >= 0.3);
  CHECK(root.high - root.low <= 1.5e-6);
}

TEST_CASE("a falling curve is as good as a rising one") {
  CHECK(root_in_bracket([](double x) { return 1.0 - std::exp(x); }, -3.0, 5.0).x == Approx(0.0).margin(1e-15));
}

TEST_CASE("tolerances end the search early") {
  const auto f = [](double x) { return x * x * x - 2.0; };
  const Root rough = root_in_bracket(f, 0.0, 2.0, {0.0, 1e-2, 100});
  CHECK(rough.stop == Stop::converged);
  CHECK(std::abs(rough.value) <= 1e-2);
  CHECK(rough.rounds < root_in_bracket(f, 0.0, 2.0).rounds);
  CHECK(root_in_bracket(f, 0.0, 2.0, {0.0, 0.0, 3}).stop == Stop::rounds_spent);
}

TEST_CASE("an end that is the root is taken at once") {
  CHECK(root_in_bracket([](double x) { return x; }, 0.0, 1.0).x == 0.0);
  CHECK(root_in_bracket([](double x) { return x - 1.0; }, 0.0, 1.0).x == 1.0);
}

TEST_CASE("no change of sign is no solution, and the better end is shown") {
  const Root root = root_in_bracket([](double x) { return x + 5.0; }, 0.0, 1.0);
  CHECK(root.stop == Stop::no_solution);
  CHECK(root.x == 0.0);
  CHECK(root.value == 5.0);
}

TEST_CASE("a function without a number is said, a bracket upside down is a bug") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK(root_in_bracket([&](double) { return nan; }, 0.0, 1.0).stop == Stop::not_finite);
  CHECK(root_in_bracket([&](double x) { return x == 0.0 || x == 1.0 ? x - 0.5 : nan; }, 0.0, 1.0).stop ==
        Stop::not_finite);
  CHECK_THROWS(root_in_bracket([](double x) { return x; }, 1.0, 0.0));
  CHECK_THROWS(root_in_bracket([](double x) { return x; }, nan, 1.0));
}
