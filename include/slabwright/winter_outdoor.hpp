// Heat against the weather: what the shop loses, what floor and second source can give, and what water that wants.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/plant.hpp"
#include "slabwright/plant_sizes.hpp"

namespace slabwright {

/// Steady weather, every room at its working temperature, doors shut. Gains are the design's own, as the floor is sized
/// with them. The ground is as on the day when it takes most, whatever the row's weather: the careful side.
struct OutdoorRow {
  double outdoor_degC = 0.0;
  double loss_W = 0.0;    ///< of the rooms over heated floor to the outdoor air
  double gains_W = 0.0;   ///< people, machines and sun that the design counts on
  double wanted_W = 0.0;  ///< loss less gains, room by room, no more than floors may give: upward
  double down_W = 0.0;    ///< what the floor then gives to ground and edge
  double load_W = 0.0;    ///< both: what boiler or unit gives in the mean
  double water_W = 0.0;   ///< given by water that runs so warm: more, where one room wants it warmer than others
  std::optional<double> supply_degC;  ///< that serves every room; absent where no floor is wanted
  std::optional<double> return_degC;
  std::optional<double> flow_m3_per_s;   ///< through the floor
  std::optional<double> boiler_spare_W;  ///< the boiler's most less `water_W`; absent without a boiler
  double alone_W = 0.0;            ///< what warms the air alone must give: loss less gains and what a cold floor takes
  std::optional<double> source_W;  ///< the second source at full load; absent where nobody knows, 0 locked out
  std::optional<double> source_cop_number;
  std::optional<double> source_electric_W;
  bool source_locked = false;  ///< colder than where it cuts out
  /// Where a unit of `source_W` heats the water: flow through it at the design's drop, and the least water to add so
  /// that it runs long enough (0: none).
  std::optional<double> unit_least_m3_per_s, unit_buffer_m3;
};

struct HeatByOutdoor {
  std::vector<OutdoorRow> row;     ///< by rising outdoor temperature, from the coldest hour to where nothing is wanted
  std::vector<OutdoorRow> fitter;  ///< at the weather planned for, then at four round temperatures, rising
  std::optional<double> boiler_W;  ///< the most that it gives
  double hottest_degC = 0.0;       ///< water the boiler can be set to
  double floor_most_W = 0.0;       ///< given upward by the floor at that water
  double water_most_W = 0.0;       ///< and taken from it, up and down; the boiler or this is the end
  std::optional<double> cross_over_degC;    ///< the second source alone just carries the shop; colder, it does not
  std::optional<double> cross_over_W;       ///< and what that takes
  std::optional<double> cut_out_degC;       ///< colder, and the second source stands
  std::optional<double> idle_above_degC;    ///< warmer, and gains alone do, all rooms together
  double glycol_share = 0.0;                ///< by volume, as it is filled
  double freezes_degC = 0.0;                ///< what is filled
  std::optional<double> unit_glycol_share;  ///< that a unit outdoors with this water in it wants at the coldest hour
  double unit_least_on_s = 0.0;             ///< how long a unit should run, for `unit_buffer_m3`
  double unit_differential_K = 0.0;         ///< of its water meanwhile
};

/// What it is found from.
struct OutdoorCase {
  const Plant& plant;
  const Envelope& envelope;
  const FloorPlan& floor;
  const OperatingPoint& point;  ///< at the weather planned for
  std::optional<double> boiler_W;
};
/// Absent without a room that its floor heats. Said: weather in which flow and temperature do not settle together.
Checked<HeatByOutdoor> heat_by_outdoor(const OutdoorCase& shop);

Record record_of(OutdoorRow&);
Record record_of(HeatByOutdoor&);

}  // namespace slabwright
