#include "conduction/evaluate.hpp"

#include <algorithm>
#include <cmath>

#include "conduction/index.hpp"
#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

/// A cell of the grid and a place in it, both coordinates from 0 to 1.
struct Place {
  std::size_t right_line, top_line;
  double x_share, y_share;
};

/// The high lines of the cells that hold a coordinate: two where it lies on a line between two cells.
std::vector<std::size_t> high_lines(const std::vector<double>& lines_m, double at_m) {
  std::vector<std::size_t> high;
  for (std::size_t line = 1; line < lines_m.size(); ++line) {
    if (lines_m[line - 1] - same_line_m <= at_m && at_m <= lines_m[line] + same_line_m) high.push_back(line);
  }
  return high;
}

double share_between(const std::vector<double>& lines_m, std::size_t high, double at_m) {
  const double share = (at_m - lines_m[high - 1]) / (lines_m[high] - lines_m[high - 1]);
  return std::clamp(share, 0.0, 1.0);
}

Place place_of(const Grid& grid, FieldPoint point) {
  const std::vector<double>&x_m = grid.lines.x_m, &y_m = grid.lines.y_m;
  for (const std::size_t j : high_lines(y_m, point.y_m)) {
    for (const std::size_t i : high_lines(x_m, point.x_m)) {
      if (grid.conductivity(i, j) > 0.0) {
        return {i, j, share_between(x_m, i, point.x_m), share_between(y_m, j, point.y_m)};
      }
    }
  }
  expects(false, "conduction: a watched point lies off the material");
  return {};
}

/// Heat leaving a node into the material around it, for each driver.
Eigen::RowVectorXd heat_into_material(const Network& network, const Eigen::MatrixXd& temperatures, std::size_t node) {
  Eigen::RowVectorXd heat = Eigen::RowVectorXd::Zero(temperatures.cols());
  for_each_neighbour(network, node, [&](std::size_t neighbour, double conductance) {
    heat += conductance * (temperatures.row(at(node)) - temperatures.row(at(neighbour)));
  });
  return heat;
}

/// A film's driver at 1, less the surface.
Eigen::RowVectorXd heat_through(const FilmContact& film, const Eigen::MatrixXd& temperatures) {
  Eigen::RowVectorXd difference = -temperatures.row(at(film.node));
  difference(at(film.driver.at)) += 1.0;
  return film.conductance_W_per_mK * difference;
}

}  // namespace

std::array<NodeShare, 4> shares_at(const Grid& grid, FieldPoint point) {
  const Place place = place_of(grid, point);
  const std::size_t i = place.right_line, j = place.top_line;
  const double x = place.x_share, y = place.y_share;
  return {NodeShare{grid.node(i - 1, j - 1), (1.0 - x) * (1.0 - y)}, NodeShare{grid.node(i, j - 1), x * (1.0 - y)},
          NodeShare{grid.node(i - 1, j), (1.0 - x) * y}, NodeShare{grid.node(i, j), x * y}};
}

std::vector<double> weights_at(const Grid& grid, const Eigen::MatrixXd& temperatures, FieldPoint point) {
  std::vector<double> weights(static_cast<std::size_t>(temperatures.cols()), 0.0);
  for (const auto& [node, share] : shares_at(grid, point)) {
    for (std::size_t driver = 0; driver < weights.size(); ++driver)
      weights[driver] += share * temperatures(at(node), at(driver));
  }
  return weights;
}

std::vector<std::vector<double>> heat_entering(const Network& network, const Eigen::MatrixXd& temperatures,
                                               std::size_t boundaries) {
  Eigen::MatrixXd through = Eigen::MatrixXd::Zero(at(boundaries), temperatures.cols());
  Eigen::MatrixXd given = Eigen::MatrixXd::Zero(temperatures.rows(), temperatures.cols());
  for (const HeatInput& heat : network.heat) given(at(heat.node), at(heat.driver.at)) += heat.heat_W_per_m;
  for (const FilmContact& film : network.films) {
    const Eigen::RowVectorXd heat = heat_through(film, temperatures);
    through.row(at(film.boundary)) += heat;
    given.row(at(film.node)) += heat;
  }
  // A fixed temperature gives what its nodes pass on and have not been given; at a corner by length.
  const std::vector<double> length_m = fixed_lengths(network);
  for (const FixedContact& contact : network.fixed) {
    through.row(at(contact.boundary)) +=
        contact.length_m / length_m[contact.node] *
        (heat_into_material(network, temperatures, contact.node) - given.row(at(contact.node)));
  }
  std::vector<std::vector<double>> rows(boundaries);
  for (std::size_t boundary = 0; boundary < boundaries; ++boundary) {
    rows[boundary].assign(through.row(at(boundary)).begin(), through.row(at(boundary)).end());
  }
  return rows;
}

double imbalance_share(const Network& network, const std::vector<std::vector<double>>& heat_in, std::size_t drivers) {
  double worst = 0.0;
  for (std::size_t driver = 0; driver < drivers; ++driver) {
    double sum = 0.0, entering = 0.0;
    const auto count = [&](double heat) {
      sum += heat;
      entering += std::max(heat, 0.0);
    };
    for (const std::vector<double>& through : heat_in) count(through[driver]);
    for (const HeatInput& heat : network.heat) {
      if (heat.driver.at == driver) count(heat.heat_W_per_m);
    }
    if (entering > 0.0) worst = std::max(worst, std::abs(sum) / entering);
  }
  return worst;
}

}  // namespace slabwright::conduction
