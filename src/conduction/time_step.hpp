// One step of a section in time, and steps over an interval that the estimated error chooses.
#pragma once
#include <Eigen/Dense>
#include <cstddef>
#include <functional>

#include "conduction/time_factors.hpp"
#include "conduction/time_field.hpp"

namespace slabwright::conduction {

/// One column per case. `flow` is the heat that each node takes up, W/m; 0 where nothing is stored.
struct TimeState {
  Eigen::MatrixXd temperatures;        ///< [unknown][case]
  Eigen::MatrixXd flow;                ///< [unknown][case]
  Eigen::RowVectorXd entered_J_per_m;  ///< [case], in from boundaries and sources since the start
};

/// [driver][case] at a time within the interval, 0 to 1.
using DriversWithin = std::function<Eigen::MatrixXd(double share)>;

class Stepper {
 public:
  /// The largest error of a step at any node, for each case.
  Stepper(const TimeField& field, Eigen::RowVectorXd step_errors_K);

  /// `flow` follows from temperatures and drivers, and nodes without capacity from those around them.
  TimeState start(Eigen::MatrixXd temperatures, const Eigen::MatrixXd& drivers);
  TimeState after_jump(TimeState state, const Eigen::MatrixXd& drivers);
  struct Tried {
    TimeState state;
    double error_over_limit;  ///< estimated, at the worst node of the worst case
  };
  /// `inner` are the drivers at inner_share of the step.
  Tried step(const TimeState& state, double step_s, const Eigen::MatrixXd& inner, const Eigen::MatrixXd& end);
  static const double inner_share;
  /// In steps of the interval over powers of two.
  TimeState cross(TimeState state, double interval_s, const DriversWithin& drivers);

  /// [output][case]
  Eigen::MatrixXd outputs(const TimeState& state, const Eigen::MatrixXd& drivers) const;
  Eigen::RowVectorXd stored_J_per_m(const Eigen::MatrixXd& temperatures) const;
  std::size_t steps() const { return steps_; }
  std::size_t factorisations() const { return system_.factorisations(); }

 private:
  Eigen::RowVectorXd heat_entering(const Eigen::MatrixXd& temperatures, const Eigen::MatrixXd& drivers) const;

  const TimeField& field_;
  ShiftedSystem system_;
  Eigen::RowVectorXd limits_K_;
  double last_step_s_ = 0.0;
  std::size_t steps_ = 0;
};

}  // namespace slabwright::conduction
