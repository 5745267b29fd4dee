// The slab section as a small linear response, and what a floor gives for given water.
// Wall and water film stay outside the response: they depend on flow, and the operating point owns that.
#pragma once
#include <string>
#include <vector>

#include "slabwright/envelope.hpp"
#include "slabwright/handbook_star.hpp"
#include "slabwright/routing.hpp"

namespace slabwright {

/// One build-up of slab and tube. Its floor film is put in by respond().
struct Section {
  double spacing_m = 0.0;
  double outside_diameter_m = 0.0;
  double cover_above_m = 0.0;  ///< from the tube's axis
  double cover_below_m = 0.0;
  double concrete_W_per_mK = 0.0;
  double covering_m2K_per_W = 0.0;
  double underside_W_per_m2K = 0.0;  ///< insulation and ground in series, from the concrete's underside
  double below_degC = 0.0;           ///< effective temperature the heat goes down to
  double wall_mK_per_W = 0.0;        ///< tube wall, per metre of tube
};
Section section_of(const Design& design, const GroundPath& ground);

/// Heat of one metre of tube as a linear function of three temperatures: the tube's outer face, room and below.
/// up = room (tube - room) + through (below - room); down = below (tube - below) - through (below - room).
struct SectionResponse {
  double room_W_per_m_K = 0.0;
  double below_W_per_m_K = 0.0;
  double through_W_per_m_K = 0.0;
  StarWeights floor_mean;  ///< the floor's own face, above any covering
  StarWeights floor_over_tube;
  StarWeights floor_midway;
  StarWeights plane_midway;  ///< where a slab sensor lies: at tube depth, half way between two tubes
  double error_share = 0.0;  ///< of the heat upward, by the method's own measure
};
/// The first opinion. `film_W_per_m2K` is the total coefficient between floor and room.
SectionResponse respond(const Section& section, double film_W_per_m2K);

/// The same response seen from the water, with wall and film (per metre of tube) in series at the tube.
SectionResponse in_series(const SectionResponse& response, double tube_mK_per_W);

/// What a floor gives, film by the direction and the size of its heat.
struct FloorState {
  double up_W_per_m2 = 0.0;
  double down_W_per_m2 = 0.0;
  double film_W_per_m2K = 0.0;
  double tube_outside_degC = 0.0;
  double floor_mean_degC = 0.0;
  double floor_over_tube_degC = 0.0;
  double floor_midway_degC = 0.0;
  double sensor_degC = 0.0;  ///< plane_midway
};
/// For mean water temperature, with `tube_mK_per_W` = wall + water film per metre of tube.
FloorState floor_from_water(const Section& section, double water_degC, double tube_mK_per_W, double room_degC);
/// The mean water temperature that makes the floor give `up_W_per_m2`, and the state it then has.
struct WaterWanted {
  double water_degC = 0.0;
  FloorState floor;
};
WaterWanted water_for(const Section& section, double up_W_per_m2, double tube_mK_per_W, double room_degC);

/// Another opinion on the heat upward for the same water, beside the first.
struct SectionOpinion {
  std::string name;               ///< "EN 1264-2 power function"
  double up_W_per_m2K = 0.0;      ///< on its own terms: alpha 10.8, its wall, no film
  double first_W_per_m2K = 0.0;   ///< the first opinion on the same terms
  double difference_share = 0.0;  ///< other less first, over first
  bool made_for = false;
  std::vector<std::string> why_not;  ///< "not made for this slab": clauses
};
std::vector<SectionOpinion> opinions_on(const Section& section);

/// A room's floor at design: what is asked, whether it can be given, and how warm the floor gets.
struct RoomFloor {
  std::string room;
  double wanted_W_per_m2 = 0.0;
  double given_W_per_m2 = 0.0;  ///< less where the surface limit stops it
  double shortfall_W = 0.0;
  double water_degC = 0.0;  ///< mean, at nominal (turbulent) film
  FloorState floor;
  double limit_degC = 0.0;  ///< 29 for the floor (EN 1264-2); 35 for an edge strip of at most 1 m
};
struct FloorPlan {
  Section section;
  std::vector<RoomFloor> room;  ///< a row for each Design::room; zeros where no tube lies
  std::vector<SectionOpinion> opinion;
  double tube_heat_W = 0.0;  ///< up and down, all rooms
  double down_W = 0.0;
};
/// The floor of every room for the envelope's loss. Shortfalls and surface limits are said.
Checked<FloorPlan> floor_of(const Design& design, const LoopPlan& loops, const Envelope& envelope);

Record record_of(FloorState&);
Record record_of(SectionOpinion&);
Record record_of(RoomFloor&);
Record record_of(Section&);
Record record_of(FloorPlan&);

}  // namespace slabwright
