// Linear systems stepped exactly: identities, stiff ones, what nothing holds, and broken contracts.
#include <algorithm>
#include <cmath>
#include <limits>

#include "maths/heat_stores.hpp"
#include "slabwright/maths_linear.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

double farthest(const Vector& a, const Vector& b) {
  double most = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) most = std::max(most, std::abs(a[i] - b[i]));
  return most;
}

LinearSystem one_state(double rate) { return {{{-rate}}, {{rate}}}; }

}  // namespace

TEST_CASE("one state dies away as the exponential") {
  for (const double dt : {1e-6, 0.3, 1.0, 4.0, 40.0}) {
    const LinearStep step = exact_step(one_state(2.0), dt);
    CHECK(step.keep[0][0] == Approx(std::exp(-2.0 * dt)).epsilon(1e-13));
    CHECK(step.held[0][0] == Approx(-std::expm1(-2.0 * dt)).epsilon(1e-13));
    CHECK(step.turned[0][0] == Approx(1.0 + std::expm1(-2.0 * dt) / (2.0 * dt)).epsilon(1e-9));
  }
}

TEST_CASE("two half steps are one step") {
  CHECK(rc::check("steps add", [] {
    const LinearSystem system = drawn_system();
    const double dt = std::pow(10.0, drawn(1.0, 6.0));
    const Vector state = drawn_state(system.of_states.size()), from = drawn_inputs(), to = drawn_inputs();
    Vector half_way(3);
    for (std::size_t i = 0; i < 3; ++i) half_way[i] = 0.5 * (from[i] + to[i]);
    const LinearStep half = exact_step(system, 0.5 * dt);
    const Vector twice = after_step(half, after_step(half, state, from, half_way), half_way, to);
    RC_ASSERT(farthest(twice, after_step(exact_step(system, dt), state, from, to)) < 1e-8);
  }));
}

TEST_CASE("what rests stays, and what is left alone comes to rest") {
  CHECK(rc::check("rest", [] {
    const LinearSystem system = drawn_system();
    const Vector inputs = drawn_inputs();
    const Vector rest = steady_state(system, inputs).value();
    RC_ASSERT(farthest(after_step(exact_step(system, 3600.0), rest, inputs), rest) < 1e-8);
    const double long_s = 40.0 * time_constants_s(system).back();
    const Vector late = after_step(exact_step(system, long_s), drawn_state(rest.size()), inputs);
    RC_ASSERT(farthest(late, rest) < 1e-6);
  }));
}

TEST_CASE("air between two temperatures stays between them") {
  CHECK(rc::check("no overshoot", [] {
    const LinearSystem system = drawn_system();
    const LinearStep step = exact_step(system, std::pow(10.0, drawn(0.0, 6.0)));
    for (std::size_t i = 0; i < step.keep.size(); ++i) {
      double sum = step.held[i][0] + step.held[i][1];
      for (const double share : step.keep[i]) {
        RC_ASSERT(share > -1e-12);
        sum += share;
      }
      RC_ASSERT(std::abs(sum - 1.0) < 1e-9);
    }
  }));
}

TEST_CASE("a fast state beside a slow one costs no digits that count") {
  // A film of 1 ms on a mass of 1e6 s that loses to 0: the fast one follows, the slow one dies away.
  const double fast = 1e3, slow = 1e-6;
  const LinearSystem system{{{-fast, fast}, {0.0, -slow}}, {{0.0}, {slow}}};
  for (const double dt : {3600.0, 86400.0}) {
    const Vector after = after_step(exact_step(system, dt), {5.0, 20.0}, {0.0});
    CHECK(after[1] == Approx(20.0 * std::exp(-slow * dt)).epsilon(1e-8));
    CHECK(after[0] == Approx(after[1] * fast / (fast - slow)).epsilon(1e-8));
  }
}

TEST_CASE("the unit of an input changes nothing") {
  LinearSystem system{{{-2e-4, 1e-4}, {1e-4, -3e-4}}, {{1e-4, 0.0}, {0.0, 1e-7}}};
  const Vector in_W = after_step(exact_step(system, 3600.0), {10.0, 20.0}, {-5.0, 8000.0}, {-7.0, 2000.0});
  system.of_inputs[1][1] *= 1e12;
  const Vector in_TW = after_step(exact_step(system, 3600.0), {10.0, 20.0}, {-5.0, 8e-9}, {-7.0, 2e-9});
  CHECK(farthest(in_W, in_TW) < 1e-12);
}

