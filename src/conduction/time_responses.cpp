#include <algorithm>
#include <cmath>

#include "conduction/time_step.hpp"
#include "slabwright/conduction_time.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace conduction;
void expect_rising(const std::vector<double>& times_s) {
  double before_s = 0.0;
  for (const double time_s : times_s) {
    expects(std::isfinite(time_s) && time_s > before_s, "conduction: times must rise from above 0");
    before_s = time_s;
  }
}

/// Largest steady answer at any node to each driver; 1 for one that moves nothing.
Eigen::RowVectorXd steady_reach_K(const TimeField& field) {
  ShiftedSystem system(field.assembly, field.capacity_J_per_mK);
  Eigen::RowVectorXd reach = Eigen::RowVectorXd::Zero(field.assembly.drive.cols());
  if (field.assembly.drive.rows() > 0) reach = system.solve(0.0, field.assembly.drive).cwiseAbs().colwise().maxCoeff();
  return (reach.array() > 0.0).select(reach, 1.0);
}

double worst_imbalance(const Eigen::RowVectorXd& stored, const Eigen::RowVectorXd& entered) {
  double worst = 0.0;
  for (Eigen::Index c = 0; c < stored.cols(); ++c) {
    const double larger = std::max(std::abs(stored(c)), std::abs(entered(c)));
    if (larger > 0.0) worst = std::max(worst, std::abs(stored(c) - entered(c)) / larger);
  }
  return worst;
}

}  // namespace

StepResponses step_responses(const FieldSection& section, const std::vector<FieldPoint>& watched,
                             const std::vector<double>& times_s, const TimeOptions& options) {
  unit_responses(section, {}, options.grid);  // holds the section's contracts
  expect_rising(times_s);
  expects(options.step_share > 0.0, "conduction: a step must be allowed an error");
  const TimeField field = time_field(section, watched, options.grid);
  const auto drivers = static_cast<Eigen::Index>(section.drivers.size());
  const Eigen::MatrixXd unit = Eigen::MatrixXd::Identity(drivers, drivers);
  Stepper stepper(field, options.step_share * steady_reach_K(field));
  TimeState state = stepper.start(Eigen::MatrixXd::Zero(field.assembly.drive.rows(), drivers), unit);
  StepResponses responses;
  double now_s = 0.0;
  for (const double time_s : times_s) {
    state = stepper.cross(std::move(state), time_s - now_s, [&unit](double) { return unit; });
    now_s = time_s;
    const Eigen::MatrixXd outputs = stepper.outputs(state, unit);
    responses.weights.push_back(rows_of(outputs, 0, watched.size()));
    responses.heat_in.push_back(rows_of(outputs, watched.size(), section.boundaries.size()));
    const Eigen::RowVectorXd stored = stepper.stored_J_per_m(state.temperatures);
    responses.stored_J_per_m.emplace_back(stored.begin(), stored.end());
    responses.imbalance_share = worst_imbalance(stored, state.entered_J_per_m);
  }
  responses.unknowns = field.assembly.unknown_nodes.size();
  responses.steps = stepper.steps();
  responses.factorisations = stepper.factorisations();
  return responses;
}

}  // namespace slabwright
