// A heater that gives more than is taken: how long it runs, and the water that makes it run long enough.
#pragma once

namespace slabwright {

/// Source and swing greater than zero, the load smaller than the source.
struct SwingingHeater {
  double source_W = 0.0;  ///< the least the heater gives when it is on
  double load_W = 0.0;    ///< taken on average
  double swing_K = 0.0;   ///< of the water, from the heater's coming on to its going off
  /// What a slab takes more for each kelvin that the water is warmer, 0 for water alone. Its own temperature stands
  /// still for the minutes of a run.
  double slab_W_per_K = 0.0;
};

/// Time on, seconds, for water whose heat over one kelvin is `capacity_J_per_K`: C dT / (source - load); with a slab
/// the water goes up by an exponential, C / G ln((s + g) / (s - g)), s = source - load, g = G dT / 2 (derived). Endless
/// (HUGE_VAL) where the slab takes all before the swing is through.
double on_s(const SwingingHeater& cycling, double capacity_J_per_K);
/// Time off, seconds: the same with the load in place of the surplus; endless where the slab keeps the water warm.
double off_s(const SwingingHeater& cycling, double capacity_J_per_K);

/// Volume of water that keeps a heater on for `least_on_s`, m3; without a slab t (source - load) / (rho c dT), as trade
/// pages print it. What stands in the system already counts towards it. `volumetric_J_per_m3K` is rho c.
double buffer_m3(const SwingingHeater& cycling, double least_on_s, double volumetric_J_per_m3K);

}  // namespace slabwright
