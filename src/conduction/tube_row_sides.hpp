// What lies above and below the row's axes: how it passes even heat, and how it answers a wave along the floor.
#pragma once
#include <vector>

#include "slabwright/conduction_tube_row.hpp"

namespace slabwright::conduction {

/// From the axes outward.
struct RowSide {
  double gap_m;                   ///< from the axis to the face of the tube's own layer
  double conductivity_W_per_mK;   ///< of the tube's own layer
  std::vector<FlatLayer> layers;  ///< beyond that face, nearest first
  double outer_W_per_m2K;         ///< beyond the last of them; 0 passes nothing
};

struct RowSides {
  RowSide above, below;
};

/// Expects the tube to lie within one layer.
RowSides sides_of(const TubeRow& row);

/// From the axes to the outer face.
double solid_m2K_per_W(const RowSide& side);
/// From the axes to the temperature beyond.
double conductance_W_per_m2K(const RowSide& side);

/// Answer to a wave cos(kappa x) exp(-kappa y), y away from the axes, that is 1 at the face of the tube's layer.
struct Echo {
  double reflected;  ///< comes back from the face as cos(kappa x) exp(kappa y); -1 where held, 1 where nothing passes
  double at_outer;   ///< temperature it makes at the outer face
};
Echo echo_of(const RowSide& side, double kappa_per_m);

}  // namespace slabwright::conduction
