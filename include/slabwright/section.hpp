// The slab section as a small linear response, and what a floor gives for given water.
// Wall and water film stay outside the response: they depend on flow, and the operating point owns that.
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "slabwright/conduction_tube_row.hpp"
#include "slabwright/envelope.hpp"
#include "slabwright/routing.hpp"

namespace slabwright {

struct SlabField;

/// One build-up of floor and tube. Its floor film is put in by respond().
struct Section {
  double spacing_m = 0.0;
  double outside_diameter_m = 0.0;
  double cover_above_m = 0.0;  ///< from the tube's axis to the top of the layer that the tube lies in
  double cover_below_m = 0.0;
  double concrete_W_per_mK = 0.0;          ///< of that layer
  std::vector<FlatLayer> above;            ///< over it, top first: a topping
  std::vector<FlatLayer> under;            ///< under it, top first: concrete, foam
  double covering_m2K_per_W = 0.0;         ///< thin, on top of everything
  double matted_share = 0.0;               ///< of the floor under pallets, benches or mats
  double mat_m2K_per_W = 0.0;              ///< what those add
  double underside_W_per_m2K = 0.0;        ///< ground, from the underside of the last layer
  double below_degC = 0.0;                 ///< effective temperature the heat goes down to
  double wall_mK_per_W = 0.0;              ///< tube wall, per metre of tube
  std::shared_ptr<const SlabField> field;  ///< solved beforehand; without it respond() solves
};
Section section_of(const Design& design, const GroundPath& ground);

/// The same as a row of tubes under a film, no mats on it; its top face lies below the covering, which the film takes
/// in.
TubeRow tube_row_of(const Section& section, double film_W_per_m2K);

/// A temperature as shares of the three that drive it; they add to 1.
struct SectionWeights {
  double tube_share = 0.0;
  double room_share = 0.0;
  double below_share = 0.0;
};
double temperature_degC(const SectionWeights& weights, double tube_degC, double room_degC, double below_degC);

/// Heat of one metre of tube as a linear function of three temperatures: the water's, the room's and below.
/// up = room (tube - room) + through (below - room); down = below (tube - below) - through (below - room).
struct SectionResponse {
  double room_W_per_m_K = 0.0;
  double below_W_per_m_K = 0.0;
  double through_W_per_m_K = 0.0;
  SectionWeights floor_mean;  ///< the floor's own face, above any covering; `tube` is the water
  SectionWeights floor_over_tube;
  SectionWeights floor_midway;
  SectionWeights plane_midway;  ///< where a slab sensor lies: at tube depth, half way between two tubes
  double error_share = 0.0;     ///< of the heat upward, as the field solution estimates it
};

/// The section under a floor film (total coefficient between floor and room, above 0), with `tube_mK_per_W` = wall and
/// water film per metre of tube. From the section's field where it has one that reaches as far, else solved at once.
/// The tube must lie within its layer.
SectionResponse respond(const Section& section, double film_W_per_m2K, double tube_mK_per_W);

/// A section solved for floor films from a cold floor's to a hot one's and for tubes from bare metal to standing water.
/// What lies between is interpolated in variables in which all is nearly straight: the conductance from the tube's
/// plane to the room, and the share of the gradient across itself that the tube evens out. Within 2e-5 of solving, 2e-4
/// where the tube lies flush with its layer.
struct SlabField {
  std::vector<double> film_W_per_m2K;    ///< rising
  std::vector<double> plane_W_per_m2K;   ///< of each film: with what lies between it and the tube's plane
  std::vector<double> evened_share;      ///< falling: of tubes, see evened_share()
  std::vector<SectionResponse> at_face;  ///< [film][tube], from the tube's outer face
};

/// The same section with its field, which takes some 80 microseconds and makes each respond() forty times as fast.
Section with_field(Section section);

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

/// Another opinion on the heat upward for the same water, beside the field's on the other's terms. EN 1264-2 has a film
/// of 10.8 W/m2K, a wall of 2 mm and 0.35 W/mK, no film inside and nothing downward; the star takes them over.
struct SectionOpinion {
  std::string name;                ///< "EN 1264-2 power function"
  double up_W_per_m2K = 0.0;       ///< heat upward per kelvin of water over room
  double first_W_per_m2K = 0.0;    ///< the field solution on the same terms
  double difference_share = 0.0;   ///< other less first, over first
  double least_known_share = 0.0;  ///< the difference lies between these where the method was made for the slab
  double most_known_share = 0.0;
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
  double heated_m2 = 0.0;  ///< floor over tubes, see LoopPlan::room_heated_m2
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
