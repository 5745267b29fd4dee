#include "conduction/time_series.hpp"
#include "conduction/time_step.hpp"
#include "conduction/time_swing.hpp"
#include "slabwright/conduction_time.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {

using namespace conduction;

FieldRun field_run(const FieldSection& section, const std::vector<FieldPoint>& watched, const PeriodicDrivers& before,
                   const DriverSeries& series, const TimeOptions& options) {
  unit_responses(section, {}, options.grid);  // holds the section's contracts
  expect_sound(series, before, section.drivers.size());
  expects(options.step_K > 0.0, "conduction: a step must be allowed an error");
  const TimeField field = time_field(section, watched, options.grid);
  Stepper stepper(field, Eigen::RowVectorXd::Constant(1, options.step_K));
  Eigen::VectorXd drivers = row_of(series, 0);
  TimeState state = stepper.start(temperatures_at(field, before, series.times_s[0]), drivers);
  const double stored_before = stepper.stored_J_per_m(state.temperatures)(0);
  FieldRun run;
  const auto keep = [&](const Eigen::VectorXd& now) {
    const Eigen::VectorXd outputs = stepper.outputs(state, now);
    const auto points = outputs.begin() + static_cast<std::ptrdiff_t>(watched.size());
    run.temperatures_degC.emplace_back(outputs.begin(), points);
    run.heat_in_W_per_m.emplace_back(points, outputs.end());
    run.stored_J_per_m.push_back(stepper.stored_J_per_m(state.temperatures)(0) - stored_before);
    run.entered_J_per_m.push_back(state.entered_J_per_m(0));
  };
  keep(drivers);
  for (std::size_t row = 1; row < series.times_s.size(); ++row) {
    const Eigen::VectorXd next = row_of(series, row);
    const double interval_s = series.times_s[row] - series.times_s[row - 1];
    if (interval_s > 0.0)
      state = stepper.cross(std::move(state), interval_s,
                            [&](double share) -> Eigen::MatrixXd { return drivers + share * (next - drivers); });
    else if (next != drivers)
      state = stepper.after_jump(std::move(state), next);
    drivers = next;
    keep(drivers);
  }
  run.unknowns = field.assembly.unknown_nodes.size();
  run.steps = stepper.steps();
  run.factorisations = stepper.factorisations();
  return run;
}

}  // namespace slabwright
