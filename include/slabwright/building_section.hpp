// An edge of the floor in vertical section, with its temperatures: for drawings.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/building.hpp"

namespace slabwright {

/// A rectangle of an edge's section. Distances "in" run from the inner face of wall or leaf into the room and are
/// negative outside it; depths run from the floor down.
struct SectionPart {
  std::string what;      ///< "slab", "ground", "foam under the slab"
  std::string material;  ///< "concrete", "foam", "ground" or "other"
  double in_from_m = 0.0, in_to_m = 0.0;
  double depth_from_m = 0.0, depth_to_m = 0.0;
  double conductivity_W_per_mK = 0.0;
  std::optional<double> thickness_m;           ///< of a board, as it lies in the ground, as is the next
  std::optional<double> resistance_m2K_per_W;  ///< across it
};

/// A watched place, and what this section says of it.
struct SectionPlace {
  std::string name;
  double in_m = 0.0, depth_m = 0.0;
  double temperature_degC = 0.0;
};

struct SectionTube {
  double in_m = 0.0;  ///< axis, from the inner face of wall or leaf
};

struct SectionPoint {
  double in_m = 0.0, depth_m = 0.0;
  double temperature_degC = 0.0;
};

/// Temperatures at points a cell apart, from the lowest row up, in each from outdoors in; point (i, j) is number
/// j * columns + i. One row lies on the floor, one column on the slab's outer face.
struct SectionRaster {
  double in_from_m = 0.0;   ///< of the first column
  double depth_to_m = 0.0;  ///< of the first row
  double cell_m = 0.0;
  std::size_t columns = 0, rows = 0;
  std::vector<double> degC;
  std::vector<bool> material;  ///< false: air; `degC` is not looked at
};

/// Steady, as if the weather lasted for ever: outdoor air, the room's, the floor's heat and deep ground stand still.
/// Tube heat is spread evenly over its plane.
struct SectionField {
  std::string name;      ///< of the edge
  std::string at;        ///< "wall" or "big door"
  std::size_t edge = 0;  ///< row in Envelope::edge
  double outdoor_degC = 0.0;
  double room_degC = 0.0;
  std::optional<double> near_air_degC;  ///< on the first metre at a big door
  double ground_degC = 0.0;             ///< deep
  double tube_W_per_m2 = 0.0;           ///< up and down, of floor over tubes
  double face_m = 0.0;                  ///< thickness of wall or leaf: what stands on the slab
  double nose_m = 0.0;                  ///< of bare slab beyond a leaf
  double covered_m = 0.0;               ///< board beyond the slab's outer face that the wall covers
  double floor_above_ground_m = 0.0;
  double slab_m = 0.0;                 ///< thickness, topping included
  double concrete_above_tube_m = 0.0;  ///< over its crown
  double tube_depth_m = 0.0;           ///< of its axis, below the floor
  double tube_diameter_m = 0.0;        ///< outside
  double tube_spacing_m = 0.0;
  std::optional<double> covering_m2K_per_W;
  std::vector<SectionPart> part;  ///< later ones cover earlier ones
  std::vector<SectionTube> tube;  ///< from the edge in, at their spacing
  std::vector<SectionPlace> place;
  double coldest_floor_degC = 0.0;      ///< of the floor's surface in the room, covering aside
  double coldest_slab_degC = 0.0;       ///< of the slab, from the inner face of wall or leaf in
  std::optional<double> freezing_in_m;  ///< furthest in that the slab is below 0 degC; absent where none of it is
  double error_K = 0.0;                 ///< of temperatures between the raster's points, in the slab
  std::vector<SectionPoint> point;      ///< of the raster, few
  SectionRaster raster;
};

/// The row of Envelope::edge in these drivers. Asks for a heated room.
SectionField section_field(const Design& design, const Envelope& envelope, const WatchedPlaces& watched,
                           std::size_t edge, const Drivers& drivers);

Record record_of(SectionPart&);
Record record_of(SectionPlace&);
Record record_of(SectionTube&);
Record record_of(SectionPoint&);
Record record_of(SectionField&);

}  // namespace slabwright
