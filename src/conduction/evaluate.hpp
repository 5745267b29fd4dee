// What a solved section says: temperatures at points, heat through its boundaries.
#pragma once
#include <Eigen/Dense>
#include <array>
#include <cstddef>
#include <vector>

#include "conduction/network.hpp"

namespace slabwright::conduction {

struct NodeShare {
  std::size_t node;
  double share;
};

/// A temperature at a point as a mean of nodes, linear between the four of a cell of material that holds it. On a
/// surface only the nodes of the surface have a share.
std::array<NodeShare, 4> shares_at(const Grid& grid, FieldPoint point);

/// [driver]: K per unit at a point.
std::vector<double> weights_at(const Grid& grid, const Eigen::MatrixXd& temperatures, FieldPoint point);

/// [boundary][driver]: heat entering through each stretch, W/m per unit.
std::vector<std::vector<double>> heat_entering(const Network& network, const Eigen::MatrixXd& temperatures,
                                               std::size_t boundaries);

/// Heat that enters and is let free in all, less what leaves, as a share of what enters: the worst driver.
double imbalance_share(const Network& network, const std::vector<std::vector<double>>& heat_in, std::size_t drivers);

}  // namespace slabwright::conduction
