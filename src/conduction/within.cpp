#include "slabwright/conduction_within.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "conduction/responses.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace conduction;
using Table = std::vector<std::vector<double>>;

FieldOptions coarser(const FieldOptions& options) {
  return {2.0 * options.first_cell_m, options.growth * options.growth, 2.0 * options.largest_cell_m, false};
}

/// Half the cells where much is missing. Three quarters of them are enough where little is: second order takes 9/16 of
/// the error, and cells to the power of 3/2 take 0.65.
FieldOptions finer(const FieldOptions& options, double error_to_allowed) {
  const double root = std::sqrt(options.growth);
  if (error_to_allowed > 1.5) return {options.first_cell_m / 2.0, root, options.largest_cell_m / 2.0, false};
  return {0.75 * options.first_cell_m, root * std::sqrt(root), 0.75 * options.largest_cell_m, false};
}

std::size_t nodes(const Lines& lines) { return lines.x_m.size() * lines.y_m.size(); }

/// One grid: all lines, with the changes from every second one.
struct Level {
  UnitResponses fine;
  Table weight_change, heat_change;
};

Level level_on(const FieldSection& section, const Lines& lines, const std::vector<FieldPoint>& watched) {
  const UnitResponses coarse = responses_on(section, every_second(lines), watched);
  Level level{responses_on(section, lines, watched), {}, {}};
  level.weight_change = changes(coarse.weights, level.fine.weights);
  level.heat_change = changes(coarse.heat_in, level.fine.heat_in);
  return level;
}

/// What second order leaves of a change to cells of half the size.
constexpr double left_share = 1.0 / 3.0;

UnitResponses judged(const Level& before, const Level& now) {
  UnitResponses responses = now.fine;
  responses.weight_errors = changes(before.fine.weights, now.fine.weights);
  for (std::size_t row = 0; row < responses.weights.size(); ++row) {
    for (std::size_t driver = 0; driver < responses.weights[row].size(); ++driver) {
      double& error = responses.weight_errors[row][driver];
      error = std::max({std::abs(error), std::abs(now.weight_change[row][driver]),
                        std::abs(before.weight_change[row][driver]) / 4.0});
    }
  }
  responses.heat_in_errors = now.heat_change;
  for (std::size_t row = 0; row < responses.heat_in.size(); ++row) {
    for (std::size_t driver = 0; driver < responses.heat_in[row].size(); ++driver) {
      const double left = left_share * now.heat_change[row][driver];
      responses.heat_in[row][driver] += left;
      responses.heat_in_errors[row][driver] = std::abs(left);
    }
  }
  return responses;
}

double largest_of(const Table& table, std::size_t driver) {
  double largest = 0.0;
  for (const std::vector<double>& row : table) largest = std::max(largest, std::abs(row[driver]));
  return largest;
}

bool nearer(const FieldFigure& a, const FieldFigure& b) {
  return a.error_share * b.allowed_share > b.error_share * a.allowed_share;
}

/// The worst of a table, errors as shares of `scale` [driver].
void look_for_worst(const Table& errors, const std::vector<double>& scale, FieldFigure like, FieldFigure& worst) {
  for (like.row = 0; like.row < errors.size(); ++like.row) {
    for (like.driver.at = 0; like.driver.at < scale.size(); ++like.driver.at) {
      if (scale[like.driver.at] == 0.0) continue;
      like.error_share = errors[like.row][like.driver.at] / scale[like.driver.at];
      if (nearer(like, worst)) worst = like;
    }
  }
}

FieldFigure worst_of(const FieldSection& section, const UnitResponses& responses, const FieldTolerance& tolerance) {
  std::vector<double> weight_scale, heat_scale;
  for (std::size_t driver = 0; driver < section.drivers.size(); ++driver) {
    const bool heat = section.drivers[driver].kind == FieldDriver::Kind::heat;
    weight_scale.push_back(heat ? largest_of(responses.weights, driver) : 1.0);
    heat_scale.push_back(largest_of(responses.heat_in, driver));
  }
  FieldFigure worst{FieldFigure::Kind::weight, 0, {}, 0.0, tolerance.weight_share};
  look_for_worst(responses.weight_errors, weight_scale, worst, worst);
  look_for_worst(responses.heat_in_errors, heat_scale, {FieldFigure::Kind::heat, 0, {}, 0.0, tolerance.heat_share},
                 worst);
  return worst;
}

}  // namespace

ResponsesWithin unit_responses_within(const FieldSection& section, const std::vector<FieldPoint>& watched,
                                      const FieldTolerance& tolerance, const FieldOptions& options) {
  expect_sound(section, options);
  expects(tolerance.weight_share > 0.0 && tolerance.heat_share > 0.0, "conduction: a tolerance must be above 0");
  Level before = level_on(section, graded_lines(section, coarser(options)), watched);
  FieldOptions cells = options;
  for (Lines lines = graded_lines(section, cells);;) {
    Level now = level_on(section, lines, watched);
    ResponsesWithin within{judged(before, now), FieldEnd::tolerance_met, {}, cells};
    within.worst = worst_of(section, within.responses, tolerance);
    const double error_to_allowed = within.worst.error_share / within.worst.allowed_share;
    if (error_to_allowed <= 1.0) return within;
    lines = graded_lines(section, cells = finer(cells, error_to_allowed));
    if (nodes(lines) > tolerance.most_unknowns) {
      within.end = FieldEnd::most_unknowns;
      return within;
    }
    before = std::move(now);
  }
}

}  // namespace slabwright
