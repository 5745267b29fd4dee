// The building in time when nothing heats it any more: a power cut.
// All heated rooms are one zone, its air and contents one node, over the edges of the floor as few states.
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "slabwright/building.hpp"
#include "slabwright/conduction_states.hpp"

namespace slabwright {

/// What stands in the shop and its inside faces, as far as they follow the air within an hour or two, per floor area:
/// 10 Wh/m2K, practice, the light and so the careful end.
inline constexpr double contents_J_per_m2K = 10.0 * 3600.0;

/// A stretch of edge with its half of the floor, as one strip.
struct FloorStrip {
  std::size_t edge = 0;  ///< row in Envelope::edge
  std::size_t room = 0;  ///< row in Design::room
  /// Drivers in the order of edge_row; outdoor air and ground do not move. Watched: the nearest tube, then heat by
  /// driver.
  FewStates states;
  double length_m = 0.0;
  double width_m = 0.0;               ///< of floor
  double above_tube_m2K_per_W = 0.0;  ///< from the tubes' plane to the air, film included
  double near_air_share = 0.0;        ///< how far the near air stands on the way from room air to outdoor air
};

struct CoolingBuilding {
  std::vector<FloorStrip> floor;
  double capacity_J_per_K = 0.0;  ///< of air and contents, above 0
  double loss_W_per_K = 0.0;      ///< to the outdoor air: no fan runs, doors are shut
};

/// Which floor film the strips are made with. A floor that warms the air has the better one.
enum class FloorHeat { up, down };

/// Strips of heated rooms, lengths scaled so that together they cover all heated floor. Absent where no edge of a
/// heated room is known.
std::optional<CoolingBuilding> cooling_building(const Design& design, const Envelope& envelope, EdgeFields& fields,
                                                FloorHeat heat = FloorHeat::up);

/// The last moment with power: everything steady, soil included, as if it had lasted. After it no tube heat, no gains.
struct PowerCut {
  double air_degC = 0.0;  ///< of the zone
  double outdoor_degC = 0.0;
  double ground_degC = 0.0;
  double tube_W_per_m2 = 0.0;           ///< of floor over tubes
  std::vector<double> room_rise_share;  ///< [room]: its rise over outdoors, of the zone's
};
double room_air_degC(const PowerCut& cut, std::size_t room, double zone_degC);

/// The tube heat, at least 0, with which the floor gives the air this much. Reads all of `cut` but its tube heat.
double tube_heat_that_gives(const CoolingBuilding& building, const PowerCut& cut, double up_W);

struct CoolingRow {
  double time_s = 0.0;
  double air_degC = 0.0;          ///< of the zone
  double up_W = 0.0;              ///< from the floor into the air
  std::vector<double> tube_degC;  ///< [strip]
  /// Mean of the tubes' plane, from what the floor gives the air as if it came through steadily: what water that goes
  /// round and round takes on.
  double water_degC = 0.0;
};

struct CoolingOptions {
  double step_s = 600.0;  ///< twice as long moves no hour by 0.2 %
  double longest_s = 96.0 * 3600.0;
};

/// Strips step exactly, under air that goes straight from one value to the next; the air is found with them at the end
/// of each step (trapezoidal rule), so that no step is too long to be stable. The first row is the moment before the
/// cut.
std::vector<CoolingRow> cool_down(const CoolingBuilding& building, const PowerCut& cut,
                                  const CoolingOptions& options = {});

/// Whether a small generator keeps the pump alone running. Water in tubes, manifold and boiler is then as warm as the
/// tubes' plane in the mean; that it warms the edges, which then lose a little more, is left out.
enum class PumpInCut { rests, runs };

/// When a watched place comes down to what it freezes at; absent: not within the rows, or it lies at an edge that has
/// no strip. Water lines and traps follow the air at once: what they lag is less than an hour.
std::optional<double> freezes_after_s(const WatchedPlace& place, const CoolingBuilding& building, const PowerCut& cut,
                                      const std::vector<CoolingRow>& rows, PumpInCut pump = PumpInCut::rests);

}  // namespace slabwright
