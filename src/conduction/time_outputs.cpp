// Watched temperatures and boundary heats as linear rows over unknown temperatures and drivers.
#include "conduction/evaluate.hpp"
#include "conduction/index.hpp"
#include "conduction/time_field.hpp"

namespace slabwright::conduction {
namespace {

/// Adds what a node's temperature gives to a row.
class Rows {
 public:
  Rows(const Network& network, const Assembly& assembly, std::size_t outputs)
      : fixed_(assembly.fixed_temperatures),
        unknown_of_(network.nodes(), known),
        of_drivers_(Eigen::MatrixXd::Zero(at(outputs), assembly.drive.cols())) {
    for (std::size_t u = 0; u < assembly.unknown_nodes.size(); ++u) unknown_of_[assembly.unknown_nodes[u]] = at(u);
  }

  void add_temperature(std::size_t row, std::size_t node, double factor) {
    if (factor == 0.0) return;
    if (unknown_of_[node] == known)
      of_drivers_.row(at(row)) += factor * fixed_.row(at(node));
    else
      entries_.emplace_back(static_cast<int>(row), static_cast<int>(unknown_of_[node]), factor);
  }
  void add_driver(std::size_t row, FieldDriverId driver, double factor) {
    of_drivers_(at(row), at(driver.at)) += factor;
  }

  OutputMap map(std::size_t points, std::size_t boundaries, std::size_t unknowns) const {
    OutputMap map{{}, of_drivers_, points, boundaries};
    map.of_temperatures.resize(of_drivers_.rows(), at(unknowns));
    map.of_temperatures.setFromTriplets(entries_.begin(), entries_.end());
    return map;
  }

 private:
  const Eigen::MatrixXd& fixed_;
  std::vector<Index> unknown_of_;
  Eigen::MatrixXd of_drivers_;
  std::vector<Eigen::Triplet<double>> entries_;
};

/// A node of fixed temperature gives what it passes on and has not been given; at a corner by length.
void add_heat_of_fixed(const Network& network, std::size_t first_row, Rows& rows) {
  const std::vector<double> length_m = fixed_lengths(network);
  for (const FixedContact& contact : network.fixed) {
    const std::size_t row = first_row + contact.boundary;
    const double share = contact.length_m / length_m[contact.node];
    for_each_neighbour(network, contact.node, [&](std::size_t neighbour, double conductance) {
      rows.add_temperature(row, contact.node, share * conductance);
      rows.add_temperature(row, neighbour, -share * conductance);
    });
    for (const HeatInput& heat : network.heat) {
      if (heat.node == contact.node) rows.add_driver(row, heat.driver, -share * heat.heat_W_per_m);
    }
    for (const FilmContact& film : network.films) {
      if (film.node != contact.node) continue;
      rows.add_driver(row, film.driver, -share * film.conductance_W_per_mK);
      rows.add_temperature(row, film.node, share * film.conductance_W_per_mK);
    }
  }
}

}  // namespace

OutputMap output_map(const Grid& grid, const Network& network, const Assembly& assembly,
                     const std::vector<FieldPoint>& watched, std::size_t boundaries) {
  Rows rows(network, assembly, watched.size() + boundaries);
  for (std::size_t point = 0; point < watched.size(); ++point) {
    for (const auto& [node, share] : shares_at(grid, watched[point])) rows.add_temperature(point, node, share);
  }
  for (const FilmContact& film : network.films) {
    rows.add_driver(watched.size() + film.boundary, film.driver, film.conductance_W_per_mK);
    rows.add_temperature(watched.size() + film.boundary, film.node, -film.conductance_W_per_mK);
  }
  add_heat_of_fixed(network, watched.size(), rows);
  return rows.map(watched.size(), boundaries, assembly.unknown_nodes.size());
}

}  // namespace slabwright::conduction
