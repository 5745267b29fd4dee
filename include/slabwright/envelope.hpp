// The heat a building loses, room by room, and the edges of its slab.
// Who owns which watt: a room's loss is walls, roof, openings, air and unheated floor. Ground and edge under heated
// floor are reported here and charged to the slab section's lower side, which the tube plane drives.
#pragma once
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/conduction_edge.hpp"
#include "slabwright/conduction_states.hpp"
#include "slabwright/design.hpp"

namespace slabwright {

struct RoomLoss {
  std::string name;
  double floor_m2 = 0.0;
  double indoor_degC = 0.0;
  bool heated_floor = true;
  double walls_W_per_K = 0.0;
  double roof_W_per_K = 0.0;
  double openings_W_per_K = 0.0;
  double air_W_per_K = 0.0;      ///< leaks, at the altitude's air density
  double by_area_W_per_K = 0.0;  ///< building not described, or `building.heat_loss` given: the four above are 0 then
  double unheated_floor_W_per_K = 0.0;   ///< down the slab's way on its worst day, only where no tube lies
  double exhaust_W_per_K = 0.0;          ///< all its fans, reported always
  double exhaust_counted_W_per_K = 0.0;  ///< those whose make-up air is untempered: floor and boiler carry them
  double gains_W = 0.0;
  double total_W_per_K = 0.0;  ///< what the room loses per kelvin, exhaust only where it is counted
  double loss_W = 0.0;         ///< at `climate.outdoor`
  double wanted_W = 0.0;       ///< heat that its floor must give: loss less gains, at least 0; 0 where no tube lies
};

enum class EdgeKind { wall, big_door };

/// A length of the slab's edge that is built one way.
struct EdgeStretch {
  std::string name;  ///< "outer wall", "outer wall of the store", or the opening's name
  EdgeKind kind = EdgeKind::wall;
  std::size_t room = 0;  ///< row in Design::room
  double length_m = 0.0;
  double tube_in_m = 0.0;  ///< axis of the nearest tube, from the inner face
  EdgeDetail detail;       ///< with the indoor film of heat going down, and any covering
};

/// ISO 13370 for the same floor: the layers below the tube plane as its floor, its whole way out to the outdoor air.
/// It sees foam under the slab and an upright board outside, nothing else of the edge.
struct GroundOpinion {
  double plane_W_per_m2K = 0.0;
  double effective_degC = 0.0;
  double swing_share = 0.0;       ///< its periodic over its steady coefficient
  double difference_share = 0.0;  ///< its conductance less the field's, over the field's
};

/// The slab's way down to ground and cold edge as one conductance to one temperature, driven by the tube plane. From
/// the field of every stretch of edge, half the floor's width each, tube plane and room at one temperature.
/// The soil's history: years of this yearly wave outdoors, deep ground at the yearly mean, and on the coldest month a
/// cold spell down to the weather planned for, as a wave of twelve days of which six are colder than the month (a
/// choice of ours). The heat is that of the day when it is largest.
struct GroundPath {
  double plane_W_per_m2K = 0.0;      ///< from the tube plane, per m2 of floor
  double underside_W_per_m2K = 0.0;  ///< the same from the concrete's underside: h2 of the slab section
  double effective_degC = 0.0;       ///< what the heat of that day goes down to
  double outdoor_share = 0.0;        ///< of the steady heat, out to the air; the two add up to 1
  double deep_share = 0.0;           ///< of the steady heat, down to deep ground
  double swing_share = 0.0;          ///< of the yearly swing outdoors, what the heat to the air follows
  double spell_share = 0.0;          ///< of the cold spell
  double dimension_m = 0.0;          ///< B = 2 A / P of the floor on the ground
  GroundOpinion iso13370;
};

struct Envelope {
  std::vector<RoomLoss> room;  ///< a row for each Design::room
  std::vector<EdgeStretch> edge;
  GroundPath ground;
  double outdoor_degC = 0.0;
  double total_W_per_K = 0.0;
  double loss_W = 0.0;
  double exhaust_W = 0.0;  ///< all fans at `climate.outdoor`, counted or not
};

/// Row of the room with this name; the first where there is none, as where a file leaves the room out.
std::size_t room_row(const Design& design, std::string_view name);

/// For each room a stretch of outer wall, and one for each big door: their lengths add up to the exposed perimeter.
/// A resistance becomes a board as thick as one of XPS (R-5 to the inch). A strip begins at the leaf's inner face and
/// lies under the leaf; one thicker than that reaches in. The edge's outside board, its wing and the step down to the
/// ground are at walls only: at a door the concrete runs on past them, the careful side, and ground or apron comes up
/// to the floor. With a stem wall the outer wall is as thick as that.
std::vector<EdgeStretch> edges_of(const Design& design);

/// Heat down and out of a metre of edge and its half of the floor, per kelvin of tube plane and room over all else.
struct EdgeHeat {
  double outdoor_W_per_mK = 0.0;
  double ground_W_per_mK = 0.0;
  /// Per kelvin by which outdoor air swings once a year, for ever: in step with it, and a quarter of a year behind.
  double year_with_W_per_mK = 0.0, year_behind_W_per_mK = 0.0;
  double spell_W_per_mK = 0.0;  ///< per kelvin of a cold spell, at its worst
};

/// Edge sections solved once each: ranges and lists of what matters most ask for the same edge many times.
/// The answers do not depend on what was asked before.
class EdgeFields {
 public:
  /// Weights on this grid are within 0.001 of one far finer, but for points on the very line where air changes. Heat
  /// is not asked of it.
  static constexpr FieldOptions weight_grid{0.005, 1.4, 1.0, false};
  explicit EdgeFields(FieldOptions options = weight_grid) : options_(options) {}
  /// Weights of `points` at an edge, see edge_responses().
  UnitResponses responses(const EdgeDetail& detail, const std::vector<EdgePoint>& points);
  /// On grids of its own: steady heat within 0.15 %, its swing within 1 %. Where the options' first cell is larger than
  /// 10 mm only differences are meant, and heat is within 2 %.
  EdgeHeat heat_down(const EdgeDetail& detail);
  /// The same heat by where it leaves a tube plane that is cut at distances from the inner face of wall or leaf
  /// (rising, within the plane): from the edge in, a row more than cuts. The first has the floor beyond the plane too.
  /// They add up to heat_down(), the spell in step with the whole edge's; how they share it is within 3 %.
  std::vector<EdgeHeat> heat_down(const EdgeDetail& detail, const std::vector<double>& cut_in_m);
  /// An edge in time as few states: the points, then heat by driver; deep ground does not move.
  FewStates states(const EdgeDetail& detail, const std::vector<EdgePoint>& points);
  std::size_t solved() const { return solved_.size() + heat_.size() + states_.size(); }

