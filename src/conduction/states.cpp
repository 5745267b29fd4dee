#include "conduction/states.hpp"

#include <algorithm>

#include "conduction/index.hpp"
#include "slabwright/conduction_states.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using namespace conduction;
using Rows = std::vector<std::vector<double>>;

constexpr double year_s = 8766.0 * hour_s;
/// A third of an hour to a week are what a building lives by; months and years are what the ground does.
const std::vector<double> rates_per_s{0.0,
                                      1.0 / year_s,
                                      1.0 / (1000.0 * hour_s),
                                      1.0 / (168.0 * hour_s),
                                      1.0 / (24.0 * hour_s),
                                      1.0 / (6.0 * hour_s),
                                      1.0 / hour_s,
                                      3.0 / hour_s};
/// A driver is taken to move as far as makes 1 K at the watched point that feels it most. Where none feels it, no more
/// than this times its own unit.
constexpr double farthest = 5.0;

Rows all_rows(const Eigen::MatrixXd& matrix) { return rows_of(matrix, 0, static_cast<std::size_t>(matrix.rows())); }

/// [output][driver]
Eigen::MatrixXd steady_gains(const UnitResponses& steady, std::size_t drivers) {
  Eigen::MatrixXd gains(at(steady.weights.size() + steady.heat_in.size()), at(drivers));
  Index row = 0;
  for (const Rows* rows : {&steady.weights, &steady.heat_in})
    for (const std::vector<double>& values : *rows)
      gains.row(row++) = Eigen::Map<const Eigen::RowVectorXd>(values.data(), at(values.size()));
  return gains;
}

/// Columns of drivers that move.
std::vector<Index> moving_drivers(const FieldSection& section, const std::vector<FieldDriverId>& constant) {
  std::vector<char> stays(section.drivers.size(), 0);
  for (const FieldDriverId driver : constant) {
    expects(driver.at < section.drivers.size(), "conduction: no such driver");
    stays[driver.at] = 1;
  }
  std::vector<Index> moving;
  for (std::size_t driver = 0; driver < stays.size(); ++driver)
    if (!stays[driver]) moving.push_back(at(driver));
  return moving;
}

struct Scales {
  Eigen::VectorXd drivers, outputs;
};

/// Temperatures weigh 1 per kelvin, heat as a share of the largest steady heat.
Scales scales_of(const Eigen::MatrixXd& gains, Index points) {
  Scales scales{Eigen::VectorXd::Constant(gains.cols(), farthest), Eigen::VectorXd::Ones(gains.rows())};
  const Index heats = gains.rows() - points;
  for (Index driver = 0; driver < gains.cols() && points > 0; ++driver) {
    const double felt_K = gains.col(driver).head(points).cwiseAbs().maxCoeff();
    scales.drivers(driver) = 1.0 / std::max(felt_K, 1.0 / farthest);
  }
  if (heats == 0 || gains.cols() == 0) return scales;
  const double most = (gains.bottomRows(heats) * scales.drivers.asDiagonal()).cwiseAbs().maxCoeff();
  if (most > 0.0) scales.outputs.tail(heats).setConstant(1.0 / most);
  return scales;
}

FewStates shown(const Modes& few, const Eigen::MatrixXd& gains, const std::vector<Index>& moving) {
  Eigen::MatrixXd input = Eigen::MatrixXd::Zero(few.time_s.size(), gains.cols());
  for (std::size_t c = 0; c < moving.size(); ++c) input.col(moving[c]) = few.input.col(at(c));
  FewStates states;
  for (const double time_s : few.time_s) states.decay_per_s.push_back(1.0 / time_s);
  states.input = all_rows(input);
  states.output = all_rows(few.output);
  states.direct = all_rows(gains - few.output * input);
  return states;
}

}  // namespace

FewStates few_states(const FieldSection& section, const std::vector<FieldPoint>& watched,
                     const StatesOptions& options) {
  expects(options.most_states > 0, "conduction: at least one state must be allowed");
  expects(options.swing_share > 0.0, "conduction: few states must be allowed an error");
  const std::vector<Index> moving = moving_drivers(section, options.constant);
  const Eigen::MatrixXd gains = steady_gains(unit_responses(section, watched, options.grid), section.drivers.size());
  const TimeField field = time_field(section, watched, options.grid_in_time);
  const Modes all = krylov_modes(field, field.assembly.drive(Eigen::all, moving), rates_per_s);
  const Scales scales = scales_of(gains(Eigen::all, moving), at(watched.size()));
  const Truncation truncation{at(options.most_states), options.swing_share, hour_s};
  const Modes few = with_fitted_outputs(balanced(all, scales.drivers, scales.outputs, truncation), all, scales.drivers);
  FewStates states = shown(few, gains, moving);
  Eigen::MatrixXd errors = Eigen::MatrixXd::Zero(gains.rows(), gains.cols());
  errors(Eigen::all, moving) = step_errors(few, all, hour_s);
  states.step_errors = all_rows(errors);
  states.points = watched.size();
  states.unknowns = field.assembly.unknown_nodes.size();
  states.states_before = static_cast<std::size_t>(all.time_s.size());
  return states;
}

}  // namespace slabwright
