#include "conduction/tube_row_sides.hpp"

#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

/// Sums of layers differ in their last bits from a depth that a caller added up: what touches may overlap by this.
constexpr double touching_m = 1e-9;

/// Heat passes from a medium with `own` W/m2K for a kelvin of wave into one that takes `taken`.
double reflected(double own, double taken) { return (own - taken) / (own + taken); }

}  // namespace

RowSides sides_of(const TubeRow& row) {
  const double radius_m = row.outside_diameter_m / 2.0, depth_m = row.axis_depth_m;
  double top_m = 0.0;
  std::size_t own = 0;
  while (own + 1 < row.layers.size() && top_m + row.layers[own].thickness_m < depth_m + radius_m - touching_m) {
    top_m += row.layers[own++].thickness_m;
  }
  const FlatLayer& layer = row.layers[own];
  const double above_m = depth_m - top_m, below_m = top_m + layer.thickness_m - depth_m;
  expects(above_m > radius_m - touching_m && below_m > radius_m - touching_m,
          "tube row: the tube must lie within one layer");
  RowSides sides{{above_m, layer.conductivity_W_per_mK, {}, row.above_W_per_m2K},
                 {below_m, layer.conductivity_W_per_mK, {}, row.below_W_per_m2K}};
  for (std::size_t i = own; i-- > 0;) sides.above.layers.push_back(row.layers[i]);
  for (std::size_t i = own + 1; i < row.layers.size(); ++i) sides.below.layers.push_back(row.layers[i]);
  return sides;
}

double solid_m2K_per_W(const RowSide& side) {
  double sum = side.gap_m / side.conductivity_W_per_mK;
  for (const FlatLayer& layer : side.layers) sum += layer.thickness_m / layer.conductivity_W_per_mK;
  return sum;
}

double conductance_W_per_m2K(const RowSide& side) {
  return side.outer_W_per_m2K / (1.0 + side.outer_W_per_m2K * solid_m2K_per_W(side));
}

Echo echo_of(const RowSide& side, double kappa_per_m) {
  double taken = side.outer_W_per_m2K, passed = 1.0;
  for (std::size_t i = side.layers.size(); i-- > 0;) {
    const double own = side.layers[i].conductivity_W_per_mK * kappa_per_m;
    const double fall = std::exp(-kappa_per_m * side.layers[i].thickness_m);
    const double at_far = reflected(own, taken), at_near = at_far * fall * fall;
    passed *= fall * (1.0 + at_far) / (1.0 + at_near);
    taken = own * (1.0 - at_near) / (1.0 + at_near);
  }
  const double back = reflected(side.conductivity_W_per_mK * kappa_per_m, taken);
  return {back, passed * (1.0 + back)};
}

}  // namespace slabwright::conduction
