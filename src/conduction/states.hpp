// From thousands of temperatures to modes, from modes to few states.
#pragma once
#include <Eigen/Dense>
#include <vector>

#include "conduction/time_field.hpp"

namespace slabwright::conduction {

/// Mode k follows its input: time dq/dt = input u - q; outputs have output q of it.
struct Modes {
  Eigen::VectorXd time_s;  ///< [mode], falling
  Eigen::MatrixXd input;   ///< [mode][driver]
  Eigen::MatrixXd output;  ///< [output][mode]
};

/// The section cut down to temperature fields that answer drivers and watched points at given rates. `drive` has the
/// columns of drivers that move.
Modes krylov_modes(const TimeField& field, const Eigen::MatrixXd& drive, const std::vector<double>& rates_per_s);

struct Truncation {
  Eigen::Index most_states;
  double bound;   ///< on the swing of scaled outputs for scaled inputs, at any period but short ones
  double fast_s;  ///< modes count for less as they are faster than this
};

/// `driver_scale` is how far each driver moves, `output_scale` what each output's error weighs.
Modes balanced(const Modes& modes, const Eigen::VectorXd& driver_scale, const Eigen::VectorXd& output_scale,
               const Truncation& truncation);

/// The same decays and inputs with outputs fitted to the steps of all modes, from an hour after them on.
Modes with_fitted_outputs(Modes few, const Modes& all, const Eigen::VectorXd& driver_scale);

/// [output][driver]: the largest difference between steps, from a time after them on, where steady answers are one.
Eigen::MatrixXd step_errors(const Modes& few, const Modes& all, double from_s);

}  // namespace slabwright::conduction
