// The shop through years, step by step: rooms with their air and inner faces over the edges of their floors as few
// states. Strips step exactly under temperatures that go straight from one value to the next; rooms are found with them
// at the end of each step, by the mean of what flows through it, so that every joule is accounted for.
#pragma once
#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "slabwright/building_zone.hpp"
#include "slabwright/handbook_floor_film.hpp"

namespace slabwright {

/// What leaves a room at once and what stores in it, all of the whole room. Floor and air at one temperature, it loses
/// what the envelope says.
struct ShopRoom {
  std::size_t of = 0;             ///< row in Design::room
  double floor_m2 = 0.0;          ///< heated
  double air_J_per_K = 0.0;       ///< of the air alone, above 0
  double contents_J_per_K = 0.0;  ///< of what follows it within an hour or two
  double faces_J_per_K = 0.0;     ///< of the inner side of walls and roof, above 0
  double light_W_per_K = 0.0;     ///< from the air to outdoors: windows, doors, leaks
  double opaque_W_per_K = 0.0;    ///< from the inner faces to outdoors: walls and roof
  double air_faces_W_per_K = 0.0;
  double layered_Wm_per_K = 0.0;  ///< see layered_Wm_per_K()
};
/// What leaves a room more, W, for a kelvin over each metre of height: of air that is warmest under the roof.
/// `row`: its row in Design::room.
double layered_Wm_per_K(const Design& design, const RoomLoss& loss, std::size_t row);
/// Partitions and doorways, from air to air.
struct ShopLink {
  std::size_t one = 0, other = 0;  ///< rows of YearShop::room
  double W_per_K = 0.0;
};

/// All heated rooms. Tube heat is the same everywhere, W/m2 of floor over tubes.
struct YearShop {
  std::vector<ShopRoom> room;
  std::vector<ShopLink> link;
  Zone zone;  ///< its strips, places, sensor and deep ground are used, its air is not
  std::vector<std::size_t> strip_room, place_room;  ///< [zone.floor], [zone.place]: row of `room`
  double film_W_per_m2K = 0.0;                      ///< that the strips were made with
  double slab_J_per_K = 0.0;                        ///< of the concrete
  std::size_t main = 0;                             ///< row of `room` with the thermostats and the second source
};

/// Inner faces, practice: still air on walls and roof, and areal capacity of ISO 52016-1 classes.
inline constexpr double faces_film_W_per_m2K = 3.0;

/// Strips are made with the film of a floor that gives heat; the hour's own film comes on top as a resistance over the
/// whole strip. Under a floor that takes heat all day places at its edge come out too warm by up to 0.8 K for tubes at
/// a wall and 1.6 K at its corners; heat is within 1.2 %. Absent as heated_zone(). Rooms without a tube in their floor
/// are left out. Rooms without an outer edge of their own count with the largest. Needs climate.coldest.
std::optional<YearShop> year_shop(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                                  const WatchedPlaces& watched, EdgeFields& fields);
double tubes_m2(const YearShop& shop);

/// What acts on the shop through a step. Vectors: a value for each room of the shop; empty is zeros.
struct ShopDrivers {
  double outdoor_degC = 0.0;           ///< at its end; it goes straight there
  std::vector<double> more_W_per_K;    ///< to outdoors beside `light`: fans, doors that stand open
  std::vector<double> air_W;           ///< let free in the air: people, machines; below 0 what dries
  std::vector<double> beside_W_per_K;  ///< from the air to what stands in it: a cold vehicle; 0 or more
  std::vector<double> beside_W;        ///< what that would give to air of 0 degC
  std::vector<double> faces_W;         ///< on the inner faces: sun, and walls that the sun warms from outside
  std::vector<double> floor_W_per_m2;  ///< sun on the floor
  double layered_share = 0.0;          ///< of the second source's heat, lost because it lies under the roof
};
enum class StepLength { hour, quarter };

/// Something at the end of a step: without heat, and what 1 W/m2 of tube heat and 1 W of the second source add.
struct StepEnd {
  double idle_degC = 0.0, per_tube_m2K_per_W = 0.0, per_source_K_per_W = 0.0;
  double at(double tube_W_per_m2, double source_W) const {
    return idle_degC + per_tube_m2K_per_W * tube_W_per_m2 + per_source_K_per_W * source_W;
  }
};
struct StepEnds {
  StepEnd air_degC;     ///< of the main room
  StepEnd sensor_degC;  ///< in the slab, midway between tubes
};

/// Everything the shop remembers.
struct ShopState {
  double outdoor_degC = 0.0, tube_W_per_m2 = 0.0, sensed_W_per_m2 = 0.0;
  std::vector<double> air_degC, faces_degC;  ///< [room]
  StateValues strip, of_tubes;               ///< all strips' states in a row; what tube heat alone made of them
  std::vector<double> effective_degC;        ///< [strip]: what drives it from above
  std::vector<double> tubes_over_K;          ///< [strip]: what of that is tube heat's doing, by way of the film
};

/// J since the run began. In less out is what the stores took up.
struct ShopHeat {
  double tubes_J = 0.0, source_J = 0.0, air_gains_J = 0.0, faces_gains_J = 0.0, sun_J = 0.0;  ///< in
  double light_J = 0.0, more_J = 0.0, opaque_J = 0.0, layered_J = 0.0, ground_J = 0.0;        ///< out
  double air_J = 0.0, contents_J = 0.0, faces_J = 0.0, slab_J = 0.0, soil_J = 0.0;            ///< stored
  double floor_up_J = 0.0;  ///< from the floor into the rooms, within
  double in_J() const { return tubes_J + source_J + air_gains_J + faces_gains_J + sun_J; }
  double missing_J() const;
};

/// The shop at a moment.
struct ShopNow {
  double air_degC = 0.0, faces_degC = 0.0, operative_degC = 0.0;  ///< of the main room
  double floor_degC = 0.0;                                        ///< mean face of the main room's floor
  double sensor_degC = 0.0;
  double plane_degC = 0.0;  ///< of the tubes, in the middle of the floor with the sensor
  double up_W = 0.0;        ///< from all floors into their rooms
};

/// A shop on its way through time. Must not outlive its shop. Broken contract (std::logic_error): a state that is
/// too short for it.
class ShopRun {
 public:
  ShopRun(const YearShop& shop, const ShopState& start);
  ~ShopRun();
  /// What a step would lead to; take() then makes it.
  const StepEnds& reach(const ShopDrivers& drivers, StepLength length);
  void take(double tube_W_per_m2, double source_W);
  ShopNow now() const;
  /// [zone.place] at this moment.
  void places(std::vector<double>& degC) const;
  const ShopState& state() const;
  ShopHeat heat() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

/// The state that years of a cosine have brought about, `since_coldest_s` after the coldest day. `mean` and `coldest`
/// hold the main room's air, the outdoor air and the tube heat.
ShopState begun(const YearShop& shop, const ZoneHistory& history, double since_coldest_s);
/// Nothing has been heated yet: soil and slab swing with the year outdoors, no snow on it.
ShopState unbuilt(const YearShop& shop, double mean_degC, double half_swing_K, double since_coldest_s);
/// Where a year begins that ends as it began, from one that was run: slow states are carried on to their rest, each by
/// itself. Exact where the year's drivers do not depend on the state it begins in.
ShopState carried_on(const YearShop& shop, const ShopState& began, const ShopState& ended, double year_s);

}  // namespace slabwright
