// Few states for a section: exact steady answers, exact steps, and a cold month against the whole field.
#include "slabwright/conduction_states.hpp"
#include "slabwright/units_exact.hpp"

#include "states_month.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double rounding = 1e-9;
const char* const details[] = {"wall", "wall_under_edge", "door_under", "door"};
/// Against the whole field on the same grid: what few states do, not what a grid does. A coarse one for the long run.
const FieldOptions same_grid{0.01, 1.3, 1.0, false}, month_grid{0.02, 1.5, 2.0, false};

StatesOptions edge_options() {
  StatesOptions options;
  options.grid = options.grid_in_time = same_grid;
  options.constant = {edge_driver::ground};
  return options;
}

FewStates edge_states(const std::string& detail) {
  return few_states(edge_in_time(detail), edge_points(detail), edge_options());
}

/// -12 degC with a fall of 14 K for four days, slow and daily swings: as cold a month as inland winters have.
Weather cold_month() {
  Weather weather{{}, 6.0, -14.0, -4.0, 0.0};
  for (int hour = 0; hour <= 720; ++hour) {
    const double slow = std::sin(6.2832 * hour / 140.0), daily = std::sin(6.2832 * hour / 24.0);
    weather.hourly_degC.push_back(-12.0 + 10.0 * slow + 6.0 * daily - (hour > 400 && hour < 500 ? 14.0 : 0.0));
  }
  return weather;
}

}  // namespace

TEST_CASE("few states have the steady field's answers, and they add up") {
  for (const std::string detail : details) {
    const FewStates states = edge_states(detail);
    const UnitResponses steady = unit_responses(edge_in_time(detail), edge_points(detail), same_grid);
    CHECK(states.decay_per_s.size() <= StatesOptions{}.most_states);
    CHECK(std::is_sorted(states.decay_per_s.begin(), states.decay_per_s.end()));
    CHECK(states.decay_per_s.front() > 0.0);
    for (const std::size_t driver : {0u, 1u, 2u, 3u}) {
      DriverValues unit(4, 0.0);
      unit[driver] = 1.0;
      const std::vector<double> values = watched_values(states, steady_state(states, unit), unit);
      for (std::size_t point = 0; point < states.points; ++point)
        CHECK(values[point] == Approx(steady.weights[point][driver]).margin(rounding));
      for (std::size_t boundary = 0; boundary < 3; ++boundary)
        CHECK(values[states.points + boundary] == Approx(steady.heat_in[boundary][driver]).margin(1e-6));
    }
    const DriverValues one{1.0, 1.0, 1.0, 0.0};
    const std::vector<double> values = watched_values(states, steady_state(states, one), one);
    for (std::size_t point = 0; point < states.points; ++point) CHECK(values[point] == Approx(1.0).epsilon(rounding));
  }
}

TEST_CASE("a step of few states goes one way but for its error, and to the steady answer") {
  const FewStates states = edge_states("door_under");
  std::vector<std::vector<double>> before = step_values(states, hour_s);
  for (double time_s = 2.0 * hour_s; time_s < 1e10; time_s *= 2.0) {
    const std::vector<std::vector<double>> now = step_values(states, time_s);
    for (std::size_t point = 0; point < states.points; ++point)
      for (std::size_t driver = 0; driver < 4; ++driver)
        CHECK(now[point][driver] >= before[point][driver] - 2.0 * states.step_errors[point][driver] - rounding);
    before = now;
  }
  const DriverValues outdoor{0.0, 1.0, 0.0, 0.0};
  const std::vector<double> steady = watched_values(states, steady_state(states, outdoor), outdoor);
  for (std::size_t output = 0; output < steady.size(); ++output)
    CHECK(before[output][edge_driver::outdoor.at] == Approx(steady[output]).margin(rounding));
}

TEST_CASE("few states answer steps as the field does, within their own error") {
  for (const std::string detail : {"wall_under_edge", "door"}) {
    const FewStates states = edge_states(detail);
    const std::vector<double> hours{1.0, 4.0, 12.0, 48.0, 200.0, 2000.0, 20000.0};
    std::vector<double> times_s;
    for (const double hour : hours) times_s.push_back(hour * hour_s);
    const StepResponses field = step_responses(edge_in_time(detail), edge_points(detail), times_s, {same_grid});
    for (std::size_t time = 0; time < times_s.size(); ++time) {
      const std::vector<std::vector<double>> values = step_values(states, times_s[time]);
      for (std::size_t point = 0; point < states.points; ++point)
        for (const std::size_t driver : {0u, 1u, 3u}) {
          // Left out; not found in the first place, and the field's own steps.
          const double allowed = states.step_errors[point][driver] + 3e-4;
          CHECK(values[point][driver] == Approx(field.weights[time][point][driver]).margin(allowed));
          CHECK(states.step_errors[point][driver] < 0.006);
        }
    }
  }
}

TEST_CASE("a last bit of what goes in stays a last bit of what few states say") {
  // Compilers and C libraries differ in last bits; answers must not differ in the nine digits that builds share.
  constexpr double last_bits = 1e-12, nine_digits = 1e-9;
  for (const std::string detail : details) {
    FieldSection moved = edge_in_time(detail);
    for (std::size_t i = 0; i < moved.materials.size(); ++i)
      moved.materials[i].conductivity_W_per_mK *= 1.0 + last_bits * (i % 2 == 0 ? 1.0 : -1.0);
    const FewStates states = edge_states(detail), others = few_states(moved, edge_points(detail), edge_options());
    REQUIRE(states.decay_per_s.size() == others.decay_per_s.size());
    double apart = 0.0;
    for (double time_s = 0.25 * hour_s; time_s < 1e9; time_s *= 3.0) {
      const auto values = step_values(states, time_s), other_values = step_values(others, time_s);
      for (std::size_t point = 0; point < states.points; ++point)
        for (std::size_t driver = 0; driver < 4; ++driver)
          apart = std::max(apart, std::abs(values[point][driver] - other_values[point][driver]));
    }
    CAPTURE(detail, apart);
    CHECK(apart < nine_digits);
  }
}

