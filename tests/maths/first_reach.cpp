// When an output first has a level: against closed forms, and never the second time for the first.
#include <cmath>

#include "maths/heat_stores.hpp"
#include "slabwright/maths_linear.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

LinearSystem one_state(double rate) { return {{{-rate}}, {{rate}}}; }

}  // namespace

TEST_CASE("one state reaches a level after its logarithm") {
  CHECK(rc::check("one time constant", [] {
    const double constant_s = std::pow(10.0, drawn(0.0, 7.0)), rest = drawn(-40.0, -1.0), from = drawn(1.0, 20.0);
    const double expected = constant_s * std::log((from - rest) / (0.0 - rest));
    const auto reached = first_reach(one_state(1.0 / constant_s), {from}, {{rest}, {}}, {{{1.0}, {}}, 0.0, 1e9});
    RC_ASSERT(reached.has_value());
    RC_ASSERT(std::abs(reached->time_s - expected) <= 1e-9 * expected);
    RC_ASSERT(std::abs(reached->state[0]) < 1e-9);
  }));
}

TEST_CASE("a level is reached from below as from above, and only within the time given") {
  const LinearSystem system = one_state(1e-4);
  const double up_s = 1e4 * std::log(30.0 / 10.0);
  CHECK(first_reach(system, {0.0}, {{30.0}, {}}, {{{1.0}, {}}, 20.0, 1e5})->time_s == Approx(up_s).epsilon(1e-9));
  CHECK(first_reach(system, {0.0}, {{30.0}, {}}, {{{1.0}, {}}, 20.0, 1.0001 * up_s}));
  CHECK_FALSE(first_reach(system, {0.0}, {{30.0}, {}}, {{{1.0}, {}}, 20.0, 0.9999 * up_s}));
  CHECK_FALSE(first_reach(system, {0.0}, {{30.0}, {}}, {{{1.0}, {}}, 30.5, 1e9}));
  const double late_s = 1e4 * std::log(30.0 / 0.1);
  CHECK(first_reach(system, {0.0}, {{30.0}, {}}, {{{1.0}, {}}, 29.9, 1.0001 * late_s}));
  CHECK_FALSE(first_reach(system, {0.0}, {{30.0}, {}}, {{{1.0}, {}}, 29.9, 0.9999 * late_s}));
  CHECK(first_reach(system, {20.0}, {{30.0}, {}}, {{{1.0}, {}}, 20.0, 1.0})->time_s == 0.0);
}

TEST_CASE("an output that dips below its level and comes back is caught at the dip") {
  // y = exp(-t) - a exp(-t / 20): below 0 from ln(1 / a) / 0.95 on for ever; with a third part it comes back.
  const LinearSystem system{{{-1.0, 0.0, 0.0}, {0.0, -0.05, 0.0}, {0.0, 0.0, 0.0}}, {{}, {}, {}}};
  const LinearOutput output{{1.0, -0.3, 1.0}, {}};
  const auto y = [](double t, double lift) { return std::exp(-t) - 0.3 * std::exp(-0.05 * t) + lift; };
  const double turn = std::log(1.0 / 0.015) / 0.95, depth = y(turn, 0.0);
  for (const double below : {0.1, 1e-3, 1e-6, 1e-9}) {
    const double lift = -depth - below;
    const auto reached = first_reach(system, {1.0, 1.0, lift}, {}, {output, 0.0, 1e4});
    REQUIRE(reached);
    CHECK(reached->time_s < turn);
    CHECK(y(reached->time_s, lift) == Approx(0.0).margin(1e-12));
  }
  CHECK_FALSE(first_reach(system, {1.0, 1.0, -depth + 1e-9}, {}, {output, 0.0, 1e4}));
}

TEST_CASE("a dip that a running input makes is caught as well") {
  // Only the input turns the output: y = exp(-t) + t / 50, lowest at ln 50. Then the same through a state without loss.
  const double turn = std::log(50.0), lowest = (1.0 + turn) / 50.0;
  const LinearSystem one{{{-1.0}}, {{0.0}}};
  const LinearSystem two{{{-1.0, 0.0}, {0.0, 0.0}}, {{0.0}, {1.0}}};
  for (const double above : {1e-3, 1e-9}) {
    const double level = lowest + above;
    for (const auto& reached : {first_reach(one, {1.0}, {{0.0}, {0.02}}, {{{1.0}, {1.0}}, level, 1e4}),
                                first_reach(two, {1.0, 0.0}, {{0.02}, {}}, {{{1.0, 1.0}, {}}, level, 1e4})}) {
      REQUIRE(reached);
      CHECK(reached->time_s < turn);
      CHECK(std::exp(-reached->time_s) + reached->time_s / 50.0 == Approx(level).epsilon(1e-12));
    }
  }
  // Through a state that gathers a ramp: y = exp(-t) + t^2 / 2, lowest where t = exp(-t).
  const double bend = 0.56714329040978387, bottom = bend + 0.5 * bend * bend;
  const auto bent = first_reach(two, {1.0, 0.0}, {{0.0}, {1.0}}, {{{1.0, 1.0}, {}}, bottom + 1e-9, 1e4});
  REQUIRE(bent);
  CHECK(bent->time_s < bend);
}

