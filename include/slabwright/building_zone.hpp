// The heated rooms in time: one zone of air over the edges of its floor as few states.
// A cold snap, a power cut, a fault and the way back to work are all runs of this one zone.
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "slabwright/building.hpp"
#include "slabwright/conduction_states.hpp"
#include "units_exact.hpp"

namespace slabwright {

/// What stands in the shop and its inside faces, as far as they follow the air within an hour or two, per floor area:
/// 10 Wh/m2K, practice, the light and so the careful end.
inline constexpr double contents_J_per_m2K = 10.0 * hour_s;

/// A stretch of edge with its half of the floor, as one strip.
struct FloorStrip {
  std::size_t edge = 0;  ///< row in Envelope::edge
  std::size_t room = 0;  ///< row in Design::room
  /// Drivers in the order of edge_row; deep ground does not move. Watched: the tubes' plane in the middle of the floor,
  /// then the places at this edge; then heat by driver.
  FewStates states;
  double length_m = 0.0;
  double width_m = 0.0;  ///< of floor
  double tubes_m = 0.0;  ///< of it over tubes
  /// How far the air near the edge stands on the way from room to outdoors, where the edge has an air of its own.
  std::optional<double> near_air_share;
};

/// Where a watched place is read off.
struct ZonePlace {
  std::size_t room = 0;
  std::optional<std::size_t> strip;  ///< none: it follows room and outdoor air at once
  std::size_t point = 0;             ///< output of the strip's states
  /// Of a corner, over that point: what cold takes from it while it is colder than the room, and what tube heat gives.
  double cold_share = 1.0, heat_share = 1.0;
  DriverWeights weights;  ///< of what follows the air
};

/// All heated rooms. Rooms that their slab holds warmer or colder than the zone keep their share of its rise over
/// outdoors.
struct Zone {
  std::vector<FloorStrip> floor;
  std::vector<ZonePlace> place;  ///< a row for each WatchedPlaces::place that lies in a heated room
  std::vector<double> room_rise_share;
  std::size_t sensor_strip = 0;  ///< the slab sensor lies in the middle of its floor
  double ground_degC = 0.0;
  double capacity_J_per_K = 0.0;  ///< of air and contents, above 0
  double loss_W_per_K = 0.0;      ///< to the outdoor air, doors shut and fans off
  double fans_W_per_K = 0.0;      ///< of those whose make-up air is untempered, while they run
  double gains_W = 0.0;
  double plane_m2K_per_W = 0.0;  ///< from the tubes' plane to the air, film included
  /// Midway between two tubes the plane is colder than its mean by this, per W/m2 of tube heat, once the lag is over.
  double midway_m2K_per_W = 0.0;
  double midway_lag_s = 0.0;
};
double tubes_m2(const Zone& zone);

/// Which floor film the strips are made with. A floor that warms the air has the better one.
enum class FloorHeat { up, down };

/// Strips of heated rooms, lengths scaled so that together they cover all heated floor. Absent where no edge of a
/// heated room is known or no floor has tubes. Needs climate.coldest.
std::optional<Zone> heated_zone(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                                const WatchedPlaces& watched, EdgeFields& fields, FloorHeat heat = FloorHeat::up);

/// What acts on the zone at a moment.
struct ZoneDrivers {
  double air_degC = 0.0;
  double outdoor_degC = 0.0;
  double tube_W_per_m2 = 0.0;  ///< of floor over tubes
};
double room_air_degC(const Zone& zone, std::size_t room, double air_degC, double outdoor_degC);

/// What leaves the air and what comes into it beside the floor's heat.
struct ZoneNeeds {
  double loss_W_per_K = 0.0;
  double gains_W = 0.0;
};
/// Fans and gains as the design has them, or neither.
ZoneNeeds needs_at_work(const Zone& zone);
ZoneNeeds needs_without_power(const Zone& zone);

/// Steady, the floor alone holding the air or its sensor. Tube heat comes out below 0 where the floor would have to
/// cool: all of it is linear in both temperatures.
ZoneDrivers held_by_air(const Zone& zone, const ZoneNeeds& needs, double air_degC, double outdoor_degC);
ZoneDrivers held_by_sensor(const Zone& zone, const ZoneNeeds& needs, double sensor_degC, double outdoor_degC);

/// Steady without tube heat.
ZoneDrivers unheated(const Zone& zone, const ZoneNeeds& needs, double outdoor_degC);

/// How it has been for years: the mean of the year and its coldest month, a cosine between them. Runs begin there.
struct ZoneHistory {
  ZoneDrivers mean;
  ZoneDrivers coldest_month;
};
/// Nothing has ever moved.
ZoneHistory steady_history(const ZoneDrivers& drivers);

/// What is done to the zone through one step. Outdoors goes straight to its new value, heat stays as it is.
struct ZoneStep {
  double outdoor_degC = 0.0;  ///< at its end
  double tube_W_per_m2 = 0.0;
  ZoneNeeds needs;
  double source_W = 0.0;           ///< of a second source, into the air
  std::optional<double> air_degC;  ///< at its end, where something holds it whatever that takes
  bool door_open = false;          ///< outdoor air lies on the floor near the big doors
};

/// The zone at a moment.
struct ZoneRow {
  double time_s = 0.0;
  ZoneDrivers at;
  double sensor_degC = 0.0;  ///< of a slab sensor midway between two tubes
  double up_W = 0.0;         ///< from the floor into the air
  /// Mean of the tubes' plane, from what the floor gives the air as if it came through steadily: what water that goes
  /// round and round takes on.
  double water_degC = 0.0;
  std::vector<double> place_degC;  ///< [place]
  std::vector<double> shut_degC;   ///< [place]: had its loop been shut all the time
};

/// A zone on its way through time in steps of one length. Strips step exactly, under air that goes straight from one
/// value to the next; the air is found with them at the end of each step (trapezoidal rule), so that no step is too
/// long to be stable. Must not outlive its zone.
class ZoneRun {
 public:
  /// Broken contracts (std::logic_error): a zone that stores nothing, a step that is not above 0.
  ZoneRun(const Zone& zone, const ZoneHistory& history, double step_s);
  void step(const ZoneStep& step);
  /// The tube heat that brings the tubes' plane at the sensor to where it reads `sensor_degC` under the mean heat of
  /// the last hours; below 0 where it is too warm.
  double tube_heat_for_sensor(const ZoneStep& step, double sensor_degC) const;
  const ZoneDrivers& now() const { return now_; }
  double sensor_degC() const;
  ZoneRow row() const;

