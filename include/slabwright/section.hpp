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
/// The first opinion: the star with its series. `film_W_per_m2K` is the total coefficient between floor and room.
/// The tube is a line, since what is asked of a floor stands behind a plastic wall, where a line is within 0.02 % and
/// an isothermal round tube in series 0.15 % high; `error_share` is the difference of the two at the bare tube. The
/// tube must lie within the concrete and the film be above 0.
SectionResponse respond(const Section& section, double film_W_per_m2K);

/// The same response seen from the water, with wall and film (per metre of tube) in series at the tube: exact for the
/// three temperatures. `error_share` stays that of the bare tube; a plastic wall leaves less than a third of it.
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
/// For mean water temperature, with `tube_mK_per_W` = wall + water film per metre of tube. Settled to 1e-9 K.
/// Warmer water gives more heat; only over ground that takes more than 2 W/m2K from the concrete and is 20 K colder
/// than the room may two states, both within 1 W/m2 of no heat, fit one water temperature, and one of them is given.
FloorState floor_from_water(const Section& section, double water_degC, double tube_mK_per_W, double room_degC);
/// The mean water temperature that makes the floor give `up_W_per_m2`, and the state it then has.
struct WaterWanted {
  double water_degC = 0.0;
  FloorState floor;
};
WaterWanted water_for(const Section& section, double up_W_per_m2, double tube_mK_per_W, double room_degC);

/// Another opinion on the heat upward for the same water, beside the first on the other's terms: EN 1264-2 has a film
/// of 10.8 W/m2K, a wall of 2 mm and 0.35 W/mK, no film inside and nothing downward.
struct SectionOpinion {
  std::string name;               ///< "EN 1264-2 power function"
  double up_W_per_m2K = 0.0;      ///< heat upward per kelvin of water over room
  double first_W_per_m2K = 0.0;   ///< the first opinion on the same terms
  double difference_share = 0.0;  ///< other less first, over first
  bool made_for = false;
  std::vector<std::string> why_not;  ///< "not made for this slab": clauses
};
/// Empty where the tube does not lie within the concrete.
std::vector<SectionOpinion> opinions_on(const Section& section);

/// Film of water that moves well, for what is said before any flow is known: at 35 degC in a bore of 12 mm Gnielinski's
/// equation gives 1500 at Reynolds 4000 and 3000 at 8000. Half of it would cost 2 % of a bare floor's heat. What the
/// flow really does is the operating point's to find.
inline constexpr double nominal_film_W_per_m2K = 2000.0;

/// A room's floor at design: what is asked, whether it can be given, and how warm the floor gets.
struct RoomFloor {
  std::string room;
  double heated_m2 = 0.0;  ///< floor over tubes: tube without leaders, times the spacing
  double wanted_W_per_m2 = 0.0;
  double given_W_per_m2 = 0.0;  ///< less where the surface limit stops it
  double shortfall_W = 0.0;
  double water_degC = 0.0;  ///< mean, at nominal (turbulent) film
  FloorState floor;
  double limit_degC = 0.0;  ///< 29 at the floor's warmest place, over a tube (EN 1264-2)
};
struct FloorPlan {
  Section section;
  std::vector<RoomFloor> room;  ///< a row for each Design::room; zeros where no tube lies
  std::vector<SectionOpinion> opinion;
  double tube_heat_W = 0.0;  ///< up and down, all rooms
  double down_W = 0.0;
};
/// The floor of every room for the envelope's loss; leaders are left out. Said: a room whose floor would have to be
/// warmer than its limit, with what is missing and what an edge strip of 1 m may have (35 degC), a room without tube
/// that asks for heat, a covering above 0.15 m2K/W, opinions further apart than they are known to be. Absent where the
/// tube does not lie within the concrete.
Checked<FloorPlan> floor_of(const Design& design, const LoopPlan& loops, const Envelope& envelope);

Record record_of(FloorState&);
Record record_of(SectionOpinion&);
Record record_of(RoomFloor&);
Record record_of(Section&);
Record record_of(FloorPlan&);

}  // namespace slabwright
