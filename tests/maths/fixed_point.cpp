// Fixed points: one share for all unknowns, and an honest ending.
#include <cmath>

#include "slabwright/maths.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using Vector = std::vector<double>;

TEST_CASE("a straight contraction of one unknown ends in three rounds") {
  const FixedPoint found = fixed_point({0.0}, {1.0}, [](const Vector& x) { return Vector{0.8 * x[0] + 1.0}; });
  CHECK(found.stop == Stop::converged);
  CHECK(found.x[0] == Approx(5.0).epsilon(1e-9));
  CHECK(found.rounds == 3);
}

TEST_CASE("a map that swings wider each round is calmed") {
  const FixedPoint found = fixed_point({4.0}, {1.0}, [](const Vector& x) { return Vector{6.0 - 2.0 * x[0]}; });
  CHECK(found.stop == Stop::converged);
  CHECK(found.x[0] == Approx(2.0).epsilon(1e-9));
}

TEST_CASE("unknowns that lean on each other settle together") {
  const auto next = [](const Vector& x) {
    return Vector{20.0 + 10.0 * std::exp(-0.05 * x[1]), 25.0 + 0.3 * (x[0] - 20.0)};
  };
  const FixedPoint found = fixed_point({40.0, 40.0}, {1.0, 1.0}, next);
  REQUIRE(found.stop == Stop::converged);
  CHECK(found.rounds <= 20);  // plain stepping turns about the point and gains a factor 4 a round: 16
  CHECK(found.x[0] == Approx(next(found.x)[0]).epsilon(1e-9));
  CHECK(found.x[1] == Approx(next(found.x)[1]).epsilon(1e-9));
}

TEST_CASE("the scale decides what counts as settled") {
  const auto next = [](const Vector& x) { return Vector{0.5 * x[0], 0.5 * x[1]}; };
  const FixedPoint found = fixed_point({1.0, 1.0}, {1.0, 1e-3}, next, {1e-6, 1, 1.0, 0.02, 10.0});
  CHECK(found.stop == Stop::rounds_spent);
  CHECK(found.worst == Approx(500.0));
  CHECK(found.worst_unknown == 1);
}

TEST_CASE("a jump with no fixed point is not called converged") {
  // Above 1 the map asks for less, below for more: nothing stays.
  const FixedPoint found = fixed_point({0.0}, {1.0}, [](const Vector& x) { return Vector{x[0] > 1.0 ? 0.0 : 2.0}; });
  CHECK(found.stop == Stop::rounds_spent);
  CHECK(found.rounds == 60);
  CHECK(found.worst > 0.5);
}

TEST_CASE("the best point seen is handed back, not the last") {
  // The first step leads away to where nothing is near.
  const auto next = [](const Vector& x) { return Vector{x[0] < 1.0 ? x[0] + 1.0 : x[0] + 10.0}; };
  const FixedPoint found = fixed_point({0.0}, {1.0}, next, {1e-9, 5, 1.0, 0.02, 10.0});
  CHECK(found.stop == Stop::rounds_spent);
  CHECK(found.x[0] == 0.0);
  CHECK(found.worst == 1.0);
}

TEST_CASE("a number lost is said, with the unknown that lost it") {
  const auto next = [](const Vector& x) { return Vector{0.5 * x[0] + 1.0, std::sqrt(x[1] - 1.0)}; };
  const FixedPoint found = fixed_point({0.0, 1.5}, {1.0, 1.0}, next);
  CHECK(found.stop == Stop::not_finite);
  CHECK(found.worst_unknown == 1);
}

TEST_CASE("nothing unknown is settled at once, and mismatched sizes are a bug") {
  CHECK(fixed_point({}, {}, [](const Vector& x) { return x; }).stop == Stop::converged);
  CHECK_THROWS(fixed_point({1.0}, {}, [](const Vector& x) { return x; }));
  CHECK_THROWS(fixed_point({1.0}, {0.0}, [](const Vector& x) { return x; }));
  CHECK_THROWS(fixed_point({1.0}, {1.0}, [](const Vector&) { return Vector{}; }));
}
