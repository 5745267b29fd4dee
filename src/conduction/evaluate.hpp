// What a solved section says: temperatures at points, heat through its boundaries.
#pragma once
#include <Eigen/Dense>
#include <vector>

#include "conduction/network.hpp"

namespace slabwright::conduction {

/// [driver]: K per unit, linear between the four nodes of a cell of material that holds the point. On a surface only
/// the nodes of the surface count.
std::vector<double> weights_at(const Grid& grid, const Eigen::MatrixXd& temperatures, FieldPoint point);

/// [boundary][driver]: heat entering through each stretch, W/m per unit.
std::vector<std::vector<double>> heat_entering(const Network& network, const Eigen::MatrixXd& temperatures,
                                               std::size_t boundaries);

/// Heat that enters and is let free in all, less what leaves, as a share of what enters: the worst driver.
double imbalance_share(const Network& network, const std::vector<std::vector<double>>& heat_in, std::size_t drivers);

}  // namespace slabwright::conduction
