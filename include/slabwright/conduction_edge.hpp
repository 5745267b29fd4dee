// The edge of a floor on the ground in vertical section: at a wall, or at a door the slab runs out under.
// A bare edge is a few numbers; everything else is a rectangle of material laid over it. Usual details are named and
// turned into rectangles here.
#pragma once
#include <cstddef>
#include <optional>
#include <variant>
#include <vector>

#include "slabwright/conduction_states.hpp"

namespace slabwright {

/// Density times specific heat, practice: concrete 2300 x 880, soil (sand or gravel, ISO 13370), foam 30 x 1450.
inline constexpr double concrete_J_per_m3K = 2300.0 * 880.0, soil_J_per_m3K = 2.0e6, board_J_per_m3K = 30.0 * 1450.0;

/// The wall stands on the slab's outermost strip and on what is covered beyond it. No heat passes through its foot.
struct WallEdge {
  double width_m = 0.20;   ///< of the strip, above 0
  double covered_m = 0.0;  ///< from the slab's outer face to where the outdoor air begins: the top of an edge board
};

/// No heat passes under the leaf. Beyond it the slab's nose lies bare to the outdoor air.
struct DoorEdge {
  double leaf_m = 0.05;  ///< thickness, above 0
  double nose_m = 0.05;  ///< from the leaf's outer face to the slab's, 0 or more
};

/// Which detail a rectangle belongs to; physics does not ask.
enum class EdgePartOf {
  own,
  foam_under,
  foam_along_rim,
  thickened_edge,
  stem_wall,
  footing,
  foam_inside,
  foam_outside,
  wing,
  apron,
  apron_gap,
  thermal_break
};

/// A rectangle of material. Distances "in" run from the inner face of wall or leaf into the room and are negative
/// outside it; depths run from the floor surface down, 0 or more. What lies beyond the domain is cut off.
struct EdgePart {
  double in_from_m, in_to_m;        ///< from < to
  double depth_from_m, depth_to_m;  ///< from < to
  double conductivity_W_per_mK;     ///< above 0
  double heat_capacity_J_per_m3K;
  EdgePartOf of = EdgePartOf::own;
};

struct EdgeDetail {
  std::variant<WallEdge, DoorEdge> kind;
  /// From the line of symmetry to the slab's outer face: for a whole floor its area over its exposed perimeter, half of
  /// B in ISO 13370:2017 F.(2).
  double half_width_m = 0.0;
  double slab_thickness_m = 0.0;
  double concrete_W_per_mK = 1.75;
  double soil_W_per_mK = 2.0;  ///< sand or gravel, where nothing is known: ISO 13370
  /// From the floor down to the ground outside. What stands above that ground meets the outdoor air by film.
  double grade_depth_m = 0.0;
  std::vector<EdgePart> parts;           ///< later ones cover earlier ones, and all of them slab and soil
  double indoor_film_m2K_per_W = 0.17;   ///< ISO 6946, heat going down into a cold floor
  double outdoor_film_W_per_m2K = 25.0;  ///< ISO 6946, 1 / 0.04
  double tube_depth_m = 0.0;
  /// The floor from the inner face of wall or leaf to here meets an air of its own; 0 or more, 0: all meets the room's.
  double near_air_m = 0.0;
  double last_tube_in_m = 0.0;     ///< tube heat is spread evenly from the line of symmetry to here
  double domain_depth_m = 15.0;    ///< from the floor to the ground of constant temperature
  double domain_outside_m = 15.0;  ///< from the slab's outer face to where no heat passes any more
};

/// Resistance is across the thickness; both above 0. The conductivity is thickness over resistance.
struct InsulatingBoard {
  double resistance_m2K_per_W;
  double thickness_m;
};

/// Lies flat under the slab: under the whole of it, or as a strip along its edge, from the outer face in.
struct FlatBoard {
  InsulatingBoard board;
  std::optional<double> width_m;  ///< the whole slab when absent
};

/// Stands upright, its top at the floor's level.
struct EdgeBoard {
  InsulatingBoard board;
  double depth_m;  ///< above 0, below the floor
};

/// Lies flat in the ground outside, from the edge out.
struct WingBoard {
  InsulatingBoard board;
  double width_m;
  double depth_m;  ///< of its top, below the ground outside
};

/// The slab cast deeper along its edge.
struct ThickenedEdge {
  double width_m;  ///< from the outer face in
  double depth_m;  ///< below the floor
};

/// Wider than the wall and centred under it, at the foot of it.
struct Footing {
  double width_m, thickness_m;
};

/// A concrete wall under the edge, flush with the slab's outer face.
struct StemWall {
  double thickness_m;
  double depth_m;  ///< of its underside, or its footing's, below the floor
  std::optional<Footing> footing;
};

/// A strip through the whole depth of the slab, along a door. Heat that goes round below it is computed too.
struct ThermalBreak {
  InsulatingBoard strip;
  /// From the leaf's inner face to the strip's inner side. 0: the strip begins at the face and lies under the leaf.
  /// The strip's own thickness: it ends at the face. Negative moves it out toward the nose.
  double in_m = 0.0;
};

/// A concrete slab outside a door, level with the ground there.
struct Apron {
  double thickness_m, length_m;
  std::optional<InsulatingBoard> gap;  ///< between slab and apron; without it concrete meets concrete
};

/// The usual details, each only where it is there.
struct EdgeBuild {
  std::vector<FlatBoard> under;  ///< from the slab down
  std::optional<ThickenedEdge> thickened;
  std::optional<StemWall> stem_wall;
  /// Against the inner face of the stem wall (of the slab's outer face where there is none). At a wall it parts slab
  /// and stem wall; at a door the slab runs out over it.
  std::optional<EdgeBoard> inside;
  std::optional<EdgeBoard> outside;  ///< against the slab's outer face; a wall covers its top
  std::optional<WingBoard> wing;     ///< from the outside board out, or from the outer face
  std::optional<Apron> apron;
  std::optional<ThermalBreak> thermal_break;
};

/// Lays the details over what the edge has, in the order in which they stand above.
EdgeDetail with_build(EdgeDetail detail, const EdgeBuild& build);

/// Rows of UnitResponses: drivers of weights and heat, and (the first three) whose temperature heat enters from.
namespace edge_row {
constexpr std::size_t indoor = 0, outdoor = 1, ground = 2, tube_heat = 3;
/// Only where EdgeDetail::near_air_m is above 0: the air near the edge as a fifth driver, and the heat from it as a
/// fourth row of heat. Tube heat, the fourth driver, is no temperature and has no such row.
constexpr std::size_t near_air = 4, near_air_heat = 3;
}  // namespace edge_row

struct EdgePoint {
  double in_m, depth_m;
};

/// The section, x from the line of symmetry outward and y up from the floor. Drivers: indoor air, outdoor air and deep
/// ground in °C, tube heat in W per m2 of floor over tubes, and the air near the edge where it has its own. Every face
/// that meets air has its film: indoors and outdoors may be several stretches each, in the order of the drivers; what
/// meets the air near the edge stands last. A near air wider than the floor takes all of it.
/// Broken contracts (std::logic_error): a length, film, conductivity or resistance not above 0, a wall or leaf that
/// does not fit on the slab, a part without size or above the floor, ground outside that lies above the floor.
FieldSection edge_section(const EdgeDetail& detail);

/// The same section with the tube plane and the room at one temperature, the first driver; no tube heat, and no near
/// air: all floor meets the room's.
FieldSection held_edge_section(const EdgeDetail& detail);
/// The same, its tube plane cut at distances from the inner face of wall or leaf; rising, all within the plane. The
/// pieces are the section's last stretches, from the edge in.
FieldSection held_edge_section(const EdgeDetail& detail, const std::vector<double>& cut_in_m);

/// Adds heat that enters by boundaries up to a row for each of the first three drivers, and one for the near air.
std::vector<std::vector<double>> heat_by_driver(const FieldSection& section,
                                                const std::vector<std::vector<double>>& by_boundary);
/// The same for heat_in and its errors.
UnitResponses by_driver(const FieldSection& section, UnitResponses responses);
/// And for the outputs of few states; errors of sums are sums of errors.
FewStates by_driver(const FieldSection& section, FewStates states);

/// A point of the edge in the section's coordinates.
FieldPoint point_of(const EdgeDetail& detail, EdgePoint point);

/// Weights of points of the section, heat by driver: heat_in[edge_row::indoor][edge_row::indoor] is the heat from the
/// room, W/(m K) of edge, with outdoor air and ground at 0.
UnitResponses edge_responses(const EdgeDetail& detail, const std::vector<EdgePoint>& points,
                             const FieldOptions& options = {});

}  // namespace slabwright
