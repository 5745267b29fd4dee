#include "slabwright/conduction.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "conduction/assembly.hpp"
#include "conduction/evaluate.hpp"
#include "conduction/responses.hpp"
#include "conduction/solve.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace conduction;

void expect_driver(const FieldSection& section, FieldDriverId driver, FieldDriver::Kind kind) {
  expects(driver.at < section.drivers.size(), "conduction: no such driver");
  expects(section.drivers[driver.at].kind == kind, "conduction: a driver of the wrong kind");
}

void expect_finite(std::initializer_list<double> numbers) {
  const bool all = std::all_of(numbers.begin(), numbers.end(), [](double number) { return std::isfinite(number); });
  expects(all, "conduction: a number is not finite");
}

void expect_straight(const FieldSegment& segment) {
  expect_finite({segment.from.x_m, segment.from.y_m, segment.to.x_m, segment.to.y_m});
  const double dx_m = std::abs(segment.to.x_m - segment.from.x_m), dy_m = std::abs(segment.to.y_m - segment.from.y_m);
  expects(std::min(dx_m, dy_m) < same_line_m, "conduction: a segment must run along x or along y");
  expects(std::max(dx_m, dy_m) > same_line_m, "conduction: a segment must have a length");
}

void expect_sound(const MaterialRectangle& material) {
  expect_finite({material.x0_m, material.x1_m, material.y0_m, material.y1_m, material.conductivity_W_per_mK});
  const double thinnest_m = std::min(material.x1_m - material.x0_m, material.y1_m - material.y0_m);
  expects(thinnest_m > same_line_m, "conduction: a rectangle must have a width and a height");
  expects(material.conductivity_W_per_mK > 0.0, "conduction: conductivity must be above 0");
}

void expect_sound(const FieldSection& section, const BoundaryStretch& stretch) {
  expect_straight(stretch.where);
  if (const auto* film = std::get_if<SurfaceFilm>(&stretch.condition)) {
    expect_finite({film->coefficient_W_per_m2K});
    expects(film->coefficient_W_per_m2K > 0.0, "conduction: a film coefficient must be above 0");
    expect_driver(section, film->driver, FieldDriver::Kind::temperature);
  } else {
    const auto& fixed = std::get<FixedTemperature>(stretch.condition);
    expect_driver(section, fixed.at_from, FieldDriver::Kind::temperature);
    expect_driver(section, fixed.at_to, FieldDriver::Kind::temperature);
  }
}

void expect_sound(const FieldSection& section) {
  expects(!section.materials.empty(), "conduction: a section needs material");
  for (const MaterialRectangle& material : section.materials) expect_sound(material);
  for (const BoundaryStretch& stretch : section.boundaries) expect_sound(section, stretch);
  for (const HeatPlane& plane : section.planes) {
    expect_straight(plane.where);
    expect_driver(section, plane.driver, FieldDriver::Kind::heat);
  }
  for (const HeatLine& line : section.lines) {
    expect_finite({line.where.x_m, line.where.y_m});
    expect_driver(section, line.driver, FieldDriver::Kind::heat);
  }
}

void expect_sound(const FieldOptions& options) {
  expect_finite({options.first_cell_m, options.growth, options.largest_cell_m});
  expects(options.first_cell_m > same_line_m, "conduction: the first cell must have a size");
  expects(options.growth >= 1.0, "conduction: cells must not shrink away from a named line");
  expects(options.largest_cell_m >= options.first_cell_m, "conduction: the largest cell is below the first");
}

void take_sizes(std::vector<std::vector<double>>& table) {
  for (std::vector<double>& row : table) {
    for (double& number : row) number = std::abs(number);
  }
}

}  // namespace

namespace conduction {

void expect_sound(const FieldSection& section, const FieldOptions& options) {
  slabwright::expect_sound(section);
  slabwright::expect_sound(options);
}

UnitResponses responses_on(const FieldSection& section, Lines lines, const std::vector<FieldPoint>& watched) {
  const Grid grid = grid_on(std::move(lines), section.materials);
  const Network network = network_of(section, grid);
  const Assembly assembly = assemble(network, section.drivers.size());
  const Eigen::MatrixXd temperatures = steady_temperatures(assembly);
  UnitResponses responses;
  for (const FieldPoint& point : watched) responses.weights.push_back(weights_at(grid, temperatures, point));
  responses.heat_in = heat_entering(network, temperatures, section.boundaries.size());
  responses.imbalance_share = imbalance_share(network, responses.heat_in, section.drivers.size());
  responses.unknowns = assembly.unknown_nodes.size();
  return responses;
}

std::vector<std::vector<double>> changes(const std::vector<std::vector<double>>& from,
                                         const std::vector<std::vector<double>>& to) {
  std::vector<std::vector<double>> change = to;
  for (std::size_t row = 0; row < to.size(); ++row) {
    for (std::size_t column = 0; column < to[row].size(); ++column) change[row][column] -= from[row][column];
  }
  return change;
}

}  // namespace conduction

UnitResponses unit_responses(const FieldSection& section, const std::vector<FieldPoint>& watched,
                             const FieldOptions& options) {
  conduction::expect_sound(section, options);
  const Lines lines = graded_lines(section, options);
  UnitResponses responses = responses_on(section, lines, watched);
  if (options.with_error_estimate) {
    const UnitResponses coarse = responses_on(section, every_second(lines), watched);
    responses.weight_errors = changes(coarse.weights, responses.weights);
    responses.heat_in_errors = changes(coarse.heat_in, responses.heat_in);
    take_sizes(responses.weight_errors);
    take_sizes(responses.heat_in_errors);
  }
  return responses;
}

}  // namespace slabwright
