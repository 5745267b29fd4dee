// A row of round tubes in a slab of flat layers: heat and temperatures, steady, per metre of tube.
#pragma once
#include <cstddef>
#include <vector>

namespace slabwright {

struct FlatLayer {
  double thickness_m;            ///< above 0
  double conductivity_W_per_mK;  ///< above 0
};

/// Equal tubes side by side without end, below a room and above whatever the heat goes down to.
struct TubeRow {
  double spacing_m;           ///< above the diameter, at most 1000 of them
  double outside_diameter_m;  ///< above 0
  double axis_depth_m;        ///< from the top face of the first layer
  /// Top first: coverings, concrete, insulation. The tube lies wholly within one of them and may touch its faces.
  std::vector<FlatLayer> layers;
  double above_W_per_m2K;        ///< film on the top face, above 0; 1e9 holds the face at the room's temperature
  double below_W_per_m2K = 0.0;  ///< from the last layer's bottom to what is below; 0 passes nothing
};

struct TubeRowOptions {
  /// Of each conductance, and of each weight as it is.
  double tolerance_share = 1e-3;
  /// 8 and more. 8 answer nearly every slab, 64 a bare tube that touches a metal plate. Behind a wall of plastic a tube
  /// that touches the floor's own face leaves 0.003 of the weight right above it with 64.
  std::size_t most_terms = 64;
};

/// Adds up to 1. The tube's temperature is the water's: inside its resistance.
struct TubeRowWeights {
  double tube_share = 0.0, above_share = 0.0, below_share = 0.0;
};

/// Shares, and weights as they are; never below the rounding of the method. An estimate and no bound.
struct TubeRowErrors {
  double above_share = 0.0, below_share = 0.0, through_share = 0.0;
  double weight_share = 0.0;  ///< of the worst weight
};

enum class TubeRowEnd {
  tolerance_met,
  most_terms  ///< the errors are above the tolerance, and no more terms were allowed
};

/// Heat of one metre of tube: up = above (tube - room) + through (below - room) and
/// down = below (tube - below) - through (below - room).
struct TubeRowResponse {
  double above_W_per_m_K = 0.0, below_W_per_m_K = 0.0, through_W_per_m_K = 0.0;
  TubeRowWeights floor_mean, floor_over_tube, floor_midway;  ///< the top face
  TubeRowWeights plane_midway;                               ///< at the axis' depth, half way between two tubes
  TubeRowWeights under_mean, under_tube, under_midway;       ///< the bottom of the last layer
  TubeRowErrors error;
  TubeRowEnd end = TubeRowEnd::tolerance_met;
  std::size_t terms = 0;  ///< multipoles of each tube
};

/// A response for each tube resistance, per metre of tube: wall and water film, even all round the outer face. 0 holds
/// the outer face at one temperature.
///
/// The field is a sum of multipoles cos(n phi) / r^n at every axis and their echoes from the layers. Along the floor
/// all is periodic, so that an echo is a cosine series whose waves pass flat layers one by one: layers, films and the
/// neighbours are exact, and the only thing cut off is n. The error is what the upper half of the terms changed.
/// What tubes are asked of differs by one number in each row of a small dense system; layers are done once for all.
///
/// Broken contracts (std::logic_error): a size or conductivity not above 0, a resistance or lower coefficient below 0,
/// a number that is not finite, tubes that overlap or lie more than 1000 diameters apart, a tube that does not lie
/// within one layer, a tolerance not above 0, fewer than 8 terms.
std::vector<TubeRowResponse> tube_row_responses(const TubeRow& row, const std::vector<double>& tube_mK_per_W,
                                                const TubeRowOptions& options = {});

}  // namespace slabwright
