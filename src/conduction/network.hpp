// The section as a network of nodes: who passes heat to whom. Plain numbers; nothing is solved here.
#pragma once
#include <cstddef>
#include <vector>

#include "conduction/grid.hpp"

namespace slabwright::conduction {

/// A node touches a film.
struct FilmContact {
  std::size_t node, boundary;
  FieldDriverId driver;
  double conductance_W_per_mK;
};

/// A node lies on a stretch of fixed temperature. At a corner of two stretches it stands once for each, and takes their
/// mean weighted by the lengths beside it.
struct FixedContact {
  std::size_t node, boundary;
  FieldDriverId at_from, at_to;
  double to_share;  ///< how far along the stretch the node lies
  double length_m;  ///< of the stretch that belongs to the node
};

struct HeatInput {
  std::size_t node;
  FieldDriverId driver;
  double heat_W_per_m;  ///< per unit of the driver
};

/// Conductances are per metre of the third direction.
struct Network {
  std::size_t columns = 0, rows = 0;
  std::vector<double> east_W_per_mK;   ///< from a node to its neighbour at higher x; 0 where nothing lies between
  std::vector<double> north_W_per_mK;  ///< from a node to its neighbour at higher y
  std::vector<FilmContact> films;
  std::vector<FixedContact> fixed;
  std::vector<HeatInput> heat;

  std::size_t nodes() const { return columns * rows; }
};

/// Calls visit(neighbour, conductance) for every neighbour of a node that heat passes to.
template <class Visit>
void for_each_neighbour(const Network& network, std::size_t node, Visit visit) {
  const std::size_t row = network.columns;
  const auto offer = [&visit](std::size_t neighbour, double conductance) {
    if (conductance > 0.0) visit(neighbour, conductance);
  };
  if (node >= row) offer(node - row, network.north_W_per_mK[node - row]);
  if (node >= 1) offer(node - 1, network.east_W_per_mK[node - 1]);  // the last column passes nothing on to the east
  offer(node + 1, network.east_W_per_mK[node]);
  offer(node + row, network.north_W_per_mK[node]);
}

/// By node: length of the stretches of fixed temperature that belongs to it, 0 where its temperature is not fixed.
std::vector<double> fixed_lengths(const Network& network);

/// Every node owns the quarters of the four cells around it. Within a cell the material is one, so a link between two
/// nodes is the cells on its two sides in parallel, and layers are nodes in series: contrasts of 10 000 need no mean.
Network network_of(const FieldSection& section, const Grid& grid);

}  // namespace slabwright::conduction
