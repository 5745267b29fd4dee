// A way of running as thermostats by the hour.
#pragma once
#include <vector>

#include "winter/machines.hpp"

namespace slabwright::winter {

/// A thermostat that is set to nothing.
inline constexpr double not_set_degC = -1000.0;

/// What each thermostat is set to in an hour.
struct Dials {
  double floor_air_degC = not_set_degC;
  double floor_slab_degC = not_set_degC;
  double source_degC = not_set_degC;
  friend bool operator==(const Dials&, const Dials&) = default;
};

/// What a way takes from the shop, and how early it begins.
struct PlanInputs {
  double work_degC = 0.0;  ///< of the main room
  Dials hold;              ///< what keeps frost out, by either of the floor's sensors
  double least_source_degC = not_set_degC;
  int floor_lead_h = 0, source_lead_h = 0;
};

/// [hour]
std::vector<Dials> plan_of(const WayEntry& way, const Season& season, const PlanInputs& inputs);
/// Whether a way lets the floor, or the second source, start before work.
bool floor_starts_early(const WayEntry& way);
bool source_starts_early(const WayEntry& way);
/// What the usual comparison is made of: those that the shop can run.
std::vector<WayEntry> usual_ways(bool has_source, std::optional<double> hold_degC);

}  // namespace slabwright::winter
