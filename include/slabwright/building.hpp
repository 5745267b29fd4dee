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

/// What kind of place it is decides which limit and which state of the pump it is judged in.
enum class PlaceKind { tube, floor_line, room_air, room_pipe, wall_pipe, drain_trap };

struct WatchedPlace {
  std::string name;  ///< "tube 12 in inside the big door"
  PlaceKind kind = PlaceKind::tube;
  std::size_t room = 0;       ///< row in Design::room
  double freezes_degC = 0.0;  ///< 0, or the mixture's freezing point
  double limit_degC = 0.0;    ///< what it must stay above: freezing point and margin, or the limit of practice
  bool decides = true;        ///< false: reported only (the floor line at a door)
  DriverWeights idle;         ///< no tube heat near it: pump off, or the loop shut
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
/// Found without being asked: the tube nearest each wall edge and each door, the floor line at each door, room air,
/// water at the manifold, and the user's own.
WatchedPlaces watched_places(const Design& design, const Envelope& envelope, EdgeFields& fields);

/// A room held by its slab alone, steady.
struct HeldRoom {
  double room_degC = 0.0;
  double up_W_per_m2 = 0.0;
  double film_W_per_m2K = 0.0;
};
/// Sensor in the concrete at `sensor_depth_m` under the surface; `loss_W_per_m2K` is the room's loss per m2 of floor.
struct SlabHold {
  double sensor_depth_m = 0.0;
  double concrete_W_per_mK = 0.0;
  double covering_m2K_per_W = 0.0;
  double loss_W_per_m2K = 0.0;
  double gains_W_per_m2 = 0.0;
};
/// With a film given (checks) or, without, by the law of its direction.
HeldRoom room_held_by(const SlabHold& hold, double sensor_degC, double outdoor_degC,
                      std::optional<double> film_W_per_m2K = std::nullopt);
/// The sensor temperature that holds the room at `room_degC`.
double sensor_for(const SlabHold& hold, double room_degC, double outdoor_degC);

Record record_of(DriverWeights&);
Record record_of(WatchedPlace&);
Record record_of(UnknownPlace&);
Record record_of(WatchedPlaces&);

}  // namespace slabwright
