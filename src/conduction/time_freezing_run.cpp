#include <algorithm>
#include <cmath>

#include "conduction/time_factors.hpp"
#include "conduction/time_freezing.hpp"
#include "conduction/time_series.hpp"
#include "conduction/time_swing.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace conduction;

/// Of what a step moves. Heat content is straight between its bends, so that rounding is soon reached.
constexpr double balance_share = 1e-12;
constexpr int most_turns = 60, most_halvings = 20;

class FreezingSteps {
 public:
  FreezingSteps(FreezingField& field, Eigen::VectorXd temperatures)
      : field_(field), temperatures_(std::move(temperatures)), contents_(field.contents(temperatures_)) {}

  const Eigen::VectorXd& temperatures() const { return temperatures_; }
  double stored_J_per_m() const { return contents_.sum(); }
  double entered_J_per_m() const { return entered_J_per_m_; }
  std::size_t steps() const { return steps_; }
  std::size_t factorisations() const { return factorisations_; }

  void cross(const Eigen::VectorXd& from, const Eigen::VectorXd& to, double interval_s, double longest_s) {
    const double count = std::ceil(interval_s / longest_s);
    for (double step = 1.0; step <= count; step += 1.0) {
      const Eigen::VectorXd end = from + step / count * (to - from);
      take(end, interval_s / count, 0);
    }
  }

 private:
  /// Or in two halves where heat contents do not settle.
  void take(const Eigen::VectorXd& drivers, double step_s, int halvings) {
    field_.conduct_as_at(temperatures_, drivers);
    if (settle(drivers, step_s)) return;
    expects(halvings < most_halvings, "conduction: freezing did not settle");
    take(drivers, step_s / 2.0, halvings + 1);
    take(drivers, step_s / 2.0, halvings + 1);
  }

  bool settle(const Eigen::VectorXd& drivers, double step_s) {
    const Assembly& assembly = field_.field().assembly;
    const Eigen::VectorXd driven = assembly.drive * drivers;
    Eigen::VectorXd trial = temperatures_;
    for (int turn = 0; turn < most_turns; ++turn) {
      const Eigen::VectorXd slopes = field_.slopes(trial);
      ShiftedSystem system(assembly, slopes);
      const Eigen::VectorXd passed = system.conductance_times(trial), contents = field_.contents(trial);
      const Eigen::VectorXd missing = driven - passed - (contents - contents_) / step_s;
      const double moved = driven.cwiseAbs().maxCoeff() + passed.cwiseAbs().maxCoeff();
      if (turn > 0 && missing.cwiseAbs().maxCoeff() <= balance_share * moved)
        return keep(trial, contents, drivers, step_s);
      trial = field_.held(trial, trial + system.solve(1.0 / step_s, missing));
      ++factorisations_;
    }
    return false;
  }

  bool keep(const Eigen::VectorXd& temperatures, const Eigen::VectorXd& contents, const Eigen::VectorXd& drivers,
            double step_s) {
    const TimeField& field = field_.field();
    const auto boundaries = static_cast<Eigen::Index>(field.outputs.boundaries);
    const Eigen::VectorXd through = field.outputs.of_temperatures.bottomRows(boundaries) * temperatures +
                                    field.outputs.of_drivers.bottomRows(boundaries) * drivers;
    entered_J_per_m_ += step_s * (through.sum() + field.let_free_W_per_m.dot(drivers));
    temperatures_ = temperatures;
    contents_ = contents;
    ++steps_;
    return true;
  }

  FreezingField& field_;
  Eigen::VectorXd temperatures_, contents_;
  double entered_J_per_m_ = 0.0;
  std::size_t steps_ = 0, factorisations_ = 0;
};

}  // namespace

FieldRun freezing_run(const FieldSection& section, const std::vector<FieldPoint>& watched,
                      const std::vector<FreezingMaterial>& freezing, const PeriodicDrivers& before,
                      const DriverSeries& series, const FreezingOptions& options) {
  unit_responses(section, {}, options.grid);  // holds the section's contracts
  expect_sound(series, before, section.drivers.size());
  expects(options.longest_step_s > 0.0, "conduction: a step must have a length");
  FreezingField field(section, watched, freezing, options.grid);
  FreezingSteps steps(field, temperatures_at(field.field(), before, series.times_s[0]));
  const double stored_before = steps.stored_J_per_m();
  FieldRun run;
  for (std::size_t row = 0; row < series.times_s.size(); ++row) {
    const Eigen::VectorXd drivers = row_of(series, row);
    if (row > 0 && series.times_s[row] > series.times_s[row - 1])
      steps.cross(row_of(series, row - 1), drivers, series.times_s[row] - series.times_s[row - 1],
                  options.longest_step_s);
    const OutputMap& map = field.field().outputs;
    const Eigen::VectorXd outputs = map.of_temperatures * steps.temperatures() + map.of_drivers * drivers;
    const auto points = outputs.begin() + static_cast<std::ptrdiff_t>(watched.size());
    run.temperatures_degC.emplace_back(outputs.begin(), points);
    run.heat_in_W_per_m.emplace_back(points, outputs.end());
    run.stored_J_per_m.push_back(steps.stored_J_per_m() - stored_before);
    run.entered_J_per_m.push_back(steps.entered_J_per_m());
  }
  run.unknowns = field.field().assembly.unknown_nodes.size();
  run.steps = steps.steps();
  run.factorisations = steps.factorisations();
  return run;
}

}  // namespace slabwright