 private:
  FieldOptions options_;
  std::map<std::vector<double>, UnitResponses> solved_;
  std::map<std::vector<double>, EdgeHeat> heat_;
  std::map<std::vector<double>, std::vector<EdgeHeat>> strips_;
  std::map<std::vector<double>, FewStates> states_;
};

/// Floor along an edge that loses more than the floor's middle does. Heat of a metre of edge, on the day of GroundPath.
struct ColdStrip {
  double from_m = 0.0, to_m = 0.0;  ///< from the inner face of wall or leaf in
  double more_W_per_mK = 0.0;       ///< of its tube plane over `to_degC`, beside as much of the middle
  double to_degC = 0.0;
};
/// An edge as strips, the outermost first: that has what leaves through the concrete's rim.
struct ColdEdge {
  double held_m = 0.0;  ///< where the tube plane ended that this heat is of
  double indoor_film_m2K_per_W = 0.0;
  double length_share = 0.0;  ///< of the stretch's length that counts, see ground_of()
  std::vector<ColdStrip> strip;
};
/// A row for each stretch. Beside them the middle of the floor loses what is left of `GroundPath`.
std::vector<ColdEdge> cold_edges(const Design& design, const std::vector<EdgeStretch>& edges, EdgeFields& fields);

/// The floor as a whole, heated or not. Needs no climate beyond its mean and swing.
GroundPath ground_of(const Design& design, const std::vector<EdgeStretch>& edges, EdgeFields& fields);
GroundPath ground_of(const Design& design);

/// Heat loss of the rooms. Resistances of walls, roof and openings are taken as total, films counted; none is below its
/// two films. Absent without `climate.outdoor` (code "envelope.no-outdoor") or without a floor ("envelope.no-floor").
/// Said: each fan with its kW, which the floor cannot follow, and rooms whose heat no floor gives.
Checked<Envelope> envelope_of(const Design& design, EdgeFields& fields);
Checked<Envelope> envelope_of(const Design& design);

Record record_of(RoomLoss&);
Record record_of(EdgeStretch&);
Record record_of(GroundOpinion&);
Record record_of(GroundPath&);
Record record_of(Envelope&);

}  // namespace slabwright