 private:
  struct Strip {
    const FloorStrip* of = nullptr;
    StatesStep step;
    StateValues state, shut;
    StateValues per_K[2];  ///< of a kelvin of the zone's air at the end of a step: door shut, open
    StateValues per_heat;  ///< of 1 W/m2 through a step
  };
  /// Where a step ends that brings the air to 0 degC without tube heat, and what a kelvin and 1 W/m2 add to the heat
  /// upward and to the plane at the sensor.
  struct Ends {
    std::vector<StateValues> state;
    double start_up_W = 0.0, start_up_m2 = 0.0;
    double up_W = 0.0, up_W_per_K = 0.0, up_m2 = 0.0;
    double plane_degC = 0.0, plane_per_K = 0.0, plane_m2K_per_W = 0.0;
  };
  Ends ends_of(const ZoneStep& step) const;
  double end_air_degC(const ZoneStep& step, const Ends& ends, double tube_W_per_m2) const;

  const Zone* zone_;
  double step_s_, time_s_ = 0.0;
  ZoneDrivers now_;
  bool door_open_ = false;
  double sensed_W_per_m2_ = 0.0, mean_W_per_m2_ = 0.0;  ///< tube heat as the sensor has it, and of the last hours
  std::vector<Strip> strips_;
};

}  // namespace slabwright
