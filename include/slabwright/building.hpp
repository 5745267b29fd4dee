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
enum class PlaceKind { tube, floor_line, room_air, room_pipe, wall_pipe, drain_trap };

struct WatchedPlace {
  std::string name;  ///< "tube 12 in inside the big door"
  PlaceKind kind = PlaceKind::tube;
  std::size_t room = 0;             ///< row in Design::room
  std::optional<std::size_t> edge;  ///< row in Envelope::edge, of a tube or a floor line
  EdgePoint at = {0.0, 0.0};
  double corner_share = 1.0;
  double freezes_degC = 0.0;  ///< 0, or the mixture's freezing point
  double limit_degC = 0.0;    ///< what it must stay above: freezing point and margin, or the limit of practice
  bool decides = true;        ///< false: reported only (the floor line at a door)
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
/// the floor line at each door (on the leaf's inner face, and 1 in or 25 mm in), the air round manifold and boiler, and
/// the user's own.
///
/// Limits. Tubes: the mixture's freezing point and `margin`. Water lines in room air: `pipe_limit`, the coldest air
/// that practice lets them stand in. A pipe in a wall or a trap is judged by its own temperature, not by the air round
/// it: 0 degC and `margin`. A trap is taken at room temperature, the careful side of what lies in a warm slab. The
/// user's own `limit` wins. With glycol in the loops nothing of ours freezes in the air before the tubes do, so that
/// the air is reported at 0 degC, for whatever else stands in it, and decides nothing.
///
/// Manifold and boiler stand in the first heated room. A place in a room without tube is unknown: what heats that room
/// is not described. Corners of the slab and the ends of doors are colder than the edges between them; sections across
/// one edge do not see them, and no place stands for them.
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
