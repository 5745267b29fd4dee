#include "conduction/assembly.hpp"

#include <algorithm>

#include "conduction/index.hpp"

namespace slabwright::conduction {
namespace {

Eigen::MatrixXd fixed_temperatures(const Network& network, std::size_t drivers) {
  Eigen::MatrixXd temperatures = Eigen::MatrixXd::Zero(at(network.nodes()), at(drivers));
  const std::vector<double> length_m = fixed_lengths(network);
  for (const FixedContact& contact : network.fixed) {
    const double weight = contact.length_m / length_m[contact.node];
    temperatures(at(contact.node), at(contact.at_from.at)) += weight * (1.0 - contact.to_share);
    temperatures(at(contact.node), at(contact.at_to.at)) += weight * contact.to_share;
  }
  return temperatures;
}

std::vector<std::size_t> unknown_nodes(const Network& network) {
  const std::vector<double> fixed_m = fixed_lengths(network);
  std::vector<std::size_t> unknown;
  for (const std::size_t node : dissected(network.columns, network.rows)) {
    bool in_material = false;
    for_each_neighbour(network, node, [&in_material](std::size_t, double) { in_material = true; });
    if (in_material && fixed_m[node] == 0.0) unknown.push_back(node);
  }
  return unknown;
}

std::vector<double> film_conductances(const Network& network) {
  std::vector<double> sum_W_per_mK(network.nodes(), 0.0);
  for (const FilmContact& film : network.films) sum_W_per_mK[film.node] += film.conductance_W_per_mK;
  return sum_W_per_mK;
}

/// The lower half, column by column with rows rising, as the compressed form wants it.
Eigen::SparseMatrix<double> conductance_matrix(const Network& network, const std::vector<std::size_t>& nodes,
                                               const std::vector<Index>& unknown_of) {
  const std::vector<double> films_W_per_mK = film_conductances(network);
  Eigen::SparseMatrix<double> matrix(at(nodes.size()), at(nodes.size()));
  matrix.reserve(at(3 * nodes.size()));
  std::vector<std::pair<Index, double>> later;
  for (const std::size_t node : nodes) {
    const Index column = unknown_of[node];
    double diagonal = films_W_per_mK[node];
    later.clear();
    for_each_neighbour(network, node, [&](std::size_t neighbour, double conductance) {
      diagonal += conductance;
      if (unknown_of[neighbour] > column) later.emplace_back(unknown_of[neighbour], -conductance);
    });
    std::sort(later.begin(), later.end());
    matrix.startVec(column);
    matrix.insertBack(column, column) = diagonal;
    for (const auto& [row, value] : later) matrix.insertBack(row, column) = value;
  }
  matrix.finalize();
  return matrix;
}

Eigen::MatrixXd drive_columns(const Network& network, const Eigen::MatrixXd& fixed,
                              const std::vector<std::size_t>& nodes, const std::vector<Index>& unknown_of) {
  Eigen::MatrixXd drive = Eigen::MatrixXd::Zero(at(nodes.size()), fixed.cols());
  for (const FilmContact& film : network.films) {
    const Index row = unknown_of[film.node];
    if (row != known) drive(row, at(film.driver.at)) += film.conductance_W_per_mK;
  }
  for (const HeatInput& heat : network.heat) {
    const Index row = unknown_of[heat.node];
    if (row != known) drive(row, at(heat.driver.at)) += heat.heat_W_per_m;
  }
  for (const std::size_t node : nodes) {
    for_each_neighbour(network, node, [&](std::size_t neighbour, double conductance) {
      if (unknown_of[neighbour] == known) drive.row(unknown_of[node]) += conductance * fixed.row(at(neighbour));
    });
  }
  return drive;
}

}  // namespace

Assembly assemble(const Network& network, std::size_t drivers) {
  Assembly assembly;
  assembly.unknown_nodes = unknown_nodes(network);
  std::vector<Index> unknown_of(network.nodes(), known);
  for (std::size_t u = 0; u < assembly.unknown_nodes.size(); ++u) unknown_of[assembly.unknown_nodes[u]] = at(u);
  assembly.fixed_temperatures = fixed_temperatures(network, drivers);
  assembly.conductance = conductance_matrix(network, assembly.unknown_nodes, unknown_of);
  assembly.drive = drive_columns(network, assembly.fixed_temperatures, assembly.unknown_nodes, unknown_of);
  return assembly;
}

}  // namespace slabwright::conduction
