// The building held by its floor, and the places in it that must not freeze.
// First form: steady. Room air is never a given; it follows from floor, building and outdoors.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/envelope.hpp"
#include "slabwright/section.hpp"

namespace slabwright {

/// A temperature as a weighted sum of what drives it. The first three add to 1.
struct DriverWeights {
  double indoor_share = 0.0;
  double outdoor_share = 0.0;
  double ground_share = 0.0;
  double tube_m2K_per_W = 0.0;  ///< kelvin per W of tube heat and m2 of floor over the tubes
};

struct Drivers {
  double indoor_degC = 0.0;
  double outdoor_degC = 0.0;
  double ground_degC = 0.0;
  double tube_W_per_m2 = 0.0;
};
double temperature_at(const DriverWeights& weights, const Drivers& drivers);

/// What kind of place it is decides which limit it has and what can be done about it.
enum class PlaceKind {
  tube,
  floor_line,
  room_air,
  room_pipe,
  wall_pipe,
  drain_trap,
  slab_corner,  ///< the outermost concrete of an edge, at its underside
  soil,         ///< right under what carries an edge
  outdoor_line  ///< stands in the outdoor air
};

struct WatchedPlace {
  std::string name;  ///< "tube 12 in inside the big door"
  PlaceKind kind = PlaceKind::tube;
  std::size_t room = 0;             ///< row in Design::room
  std::optional<std::size_t> edge;  ///< row in Envelope::edge; of a corner the colder of its two edges
  EdgePoint at{};                   ///< with `edge`: the point of that edge's section it stands for
  double corner_share = 1.0;        ///< what it lacks to the room's air over what that point lacks; above 1 at a corner
  double freezes_degC = 0.0;        ///< 0, or the mixture's freezing point
  double limit_degC = 0.0;          ///< what it must stay above: freezing point and margin, or the limit of practice
  bool decides = true;              ///< false: reported only (the floor line at a door)
  /// No tube heat near it: pump off, or the loop shut. The cold air at a big door is in the weights: its share of the
  /// way to outdoor air goes from indoors to outdoors.
  DriverWeights idle;
  DriverWeights running;
  double length_m = 0.0;  ///< of edge it stands for; 0 for a single place
};

/// A place that could not be computed, and why; the answer then says "cannot be called safe".
struct UnknownPlace {
  std::string name;
  std::string why;
};

struct WatchedPlaces {
  std::vector<WatchedPlace> place;
  std::vector<UnknownPlace> unknown;
};

/// Found without being asked, each in every heated room that has it: the tube nearest the outer wall and each big door,
/// the tube at the outer corners of its floor, the floor line at each door (on the leaf's inner face, and 1 in or 25 mm
/// in), the bottom corner of the slab at the wall (5 mm inside) and the soil under what carries that edge, the air
/// round manifold and boiler, the outdoor lines of a heat pump that carries the system's water, and the user's own.
///
/// Limits. Tubes: the mixture's freezing point and `margin`. Water lines in room air: `pipe_limit`, the coldest air
/// that practice lets them stand in. A pipe in a wall or a trap is judged by its own temperature, not by the air round
/// it: 0 degC and `margin`. A trap is taken at room temperature, the careful side of what lies in a warm slab. A line
/// outdoors holds what the loops hold; it decides where the coldest hour is below its limit. The user's own `limit`
/// wins. With glycol in the loops nothing of ours freezes in the air before the tubes do, so that the air is reported
/// at 0 degC, for whatever else stands in it, and decides nothing. Slab corner and soil are reported at 0 degC.
///
/// Corners: two edges' weights multiplied, an estimate that is up to 0.035 on the careful side (indoor air; three
/// dimensions solved). The tube is bent round at its least radius there. At a door's end the wall is straight, and the
/// field lies between the door's section and the wall's: the colder of the two at the door's tube is its place.
/// Leaders cross the floor between manifold and loops and come no nearer to an edge than the nearest tube of their
/// room, which stands for them and for idle loops; the manifold is in the air's place.
///
/// Manifold and boiler stand in the first heated room. A place in a room without tube is unknown: what heats that room
/// is not described.
WatchedPlaces watched_places(const Design& design, const Envelope& envelope, EdgeFields& fields);

/// A room that nothing but its slab keeps warm, steady.
struct SlabHold {
  Section section;
  double loss_W_per_m2K = 0.0;  ///< to the outdoor air, per m2 of floor over tubes
  double gains_W_per_m2 = 0.0;
};
/// `heated_m2`, floor over tubes, is above 0.
SlabHold slab_hold(const Section& section, const RoomLoss& room, double heated_m2);

/// Room and floor in balance. The sensor lies at the tubes' depth, half way between two of them.
struct HeldRoom {
  double room_degC = 0.0;
  double sensor_degC = 0.0;
  double floor_over_tube_degC = 0.0;  ///< the floor's warmest
  double up_W_per_m2 = 0.0;
  double down_W_per_m2 = 0.0;
  double film_W_per_m2K = 0.0;
};

/// What holds the room at `room_degC`: explicit, as the heat that the room needs gives the film.
HeldRoom held_at(const SlabHold& hold, double room_degC, double outdoor_degC);

/// The room that a slab of this sensor temperature holds; the inverse of held_at(). With a film given (checks) or,
/// without, by the law of its direction.
HeldRoom room_held_by(const SlabHold& hold, double sensor_degC, double outdoor_degC,
                      std::optional<double> film_W_per_m2K = std::nullopt);

}  // namespace slabwright
