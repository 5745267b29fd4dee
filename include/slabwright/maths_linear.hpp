// Small linear systems in time, dx/dt = A x + B u: stepped exactly, at rest, and when an output reaches a level.
#pragma once
#include <optional>
#include <vector>

namespace slabwright {

/// A matrix as rows.
using MatrixRows = std::vector<std::vector<double>>;

/// dx/dt = A x + B u. Meant for some twenty states; every routine costs the cube of their number.
struct LinearSystem {
  MatrixRows of_states;  ///< A [state][state], per s
  MatrixRows of_inputs;  ///< B [state][input], per s and unit of the input; one width, which may be 0
};

/// What one step of a given length does: x(t + dt) = keep x(t) + held u(t) + turned (u(t + dt) - u(t)).
struct LinearStep {
  double dt_s = 0.0;
  MatrixRows keep;    ///< exp(A dt)
  MatrixRows held;    ///< inputs that stay: integral of exp(A s) B
  MatrixRows turned;  ///< inputs that go straight from one value to another
};

/// Exact but for rounding, at any rate and with A that cannot be inverted: all three parts from one exponential of the
/// system with its inputs as further states (Van Loan 1978, IEEE Trans. Autom. Control 23(3)), by scaling, squaring and
/// the Pade form of order 13 (Higham 2005, SIAM J. Matrix Anal. Appl. 26(4)). Squaring doubles the rounding each time,
/// so that the relative error is about 1e-16 times dt and the fastest rate.
/// Broken contracts (std::logic_error): rows that do not fit or are not finite; dt below 0; dt times the fastest rate
/// above 1e9, where a state needs no time at all; a growing system whose answer no number holds.
LinearStep exact_step(const LinearSystem& system, double dt_s);

/// The state a step later under inputs that stay, or that go straight from `at_start` to `at_end`.
std::vector<double> after_step(const LinearStep& step, const std::vector<double>& state,
                               const std::vector<double>& inputs);
std::vector<double> after_step(const LinearStep& step, const std::vector<double>& state,
                               const std::vector<double>& at_start, const std::vector<double>& at_end);

/// The state that inputs which stay lead to, -A^-1 B u, or away from. Absent where A cannot be inverted: a state that
/// nothing holds has no rest, or any.
std::optional<std::vector<double>> steady_state(const LinearSystem& system, const std::vector<double>& inputs);

/// In s, shortest first: each is 1 over a rate at which something of the state dies away. Infinite for what stays,
/// below 0 for what grows. Two that swing together have one and the same.
std::vector<double> time_constants_s(const LinearSystem& system);

/// y = of_states x + of_inputs u. An empty `of_inputs` is zeros.
struct LinearOutput {
  std::vector<double> of_states;
  std::vector<double> of_inputs;
};

/// u = start + per_s t. An empty `per_s` is zeros.
struct StraightInputs {
  std::vector<double> start;
  std::vector<double> per_s;
};

double output_of(const LinearOutput& output, const std::vector<double>& state, const std::vector<double>& inputs);

/// The time from the start, and the state there.
struct Reached {
  double time_s = 0.0;
  std::vector<double> state;
};

/// Where to look for: an output, its level, and the longest time that counts, above 0.
struct SoughtLevel {
  LinearOutput output;
  double value = 0.0;
  double most_s = 0.0;
};

/// The first time at which the output has the level, from above or from below; 0 where it starts there; absent where
/// it has not within `most_s`. A root of the exact solution, good to 1e-12 of the time.
/// Looked for at times that stand apart by half of the shortest time constant at first and by 1/8 to 1/16 of the time
/// passed later on, and at the turn of the output between two of them. That leaves out nothing where each part of the
/// state dies away without swinging, as heat does; an output that swings ten times before it settles may cross and
/// come back unseen. A level that the output nears for ever counts as reached when rounding says so.
std::optional<Reached> first_reach(const LinearSystem& system, const std::vector<double>& state,
                                   const StraightInputs& inputs, const SoughtLevel& level);

}  // namespace slabwright