TEST_CASE("no crossing in a finer march comes before the first, and the level is met there") {
  CHECK(rc::check("first of all", [] {
    const LinearSystem system = drawn_system();
    const std::size_t n = system.of_states.size();
    const Vector state = drawn_state(n);
    const StraightInputs inputs{drawn_inputs(), {drawn(-1e-4, 1e-4), 0.0, 0.0}};
    SoughtLevel level{{Vector(n, 0.0), {0.0, 0.0, 0.0}}, drawn(-10.0, 10.0), 1e7};
    for (double& weight : level.output.of_states) weight = drawn(-1.0, 1.0);
    const auto over = [&](double t) {
      const Vector end{inputs.start[0] + t * inputs.per_s[0], inputs.start[1], inputs.start[2]};
      return output_of(level.output, after_step(exact_step(system, t), state, inputs.start, end), end) - level.value;
    };
    const auto reached = first_reach(system, state, inputs, level);
    const double until_s = reached ? reached->time_s : level.most_s;
    const bool side = over(0.0) < 0.0;
    for (double t = 0.01; t < until_s * (1.0 - 1e-6); t *= 1.03) RC_ASSERT((over(t) < 0.0) == side);
    if (reached) RC_ASSERT(std::abs(over(until_s)) < 1e-6);
  }));
}

TEST_CASE("inputs may run straight on, and count in the output") {
  // Nothing but the input: y = 3 - t / 100.
  const LinearSystem system = one_state(1e-3);
  const auto crossing = first_reach(system, {0.0}, {{3.0}, {-0.01}}, {{{0.0}, {1.0}}, 0.0, 1e4});
  CHECK(crossing->time_s == Approx(300.0).epsilon(1e-9));
  // A state that follows a ramp lags it by its time constant: x = -r (t - T (1 - exp(-t / T))).
  const auto lagging = first_reach(system, {0.0}, {{0.0}, {-0.01}}, {{{1.0}, {}}, -90.0, 1e6});
  CHECK(lagging->time_s == Approx(9000.0 + 1000.0 * (1.0 - std::exp(-10.0))).epsilon(1e-6));
}

TEST_CASE("a store that nothing holds reaches a level in a straight line") {
  CHECK(first_reach({{{0.0}}, {{1e-6}}}, {5.0}, {{-2000.0}, {}}, {{{1.0}, {}}, 0.0, 1e5})->time_s ==
        Approx(2500.0).epsilon(1e-12));
}

TEST_CASE("a part far faster than the rest hides nothing") {
  // The film falls below 0 within microseconds, long before the mass.
  const LinearSystem system{{{-1e4, 1e4}, {0.0, -1e-6}}, {{0.0, 1e4}, {0.0, 0.0}}};
  const auto reached = first_reach(system, {10.0, 4.0}, {{0.0, -6.0}, {}}, {{{1.0, 0.0}, {}}, 0.0, 1e5});
  REQUIRE(reached);
  CHECK(reached->time_s == Approx(1e-4 * std::log(12.0 / 2.0)).epsilon(1e-6));
}

TEST_CASE("questions that do not fit the system are bugs") {
  const LinearSystem system = one_state(1.0);
  CHECK_THROWS_AS(first_reach(system, {1.0, 2.0}, {{0.0}, {}}, {{{1.0}, {}}, 0.0, 1.0}), std::logic_error);
  CHECK_THROWS_AS(first_reach(system, {1.0}, {}, {{{1.0}, {}}, 0.0, 1.0}), std::logic_error);
  CHECK_THROWS_AS(first_reach(system, {1.0}, {{0.0}, {}}, {{{1.0, 1.0}, {}}, 0.0, 1.0}), std::logic_error);
  CHECK_THROWS_AS(first_reach(system, {1.0}, {{0.0}, {}}, {{{1.0}, {}}, 0.0, 0.0}), std::logic_error);
  CHECK_THROWS_AS(output_of({{1.0}, {}}, {1.0, 2.0}, {}), std::logic_error);
  CHECK(output_of({{2.0, 1.0}, {0.5}}, {1.0, 2.0}, {4.0}) == 6.0);
}
