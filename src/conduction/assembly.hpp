// The network as a linear system: what a steady solve divides and what a transient one will step.
#pragma once
#include <Eigen/Dense>
#include <Eigen/SparseCore>
#include <cstddef>
#include <vector>

#include "conduction/network.hpp"

namespace slabwright::conduction {

/// Steady: conductance T = drive u. In time: C dT/dt = drive u - conductance T, with the same two matrices.
/// T are the unknown node temperatures, u the drivers.
struct Assembly {
  /// Nodes with an unknown temperature, in the order in which they are eliminated.
  std::vector<std::size_t> unknown_nodes;
  /// [unknown][unknown], lower half, symmetric and positive definite, W/(m K).
  Eigen::SparseMatrix<double> conductance;
  /// [unknown][driver], W/m per unit of the driver.
  Eigen::MatrixXd drive;
  /// [node][driver]: temperature of nodes of fixed temperature per unit of the driver, 0 in the other rows.
  Eigen::MatrixXd fixed_temperatures;
};

Assembly assemble(const Network& network, std::size_t drivers);

/// All nodes of a grid, so ordered that eliminating them one by one fills the matrix little: the grid is cut in two by
/// a line of nodes, which comes last, and each half likewise (nested dissection, George 1973).
std::vector<std::size_t> dissected(std::size_t columns, std::size_t rows);

}  // namespace slabwright::conduction
