#include "conduction/network.hpp"

#include <algorithm>
#include <cmath>
#include <type_traits>

#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

/// The grid's edge between two neighbouring nodes, with the cells on its two sides.
struct Edge {
  std::size_t low_node, high_node;
  bool horizontal;
  double length_m;
  double one_side_W_per_mK, other_side_W_per_mK;

  bool on_material() const { return one_side_W_per_mK > 0.0 || other_side_W_per_mK > 0.0; }
  bool on_outside() const { return (one_side_W_per_mK > 0.0) != (other_side_W_per_mK > 0.0); }
};

Edge east_of(const Grid& grid, std::size_t i, std::size_t j) {
  return {grid.node(i, j),
          grid.node(i + 1, j),
          true,
          grid.lines.x_m[i + 1] - grid.lines.x_m[i],
          grid.conductivity(i + 1, j),
          grid.conductivity(i + 1, j + 1)};
}

Edge north_of(const Grid& grid, std::size_t i, std::size_t j) {
  return {grid.node(i, j),
          grid.node(i, j + 1),
          false,
          grid.lines.y_m[j + 1] - grid.lines.y_m[j],
          grid.conductivity(i, j + 1),
          grid.conductivity(i + 1, j + 1)};
}

std::vector<Edge> edges_along(const Grid& grid, const FieldSegment& segment) {
  const auto [i0, i1] =
      std::minmax({line_at(grid.lines.x_m, segment.from.x_m), line_at(grid.lines.x_m, segment.to.x_m)});
  const auto [j0, j1] =
      std::minmax({line_at(grid.lines.y_m, segment.from.y_m), line_at(grid.lines.y_m, segment.to.y_m)});
  std::vector<Edge> edges;
  for (std::size_t i = i0; i < i1; ++i) edges.push_back(east_of(grid, i, j0));
  for (std::size_t j = j0; j < j1; ++j) edges.push_back(north_of(grid, i0, j));
  return edges;
}

double share_along(const Grid& grid, const FieldSegment& segment, std::size_t node) {
  const double dx_m = segment.to.x_m - segment.from.x_m, dy_m = segment.to.y_m - segment.from.y_m;
  const double x_m = grid.lines.x_m[node % grid.columns()] - segment.from.x_m;
  const double y_m = grid.lines.y_m[node / grid.columns()] - segment.from.y_m;
  return (x_m * dx_m + y_m * dy_m) / (dx_m * dx_m + dy_m * dy_m);
}

void link_nodes(const Grid& grid, Network& network) {
  const std::vector<double>&x_m = grid.lines.x_m, &y_m = grid.lines.y_m;
  for (std::size_t j = 1; j < grid.rows(); ++j) {
    for (std::size_t i = 1; i < grid.columns(); ++i) {
      const double conductivity = grid.conductivity(i, j);
      const double shape = (y_m[j] - y_m[j - 1]) / (x_m[i] - x_m[i - 1]);
      for (const std::size_t row : {j - 1, j})
        network.east_W_per_mK[grid.node(i - 1, row)] += conductivity * shape / 2.0;
      for (const std::size_t column : {i - 1, i}) {
        network.north_W_per_mK[grid.node(column, j - 1)] += conductivity / shape / 2.0;
      }
    }
  }
}

/// Halves of the edges along a stretch belong to the nodes at their ends.
void touch_boundary(const FieldSection& section, const Grid& grid, std::size_t boundary, Network& network) {
  const BoundaryStretch& stretch = section.boundaries[boundary];
  for (const Edge& edge : edges_along(grid, stretch.where)) {
    expects(edge.on_material(), "conduction: a boundary stretch must lie on material");
    for (const std::size_t node : {edge.low_node, edge.high_node}) {
      if (const auto* film = std::get_if<SurfaceFilm>(&stretch.condition)) {
        expects(edge.on_outside(), "conduction: a film must lie on the outside of the material");
        network.films.push_back({node, boundary, film->driver, film->coefficient_W_per_m2K * edge.length_m / 2.0});
      } else {
        const auto& fixed = std::get<FixedTemperature>(stretch.condition);
        const double to_share = share_along(grid, stretch.where, node);
        network.fixed.push_back({node, boundary, fixed.at_from, fixed.at_to, to_share, edge.length_m / 2.0});
      }
    }
  }
}

void let_heat_in(const FieldSection& section, const Grid& grid, Network& network) {
  for (const HeatPlane& plane : section.planes) {
    for (const Edge& edge : edges_along(grid, plane.where)) {
      expects(edge.on_material(), "conduction: a heat plane must lie on material");
      for (const std::size_t node : {edge.low_node, edge.high_node}) {
        network.heat.push_back({node, plane.driver, edge.length_m / 2.0});
      }
    }
  }
  for (const HeatLine& line : section.lines) {
    const std::size_t node =
        grid.node(line_at(grid.lines.x_m, line.where.x_m), line_at(grid.lines.y_m, line.where.y_m));
    bool on_material = false;
    for_each_neighbour(network, node, [&on_material](std::size_t, double) { on_material = true; });
    expects(on_material, "conduction: a heat line must lie in material");
    network.heat.push_back({node, line.driver, 1.0});
  }
}

void expect_no_overlap(const FieldSection& section, const Grid& grid) {
  std::vector<char> taken(2 * grid.nodes(), 0);
  for (const BoundaryStretch& stretch : section.boundaries) {
    for (const Edge& edge : edges_along(grid, stretch.where)) {
      char& here = taken[2 * edge.low_node + (edge.horizontal ? 0 : 1)];
      expects(here == 0, "conduction: two boundary stretches lie on one place");
      here = 1;
    }
  }
}

/// A piece of material that no temperature reaches would have any temperature at all.
void expect_temperature_everywhere(const Network& network) {
  std::vector<char> reached(network.nodes(), 0);
  std::vector<std::size_t> front;
  const auto reach = [&](std::size_t node) {
    if (reached[node]) return;
    reached[node] = 1;
    front.push_back(node);
  };
  for (const FilmContact& film : network.films) reach(film.node);
  for (const FixedContact& fixed : network.fixed) reach(fixed.node);
  while (!front.empty()) {
    const std::size_t node = front.back();
    front.pop_back();
    for_each_neighbour(network, node, [&reach](std::size_t neighbour, double) { reach(neighbour); });
  }
  for (std::size_t node = 0; node < network.nodes(); ++node) {
    const bool reached_or_void =
        reached[node] || (network.east_W_per_mK[node] == 0.0 && network.north_W_per_mK[node] == 0.0);
    expects(reached_or_void, "conduction: a piece of material has no boundary with a temperature");
  }
}

}  // namespace

std::vector<double> fixed_lengths(const Network& network) {
  std::vector<double> length_m(network.nodes(), 0.0);
  for (const FixedContact& contact : network.fixed) length_m[contact.node] += contact.length_m;
  return length_m;
}

Network network_of(const FieldSection& section, const Grid& grid) {
  Network network{grid.columns(), grid.rows(), {}, {}, {}, {}, {}};
  network.east_W_per_mK.assign(grid.nodes(), 0.0);
  network.north_W_per_mK.assign(grid.nodes(), 0.0);
  link_nodes(grid, network);
  expect_no_overlap(section, grid);
  for (std::size_t boundary = 0; boundary < section.boundaries.size(); ++boundary) {
    touch_boundary(section, grid, boundary, network);
  }
  let_heat_in(section, grid, network);
  expect_temperature_everywhere(network);
  return network;
}

}  // namespace slabwright::conduction
