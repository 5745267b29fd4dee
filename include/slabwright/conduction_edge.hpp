// The edge of a floor on the ground in vertical section: at a wall, or at a door the slab runs out under.
#pragma once
#include <cstddef>
#include <optional>
#include <variant>
#include <vector>

#include "slabwright/conduction.hpp"

namespace slabwright {

/// Resistance is across the thickness; both above 0. The conductivity is thickness over resistance.
struct InsulatingBoard {
  double resistance_m2K_per_W;
  double thickness_m;
};

/// Stands against the outer face of the slab, from the floor's level down.
struct EdgeBoard {
  InsulatingBoard board;
  double depth_m;  ///< above 0
};

/// A strip through the whole depth of the slab, along the door. Heat that goes round below it is computed too.
struct ThermalBreak {
  InsulatingBoard strip;
  /// From the leaf's inner face to the strip's inner side. 0: the strip begins at the face and lies under the leaf.
  /// The strip's own thickness: it ends at the face. Negative moves it out toward the nose.
  double in_m = 0.0;
};

/// The wall stands on the slab's outermost strip and covers the top of an edge board. No heat passes through its foot.
struct WallEdge {
  double width_m = 0.20;  ///< of the strip, above 0
};

/// No heat passes under the leaf. Beyond it the slab's nose lies bare to the outdoor air.
struct DoorEdge {
  double leaf_m = 0.05;  ///< thickness, above 0
  double nose_m = 0.05;  ///< from the leaf's outer face to the slab's, 0 or more
  std::optional<ThermalBreak> thermal_break;
};

/// Distances "in" run from the inner face of wall or leaf into the room, depths from the floor surface down. The ground
/// outside lies level with the floor.
struct EdgeDetail {
  std::variant<WallEdge, DoorEdge> kind;
  /// From the line of symmetry to the slab's outer face: for a whole floor its area over its exposed perimeter, half of
  /// B in ISO 13370:2017 F.(2).
  double half_width_m = 0.0;
  double slab_thickness_m = 0.0;
  double concrete_W_per_mK = 1.75;
  double soil_W_per_mK = 2.0;  ///< sand or gravel, where nothing is known: ISO 13370
  std::optional<InsulatingBoard> under_slab;
  std::optional<EdgeBoard> edge_board;
  double indoor_film_m2K_per_W = 0.17;   ///< ISO 6946, heat going down into a cold floor
  double outdoor_film_W_per_m2K = 25.0;  ///< ISO 6946, 1 / 0.04
  double tube_depth_m = 0.0;
  double last_tube_in_m = 0.0;     ///< tube heat is spread evenly from the line of symmetry to here
  double domain_depth_m = 15.0;    ///< to the ground of constant temperature
  double domain_outside_m = 15.0;  ///< from the slab's outer face to where no heat passes any more
};

/// Rows of UnitResponses: drivers of weights and heat, and (the first three) boundaries that heat enters through.
namespace edge_row {
constexpr std::size_t indoor = 0, outdoor = 1, ground = 2, tube_heat = 3;
}

struct EdgePoint {
  double in_m, depth_m;
};

/// The section, x from the line of symmetry outward and y up from the floor. Drivers: indoor air, outdoor air and deep
/// ground in °C, tube heat in W per m2 of floor over tubes.
/// Broken contracts (std::logic_error): a length, film, conductivity or resistance not above 0, a part that does not
/// fit into the slab or the domain.
FieldSection edge_section(const EdgeDetail& detail);

/// Weights of points of the section. heat_in[edge_row::indoor][edge_row::indoor] is the heat from the room, W/(m K) of
/// edge, with outdoor air and ground at 0.
UnitResponses edge_responses(const EdgeDetail& detail, const std::vector<EdgePoint>& points,
                             const FieldOptions& options = {});

}  // namespace slabwright
