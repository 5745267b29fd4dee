// When an output of a linear system first has a level: a root of the exact solution, in a bracket found by marching.
#include <algorithm>
#include <cmath>

#include "maths/exponential.hpp"
#include "maths/linear_rows.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"

namespace slabwright {
namespace {

using Vector = std::vector<double>;

constexpr int cells_an_octave = 8;
constexpr double first_cell = 0.5;  // of 1 / fastest rate
constexpr double time_tolerance = 1e-12;

double product(const Vector& a, const Vector& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

Vector filled(Vector values, std::size_t size) {
  if (values.empty()) values.assign(size, 0.0);
  return values;
}

// The system under its two effective inputs, one that stays at 1 and one that is the time; and an output less its
// level, which may stand for the output's slope as well.
struct March {
  LinearSystem system;
  Vector of_states;
  double at_zero = 0.0, per_s = 0.0;

  double value(const Vector& x, double t) const { return product(of_states, x) + at_zero + per_s * t; }
};

struct Place {
  double t_s = 0.0;
  Vector state;
};

Place moved(const March& march, const Place& from, double dt_s) {
  const double end = from.t_s + dt_s;
  return {end, after_step(exact_step(march.system, dt_s), from.state, {1.0, from.t_s}, {1.0, end})};
}

March level_march(const LinearSystem& system, const StraightInputs& inputs, const SoughtLevel& level) {
  const std::size_t n = system.of_states.size(), m = input_count(system);
  const Vector per_s = filled(inputs.per_s, m), of_inputs = filled(level.output.of_inputs, m);
  expects(inputs.start.size() == m && per_s.size() == m && of_inputs.size() == m, "inputs that do not fit the system");
  expects(level.output.of_states.size() == n, "an output that does not fit the system");
  March march{{system.of_states, {}}, level.output.of_states};
  for (const auto& row : system.of_inputs)
    march.system.of_inputs.push_back({product(row, inputs.start), product(row, per_s)});
  march.at_zero = product(of_inputs, inputs.start) - level.value;
  march.per_s = product(of_inputs, per_s);
  return march;
}

// The slope of the march's value is a value of the same system.
March slope_of(const March& march) {
  const std::size_t n = march.of_states.size();
  March slope{march.system, Vector(n, 0.0), march.per_s, 0.0};
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) slope.of_states[j] += march.of_states[i] * march.system.of_states[i][j];
    slope.at_zero += march.of_states[i] * march.system.of_inputs[i][0];
    slope.per_s += march.of_states[i] * march.system.of_inputs[i][1];
  }
  return slope;
}

Place root_within(const March& walked, const March& sought, const Place& from, double dt_s) {
  RootOptions options;
  options.x_tolerance = time_tolerance * (from.t_s + dt_s);
  const auto f = [&](double dt) {
    const Place there = moved(walked, from, dt);
    return sought.value(there.state, there.t_s);
  };
  return moved(walked, from, root_in_bracket(f, 0.0, dt_s, options).x);
}

bool opposite(double a, double b) { return (a < 0.0) != (b < 0.0) || b == 0.0; }

// In one cell: between values on two sides, or before the turn of one that came near and left again.
std::optional<Place> reach_within(const March& march, const March& slope, const Place& from, const Place& to) {
  const double before = march.value(from.state, from.t_s), after = march.value(to.state, to.t_s);
  if (opposite(before, after)) return root_within(march, march, from, to.t_s - from.t_s);
  const double toward = before > 0.0 ? -1.0 : 1.0;
  if (slope.value(from.state, from.t_s) * toward <= 0.0 || slope.value(to.state, to.t_s) * toward >= 0.0)
    return std::nullopt;
  const Place turn = root_within(march, slope, from, to.t_s - from.t_s);
  if (!opposite(before, march.value(turn.state, turn.t_s))) return std::nullopt;
  return root_within(march, march, from, turn.t_s - from.t_s);
}

double first_cell_s(const LinearSystem& system, double most_s) {
  const double rate = column_norm(matrix_of(system.of_states, system.of_states.size()));
  return rate * most_s > first_cell * cells_an_octave ? first_cell / rate : most_s / cells_an_octave;
}

}  // namespace

double output_of(const LinearOutput& output, const Vector& state, const Vector& inputs) {
  const Vector of_inputs = filled(output.of_inputs, inputs.size());
  expects(output.of_states.size() == state.size() && of_inputs.size() == inputs.size(),
          "an output that does not fit state and inputs");
  return product(output.of_states, state) + product(of_inputs, inputs);
}

std::optional<Reached> first_reach(const LinearSystem& system, const Vector& state, const StraightInputs& inputs,
                                   const SoughtLevel& level) {
  expects_system(system);
  expects(state.size() == system.of_states.size(), "a state that does not fit the system");
  expects(std::isfinite(level.most_s) && level.most_s > 0.0, "no time to reach a level in");
  const March march = level_march(system, inputs, level), slope = slope_of(march);
  Place here{0.0, state};
  if (march.value(state, 0.0) == 0.0) return Reached{0.0, state};
  for (double dt = first_cell_s(system, level.most_s); here.t_s < level.most_s; dt = here.t_s / cells_an_octave) {
    const LinearStep step = exact_step(march.system, dt);
    for (int cell = 0; cell < cells_an_octave && here.t_s < level.most_s; ++cell) {
      const double end = here.t_s + dt;
      const Place next{end, after_step(step, here.state, {1.0, here.t_s}, {1.0, end})};
      if (const auto found = reach_within(march, slope, here, next)) {
        if (found->t_s > level.most_s) return std::nullopt;
        return Reached{found->t_s, found->state};
      }
      here = next;
    }
  }
  return std::nullopt;
}

}  // namespace slabwright