TEST_CASE("two steps of few states are one of both") {
  const FewStates states = edge_states("wall");
  const DriverValues start{10.0, -20.0, 8.0, 40.0}, middle{12.0, -10.0, 8.0, 20.0}, end{14.0, 0.0, 8.0, 0.0};
  const StateValues from = steady_state(states, {15.0, 5.0, 8.0, 0.0});
  const StateValues halves =
      after_straight(states, after_straight(states, from, start, middle, hour_s), middle, end, hour_s);
  const StateValues whole = after_straight(states, from, start, end, 2.0 * hour_s);
  const StateValues still = after_constant(states, after_constant(states, from, start, hour_s), start, hour_s);
  const StateValues still_whole = after_constant(states, from, start, 2.0 * hour_s);
  const StateValues level = after_straight(states, from, start, start, 2.0 * hour_s);
  for (std::size_t k = 0; k < whole.size(); ++k) {
    CHECK(halves[k] == Approx(whole[k]).epsilon(1e-12).margin(1e-12));
    CHECK(still[k] == Approx(still_whole[k]).epsilon(1e-12).margin(1e-12));
    CHECK(level[k] == Approx(still_whole[k]).epsilon(1e-12).margin(1e-12));
  }
}

TEST_CASE("answers of few states add up") {
  const FewStates states = edge_states("wall");
  const DriverValues a{3.0, 0.0, 0.0, 10.0}, b{0.0, -7.0, 2.0, 5.0}, both{3.0, -7.0, 2.0, 15.0};
  const auto values = [&states](const DriverValues& drivers) {
    const StateValues rest(states.decay_per_s.size(), 0.0);
    return watched_values(states, after_straight(states, rest, {0.0, 0.0, 0.0, 0.0}, drivers, hour_s), drivers);
  };
  const std::vector<double> of_a = values(a), of_b = values(b), of_both = values(both);
  for (std::size_t output = 0; output < of_a.size(); ++output)
    CHECK(of_both[output] == Approx(of_a[output] + of_b[output]).margin(rounding));
}

TEST_CASE("a swing of few states is the field's, and is a run that repeats itself") {
  const std::string detail = "door_under";
  const FewStates states = edge_states(detail);
  const double year_s = 8760.0 * hour_s;
  const SwingResponses field = swing_responses(edge_in_time(detail), edge_points(detail), year_s, same_grid);
  const auto gains = swing_gains(states, year_s);
  for (std::size_t point = 0; point < states.points; ++point)
    for (const std::size_t driver : {0u, 1u, 3u}) {
      CHECK(gains[point][driver].real() == Approx(field.weights_with[point][driver]).margin(5e-4));
      CHECK(-gains[point][driver].imag() == Approx(field.weights_behind[point][driver]).margin(5e-4));
    }
  const PeriodicDrivers swing{year_s, {10.0, 6.0, 8.0, 5.0}, {1.0, -14.0, 0.0, 4.0}, {0.0, -4.0, 0.0, 1.0}};
  const auto drivers_at = [&swing](double angle) {
    DriverValues drivers = swing.mean;
    for (std::size_t i = 0; i < drivers.size(); ++i)
      drivers[i] += swing.cosine[i] * std::cos(angle) + swing.sine[i] * std::sin(angle);
    return drivers;
  };
  const int steps = 8760;
  const StateValues first = swinging_state(states, swing, 0.0);
  StateValues state = first;
  for (int i = 0; i < steps; ++i)
    state = after_straight(states, state, drivers_at(6.283185307179586 * i / steps),
                           drivers_at(6.283185307179586 * (i + 1) / steps), year_s / steps);
  for (std::size_t k = 0; k < state.size(); ++k) CHECK(state[k] == Approx(first[k]).epsilon(1e-6).margin(1e-6));
}

TEST_CASE("a cold month at the edges of a floor, by few states and by the whole field") {
  for (const std::string detail : details) {
    StatesOptions options = edge_options();
    options.grid = options.grid_in_time = month_grid;
    const MonthErrors errors = month_errors(detail, cold_month(), options, {month_grid, 3e-5, 0.03});
    INFO(detail << ", " << errors.states << " states");
    CHECK(errors.worst_K < 0.1);
    CHECK(errors.heat_share < 0.01);
  }
}

TEST_CASE("contracts of few states") {
  const FieldSection section = edge_in_time("door");
  StatesOptions options = edge_options();
  options.most_states = 0;
  CHECK_THROWS_AS(few_states(section, {}, options), std::logic_error);
  options = edge_options();
  options.constant = {{9}};
  CHECK_THROWS_AS(few_states(section, {}, options), std::logic_error);
  const FewStates states = edge_states("door");
  CHECK_THROWS_AS(steady_state(states, {1.0}), std::logic_error);
  CHECK_THROWS_AS(after_constant(states, {1.0}, {0.0, 0.0, 0.0, 0.0}, 1.0), std::logic_error);
  CHECK_THROWS_AS(step_values(states, -1.0), std::logic_error);
  CHECK_THROWS_AS(swing_gains(states, 0.0), std::logic_error);
}