TEST_CASE("a state that nothing holds gathers what it is given, and has no rest") {
  const LinearSystem store{{{0.0}}, {{1e-6}}};
  CHECK(after_step(exact_step(store, 3600.0), {5.0}, {2000.0})[0] == Approx(5.0 + 7.2).epsilon(1e-14));
  CHECK(after_step(exact_step(store, 3600.0), {5.0}, {0.0}, {2000.0})[0] == Approx(5.0 + 3.6).epsilon(1e-14));
  CHECK_FALSE(steady_state(store, {0.0}));
  CHECK(time_constants_s(store) == Vector{std::numeric_limits<double>::infinity()});
  // Two stores tied only to each other share what they have.
  const LinearSystem pair{{{-1e-3, 1e-3}, {5e-4, -5e-4}}, {{0.0}, {0.0}}};
  const Vector shared = after_step(exact_step(pair, 1e6), {30.0, 0.0}, {0.0});
  CHECK(shared[0] == Approx(10.0).epsilon(1e-9));
  CHECK(shared[1] == Approx(10.0).epsilon(1e-9));
  CHECK_FALSE(steady_state(pair, {0.0}));
  const LinearSystem three{{{-0.7, 0.4, 0.3}, {0.11, -0.17, 0.06}, {0.013, 0.029, -0.042}}, {{}, {}, {}}};
  CHECK(time_constants_s(three).back() == std::numeric_limits<double>::infinity());
  CHECK_FALSE(steady_state(three, {}));
  CHECK(time_constants_s(pair).back() == std::numeric_limits<double>::infinity());
}

TEST_CASE("a state held by very little still has a rest") {
  const LinearSystem system{{{-1.0, 1.0 - 1e-6}, {1e-12, -1e-12}}, {{1e-6}, {0.0}}};
  const auto rest = steady_state(system, {7.0});
  REQUIRE(rest);
  CHECK(rest->at(1) == Approx(7.0).epsilon(1e-6));
}

TEST_CASE("time constants, of what grows and of what swings too") {
  CHECK(time_constants_s({{{-0.5, 0.0}, {3.0, -0.1}}, {{}, {}}})[1] == Approx(10.0));
  CHECK(time_constants_s({{{0.25}}, {{}}})[0] == Approx(-4.0));
  const Vector swinging = time_constants_s({{{-0.1, 2.0}, {-2.0, -0.1}}, {{}, {}}});
  CHECK(swinging[0] == Approx(10.0));
  CHECK(swinging[1] == Approx(10.0));
}

TEST_CASE("no time, no change; no inputs, no need of any") {
  const LinearStep step = exact_step({{{-1.0, 0.5}, {0.2, -3.0}}, {{}, {}}}, 0.0);
  CHECK(farthest(after_step(step, {4.0, -1.0}, {}), {4.0, -1.0}) < 1e-15);
}

TEST_CASE("broken contracts are bugs") {
  const LinearSystem good = one_state(1.0);
  CHECK_THROWS_AS(exact_step(good, -1.0), std::logic_error);
  CHECK_THROWS_AS(exact_step(good, 1e10), std::logic_error);
  CHECK_THROWS_AS(exact_step({{{-1.0, 0.0}}, {{1.0}}}, 1.0), std::logic_error);
  CHECK_THROWS_AS(exact_step({{{-1.0}}, {}}, 1.0), std::logic_error);
  CHECK_THROWS_AS(exact_step({{{std::nan("")}}, {{1.0}}}, 1.0), std::logic_error);
  CHECK_THROWS_AS(exact_step({{{1.0}}, {{1.0}}}, 1000.0), std::logic_error);  // exp(1000)
  CHECK_THROWS_AS(exact_step({{}, {}}, 1.0), std::logic_error);
  CHECK_THROWS_AS(after_step(exact_step(good, 1.0), {1.0, 2.0}, {0.0}), std::logic_error);
  CHECK_THROWS_AS(after_step(exact_step(good, 1.0), {1.0}, {}), std::logic_error);
  CHECK_THROWS_AS(after_step(exact_step(good, 1.0), {1.0}, {0.0}, {}), std::logic_error);
  CHECK_THROWS_AS(steady_state(good, {}), std::logic_error);
}
