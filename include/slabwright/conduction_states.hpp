// A section in time by few states: what a building model steps instead of thousands of temperatures.
#pragma once
#include <complex>
#include <cstddef>
#include <vector>

#include "slabwright/conduction_time.hpp"

namespace slabwright {

/// State k follows its input: dx/dt = decay (input u - x). Watched = output x + direct u, rows points, then boundaries.
/// A steady u gives exactly the steady field's answer, whatever was left out.
struct FewStates {
  std::vector<double> decay_per_s;          ///< [state], above 0, rising
  std::vector<std::vector<double>> input;   ///< [state][driver]
  std::vector<std::vector<double>> output;  ///< [output][state]: K per K, W/(m K)
  std::vector<std::vector<double>> direct;  ///< [output][driver]
  std::size_t points = 0;                   ///< outputs that are temperatures; the others are heat entering, W/m
  /// [output][driver]: largest difference of the answers to a step, an hour and more after it, from those of all the
  /// states found before the least were left out. Those themselves were within 0.001 of the whole field's in trials.
  /// Sooner than that answers may be off by ten times as much.
  std::vector<std::vector<double>> step_errors;
  std::size_t unknowns = 0, states_before = 0;
};

struct StatesOptions {
  FieldOptions grid = {};  ///< of the steady answers, which are kept exactly
  /// Of the fields that the states are made from. What a coarser grid does to steady answers does no harm here.
  FieldOptions grid_in_time = {0.01, 1.3, 1.0, false};
  /// Halved errors cost two states: with 20, answers to steps were off by 0.0017 on average over the edges of all
  /// layouts, with 22 by 0.0010.
  std::size_t most_states = 22;
  /// States are left out while the bound on what they do to the answer to any swing stays below this: in K for drivers
  /// that move so far as makes 1 K at a watched point. Edges of floors keep all the states that are allowed.
  double swing_share = 1e-3;
  /// Drivers that do not change in time need no states.
  std::vector<FieldDriverId> constant = {};
};

/// Fields that answer drivers and watched points at rates of a third of an hour to a year span a space (rational
/// Krylov), in which the section has some fifty modes. Those combinations are kept that drivers reach and watched
/// places feel (balanced truncation of the section made symmetric, in the form that keeps steady answers: Liu and
/// Anderson, Int. J. Control 50, 1989), and their outputs are fitted to the steps of all fifty.
/// Broken contracts (std::logic_error): as step_responses; no state or no error allowed; no such driver.
FewStates few_states(const FieldSection& section, const std::vector<FieldPoint>& watched,
                     const StatesOptions& options = {});

using StateValues = std::vector<double>;  ///< [state]

/// The state under drivers that do not change, and under drivers that have swung for ever, at a time.
StateValues steady_state(const FewStates& states, const DriverValues& drivers);
StateValues swinging_state(const FewStates& states, const PeriodicDrivers& drivers, double time_s);

/// Exact, for drivers that stay or that go straight from one value to another.
StateValues after_constant(const FewStates& states, const StateValues& from, const DriverValues& drivers, double dt_s);
StateValues after_straight(const FewStates& states, const StateValues& from, const DriverValues& at_start,
                           const DriverValues& at_end, double dt_s);

/// Steps of one length made ready, for many of them: x = keep x + start (input u0) + end (input u1), shares all,
/// drivers going straight from u0 to u1. The same numbers as after_straight().
struct StatesStep {
  double dt_s = 0.0;
  std::vector<double> keep_share, start_share, end_share;  ///< [state]
};
StatesStep states_step(const FewStates& states, double dt_s);
StateValues after_step(const FewStates& states, const StatesStep& step, const StateValues& from,
                       const DriverValues& at_start, const DriverValues& at_end);

/// One output; values that fit the states are the caller's to bring.
double watched_value(const FewStates& states, std::size_t output, const StateValues& state,
                     const DriverValues& drivers);
/// All of them: points, then boundaries.
std::vector<double> watched_values(const FewStates& states, const StateValues& state, const DriverValues& drivers);

/// [output][driver]: when the driver swings as the real part of exp(2 pi i t / period), the output swings as the real
/// part of this times it.
std::vector<std::vector<std::complex<double>>> swing_gains(const FewStates& states, double period_s);

/// [output][driver]: a time after a driver has stepped from 0 to 1.
std::vector<std::vector<double>> step_values(const FewStates& states, double time_s);

}  // namespace slabwright
